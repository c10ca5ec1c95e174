package quantity

import (
	"math"
	"strconv"
)

// Feet prints feet and inches to the nearest 1/8 in, with carry: 12'-6 1/2", 0'-0", -0'-3".
func Feet(x Length) string {
	eighths := math.Round(float64(x) / 0.0254 * 8)
	if math.IsNaN(eighths) || math.IsInf(eighths, 0) {
		return unknown
	}
	if math.Abs(eighths) > 1<<50 {
		return significant(float64(x/Foot), " ft")
	}
	sign := ""
	if eighths < 0 {
		sign = "-"
	}
	count := int64(math.Abs(eighths))
	feet, inches, rest := count/96, count%96/8, count%8
	return sign + strconv.FormatInt(feet, 10) + "'-" + strconv.FormatInt(inches, 10) + eighth(rest) + `"`
}

// eighth prints count/8 in lowest terms after a blank; nothing for 0.
func eighth(count int64) string {
	return []string{"", " 1/8", " 1/4", " 3/8", " 1/2", " 5/8", " 3/4", " 7/8"}[count]
}

// Metres prints metres to the millimetre: 3.810 m.
func Metres(x Length) string { return fixed(float64(x), 3, " m") }

// LoadUp prints a load for people: rounded up, away from 0, to 5 lb or 2 kg. A force is printed as
// the mass whose weight it is, as gear is rated.
func LoadUp[Load Force | Mass](s System, x Load) string {
	mass := float64(x)
	if force, ok := any(x).(Force); ok {
		mass = float64(force.Mass())
	}
	if s == InMetres {
		return fixed(stepUp(mass, 2), 0, " kg")
	}
	return fixed(stepUp(mass/float64(Pound), 5), 0, " lb")
}

// stepUp rounds x away from 0 to a multiple of step. What lies above a multiple by less than the
// rounding of its conversion counts as that multiple.
func stepUp(x, step float64) float64 {
	steps := math.Abs(x) / step
	steps = math.Ceil(steps - 1e-12*max(1, steps))
	return math.Copysign(steps*step, x)
}
