package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// strained is a beam in a deformed place: its basic deformations, what they cost and how they change.
//
// With the unit chord e and the axes t carried by the end nodes, the turns against the chord are
// sin θz = −e·ty and sin θy = e·tz at each end, and the twist is sin φ = ½(tzI·tyJ − tyI·tzJ). All are invariant
// under a common turn of the two nodes, so that whatever they do balances itself on the chord.
type strained struct {
	chord  float64
	e      r3.Vec
	ti, tj triad

	sine  [5]float64 // of twist, zI, zJ, yI, yJ
	angle [5]float64 // the angles themselves
	endZ  [2]float64 // turns of the member's own ends, as slopes dv/dx in x–y
	endY  [2]float64 // about own y
	n     float64    // axial force
	force [5]float64 // energy's derivative by each angle
	bow   [4]float64 // derivative of the bow's shortening by zI, zJ, yI, yJ
	cost  float64    // J
	ok    bool       // false where a deformation is so large that the measures lose their meaning
}

// Bounds of the basic deformations: beyond them a member is bent or twisted by more than about 70° between its two
// nodes, and a trial step is refused.
const (
	largestSine    = 0.95
	smallestCosine = 0.2
)

// strain measures a beam between two placed nodes. free holds its free end turns about z and y.
func (b *beam) strain(xi, xj r3.Vec, ri, rj *triad, free *freeEnds) (s strained) {
	d := r3.Sub(xj, xi)
	s.chord = norm(d)
	if !(s.chord > 0) {
		return s
	}
	s.e = r3.Scale(1/s.chord, d)
	for k := range 3 {
		s.ti[k], s.tj[k] = ri.of(b.axes[k]), rj.of(b.axes[k])
	}
	s.ok = b.measure(&s)
	if !s.ok {
		return s
	}
	for k, v := range s.sine {
		s.angle[k] = math.Asin(v)
	}
	b.respond(&s, free)
	return s
}

func (b *beam) measure(s *strained) bool {
	if b.twist > 0 {
		w := b.shareI
		s.sine[0] = (w*r3.Dot(s.ti[2], s.tj[1]) - (2-w)*r3.Dot(s.ti[1], s.tj[2])) / 2
		if w*r3.Dot(s.ti[2], s.tj[2])+(2-w)*r3.Dot(s.ti[1], s.tj[1]) < 2*smallestCosine {
			return false
		}
	}
	if b.z.stiff {
		s.sine[1], s.sine[2] = used(-r3.Dot(s.e, s.ti[1]), b.freeI[2]), used(-r3.Dot(s.e, s.tj[1]), b.freeJ[2])
	}
	if b.y.stiff {
		s.sine[3], s.sine[4] = used(r3.Dot(s.e, s.ti[2]), b.freeI[1]), used(r3.Dot(s.e, s.tj[2]), b.freeJ[1])
	}
	if !b.freeI[1] && !b.freeI[2] && r3.Dot(s.e, s.ti[0]) < smallestCosine {
		return false
	}
	if !b.freeJ[1] && !b.freeJ[2] && r3.Dot(s.e, s.tj[0]) < smallestCosine {
		return false
	}
	for _, v := range s.sine {
		if !(math.Abs(v) < largestSine) {
			return false
		}
	}
	return true
}

// used drops the turn of a released end, which costs nothing and may be of any size.
func used(v float64, released bool) float64 {
	if released {
		return 0
	}
	return v
}

// respond fills in forces and energy: ½·EA/L·(u + L·bow)² + ½φ²·GJ/L + ½(θ−θ0)ᵀk(θ−θ0) per plane.
// The chord of a beam with end turns θ is shorter than its axis by L/30·(2θI² − θIθJ + 2θJ²), the integral of half
// the slope squared of the cubic.
func (b *beam) respond(s *strained, free *freeEnds) {
	z := [2]float64{s.angle[1] - free.z[0], s.angle[2] - free.z[1]}
	y := [2]float64{s.angle[3] - free.y[0], s.angle[4] - free.y[1]}
	mz, my := product(&b.z.k, z), product(&b.y.k, y)
	tz, ty := product(&b.z.t, z), product(&b.y.t, y)
	s.endZ = [2]float64{free.z[0] + tz[0], free.z[1] + tz[1]}
	s.endY = [2]float64{free.y[0] + ty[0], free.y[1] + ty[1]}
	gz, gy := bowed(s.endZ), bowed(s.endY)
	short := (s.endZ[0]*gz[0] + s.endZ[1]*gz[1] + s.endY[0]*gy[0] + s.endY[1]*gy[1]) / 2
	stretch := s.chord - b.length + b.length*short
	s.n = b.axial * stretch
	bz, by := transposed(&b.z.t, gz), transposed(&b.y.t, gy)
	s.bow = [4]float64{b.length * bz[0], b.length * bz[1], b.length * by[0], b.length * by[1]}
	s.force = [5]float64{
		b.twist * s.angle[0],
		mz[0] + s.n*s.bow[0], mz[1] + s.n*s.bow[1],
		my[0] + s.n*s.bow[2], my[1] + s.n*s.bow[3],
	}
	s.cost = (s.n*stretch + b.twist*s.angle[0]*s.angle[0] + z[0]*mz[0] + z[1]*mz[1] + y[0]*my[0] + y[1]*my[1]) / 2
}

// bowed is the gradient of (2a² − ab + 2b²)/30.
func bowed(t [2]float64) [2]float64 {
	return [2]float64{(4*t[0] - t[1]) / 30, (4*t[1] - t[0]) / 30}
}

func product(k *[2][2]float64, v [2]float64) [2]float64 {
	return [2]float64{k[0][0]*v[0] + k[0][1]*v[1], k[1][0]*v[0] + k[1][1]*v[1]}
}

func transposed(k *[2][2]float64, v [2]float64) [2]float64 {
	return [2]float64{k[0][0]*v[0] + k[1][0]*v[1], k[0][1]*v[0] + k[1][1]*v[1]}
}

// freeEnds are the end turns that a simply supported member would take under its own load.
type freeEnds struct{ z, y [2]float64 }

// row is a gradient by the chord vector X_J−X_I and by the spins of the two nodes.
type row [9]float64

func (r *row) put(at int, v r3.Vec) { r[at], r[at+1], r[at+2] = v.X, v.Y, v.Z }

func (r *row) addScaled(f float64, o *row) {
	for k := range r {
		r[k] += f * o[k]
	}
}

// gradients gives the rows of the stretch with the bow, and of the five angles.
func (b *beam) gradients(s *strained) (stretch row, angles [5]row) {
	stretch.put(0, s.e)
	if b.twist > 0 {
		w := b.shareI
		g := r3.Sub(r3.Scale(w/2, r3.Cross(s.ti[2], s.tj[1])), r3.Scale(1-w/2, r3.Cross(s.ti[1], s.tj[2])))
		g = r3.Scale(slope(s.sine[0]), g)
		angles[0].put(3, g)
		angles[0].put(6, r3.Scale(-1, g))
	}
	s.against(&angles[1], s.ti[1], -slope(s.sine[1]), 3, b.z.stiff && !b.freeI[2])
	s.against(&angles[2], s.tj[1], -slope(s.sine[2]), 6, b.z.stiff && !b.freeJ[2])
	s.against(&angles[3], s.ti[2], slope(s.sine[3]), 3, b.y.stiff && !b.freeI[1])
	s.against(&angles[4], s.tj[2], slope(s.sine[4]), 6, b.y.stiff && !b.freeJ[1])
	for k := range 4 {
		if s.bow[k] != 0 {
			stretch.addScaled(s.bow[k], &angles[k+1])
		}
	}
	return stretch, angles
}

// against writes f times the gradient of e·t, where t turns with the node whose spin stands at column at.
func (s *strained) against(r *row, t r3.Vec, f float64, at int, in bool) {
	if !in {
		return
	}
	across := r3.Sub(t, r3.Scale(r3.Dot(s.e, t), s.e))
	r.put(0, r3.Scale(f/s.chord, across))
	r.put(at, r3.Scale(f, r3.Cross(t, s.e)))
}

// slope is the derivative of the arc sine.
func slope(sine float64) float64 { return 1 / math.Sqrt(1-sine*sine) }

// gradient is the energy's derivative.
func (b *beam) gradient(s *strained) row {
	_, angles := b.gradients(s)
	return b.combine(s, &angles)
}

func (b *beam) combine(s *strained, angles *[5]row) (g row) {
	g.put(0, r3.Scale(s.n, s.e))
	for k := range angles {
		if s.force[k] != 0 {
			g.addScaled(s.force[k], &angles[k])
		}
	}
	return g
}

// square is a symmetric 9×9 matrix; only entries with column ≤ row are kept.
type square [9][9]float64

// outer adds f·(u vᵀ + v uᵀ)/2 for u ≠ v, f·u uᵀ for u = v.
func (m *square) outer(f float64, u, v *row) {
	if f == 0 {
		return
	}
	for i := range 9 {
		ui, vi := f/2*u[i], f/2*v[i]
		for j := 0; j <= i; j++ {
			m[i][j] += ui*v[j] + vi*u[j]
		}
	}
}

// tangent gives the gradient and the second derivative of the energy under X+δ, exp(spin)·R.
func (b *beam) tangent(s *strained, m *square) row {
	*m = square{}
	stretch, angles := b.gradients(s)
	m.outer(b.axial, &stretch, &stretch)
	m.outer(b.twist, &angles[0], &angles[0])
	b.bending(s, &b.z, &angles[1], &angles[2], m)
	b.bending(s, &b.y, &angles[3], &angles[4], m)
	b.curvature(s, &angles, m)
	return b.combine(s, &angles)
}

// bending adds k plus what the thrust adds through the bow: N·L·tᵀGt with G = [4 −1; −1 4]/30.
func (b *beam) bending(s *strained, p *plane, i, j *row, m *square) {
	if !p.stiff {
		return
	}
	c0 := transposed(&p.t, bowed([2]float64{p.t[0][0], p.t[1][0]}))
	c1 := transposed(&p.t, bowed([2]float64{p.t[0][1], p.t[1][1]}))
	nl := s.n * b.length
	m.outer(p.k[0][0]+nl*c0[0], i, i)
	m.outer(p.k[1][1]+nl*c1[1], j, j)
	m.outer(2*(p.k[0][1]+nl*c0[1]), i, j)
}

// curvature adds the forces times the second derivatives of the measures.
func (b *beam) curvature(s *strained, angles *[5]row, m *square) {
	var f [5]float64 // force per sine
	for k, v := range s.sine {
		g := slope(v)
		f[k] = s.force[k] * g
		// d²(asin s) = s/(1−s²)^1.5 ds², and the angle's row holds ds/√(1−s²).
		m.outer(s.force[k]*v*g, &angles[k], &angles[k])
	}
	ti := r3.Add(r3.Scale(-f[1], s.ti[1]), r3.Scale(f[3], s.ti[2]))
	tj := r3.Add(r3.Scale(-f[2], s.tj[1]), r3.Scale(f[4], s.tj[2]))
	s.chordBlock(r3.Add(ti, tj), m)
	s.spinBlock(ti, 3, m)
	s.spinBlock(tj, 6, m)
	if f[0] != 0 {
		s.twistBlock(f[0], b.shareI, m)
	}
}

// chordBlock adds N·P/l − [Pt eᵀ + e (Pt)ᵀ + (e·t)P]/l², the second derivatives by the chord of N·l and of e·t.
func (s *strained) chordBlock(t r3.Vec, m *square) {
	et := r3.Dot(s.e, t)
	pt := r3.Sub(t, r3.Scale(et, s.e))
	c := s.n/s.chord - et/(s.chord*s.chord)
	q := -1 / (s.chord * s.chord)
	for i := range 3 {
		ei, pi := component(s.e, i), component(pt, i)
		for j := 0; j <= i; j++ {
			ej, pj := component(s.e, j), component(pt, j)
			m[i][j] += q*(pi*ej+ei*pj) - c*ei*ej
		}
		m[i][i] += c
	}
}

// spinBlock adds the second derivatives of e·t by the spin that turns t, and by spin and chord.
func (s *strained) spinBlock(t r3.Vec, at int, m *square) {
	et := r3.Dot(s.e, t)
	for i := range 3 {
		ei, ti := component(s.e, i), component(t, i)
		for j := 0; j <= i; j++ {
			m[at+i][at+j] += (ei*component(t, j) + ti*component(s.e, j)) / 2
		}
		m[at+i][at+i] -= et
	}
	// (P δ)·(θ × t)/l = θ·(t × Pδ)/l
	for j := range 3 {
		axis := r3.Vec{}
		switch j {
		case 0:
			axis.X = 1
		case 1:
			axis.Y = 1
		default:
			axis.Z = 1
		}
		across := r3.Sub(axis, r3.Scale(component(s.e, j), s.e))
		c := r3.Scale(1/s.chord, r3.Cross(t, across))
		m[at][j] += c.X
		m[at+1][j] += c.Y
		m[at+2][j] += c.Z
	}
}

// twistBlock adds f times the second derivatives of ½(w·tzI·tyJ − (2−w)·tyI·tzJ).
func (s *strained) twistBlock(f, w float64, m *square) {
	s.pairBlock(f*w/2, s.ti[2], s.tj[1], m)
	s.pairBlock(-f*(2-w)/2, s.ti[1], s.tj[2], m)
}

// pairBlock adds f times the second derivatives of a·b, where a turns with the first node and b with the second.
func (s *strained) pairBlock(f float64, a, b r3.Vec, m *square) {
	ab := r3.Dot(a, b)
	for i := range 3 {
		ai, bi := component(a, i), component(b, i)
		for j := 0; j <= i; j++ {
			v := f * (ai*component(b, j) + bi*component(a, j)) / 2
			m[3+i][3+j] += v
			m[6+i][6+j] += v
		}
		m[3+i][3+i] -= f * ab
		m[6+i][6+i] -= f * ab
		// Row: second node's spin, column: first node's. θIᵀ[(a·b)1 − b aᵀ]θJ.
		for j := range 3 {
			m[6+i][3+j] -= f * ai * component(b, j)
		}
		m[6+i][3+i] += f * ab
	}
}
