package frame

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// loosePivot is the pivot over its diagonal under which a motion counts as free in a linear analysis.
const loosePivot = 1e-9

// Factored is a problem factorized once for small displacements; it may answer any number of load cases, one at a
// time.
type Factored struct{ m *model }

// Displacement of a node: translation in m and small turn in rad, world axes.
type Displacement struct{ Move, Turn r3.Vec }

// Result is the answer of a linear analysis to one load case.
type Result struct {
	Displacement []Displacement
	Cables       []CableState // a cable is a spring along its line: Tension may be negative
	Reaction     []Reaction

	spans []span
}

// Along gives the internal forces of a member at the fraction xi of its length from node I.
func (r *Result) Along(member int, xi float64) Station { return stationOf(r.spans, member, xi) }

// Worst gives the station of a member where the normal stress is largest.
func (r *Result) Worst(member int) Station { return worstOf(r.spans, member) }

// Linear factorizes the problem for small displacements about the unloaded places. A cable is a spring along its
// line, EA over its unstretched length, and the difference between the length of its line and its unstretched length
// is a lack of fit that it pulls together (or pushes apart). Errors: a plain error for what cannot be computed,
// [*Mechanism] where nothing resists a motion.
func (p *Problem) Linear() (*Factored, error) {
	m, err := newModel(p, nil)
	if err != nil {
		return nil, err
	}
	for k := range m.cables {
		m.cables[k].always = true
	}
	s := newSystem(m, &loading{
		force: make([]r3.Vec, len(m.rest)), moment: make([]r3.Vec, len(m.rest)), loaded: make([]bool, len(m.beams)),
	}, m.straight())
	s.tangents = true
	s.k.clear()
	for k := range m.beams {
		s.assembleBeam(k, s.q)
	}
	for k := range m.cables {
		c := m.cables[k]
		c.slackFree(s.q.at)
		s.assembleCable(&c, s.q)
	}
	for _, sp := range m.springs {
		s.assembleSpring(sp, s.q)
	}
	in := m.k.factor(judge{small: loosePivot})
	if len(in.neutral) > 0 || in.negative > 0 {
		return nil, m.loosest(in)
	}
	return &Factored{m}, nil
}

// straight is the pose in which no member is strained and no support has moved.
func (m *model) straight() *pose {
	q := m.unloaded()
	copy(q.at, m.rest)
	for k := range q.turn {
		q.turn[k].Real, q.turn[k].Imag, q.turn[k].Jmag, q.turn[k].Kmag = 1, 0, 0, 0
		q.axes[k] = columns(q.turn[k])
	}
	return q
}

// slackFree gives the cable its line's length as unstretched length but keeps its rate, so that it carries nothing.
func (c *cable) slackFree(at []r3.Vec) {
	p := c.pull(at)
	c.ea *= p.length / c.natural
	c.natural = p.length
}

// loosest names the first unknown whose pivot vanished.
func (m *model) loosest(in inertia) error {
	first := -1
	if len(in.neutral) > 0 {
		first = in.neutral[0]
	}
	for i, d := range m.k.d {
		if d < 0 && (first < 0 || i < first) {
			first = i
		}
	}
	mech := m.mechanism(first, m.k.ratio(first))
	return &mech
}

// Solve answers one load case. Loads over four nodes and loads on an arm act at their unloaded places.
func (f *Factored) Solve(l Loads) (*Result, error) {
	if err := l.check(f.m.p); err != nil {
		return nil, err
	}
	for _, node := range l.turned() {
		if !f.m.turns[node] {
			return nil, &Mechanism{Node: f.m.p.nodeName(node), Direction: "turns about any axis"}
		}
	}
	g := newLoading(f.m, &l)
	s := &smallMoves{system: newSystem(f.m, g, f.m.straight()), move: make([]Displacement, len(f.m.rest))}
	for _, sup := range f.m.p.Supports {
		s.move[sup.Node] = Displacement{movedMove(sup), movedTurn(sup)}
	}
	s.refresh()
	s.gather()
	step := append([]float64(nil), s.grad...)
	f.m.k.solve(step)
	moves, spins := s.spread(step, -1)
	for k := range s.move {
		s.move[k].Move = r3.Add(s.move[k].Move, moves[k])
		s.move[k].Turn = r3.Add(s.move[k].Turn, spins[k])
	}
	s.gather()
	return s.result(), nil
}

// smallMoves is a loaded model with small displacements of its nodes.
type smallMoves struct {
	*system
	move []Displacement
}

// strain measures a beam under the small displacements: the rows of the unstrained basic system times them.
func (s *smallMoves) strain(k int) (st strained) {
	b := &s.beams[k]
	st = b.strain(s.rest[b.i], s.rest[b.j], &s.q.axes[b.i], &s.q.axes[b.j], &freeEnds{})
	stretch, rows := b.gradients(&st)
	var u row
	u.put(0, r3.Sub(s.move[b.j].Move, s.move[b.i].Move))
	u.put(3, s.move[b.i].Turn)
	u.put(6, s.move[b.j].Turn)
	for a := range st.angle {
		st.angle[a] = rows[a].dot(&u)
	}
	free := &s.free[k]
	z := [2]float64{st.angle[1] - free.z[0], st.angle[2] - free.z[1]}
	y := [2]float64{st.angle[3] - free.y[0], st.angle[4] - free.y[1]}
	mz, my := product(&b.z.k, z), product(&b.y.k, y)
	tz, ty := product(&b.z.t, z), product(&b.y.t, y)
	for e := range 2 {
		st.endZ[e], st.endY[e] = free.z[e]+tz[e], free.y[e]+ty[e]
	}
	st.n = b.axial * stretch.dot(&u)
	st.force = [5]float64{b.twist * st.angle[0], mz[0], mz[1], my[0], my[1]}
	return st
}

func (r *row) dot(o *row) float64 {
	sum := 0.0
	for k := range r {
		sum += r[k] * o[k]
	}
	return sum
}

// gather fills the forces that are out of balance under the present displacements.
func (s *smallMoves) gather() {
	clear(s.force)
	clear(s.moment)
	for k := range s.beams {
		st := s.strain(k)
		_, rows := s.beams[k].gradients(&st)
		g := s.beams[k].combine(&st, &rows)
		s.push(&s.beams[k], &g)
	}
	for k := range s.cables {
		c := &s.cables[k]
		f := s.cable(k).ForceOnI
		s.system.force[c.i] = r3.Sub(s.system.force[c.i], f)
		if c.j != Anchored {
			s.system.force[c.j] = r3.Add(s.system.force[c.j], f)
		}
	}
	for _, p := range s.springs {
		force, moment := s.spring(p)
		s.force[p.node], s.moment[p.node] = r3.Sub(s.force[p.node], force), r3.Sub(s.moment[p.node], moment)
	}
	s.loads()
	s.collect()
}

// loads takes the forces of the loads at the unloaded places.
func (s *smallMoves) loads() {
	for k := range s.force {
		s.force[k], s.moment[k] = r3.Sub(s.force[k], s.load.force[k]), r3.Sub(s.moment[k], s.load.moment[k])
	}
	for _, o := range s.load.offset {
		s.force[o.Node] = r3.Sub(s.force[o.Node], o.Force)
		s.moment[o.Node] = r3.Sub(s.moment[o.Node], r3.Cross(o.Offset, o.Force))
	}
	for k := range s.load.rider {
		r := &s.load.rider[k]
		st := r.ride(s.rest)
		for a, f := range r.forces(&st) {
			s.force[r.Nodes[a]] = r3.Sub(s.force[r.Nodes[a]], f)
		}
	}
}

// cable reports a cable as a spring along its unloaded line.
func (s *smallMoves) cable(k int) CableState {
	c := &s.cables[k]
	p := c.pull(s.rest)
	far := r3.Vec{}
	if c.j != Anchored {
		far = s.move[c.j].Move
	}
	longer := r3.Dot(p.e, r3.Sub(far, s.move[c.i].Move))
	tension := p.tension + p.rate*longer
	return CableState{
		Tension: tension, Length: p.length + longer, Unstretched: c.natural, Slack: tension <= 0,
		ForceOnI: r3.Scale(tension, p.e),
	}
}

func (s *smallMoves) spring(p spring) (force, moment r3.Vec) {
	if p.axis < 3 {
		return r3.Scale(-p.k*component(s.move[p.node].Move, p.axis), unit(p.axis)), r3.Vec{}
	}
	return r3.Vec{}, r3.Scale(-p.k*component(s.move[p.node].Turn, p.axis-3), unit(p.axis-3))
}

func (s *smallMoves) result() *Result {
	r := &Result{Displacement: s.move}
	for k := range s.cables {
		r.Cables = append(r.Cables, s.cable(k))
	}
	r.Reaction = s.reactions(s.spring)
	for k := range s.beams {
		r.spans = append(r.spans, s.span(k))
	}
	return r
}

func (s *smallMoves) span(k int) span {
	b := &s.beams[k]
	st := s.strain(k)
	p := s.spanOf(k, &st, b.axes)
	p.bent = false
	p.at = r3.Add(p.at, s.move[b.i].Move)
	p.along = r3.Add(p.along, r3.Sub(s.move[b.j].Move, s.move[b.i].Move))
	return p
}
