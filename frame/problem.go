package frame

import "gonum.org/v1/gonum/spatial/r3"

// Node is a rigid joint with six degrees of freedom.
type Node struct {
	Name string
	At   r3.Vec // m, world axes, unloaded
}

// End says how a member's end is held to its node, for the rotations about the member's own x, y and z. The zero
// value is rigid.
type End struct {
	Free   [3]bool    // this rotation is not held at all
	Spring [3]float64 // N·m/rad; above zero this rotation is held by a spring. Zero means rigid.
}

// Pinned is an end free in all three rotations. A member that is free to twist at one end carries no torque; its
// own roll then follows the other end, and with both ends pinned it is a plain bar: no degree of freedom is left
// loose.
func Pinned() End { return End{Free: [3]bool{true, true, true}} }

// Member is a straight beam between two nodes.
type Member struct {
	Name string
	I, J int // indices into Problem.Nodes
	Section
	Material
	// Up gives the direction of the member's own z axis. Zero means world z, or world x for a member
	// that stands within 0.1° of vertical.
	Up         r3.Vec
	EndI, EndJ End
}

// Cable is a tension-only elastic line from a node to a fixed anchor or to another node.
type Cable struct {
	Name        string
	I           int     // index into Problem.Nodes
	J           int     // index of the other node, or Anchored
	Anchor      r3.Vec  // m, used where J is Anchored
	EA          float64 // N, stiffness times area: the tension at unit strain
	Unstretched float64 // m
}

// Anchored as a cable's J says that the cable ends at its fixed Anchor.
const Anchored = -1

// Support holds a node. Order of the six directions: along x, y, z, turns about x, y, z, in world axes.
type Support struct {
	Node   int
	Fixed  [6]bool
	Spring [6]float64 // N/m and N·m/rad, from the unloaded place
	Moved  [6]float64 // m and rad: where a fixed direction is held, from the unloaded place (settlement)
}

// Problem is a frame with its cables and supports, without loads. It is not changed by any analysis and may be
// used by several at once.
type Problem struct {
	Nodes    []Node
	Members  []Member
	Cables   []Cable
	Supports []Support
}
