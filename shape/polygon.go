package shape

import "gonum.org/v1/gonum/spatial/r3"

// Polygon is a planar polygon by its corners in order (m).
type Polygon []r3.Vec
