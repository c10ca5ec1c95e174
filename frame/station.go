package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// span is a member with its end forces, from which everything between its nodes follows by statics.
type span struct {
	section Section
	at      r3.Vec  // node I
	along   r3.Vec  // from node I to node J
	axes    triad   // own axes
	chord   float64 // m, lever between the ends
	length  float64 // m, unloaded
	force   r3.Vec  // on the member's end I, own axes
	moment  r3.Vec
	w1, w2  r3.Vec // load per unloaded length, own axes
	// slopeY and slopeZ are the end slopes dv/dx that the end moments bend, besides what the load bends.
	slopeY, slopeZ [2]float64
	z, y           plane
	ea             float64
	bent           bool // internal moments are taken about the bent axis instead of the chord
}

// span collects a member at the present pose.
func (s *system) span(k int) span {
	b := &s.beams[k]
	q := s.q
	st := b.strain(q.at[b.i], q.at[b.j], &q.axes[b.i], &q.axes[b.j], &s.free[k])
	return s.spanOf(k, &st, b.presentAxes(q))
}

func (s *system) spanOf(k int, st *strained, axes triad) span {
	b, q := &s.beams[k], s.q
	g := b.gradient(st)
	toI, _ := endShares(b.length, s.load.on[k].AtI, s.load.on[k].AtJ)
	p := span{
		section: s.p.Members[k].Section, at: r3.Add(q.at[b.i], s.origin), along: r3.Sub(q.at[b.j], q.at[b.i]),
		axes: axes, chord: st.chord, length: b.length, bent: true, z: b.z, y: b.y, ea: b.axial * b.length,
		force:  axes.along(r3.Sub(r3.Vec{X: -g[0], Y: -g[1], Z: -g[2]}, toI)),
		moment: axes.along(r3.Vec{X: g[3], Y: g[4], Z: g[5]}),
		w1:     axes.along(s.load.on[k].AtI), w2: axes.along(s.load.on[k].AtJ),
	}
	p.slopeY, p.slopeZ = b.endSlopes(st, &s.free[k])
	return p
}

// endSlopes gives dv/dx at the ends from the end moments' bending alone: the ends' turns less the load's, less the
// shear angle (M_I+M_J)/(GA·L).
func (b *beam) endSlopes(st *strained, free *freeEnds) (y, z [2]float64) {
	mz := product(&b.z.k, [2]float64{st.angle[1] - free.z[0], st.angle[2] - free.z[1]})
	my := product(&b.y.k, [2]float64{st.angle[3] - free.y[0], st.angle[4] - free.y[1]})
	sz, sy := b.z.shearAngle(b.length, mz), b.y.shearAngle(b.length, my)
	for e := range 2 {
		y[e] = st.endZ[e] - free.z[e] - sz
		z[e] = -(st.endY[e] - free.y[e] - sy)
	}
	return y, z
}

func (p *plane) shearAngle(length float64, m [2]float64) float64 {
	if p.ga == 0 {
		return 0
	}
	return (m[0] + m[1]) / (p.ga * length)
}

// station gives the internal forces at a fraction of the length; rounding past an end counts as the end.
func (p *span) station(xi float64) Station {
	if xi > 1 && xi < 1+1e-9 || xi < 0 && xi > -1e-9 {
		xi = math.Abs(math.Round(xi))
	}
	if !(xi >= 0 && xi <= 1) {
		nan := math.NaN()
		return Station{Xi: xi, At: r3.Vec{X: nan, Y: nan, Z: nan}, N: nan, Vy: nan, Vz: nan, T: nan, My: nan, Mz: nan, Stress: nan}
	}
	v := p.deflection(xi)
	along := alike(xi, p.length*p.length/p.ea, p.w1.X, p.w2.X)
	step := r3.Sub(p.w2, p.w1)
	sum := r3.Add(r3.Scale(xi, p.w1), r3.Scale(xi*xi/2, step))
	first := r3.Add(r3.Scale(xi*xi/2, p.w1), r3.Scale(xi*xi*xi/6, step))
	cut := r3.Sub(r3.Scale(-1, p.force), r3.Scale(p.length, sum))
	arm := r3.Vec{X: p.chord}
	moment := r3.Add(r3.Sub(r3.Scale(xi, r3.Cross(arm, p.force)), p.moment), r3.Scale(p.length, r3.Cross(arm, first)))
	if p.bent {
		moment = r3.Sub(moment, r3.Cross(v, cut))
	}
	return Station{
		Xi: xi, At: r3.Add(r3.Add(p.at, r3.Scale(xi, p.along)), p.axes.of(r3.Add(v, r3.Vec{X: along}))),
		N: cut.X, Vy: cut.Y, Vz: cut.Z, T: moment.X, My: moment.Y, Mz: moment.Z,
		Stress: p.section.Stress(cut.X, moment.Y, moment.Z),
	}
}

// deflection is the place of the bent axis against the chord, own axes.
func (p *span) deflection(xi float64) r3.Vec {
	return r3.Vec{
		Y: p.length*cubic(xi, p.slopeY) + p.z.sag(xi, p.length, p.w1.Y, p.w2.Y),
		Z: p.length*cubic(xi, p.slopeZ) + p.y.sag(xi, p.length, p.w1.Z, p.w2.Z),
	}
}

// cubic is the shape with given end slopes and no end deflection.
func cubic(x float64, slope [2]float64) float64 {
	return x * (1 - x) * ((1-x)*slope[0] - x*slope[1])
}

// sag is the deflection of the simply supported member under a load that runs straight from w1 to w2:
// L⁴/EI·[w1·(ξ⁴−2ξ³+ξ)/24 + (w2−w1)·(3ξ⁵−10ξ³+7ξ)/360], and from shear the moment over GA
// (Roark's Formulas for Stress and Strain, Table 8.1, case 2e, from memory).
func (p *plane) sag(x, length, w1, w2 float64) float64 {
	v := 0.0
	if p.ei > 0 {
		l2 := length * length
		v = l2 * l2 / p.ei * (w1*x*(1+x*x*(x-2))/24 + (w2-w1)*x*(7+x*x*(3*x*x-10))/360)
	}
	if p.ga > 0 {
		v += alike(x, length*length/p.ga, w1, w2)
	}
	return v
}

// alike is what a load from w1 to w2 moves between two held ends where the strain goes with the force: the moment of a
// simply supported beam times c = L²/GA for shear, and L²/EA for stretch.
func alike(x, c, w1, w2 float64) float64 {
	return c * (w1*x*(1-x)/2 + (w2-w1)*x*(1-x*x)/6)
}

// worst finds the station of largest normal stress: the best of a row of stations, then closed in on by the golden
// section between its neighbors. The moments are cubic along the member, so that their size has at most three tops. Where the modulus is unknown the size of the moment decides.
func (p *span) worst() Station {
	const parts = 16
	measure := func(xi float64) float64 {
		s := p.station(xi)
		if math.IsNaN(s.Stress) {
			return math.Hypot(s.My, s.Mz)
		}
		return s.Stress
	}
	best := 0
	var value [parts + 1]float64
	for k := range value {
		value[k] = measure(float64(k) / parts)
		if value[k] > value[best] {
			best = k
		}
	}
	at, top := float64(best)/parts, value[best]
	for k := range value {
		// A neighbor may hide the true top between the row's places.
		if value[k] < 0.98*value[best] || k > 0 && value[k-1] > value[k] || k < parts && value[k+1] > value[k] {
			continue
		}
		xi, v := goldenTop(measure, math.Max(0, float64(k-1)/parts), math.Min(1, float64(k+1)/parts))
		if v > top {
			at, top = xi, v
		}
	}
	return p.station(at)
}

// goldenTop closes in on the top of f between two places.
func goldenTop(f func(float64) float64, lo, hi float64) (at, top float64) {
	const cut = 0.6180339887498949
	a, b := hi-cut*(hi-lo), lo+cut*(hi-lo)
	fa, fb := f(a), f(b)
	for range 34 {
		if fa >= fb {
			hi, b, fb = b, a, fa
			a = hi - cut*(hi-lo)
			fa = f(a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + cut*(hi-lo)
			fb = f(b)
		}
	}
	if fa >= fb {
		return a, fa
	}
	return b, fb
}

// Along gives the internal forces of a member at the fraction xi of its length from node I, and the place there. All
// NaN for a member or a place that does not exist.
func (s *State) Along(member int, xi float64) Station { return stationOf(s.spans, member, xi) }

// Worst gives the station of a member where the normal stress ([Section.Stress]) is largest; with an unknown modulus
// the station of the largest bending moment. All NaN for a member that does not exist.
func (s *State) Worst(member int) Station { return worstOf(s.spans, member) }

func stationOf(spans []span, member int, xi float64) Station {
	if member < 0 || member >= len(spans) {
		return (&span{}).station(math.NaN())
	}
	return spans[member].station(xi)
}

func worstOf(spans []span, member int) Station {
	if member < 0 || member >= len(spans) {
		return (&span{}).station(math.NaN())
	}
	return spans[member].worst()
}
