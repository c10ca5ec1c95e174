package frame

import (
	"fmt"
	"math"
	"sort"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
)

// model is a checked problem ready for assembly: members in their basic system, unknowns numbered, the matrix's
// shape known. Places are measured from origin, the mean of the nodes, which keeps small differences of large
// coordinates out of the stretches.
type model struct {
	p       *Problem
	origin  r3.Vec
	start   []r3.Vec // of the nodes, from origin, settled supports moved
	rest    []r3.Vec // unloaded
	beams   []beam
	cables  []cable
	springs []spring
	number  [][6]int // the unknown of each node's direction, or held
	owner   []unknown
	turns   []bool    // nodes whose turn means something
	weight  []float64 // 1 for a translation, scale² for a turn
	scale   float64   // m, mean member length: turns are compared with moves through it
	size    float64   // m, the frame's reach
	rank    []int     // of each node along the band
	net     *net
	k       *skyline
}

const held = -1

// unknown says which node and direction an equation belongs to.
type unknown struct{ node, axis int }

// spring is a support spring.
type spring struct {
	node, axis int
	k          float64
}

// newModel checks a problem and numbers its unknowns. The loads may be nil; riders couple nodes, and moments and arms
// turn them.
func newModel(p *Problem, l *Loads) (*model, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	if l != nil {
		if err := l.check(p); err != nil {
			return nil, err
		}
	}
	m := &model{p: p}
	m.place()
	for k := range p.Members {
		m.beams = append(m.beams, newBeam(&p.Members[k], p.Nodes))
	}
	for k := range p.Cables {
		m.cables = append(m.cables, newCable(&p.Cables[k], m.origin))
	}
	m.measure()
	m.enumerate(l)
	return m, nil
}

func (m *model) place() {
	for _, n := range m.p.Nodes {
		m.origin = r3.Add(m.origin, n.At)
	}
	m.origin = r3.Scale(1/float64(len(m.p.Nodes)), m.origin)
	for _, n := range m.p.Nodes {
		m.rest = append(m.rest, r3.Sub(n.At, m.origin))
	}
	m.start = append([]r3.Vec(nil), m.rest...)
	for _, s := range m.p.Supports {
		m.start[s.Node] = r3.Add(m.start[s.Node], movedMove(s))
	}
}

func movedMove(s Support) r3.Vec {
	return r3.Vec{X: fixedMove(s, 0), Y: fixedMove(s, 1), Z: fixedMove(s, 2)}
}

func movedTurn(s Support) r3.Vec {
	return r3.Vec{X: fixedMove(s, 3), Y: fixedMove(s, 4), Z: fixedMove(s, 5)}
}

func fixedMove(s Support, k int) float64 {
	if !s.Fixed[k] {
		return 0
	}
	return s.Moved[k]
}

func (m *model) measure() {
	for k := range m.beams {
		m.scale += m.beams[k].length / float64(len(m.beams))
	}
	if m.scale == 0 {
		m.scale = 1
	}
	m.size = m.scale
	for _, x := range m.rest {
		m.size = math.Max(m.size, r3.Norm(x))
	}
}

// enumerate numbers the free directions along the narrow side of the frame and shapes the matrix.
func (m *model) enumerate(l *Loads) {
	groups := m.groups(riderGroups(l))
	m.number = make([][6]int, len(m.rest))
	m.fix()
	m.stillTurns(l)
	m.rank = make([]int, len(m.rest))
	for rank, node := range bandOrder(neighbors(len(m.rest), groups)) {
		m.rank[node] = rank
		for axis := range 6 {
			if m.number[node][axis] == held {
				continue
			}
			m.number[node][axis] = len(m.owner)
			m.owner = append(m.owner, unknown{node, axis})
			w := 1.0
			if axis > 2 {
				w = m.scale * m.scale
			}
			m.weight = append(m.weight, w)
		}
	}
	m.shape(groups)
}

func (m *model) fix() {
	for _, s := range m.p.Supports {
		for axis := range 6 {
			if s.Fixed[axis] {
				m.number[s.Node][axis] = held
			} else if s.Spring[axis] > 0 {
				m.springs = append(m.springs, spring{s.Node, axis, s.Spring[axis]})
			}
		}
	}
}

// stillTurns holds the turns of nodes that turn nothing: where only cables and pinned members meet there is a point, not
// a joint.
func (m *model) stillTurns(l *Loads) {
	m.turns = make([]bool, len(m.rest))
	for k := range m.p.Members {
		b := &m.p.Members[k]
		m.turns[b.I] = m.turns[b.I] || b.EndI.Free != Pinned().Free
		m.turns[b.J] = m.turns[b.J] || b.EndJ.Free != Pinned().Free
	}
	for _, s := range m.p.Supports {
		m.turns[s.Node] = m.turns[s.Node] || s.Spring[3] > 0 || s.Spring[4] > 0 || s.Spring[5] > 0
	}
	if l != nil {
		for _, node := range l.turned() {
			if m.p.hasNode(node) {
				m.turns[node] = true
			}
		}
	}
	for node := range m.turns {
		n := &m.number[node]
		if m.turns[node] {
			continue
		}
		m.turns[node] = n[3] == held && n[4] == held && n[5] == held // a support takes any moment there
		n[3], n[4], n[5] = held, held, held
	}
}

// turned lists the nodes that loads want to turn.
func (l *Loads) turned() (nodes []int) {
	for _, n := range l.Nodal {
		if n.Moment != (r3.Vec{}) {
			nodes = append(nodes, n.Node)
		}
	}
	for _, o := range l.Offset {
		if o.Offset != (r3.Vec{}) && o.Force != (r3.Vec{}) {
			nodes = append(nodes, o.Node)
		}
	}
	return nodes
}

func riderGroups(l *Loads) [][]int {
	if l == nil {
		return nil
	}
	var groups [][]int
	for k := range l.Rider {
		r := &l.Rider[k]
		if r.Height != 0 {
			groups = append(groups, r.Nodes[:])
		}
	}
	return groups
}

// groups lists the sets of nodes that the matrix couples.
func (m *model) groups(extra [][]int) [][]int {
	groups := append([][]int(nil), extra...)
	for k := range m.beams {
		groups = append(groups, []int{m.beams[k].i, m.beams[k].j})
	}
	for k := range m.cables {
		if c := &m.cables[k]; c.j != Anchored {
			groups = append(groups, []int{c.i, c.j})
		}
	}
	return groups
}

func neighbors(n int, groups [][]int) [][]int {
	sets := make([]map[int]bool, n)
	for k := range sets {
		sets[k] = map[int]bool{}
	}
	for _, g := range groups {
		for _, a := range g {
			for _, b := range g {
				if a != b {
					sets[a][b] = true
				}
			}
		}
	}
	out := make([][]int, n)
	for k, set := range sets {
		for b := range set {
			out[k] = append(out[k], b)
		}
		sort.Ints(out[k])
	}
	return out
}

func (m *model) shape(groups [][]int) {
	first := make([]int, len(m.owner))
	for i, u := range m.owner {
		first[i] = i - u.axis
		if f := m.firstOf(u.node); f >= 0 {
			first[i] = f
		}
	}
	for _, g := range groups {
		lowest := len(m.owner)
		for _, node := range g {
			if f := m.firstOf(node); f >= 0 {
				lowest = min(lowest, f)
			}
		}
		for _, node := range g {
			for _, i := range m.number[node] {
				if i >= 0 {
					first[i] = min(first[i], lowest)
				}
			}
		}
	}
	m.k = newSkyline(first)
}

// firstOf is the lowest unknown of a node, or held.
func (m *model) firstOf(node int) int {
	for _, i := range m.number[node] {
		if i >= 0 {
			return i
		}
	}
	return held
}

// pose is where the nodes are: place from the model's origin and turn from the unloaded frame.
type pose struct {
	at   []r3.Vec
	turn []quat.Number
	axes []triad // the turns as matrices
}

func newPose(n int) *pose {
	return &pose{at: make([]r3.Vec, n), turn: make([]quat.Number, n), axes: make([]triad, n)}
}

func (p *pose) copyFrom(o *pose) {
	copy(p.at, o.at)
	copy(p.turn, o.turn)
	copy(p.axes, o.axes)
}

// unloaded is the pose before any load, with settled supports.
func (m *model) unloaded() *pose {
	q := newPose(len(m.rest))
	copy(q.at, m.start)
	for k := range q.turn {
		q.turn[k] = quat.Number{Real: 1}
	}
	for _, s := range m.p.Supports {
		q.turn[s.Node] = turned(q.turn[s.Node], movedTurn(s))
	}
	for k := range q.axes {
		q.axes[k] = columns(q.turn[k])
	}
	return q
}

// placeAs takes the nodes' places and turns from a state; fixed directions stay where their supports hold them.
func (m *model) placeAs(q *pose, s *State) error {
	for k := range q.at {
		if !finite(s.Position[k]) || !finiteNumber(quat.Abs(quat.Number(s.Rotation[k]))) || quat.Abs(quat.Number(s.Rotation[k])) == 0 {
			return fmt.Errorf("start: node %s has no place or turn", m.p.nodeName(k))
		}
		at := r3.Sub(s.Position[k], m.origin)
		free := m.number[k]
		if free[0] >= 0 {
			q.at[k].X = at.X
		}
		if free[1] >= 0 {
			q.at[k].Y = at.Y
		}
		if free[2] >= 0 {
			q.at[k].Z = at.Z
		}
		if free[3] >= 0 && free[4] >= 0 && free[5] >= 0 {
			t := quat.Number(s.Rotation[k])
			q.turn[k] = quat.Scale(1/quat.Abs(t), t)
		} else if free[3] >= 0 || free[4] >= 0 || free[5] >= 0 {
			q.turn[k] = quat.Number(s.Rotation[k])
		}
		q.axes[k] = columns(q.turn[k])
	}
	return nil
}
