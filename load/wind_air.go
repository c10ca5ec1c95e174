package load

import (
	"math"

	"softloft/source"
)

// pressure is the wind's velocity pressure q = ½ρv², Pa, of a speed in m/s.
func pressure(speed, density float64) float64 { return density * speed * speed / 2 }

// speedOf is the speed in m/s of a velocity pressure in Pa; +Inf of one without end, NaN
// below 0.
func speedOf(q, density float64) float64 { return math.Sqrt(2 * q / density) }

// canopy is the net force coefficient of a free monopitch roof of a slope, in rad, pressed
// down and lifted, the lift without its sign: EN 1991-1-4 Table 7.6, straight between its
// rows, and between open (blocked 0) and blocked (1). False beyond its last row.
func canopy(slope, blocked float64) (down, up float64, ok bool) {
	rows := source.Canopies()
	last := rows[len(rows)-1]
	if !(slope >= 0) || slope > last.Slope+1e-9 || !(blocked >= 0 && blocked <= 1) {
		return math.NaN(), math.NaN(), false
	}
	k := 1
	for k < len(rows)-1 && rows[k].Slope < slope {
		k++
	}
	a, b := rows[k-1], rows[k]
	t := math.Min(1, (slope-a.Slope)/(b.Slope-a.Slope))
	between := func(x, y float64) float64 { return x + t*(y-x) }
	open, block := between(a.Open, b.Open), between(a.Block, b.Block)
	return between(a.Max, b.Max), -(open + blocked*(block-open)), true
}

// liftOff is the wind speed in m/s at which a sheet's lift comes to a weight: v =
// √(2W/(ρ·c·A)), W in N, A in m².
func liftOff(weight, area, coefficient, density float64) float64 {
	return speedOf(weight/(coefficient*area), density)
}

// beaufort is the number on Beaufort's scale of a speed in m/s, by the mean speed of each
// number, v = 0.836·B^1.5: the last number whose lower half step is reached.
func beaufort(speed float64) int {
	b := 0
	for b < 12 && speed >= 0.836*math.Pow(float64(b)+0.5, 1.5) {
		b++
	}
	return b
}
