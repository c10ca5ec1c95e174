package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"softloft/photometry"
	"softloft/shape"
)

// The four sides, skirts and strips are always in this order.
const (
	North = iota // +y
	South        // -y
	East         // +x
	West         // -x
)

// Scene is the plain input of the engine, in box axes, SI.
type Scene struct {
	// Size is between tube center-lines, along x and y: there the sides stand.
	Size [2]float64
	// Clear is the area around the origin that passes light. The rest of the
	// cloth plane inside Size is opaque and reflects 0.04.
	Clear [2]float64
	// Depth is the sides' height: they run from z = 0 up to it. 0: no sides,
	// no roof.
	Depth  float64
	Sides  [4]Side
	Roof   Roof
	Skirts [4]float64 // length below the cloth plane; both faces reflect 0.04
	// Cloths from the lamp side down. The last one lies in z = 0, the others
	// above it by the gaps between. Empty: the box is open below and the
	// lamps themselves are the source.
	Cloths []Cloth
	Crate  *Crate // its top touches the cloth plane; nil for none
	Lamps  []Lamp
	// Blockers shade inside and outside: ribs, upper tubes, lamp bodies.
	Blockers []shape.Solid
	// Outside are other surfaces that shade, such as set walls, in box axes.
	Outside []shape.Polygon
}

// Side is one of the four sides; reflectances are diffuse, 0 to 1.
type Side struct {
	Present      bool
	Inner, Outer float64
}

// Roof closes the box at z = Depth, or leaves it open: light that goes up
// through an open roof does not come back.
type Roof struct {
	Open        bool
	Reflectance float64 // of the face toward the cloth
}

// Cloth is one diffusion. Through, ForwardPart, Diffuse and Back are shares of
// the light that arrives, and what is left of 1 is absorbed. They do not
// change with the angle, and both faces are alike.
type Cloth struct {
	Through      float64 // passes unscattered
	ForwardPart  float64 // passes in a lobe about the unscattered ray
	ForwardSigma float64 // of the lobe, rad: intensity ~ exp(-angle^2 / (2 sigma^2))
	Diffuse      float64 // passes Lambertian
	Back         float64 // returns Lambertian
	Gap          float64 // to the next cloth below, m; the last one's does not count
}

// Crate is an egg-crate of rectangular cells with thin walls.
type Crate struct {
	CellX, CellY float64 // clear width of a cell, m
	Depth        float64 // m
	Reflectance  float64 // of the cell walls, diffuse
	Wall         float64 // thickness of the cell walls, m
}

// Lamp is an opening that emits.
type Lamp struct {
	Centre       r3.Vec     // of the opening
	Axis, U, V   r3.Vec     // unit vectors: emission direction, along Size[0], along Size[1]
	Size         [2]float64 // of the opening, m
	Lumens       float64    // at its level
	Distribution photometry.Distribution
	// Body are half sizes of a block behind the opening along U, V and Axis
	// that hides what is behind it; zeros for none. The opening itself always
	// hides what is behind it.
	Body [3]float64
}
