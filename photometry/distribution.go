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
	// Scale is the angle (rad) over which the intensity changes noticeably:
	// who adds it up must not step wider.
	Scale() float64
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
