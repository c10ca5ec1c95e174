package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// net places nodes so that the vectors between them come as near as can be to wanted ones: least squares over members
// and cables, weighted by their stiffness. One matrix per world axis, as supports may fix one axis of a node and
// not another.
//
// It serves long steps. A Newton step moves nodes along straight lines; what turns is stretched by that, and stretching
// is so stiff that only tiny steps would lower the energy. So the vector along each member and cable is turned as a true
// rotation and lengthened by what the step lengthens it, and the nodes are placed to fit. For small steps that is the
// step itself, so that Newton's convergence is untouched.
type net struct {
	axis     [3]*skyline
	edges    []edge
	want     [3][]float64
	stiffest float64
	ready    bool
}

type edge struct {
	i, j   int // j is Anchored for the far end of a cable
	weight float64
}

const (
	fixedWeight = 1e6  // of the stiffest edge: a fixed direction
	looseWeight = 1e-9 // of the stiffest edge: towards the straight move, where no edge leads to a fixed place
)

func (m *model) newNet() *net {
	w := &net{}
	for k := range m.beams {
		b := &m.beams[k]
		w.edges = append(w.edges, edge{b.i, b.j, b.axial})
		w.stiffest = math.Max(w.stiffest, b.axial)
	}
	for k := range m.cables {
		c := &m.cables[k]
		w.edges = append(w.edges, edge{c.i, c.j, 0})
		w.stiffest = math.Max(w.stiffest, c.ea/c.natural)
	}
	first := make([]int, len(m.rest))
	for k := range first {
		first[k] = k
	}
	for _, e := range w.edges {
		if e.j != Anchored {
			a, b := m.rank[e.i], m.rank[e.j]
			first[max(a, b)] = min(first[max(a, b)], min(a, b))
		}
	}
	for axis := range 3 {
		w.axis[axis] = newSkyline(first)
		w.want[axis] = make([]float64, len(m.rest))
	}
	return w
}

// tighten weighs the cables by whether they pull now, and factorizes the net again if that changed.
func (s *system) tighten() {
	w := s.net
	for k := range s.cables {
		c, e := &s.cables[k], &w.edges[len(s.beams)+k]
		rate := c.pull(s.q.at).rate
		w.ready = w.ready && rate == e.weight
		e.weight = rate
	}
	if w.ready {
		return
	}
	w.ready = true
	for axis := range w.axis {
		s.fillNet(axis)
	}
}

func (m *model) fillNet(axis int) {
	w := m.net
	s := w.axis[axis]
	s.clear()
	for _, e := range w.edges {
		a := m.rank[e.i]
		s.add(a, a, e.weight)
		if e.j != Anchored {
			b := m.rank[e.j]
			s.add(b, b, e.weight)
			s.add(a, b, -e.weight)
		}
	}
	for node := range m.rest {
		s.add(m.rank[node], m.rank[node], w.stiffest*m.pin(node, axis))
	}
	s.factor(judge{})
}

// pin is how firmly a node keeps to its straight move, against the stiffest edge.
func (m *model) pin(node, axis int) float64 {
	if m.number[node][axis] == held {
		return fixedWeight
	}
	return looseWeight
}

// move writes into to the pose that is reached from the present one by fraction times the step p (moves and spins by
// unknown).
func (s *system) move(to *pose, p []float64, fraction float64) {
	s.spread(p, fraction)
	for k := range to.at {
		to.turn[k] = s.q.turn[k]
		if s.spins[k] != (r3.Vec{}) {
			to.turn[k] = turned(s.q.turn[k], s.spins[k])
		}
		to.axes[k] = columns(to.turn[k])
	}
	if s.net == nil { // straight moves are asked for
		for k := range to.at {
			to.at[k] = r3.Add(s.q.at[k], s.moves[k])
		}
		return
	}
	s.fit(to)
}

// fit places the nodes. The net is solved for the difference to the straight moves, which keeps rounding out of it.
func (s *system) fit(to *pose) {
	w := s.net
	for axis := range w.want {
		clear(w.want[axis])
	}
	largest := 0.0
	for k, e := range w.edges {
		if e.weight == 0 {
			continue
		}
		bend := s.bend(k, e)
		largest = math.Max(largest, r3.Norm2(bend))
		pull := r3.Scale(e.weight, bend)
		a := s.rank[e.i]
		w.want[0][a] -= pull.X
		w.want[1][a] -= pull.Y
		w.want[2][a] -= pull.Z
		if e.j != Anchored {
			b := s.rank[e.j]
			w.want[0][b] += pull.X
			w.want[1][b] += pull.Y
			w.want[2][b] += pull.Z
		}
	}
	if largest > 0 {
		for axis := range w.want {
			w.axis[axis].solve(w.want[axis])
		}
	}
	for k := range to.at {
		a := s.rank[k]
		to.at[k] = r3.Add(s.q.at[k], r3.Add(s.moves[k], r3.Vec{X: w.want[0][a], Y: w.want[1][a], Z: w.want[2][a]}))
	}
}

// bend is the turned and lengthened edge vector less the straightly moved one.
func (s *system) bend(k int, e edge) r3.Vec {
	from, far := s.q.at[e.i], r3.Vec{}
	change := r3.Scale(-1, s.moves[e.i])
	if e.j == Anchored {
		far = s.cables[k-len(s.beams)].anchor
	} else {
		far = s.q.at[e.j]
		change = r3.Add(change, s.moves[e.j])
	}
	d := r3.Sub(far, from)
	length := norm(d)
	if length == 0 {
		return r3.Vec{}
	}
	unit := r3.Scale(1/length, d)
	longer := r3.Dot(unit, change)
	spin := r3.Scale(1/length, r3.Cross(unit, change))
	if angle := norm(spin); angle > 1 || angle < 1e-9 {
		return r3.Vec{} // a short slack line may point anywhere after the step
	}
	if k < len(s.beams) {
		roll := r3.Dot(unit, r3.Add(s.spins[e.i], s.spins[e.j])) / 2
		spin = r3.Add(spin, r3.Scale(roll, unit))
	}
	axes := columns(turn(spin))
	turned := r3.Scale(1+longer/length, axes.of(d))
	return r3.Sub(turned, r3.Add(d, change))
}

// spread sorts a step by node.
func (s *system) spread(p []float64, fraction float64) (moves, spins []r3.Vec) {
	if s.moves == nil {
		s.moves, s.spins = make([]r3.Vec, len(s.rest)), make([]r3.Vec, len(s.rest))
	}
	clear(s.moves)
	clear(s.spins)
	for i, u := range s.owner {
		v := fraction * p[i]
		switch u.axis {
		case 0:
			s.moves[u.node].X = v
		case 1:
			s.moves[u.node].Y = v
		case 2:
			s.moves[u.node].Z = v
		case 3:
			s.spins[u.node].X = v
		case 4:
			s.spins[u.node].Y = v
		default:
			s.spins[u.node].Z = v
		}
	}
	return s.moves, s.spins
}

// reach is the largest move over the frame's size and the largest spin of a step, whichever is more.
func (s *system) reach(p []float64) float64 {
	worst := 0.0
	for i, u := range s.owner {
		v := math.Abs(p[i])
		if u.axis < 3 {
			v /= s.size
		}
		worst = math.Max(worst, v)
	}
	return worst
}
