package photometry

import "gonum.org/v1/gonum/spatial/r3"

// Distribution is a lamp's far field.
type Distribution interface {
	// Intensity is candela per lumen of the lamp toward a unit direction in
	// lamp axes (+Z is the aim, +X is C0); 0 where nothing is emitted.
	Intensity(direction r3.Vec) float64
}
