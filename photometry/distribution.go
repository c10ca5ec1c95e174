package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Distribution is a lamp's far field.
type Distribution interface {
	// Intensity is candela per lumen of the lamp toward a unit direction in
	// lamp axes (+Z is the aim, +X is C0); 0 where nothing is emitted.
	Intensity(direction r3.Vec) float64
	// Scale is the angle (rad) over which the intensity changes noticeably
	// where it does so most.
	Scale() float64
	// Reach is the angle (rad) from the aim beyond which nothing is emitted.
	Reach() float64
	// Grain is the least angle (rad) over which the intensity changes noticeably
	// in directions between two angles from the aim.
	Grain(from, to float64) float64
	// Peak is the unit direction of the largest intensity.
	Peak() r3.Vec
}

// Lambertian has the same luminance in all directions before the opening:
// intensity cos(angle)/pi per lumen.
type Lambertian struct{}

// Intensity is cos(angle)/pi before the opening and 0 behind it.
func (Lambertian) Intensity(direction r3.Vec) float64 {
	return math.Max(0, direction.Z) / math.Pi
}

// Scale is a radian: a Lambertian lobe is as smooth as they come.
func (Lambertian) Scale() float64 { return 1 }

// Reach is a right angle.
func (Lambertian) Reach() float64 { return math.Pi / 2 }

// Peak is the aim.
func (Lambertian) Peak() r3.Vec { return r3.Vec{Z: 1} }

// Grain is a radian.
func (Lambertian) Grain(float64, float64) float64 { return 1 }
