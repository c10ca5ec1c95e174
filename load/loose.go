package load

import "softloft/frame"

// pin is one end of a member at a joint.
type pin struct {
	end   *frame.End
	start bool // the member's node I
}

// holdLoose settles the joints where every end is pinned. The first end is made rigid:
// the hinge is between the tubes all the same, and the joint itself cannot spin. So that
// the tube whose start that is cannot spin either, the next one holds its roll with its
// own bending up and down; it gets no moment by that but what would turn the tube.
func (m *model) holdLoose() {
	held := make([]bool, len(m.problem.Nodes))
	pins := make([][]pin, len(m.problem.Nodes))
	for i := range m.problem.Members {
		b := &m.problem.Members[i]
		for k, end := range []*frame.End{&b.EndI, &b.EndJ} {
			node := [2]int{b.I, b.J}[k]
			held[node] = held[node] || *end == (frame.End{})
			pins[node] = append(pins[node], pin{end, k == 0})
		}
	}
	for node, ends := range pins {
		if held[node] || len(ends) == 0 {
			continue
		}
		*ends[0].end = frame.End{}
		if len(ends) > 1 && ends[0].start {
			ends[1].end.Free[1] = false
		}
	}
}
