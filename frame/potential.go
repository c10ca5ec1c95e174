package frame

import "gonum.org/v1/gonum/spatial/r3"

// loading is a load case brought onto a model.
type loading struct {
	force   []r3.Vec // on each node, with the shares of the members' loads taken on their chords
	moment  []r3.Vec
	offset  []OffsetLoad
	rider   []RiderLoad
	ridden  []r3.Vec     // the riders' unloaded places
	on      []MemberLoad // per member, summed
	loaded  []bool
	total   float64 // N, the sum of the forces' sizes
	turning bool    // some moment keeps its direction
}

// newLoading takes checked loads.
func newLoading(m *model, l *Loads) *loading {
	n := len(m.rest)
	g := &loading{
		force: make([]r3.Vec, n), moment: make([]r3.Vec, n), offset: l.Offset, rider: l.Rider,
		on: make([]MemberLoad, len(m.beams)), loaded: make([]bool, len(m.beams)),
	}
	for _, f := range l.Nodal {
		g.force[f.Node] = r3.Add(g.force[f.Node], f.Force)
		g.moment[f.Node] = r3.Add(g.moment[f.Node], f.Moment)
		g.total += r3.Norm(f.Force) + r3.Norm(f.Moment)/m.scale
	}
	for _, f := range l.Member {
		g.addMember(m, f)
	}
	for _, f := range l.Offset {
		g.total += r3.Norm(f.Force)
	}
	for _, f := range l.Rider {
		g.total += r3.Norm(f.Force)
		g.ridden = append(g.ridden, f.ride(m.start).at)
	}
	for _, f := range l.Nodal {
		g.turning = g.turning || r3.Norm(f.Moment) > 1e-9*g.total*m.scale
	}
	return g
}

// addMember shares the load of a member to its nodes as if it were simply supported on its chord: L(2w1+w2)/6 and
// L(w1+2w2)/6.
func (g *loading) addMember(m *model, f MemberLoad) {
	b, on := &m.beams[f.Member], &g.on[f.Member]
	on.AtI, on.AtJ = r3.Add(on.AtI, f.AtI), r3.Add(on.AtJ, f.AtJ)
	g.loaded[f.Member] = true
	toI, toJ := endShares(b.length, f.AtI, f.AtJ)
	g.force[b.i], g.force[b.j] = r3.Add(g.force[b.i], toI), r3.Add(g.force[b.j], toJ)
	g.total += r3.Norm(toI) + r3.Norm(toJ)
}

func endShares(length float64, w1, w2 r3.Vec) (toI, toJ r3.Vec) {
	c := length / 6
	return r3.Scale(c, r3.Add(r3.Scale(2, w1), w2)), r3.Scale(c, r3.Add(w1, r3.Scale(2, w2)))
}

// freeEnds gives the free end turns of a member under its load, seen in its present axes.
func (g *loading) freeEnds(k int, b *beam, axes *triad) (f freeEnds) {
	if !g.loaded[k] {
		return f
	}
	w1, w2 := axes.along(g.on[k].AtI), axes.along(g.on[k].AtJ)
	f.z = b.z.freeTurns(b.length, w1.Y, w2.Y)
	y := b.y.freeTurns(b.length, w1.Z, w2.Z) // a turn about y is the slope's opposite
	f.y = [2]float64{-y[0], -y[1]}
	return f
}

// presentAxes are the own axes of a member in a pose: x on the chord, y from the mean of what its ends carry.
func (b *beam) presentAxes(q *pose) triad {
	d := r3.Sub(q.at[b.j], q.at[b.i])
	x := r3.Scale(1/norm(d), d)
	var y r3.Vec
	for _, end := range []struct {
		node  int
		loose bool
	}{{b.i, b.freeI[0]}, {b.j, b.freeJ[0]}} {
		if !end.loose || b.freeI[0] && b.freeJ[0] {
			y = r3.Add(y, q.axes[end.node].of(b.axes[1]))
		}
	}
	y = r3.Sub(y, r3.Scale(r3.Dot(y, x), x))
	n := norm(y)
	if n < 1e-6 {
		return ownAxes(x, r3.Vec{})
	}
	y = r3.Scale(1/n, y)
	return triad{x, y, r3.Cross(x, y)}
}

// riding is a rider's place with what its first and second derivatives need.
type riding struct {
	u, v, n r3.Vec
	c       float64 // |u×v|
	at      r3.Vec
}

func (r *RiderLoad) ride(at []r3.Vec) (s riding) {
	var p [4]r3.Vec
	for k, node := range r.Nodes {
		p[k] = at[node]
		s.at = r3.Add(s.at, r3.Scale(r.Share[k], p[k]))
	}
	s.u, s.v = r3.Sub(p[0], p[2]), r3.Sub(p[1], p[3])
	c := r3.Cross(s.u, s.v)
	s.c = norm(c)
	if s.c > 0 {
		s.n = r3.Scale(1/s.c, c)
	}
	s.at = r3.Add(s.at, r3.Scale(r.Height, s.n))
	return s
}

// forces gives the force on each node: share·F plus the gradient of height·n·F. With q = height·(F − (F·n)n)/|u×v|
// the gradient by u is v×q and by v is q×u.
func (r *RiderLoad) forces(s *riding) (f [4]r3.Vec) {
	for k, share := range r.Share {
		f[k] = r3.Scale(share, r.Force)
	}
	q := r.across(s)
	byU, byV := r3.Cross(s.v, q), r3.Cross(q, s.u)
	f[0], f[2] = r3.Add(f[0], byU), r3.Sub(f[2], byU)
	f[1], f[3] = r3.Add(f[1], byV), r3.Sub(f[3], byV)
	return f
}

func (r *RiderLoad) across(s *riding) r3.Vec {
	return r3.Scale(r.Height/s.c, r3.Sub(r.Force, r3.Scale(r3.Dot(r.Force, s.n), s.n)))
}

// curvature gives the second derivatives of −height·n·F by (u, v), 6×6.
func (r *RiderLoad) curvature(s *riding) (h [6][6]float64) {
	q := r.across(s)
	fn := r.Height * r3.Dot(r.Force, s.n)
	var rows [6]r3.Vec // of ∂(u×v)
	for k := range 3 {
		axis := unit(k)
		rows[k], rows[3+k] = r3.Cross(axis, s.v), r3.Cross(s.u, axis)
	}
	for i := range 6 {
		in, iq := r3.Dot(rows[i], s.n), r3.Dot(rows[i], q)
		for j := range 6 {
			jn, jq := r3.Dot(rows[j], s.n), r3.Dot(rows[j], q)
			flat := r3.Dot(rows[i], rows[j]) - in*jn
			h[i][j] = (iq*jn+in*jq)/s.c + fn*flat/(s.c*s.c)
		}
	}
	for i := range 3 {
		for j := range 3 {
			mixed := r3.Dot(q, r3.Cross(unit(i), unit(j))) // q·(δu×δv)
			h[i][3+j] -= mixed
			h[3+j][i] -= mixed
		}
	}
	return h
}

func unit(k int) r3.Vec {
	switch k {
	case 0:
		return r3.Vec{X: 1}
	case 1:
		return r3.Vec{Y: 1}
	}
	return r3.Vec{Z: 1}
}
