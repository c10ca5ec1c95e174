package photometry

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Beam is a round beam known by two full angles only: intensity
// I0 exp(-ln2 (2 angle/beam)^p), where p is such that half the peak stands at
// the beam angle and a tenth at the field angle. Behind the opening it is 0.
//
// Flux and two angles do not fix the shape between and beyond them: the law is
// this project's choice, smooth and through both. 50 % and 10 % are common
// practice for the two angles, from memory.
type Beam struct {
	peak     float64 // cd/lm
	half     float64 // half of the beam angle, rad
	exponent float64
}

// NewBeam takes the full beam and field angles (rad): 0 < beam < field <= pi.
func NewBeam(beam, field float64) (Beam, error) {
	if !(beam > 0 && field > beam && field <= math.Pi) {
		return Beam{}, fmt.Errorf("beam %.4g deg and field %.4g deg: the beam angle must be above 0 and under the field angle, and the field angle at most 180 deg",
			beam*180/math.Pi, field*180/math.Pi)
	}
	b := Beam{peak: 1, half: beam / 2}
	b.exponent = math.Log(math.Ln10/math.Ln2) / math.Log(field/beam)
	b.peak = 1 / b.flux(field)
	return b, nil
}

// flux is the integral of the intensity over the half space before the
// opening, lm per cd of peak: 2 pi times the integral of I sin over the angle,
// by Gauss's rule in steps that are shorter where the beam falls off.
func (b Beam) flux(field float64) float64 {
	sum := 0.0
	for _, part := range [6][2]float64{{0, b.half}, {b.half, field / 2}, {field / 2, field}, {field, 2 * field}, {2 * field, 4 * field}, {4 * field, math.Pi / 2}} {
		from, to := math.Min(part[0], math.Pi/2), math.Min(part[1], math.Pi/2)
		sum += b.zone(from, to)
	}
	return sum
}

// zone is the flux between two angles from the aim.
func (b Beam) zone(from, to float64) float64 {
	const steps = 64
	step := (to - from) / steps
	sum := 0.0
	for i := range steps {
		for k, t := range gaussPlaces {
			angle := from + (float64(i)+t)*step
			sum += gaussWeights[k] * b.at(angle) * math.Sin(angle)
		}
	}
	return 2 * math.Pi * step * sum
}

// Gauss's three-point rule on 0 to 1.
var (
	gaussPlaces  = [3]float64{0.5 - 0.3872983346207417, 0.5, 0.5 + 0.3872983346207417}
	gaussWeights = [3]float64{5.0 / 18, 8.0 / 18, 5.0 / 18}
)

// at is the intensity under an angle (rad) from the aim, cd/lm.
func (b Beam) at(angle float64) float64 {
	return b.peak * math.Exp(-math.Ln2*math.Pow(angle/b.half, b.exponent))
}

// Intensity is cd per lumen toward a unit direction in lamp axes.
func (b Beam) Intensity(direction r3.Vec) float64 {
	if direction.Z <= 0 {
		return 0
	}
	across := math.Hypot(direction.X, direction.Y)
	return b.at(math.Atan2(across, direction.Z))
}

// Scale is half the beam angle.
func (b Beam) Scale() float64 { return b.half }
