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
	scale    float64
	reach    float64
	grain    grain
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
	b.scale = b.half * math.Min(1, 1/b.steepest())
	b.reach = b.half * math.Pow(-math.Log2(beamEnds), 1/b.exponent)
	b.grain = b.grains()
	return b, nil
}

// beamEnds is the share of the peak under which a beam has ended.
const beamEnds = 1e-8

// steepest is the largest slope, in peaks per half of the beam angle: with
// y = ln2 (2 angle/beam)^p it stands at y = (p-1)/p. 0 where the beam is
// pointed at its middle.
func (b Beam) steepest() float64 {
	p := b.exponent
	if p <= 1 {
		return 0
	}
	y := (p - 1) / p
	return p * math.Pow(math.Ln2, 1/p) * math.Pow(y, y) * math.Exp(-y)
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
	return b.peak * math.Exp(-math.Ln2*math.Exp2(b.exponent*math.Log2(angle/b.half)))
}

// Intensity is cd per lumen toward a unit direction in lamp axes.
func (b Beam) Intensity(direction r3.Vec) float64 {
	if direction.Z <= 0 {
		return 0
	}
	across := math.Sqrt(direction.X*direction.X + direction.Y*direction.Y)
	angle := math.Atan2(across, direction.Z)
	if angle > b.reach {
		return 0
	}
	return b.at(angle)
}

// Scale is half the beam angle, or the peak over the steepest slope where that is less.
func (b Beam) Scale() float64 { return b.scale }

// Reach is the angle (rad) at which less than 1e-8 of the peak is left.
func (b Beam) Reach() float64 { return b.reach }

// Peak is the direction of the largest intensity: the aim.
func (b Beam) Peak() r3.Vec { return r3.Vec{Z: 1} }

// Grain is the least angle over which the intensity changes noticeably between two
// angles from the aim, all rad.
func (b Beam) Grain(from, to float64) float64 { return b.grain.between(from, to) }

// Round tells that the intensity is the same all around the aim.
func (b Beam) Round() bool { return true }
