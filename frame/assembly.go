package frame

import (
	"math"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
)

// system is a loaded model in a pose: its energy, its forces and its tangent. Buffers are kept between steps.
type system struct {
	*model
	load *loading
	q    *pose
	free []freeEnds // frozen at the last refresh
	// force and moment are the energy's derivative at each node: what a support would have to hold.
	force  []r3.Vec
	moment []r3.Vec
	grad   []float64 // the same, by unknown

	moves, spins []r3.Vec // a step by node
	tangents     bool     // the present gathering fills the matrix too
}

func newSystem(m *model, g *loading, q *pose) *system {
	n := len(m.rest)
	return &system{
		model: m, load: g, q: q, free: make([]freeEnds, len(m.beams)),
		force: make([]r3.Vec, n), moment: make([]r3.Vec, n), grad: make([]float64, len(m.owner)),
	}
}

// refresh brings the members' free end turns to the present axes. Within one step they are constants, so that the
// step has an energy; loads that keep their direction turn against the member only between steps.
func (s *system) refresh() {
	for k := range s.beams {
		if s.load.loaded[k] {
			axes := s.beams[k].presentAxes(s.q)
			s.free[k] = s.load.freeEnds(k, &s.beams[k], &axes)
		}
	}
}

// energy is the total potential energy of a pose, J. Moments that keep their direction have no potential for large
// turns; theirs is taken along the step from the present pose. Infinite where a member is bent too far.
func (s *system) energy(q *pose) float64 {
	sum := 0.0
	for k := range s.beams {
		b := &s.beams[k]
		st := b.strain(q.at[b.i], q.at[b.j], &q.axes[b.i], &q.axes[b.j], &s.free[k])
		if !st.ok {
			return math.Inf(1)
		}
		sum += st.cost
	}
	for k := range s.cables {
		p := s.cables[k].pull(q.at)
		sum += p.cost
	}
	for _, p := range s.springs {
		sum += s.springCost(p, q)
	}
	return sum + s.potential(q)
}

func (s *system) potential(q *pose) float64 {
	sum := 0.0
	for k, f := range s.load.force {
		sum -= r3.Dot(f, r3.Sub(q.at[k], s.start[k]))
		if m := s.load.moment[k]; m != (r3.Vec{}) {
			sum -= r3.Dot(m, vector(quat.Mul(q.turn[k], quat.Conj(s.q.turn[k]))))
		}
	}
	for k := range s.load.offset {
		o := &s.load.offset[k]
		sum -= r3.Dot(o.Force, r3.Sub(r3.Add(q.at[o.Node], q.axes[o.Node].of(o.Offset)), r3.Add(s.start[o.Node], o.Offset)))
	}
	for k := range s.load.rider {
		r := &s.load.rider[k]
		sum -= r3.Dot(r.Force, r3.Sub(r.ride(q.at).at, s.load.ridden[k]))
	}
	return sum
}

func (s *system) springCost(p spring, q *pose) float64 {
	v := s.springMove(p, q)
	return p.k * v * v / 2
}

func (s *system) springMove(p spring, q *pose) float64 {
	if p.axis < 3 {
		return component(r3.Sub(q.at[p.node], s.rest[p.node]), p.axis)
	}
	return component(vector(q.turn[p.node]), p.axis-3)
}

// assemble fills the matrix and the gradient at the present pose and returns the energy.
func (s *system) assemble() float64 {
	s.tangents = true
	s.k.clear()
	return s.gather(s.q)
}

// gradientAt fills the gradient alone, at any pose.
func (s *system) gradientAt(q *pose) float64 {
	s.tangents = false
	return s.gather(q)
}

func (s *system) gather(q *pose) float64 {
	clear(s.force)
	clear(s.moment)
	sum := 0.0
	for k := range s.beams {
		sum += s.assembleBeam(k, q)
	}
	for k := range s.cables {
		sum += s.assembleCable(&s.cables[k], q)
	}
	for _, p := range s.springs {
		s.assembleSpring(p, q)
		sum += s.springCost(p, q)
	}
	s.assembleLoads(q)
	s.collect()
	return sum + s.potential(q)
}

// collect sorts the nodes' forces by unknown.
func (s *system) collect() {
	for i, u := range s.owner {
		if u.axis < 3 {
			s.grad[i] = component(s.force[u.node], u.axis)
		} else {
			s.grad[i] = component(s.moment[u.node], u.axis-3)
		}
	}
}

func (s *system) assembleBeam(k int, q *pose) float64 {
	b := &s.beams[k]
	st := b.strain(q.at[b.i], q.at[b.j], &q.axes[b.i], &q.axes[b.j], &s.free[k])
	if !st.ok {
		return math.Inf(1)
	}
	if !s.tangents {
		g := b.gradient(&st)
		s.push(b, &g)
		return st.cost
	}
	var m square
	g := b.tangent(&st, &m)
	s.push(b, &g)
	s.scatter(s.number[b.i], s.number[b.j], &m)
	return st.cost
}

// push adds a member's gradient to its nodes: what moves J one way moves the chord, what moves I the other.
func (s *system) push(b *beam, g *row) {
	f := r3.Vec{X: g[0], Y: g[1], Z: g[2]}
	s.force[b.i], s.force[b.j] = r3.Sub(s.force[b.i], f), r3.Add(s.force[b.j], f)
	s.moment[b.i] = r3.Add(s.moment[b.i], r3.Vec{X: g[3], Y: g[4], Z: g[5]})
	s.moment[b.j] = r3.Add(s.moment[b.j], r3.Vec{X: g[6], Y: g[7], Z: g[8]})
}

// scatter adds a member's 9×9 tangent (chord vector, two spins) to the rows of its two nodes.
func (s *system) scatter(ni, nj [6]int, m *square) {
	for r := range 3 {
		for c := range 3 {
			v := m[max(r, c)][min(r, c)]
			if c <= r {
				s.k.add(ni[r], ni[c], v)
				s.k.add(nj[r], nj[c], v)
				s.k.add(ni[3+r], ni[3+c], m[3+r][3+c])
				s.k.add(nj[3+r], nj[3+c], m[6+r][6+c])
			}
			s.k.add(ni[r], nj[c], -v)
			s.k.add(ni[3+r], ni[c], -m[3+r][c])
			s.k.add(ni[3+r], nj[c], m[3+r][c])
			s.k.add(nj[3+r], ni[c], -m[6+r][c])
			s.k.add(nj[3+r], nj[c], m[6+r][c])
			s.k.add(nj[3+r], ni[3+c], m[6+r][3+c])
		}
	}
}

func (s *system) assembleCable(c *cable, q *pose) float64 {
	p := c.pull(q.at)
	if p.rate == 0 {
		return 0
	}
	f := r3.Scale(p.tension, p.e)
	s.force[c.i] = r3.Sub(s.force[c.i], f)
	if c.j != Anchored {
		s.force[c.j] = r3.Add(s.force[c.j], f)
	}
	if s.tangents {
		s.scatterCable(c, &p)
	}
	return p.cost
}

func (s *system) scatterCable(c *cable, p *pulled) {
	ni := s.number[c.i]
	s.addBlock(ni, ni, 1, p)
	if c.j != Anchored {
		nj := s.number[c.j]
		s.addBlock(nj, nj, 1, p)
		s.addBlock(ni, nj, -1, p)
	}
}

// addBlock adds sign times a cable's tangent between two nodes; within one node only the lower triangle.
func (s *system) addBlock(na, nb [6]int, sign float64, p *pulled) {
	for a := range 3 {
		for b := range 3 {
			if na == nb && b > a {
				continue
			}
			s.k.add(na[a], nb[b], sign*p.tangent(a, b))
		}
	}
}

// assembleSpring adds a support spring. The tangent keeps k alone, which is exact for moves and small turns and only
// slows the search otherwise.
func (s *system) assembleSpring(p spring, q *pose) {
	if i := s.number[p.node][p.axis]; s.tangents {
		s.k.add(i, i, p.k)
	}
	force, moment := s.springPush(p, q)
	s.force[p.node] = r3.Sub(s.force[p.node], force)
	s.moment[p.node] = r3.Sub(s.moment[p.node], moment)
}

// springPush is what a support spring does to its node. For turns the moment is −Jᵀ·k·φ with J the derivative of the
// rotation vector φ by a spin: J = 1 − ½[φ] + c[φ]² with c = 1/φ² − (1+cos φ)/(2φ sin φ).
func (s *system) springPush(p spring, q *pose) (force, moment r3.Vec) {
	v := -p.k * s.springMove(p, q)
	if p.axis < 3 {
		return r3.Scale(v, unit(p.axis)), r3.Vec{}
	}
	phi := vector(q.turn[p.node])
	m := r3.Scale(v, unit(p.axis-3))
	once := r3.Cross(phi, m)
	angle := r3.Norm(phi)
	c := 1.0 / 12
	if angle > 1e-3 {
		c = 1/(angle*angle) - (1+math.Cos(angle))/(2*angle*math.Sin(angle))
	}
	return r3.Vec{}, r3.Add(m, r3.Add(r3.Scale(0.5, once), r3.Scale(c, r3.Cross(phi, once))))
}

func (s *system) assembleLoads(q *pose) {
	for k := range s.force {
		s.force[k] = r3.Sub(s.force[k], s.load.force[k])
		s.moment[k] = r3.Sub(s.moment[k], s.load.moment[k])
	}
	for k := range s.load.offset {
		s.assembleOffset(&s.load.offset[k], q)
	}
	for k := range s.load.rider {
		s.assembleRider(&s.load.rider[k], q)
	}
}

// assembleOffset adds −F·(x + R·a): derivative by a spin (F × Ra), second ½(F aᵀ + a Fᵀ) − (F·a)1, both negative.
func (s *system) assembleOffset(o *OffsetLoad, q *pose) {
	a := q.axes[o.Node].of(o.Offset)
	s.force[o.Node] = r3.Sub(s.force[o.Node], o.Force)
	s.moment[o.Node] = r3.Add(s.moment[o.Node], r3.Cross(o.Force, a))
	if !s.tangents {
		return
	}
	fa := r3.Dot(o.Force, a)
	n := s.number[o.Node]
	for i := range 3 {
		for j := 0; j <= i; j++ {
			v := -(component(o.Force, i)*component(a, j) + component(a, i)*component(o.Force, j)) / 2
			if i == j {
				v += fa
			}
			s.k.add(n[3+i], n[3+j], v)
		}
	}
}

func (s *system) assembleRider(r *RiderLoad, q *pose) {
	st := r.ride(q.at)
	for k, f := range r.forces(&st) {
		s.force[r.Nodes[k]] = r3.Sub(s.force[r.Nodes[k]], f)
	}
	if r.Height == 0 || !s.tangents {
		return
	}
	h := r.curvature(&st)
	side, sign := [4]int{0, 3, 0, 3}, [4]float64{1, 1, -1, -1}
	for a := range 4 {
		for b := range 4 {
			for i := range 3 {
				for j := range 3 {
					row, col := s.number[r.Nodes[a]][i], s.number[r.Nodes[b]][j]
					if row >= col {
						s.k.add(row, col, sign[a]*sign[b]*h[side[a]+i][side[b]+j])
					}
				}
			}
		}
	}
}

// imbalance is the largest force, or moment over the mean member length, left on a free direction, and its node.
func (s *system) imbalance() (float64, int) {
	worst, node := 0.0, 0
	for i, u := range s.owner {
		v := math.Abs(s.grad[i])
		if u.axis > 2 {
			v /= s.scale
		}
		if v > worst || math.IsNaN(v) {
			worst, node = v, u.node
		}
		if math.IsNaN(v) {
			return math.Inf(1), node
		}
	}
	return worst, node
}
