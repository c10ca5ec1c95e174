package light

import (
	"math"

	"softloft/plan"
	"softloft/source"
)

// The incident-meter equation of ISO 2720:1974: N²/t = E·S/C, with the receptor's
// constant C. A filter takes its stops away before the lens.

// shutterTime is how long a frame is exposed, in s: angle/(2π·fps).
func shutterTime(x *plan.Exposure) float64 { return float64(x.Shutter) / (2 * math.Pi * x.FPS) }

// stopFor is the T-stop that an illuminance in lx gives.
func stopFor(lux float64, x *plan.Exposure, c source.Calibration) float64 {
	return math.Sqrt(lux * math.Exp2(-float64(x.Filter)) * shutterTime(x) * x.ISO / c.Value)
}

// luxFor is the illuminance in lx that the asked T-stop needs.
func luxFor(x *plan.Exposure, c source.Calibration) float64 {
	stop := float64(x.Stop)
	return c.Value * stop * stop / (shutterTime(x) * x.ISO) * math.Exp2(float64(x.Filter))
}

// stops is the difference of two illuminances in stops.
func stops(high, low float64) float64 { return math.Log2(high / low) }
