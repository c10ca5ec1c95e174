package frame

import "gonum.org/v1/gonum/spatial/r3"

// Loads is one load case. All forces keep their direction in the world.
type Loads struct {
	Nodal  []NodalLoad
	Offset []OffsetLoad
	Rider  []RiderLoad
	Member []MemberLoad
}

// NodalLoad acts on a node. The moment keeps its direction in the world while the node turns.
type NodalLoad struct {
	Node   int
	Force  r3.Vec // N
	Moment r3.Vec // N·m
}

// OffsetLoad is a force on a rigid arm that turns with the node.
type OffsetLoad struct {
	Node   int
	Offset r3.Vec // m, from the node, in world axes of the unloaded frame
	Force  r3.Vec // N
}

// RiderLoad is a force at P = Σ shareₖ·pₖ + height·n, where n is the unit vector along (p₀−p₂)×(p₁−p₃), the
// normal of the plane through the diagonals of four nodes. The place moves with the nodes and adds no stiffness
// between them; the forces on the nodes are the gradient of the force's potential.
type RiderLoad struct {
	Nodes  [4]int
	Share  [4]float64 // sum is 1
	Height float64    // m
	Force  r3.Vec     // N
}

// MemberLoad is a force per length of the unloaded member, in N/m in world axes, that runs straight from AtI to AtJ.
type MemberLoad struct {
	Member   int
	AtI, AtJ r3.Vec
}
