package rig

import (
	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
)

// Optics is what of the rig makes, passes and stops light, in box axes.
type Optics struct {
	Size     [2]float64 // between tube center-lines: where the sides stand
	Clear    [2]float64 // of the cloth plane, passes light
	Depth    float64    // of the sides above the cloth plane; 0 is none
	Sides    [4]Face    // north, south, east, west
	Roof     Face       // absent is open
	Skirts   [4]float64 // below the cloth plane
	Leak     [4]float64 // gap at the ties that no wrap covers, m
	Cloths   []Layer    // lamp side first
	Crate    *CrateCell
	Lamps    []Opening
	Provided []Opening  // lamps that may still go up: they take their place and give no light
	Opaque   []Cylinder // tubes that shade
	Missing  []string   // what stops the light from being computed
}

// Face is a side or the roof; Outer is the reflectance of its outer face.
type Face struct {
	Present      bool
	Inner, Outer float64
}

// Layer is one cloth and the gap to the next below.
type Layer struct {
	kit.Cloth
	ID  string
	Gap float64
}

// CrateCell is the egg-crate under the cloth.
type CrateCell struct {
	Cell        [2]float64
	Depth       float64
	Reflectance float64
	Wall        float64
}

// Opening is a lamp's luminous opening. Axis is where it shines; U lies along
// the first of Size. Lumens is at full level, nil where nobody gave it.
type Opening struct {
	Part   string
	Name   string
	Kit    string
	Center r3.Vec
	Axis   r3.Vec
	U, V   r3.Vec
	Size   [2]float64
	Lumens *float64
	Level  float64
	Spread kit.Spread
	Body   *[3]float64 // along U, V and back along the axis
	Demo   bool
}

// Cylinder is a tube that shades.
type Cylinder struct {
	Part     string
	From, To r3.Vec
	Radius   float64
}
