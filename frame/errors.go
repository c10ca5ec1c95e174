package frame

import "fmt"

// Mechanism says that nothing resists a motion.
type Mechanism struct {
	Node      string  // the node whose pivot vanished
	Direction string  // "moves along z", "turns about x"
	Ratio     float64 // the pivot over the diagonal it started from
}

func (m *Mechanism) Error() string {
	return fmt.Sprintf("node %s %s freely: nothing resists it (pivot ratio %.1e); add a member, support or cable there", m.Node, m.Direction, m.Ratio)
}

// Falls says that nothing carries a part of the frame: it moves away without end.
type Falls struct {
	Node string // the node that had moved furthest
}

func (f *Falls) Error() string {
	return fmt.Sprintf("nothing carries the frame: node %s falls; it needs a cable or a support", f.Node)
}

// NotFound says that no place of rest was found within the limits on steps.
type NotFound struct {
	Node       string  // where the imbalance is largest
	Residual   float64 // N
	Iterations int
}

func (n *NotFound) Error() string {
	return fmt.Sprintf("no place of rest found after %d steps: %.3g N still out of balance at node %s", n.Iterations, n.Residual, n.Node)
}
