package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/photometry"
)

// beamCurve is the intensity of a distribution that is the same all around, cd/lm,
// over the chord 2 sin(angle/2), in even steps up to its reach. Straight lines between
// them are off by less than 1e-4 of the peak for beams whose field is a 20th wider.
type beamCurve struct {
	value []float64
	scale float64 // steps per chord
}

// beamSteps is the curve's number of steps.
const beamSteps = 4096

// newBeamCurve is nil where a distribution isn't known to be the same all around.
func newBeamCurve(b photometry.Distribution) *beamCurve {
	if r, is := b.(interface{ Round() bool }); !is || !r.Round() {
		return nil
	}
	last := 2 * math.Sin(math.Min(b.Reach(), math.Pi/2)/2)
	c := &beamCurve{scale: beamSteps / last, value: make([]float64, beamSteps+2)}
	for i := range beamSteps + 1 {
		angle := 2 * math.Asin(float64(i)/c.scale/2)
		sin, cos := math.Sincos(angle)
		c.value[i] = b.Intensity(r3.Vec{X: sin, Z: cos})
	}
	return c
}

// at is the intensity toward a unit direction before the opening, by its cosine with
// the aim.
func (c *beamCurve) at(cos float64) float64 {
	q := math.Sqrt(2*math.Max(0, 1-cos)) * c.scale
	if q >= beamSteps {
		return 0
	}
	i := int(q)
	return c.value[i] + (q-float64(i))*(c.value[i+1]-c.value[i])
}

// intensity toward a unit direction in the lamp's own axes, cd/lm.
func (l *lamp) intensity(direction r3.Vec) float64 {
	switch {
	case l.beam == nil:
		return l.Distribution.Intensity(direction)
	case direction.Z <= 0:
		return 0
	}
	return l.beam.at(direction.Z)
}
