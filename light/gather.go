package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// glow is a sheet in space that sends light: one face of the box or the lowest
// cloth's under side.
type glow struct {
	sheet         *sheet
	value         []float64 // exitance at the sheet's points, lm/m2
	u, v, normal  int       // its axes
	level, toward float64
	chamber       int
	subject       subject
	walls         *cellWalls // a crate's walls instead of a Lambertian face
}

// local is a point in a glow's own axes: along u, along v, and off its face.
func (g *glow) local(p r3.Vec) (a, b, c float64) {
	x := components(p)
	return x[g.u], x[g.v], (x[g.normal] - g.level) * g.toward
}

// back takes a vector in the glow's axes to box axes.
func (g *glow) back(u, v, n float64) r3.Vec {
	var x [3]float64
	x[g.u], x[g.v], x[g.normal] = u, v, n*g.toward
	return r3.Vec{X: x[0], Y: x[1], Z: x[2]}
}

// flow is light that arrives: the light vector, and the mean over all
// directions times 4 (luminance times solid angle), lx.
type flow struct {
	vector r3.Vec
	scalar float64
}

// seen is what a station gets of a glow, lx.
func (e *Engine) seen(w *sight, g *glow, from station, m meter) float64 {
	_, _, c := g.local(from.at)
	if c <= 0 {
		return 0
	}
	w.cut.Reset()
	what := g.subject
	if what.polygon = m.horizon(w, what.polygon, from.at); what.polygon == nil {
		return 0
	}
	sum := 0.0
	if from.inside || from.at.Z < 0 {
		pieces, v := e.through(w, from, &what, g.chamber, false)
		v.crated = from.at.Z < 0 && e.scene.Crate != nil && g.walls == nil
		for _, p := range pieces {
			sum += v.factor * e.glowing(w, g, p, from.at, m, v.crated)
		}
	}
	if !from.inside && g.chamber < len(e.planes) && e.leaky(from.at) {
		for _, p := range e.around(w, from.at, &what) {
			sum += e.glowing(w, g, p, from.at, m, false)
		}
	}
	return sum
}

// leaky tells whether the inside of the box can be seen otherwise than through
// its cloth plane.
func (e *Engine) leaky(eye r3.Vec) bool {
	for _, s := range e.scene.Sides {
		if !s.Present {
			return true
		}
	}
	return e.scene.Roof.Open && eye.Z > e.scene.Depth
}

// glowing is what a visible convex piece of a glow gives, lx.
func (e *Engine) glowing(w *sight, g *glow, p shape.Polygon, eye r3.Vec, m meter, crated bool) float64 {
	a, b, c := g.local(eye)
	low, high, upright := g.bounds(p)
	k := kernel{a: a, b: b, c: c, glow: g, meter: m}
	if crated {
		k.crate = e.scene.Crate
		if g.normal != 2 {
			return e.crated(w, &k, p, eye)
		}
		rx, ry := k.crate.CellX/k.crate.Depth*c, k.crate.CellY/k.crate.Depth*c
		low = [2]float64{math.Max(low[0], a-rx), math.Max(low[1], b-ry)}
		high = [2]float64{math.Min(high[0], a+rx), math.Min(high[1], b+ry)}
		if low[0] >= high[0] || low[1] >= high[1] {
			return 0
		}
	}
	w.u.fill(g.sheet.lineU, a, c, low[0], high[0], crated)
	w.v.fill(g.sheet.lineV, b, c, low[1], high[1], crated)
	if !upright {
		return e.rowByRow(w, &k, p)
	}
	if m.receptor == Cylinder || g.walls != nil {
		return k.weighed(w)
	}
	f := k.tensor(w, m.receptor != Flat)
	return m.of(f)
}

// of is the response to light that lies wholly before the horizon.
func (m meter) of(f flow) float64 {
	switch m.receptor {
	case Flat:
		return r3.Dot(f.vector, m.faces)
	case Dome:
		return (f.scalar + r3.Dot(f.vector, m.faces)) / 2
	}
	return f.scalar / 4
}

// bounds of a piece in the glow's axes, and whether it is an upright rectangle.
func (g *glow) bounds(p shape.Polygon) (low, high [2]float64, upright bool) {
	low, high = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, corner := range p {
		u, v, _ := g.local(corner)
		low = [2]float64{math.Min(low[0], u), math.Min(low[1], v)}
		high = [2]float64{math.Max(high[0], u), math.Max(high[1], v)}
	}
	whole := (high[0] - low[0]) * (high[1] - low[1])
	return low, high, math.Abs(p.Area()-whole) <= 1e-12*whole
}

// kernel is one receiver before one glow, in the glow's axes.
type kernel struct {
	a, b, c float64
	glow    *glow
	meter   meter
	crate   *Crate
}

// slopes are the crate's depth over its cells; 0 without one.
func (k *kernel) slopes() (x, y, share float64) {
	if k.crate == nil {
		return 0, 0, 1
	}
	return k.crate.Depth / k.crate.CellX, k.crate.Depth / k.crate.CellY, k.crate.openShare()
}

// fade multiplies the shares along one axis by the crate's factor for it.
func (s *span) fade(foot, height, slope float64) {
	if slope == 0 {
		return
	}
	for i, x := range s.at {
		s.share[i] *= math.Max(0, 1-slope*math.Abs(x-foot)/height)
	}
}

// tensor adds up the rectangle of both spans: luminance times c/r^4 (x-a, y-b,
// -c) dA for the vector, and c/r^3 dA for the scalar where it is asked for.
func (k *kernel) tensor(w *sight, scalar bool) flow {
	sx, sy, share := k.slopes()
	w.u.fade(k.a, k.c, sx)
	w.v.fade(k.b, k.c, sy)
	var plain, alongU, alongV, solid float64
	for j, y := range w.v.at {
		dy := y - k.b
		off := dy*dy + k.c*k.c
		from := w.rowAt(k.glow, j)
		var row sums
		for _, r := range w.u.runs {
			at, share, value := w.u.at[r.from:r.to], w.u.share[r.from:r.to], w.values(from, r)
			row.add(at, share, value, k.a, off)
			if scalar {
				row.solid += rowSolid(at, share, value, k.a, off)
			}
		}
		wv := w.v.share[j]
		plain += wv * row.plain
		alongU += wv * row.along
		alongV += wv * dy * row.plain
		solid += wv * row.solid
	}
	scale := share * k.c / math.Pi
	return flow{k.glow.back(scale*alongU, scale*alongV, -scale*k.c*plain), scale * solid}
}

// sums are of value/r^4 over a row, of that times the way along it, and of value/r^3.
type sums struct{ plain, along, solid float64 }

// add adds a part of a row with values at places, each with its share, for a receiver
// over a; off is the square of its distance from the row's line. Most of a plan's time
// is here; odd and even points are added up apart, so that a sum need not wait for the
// one before.
func (to *sums) add(at, share, value []float64, a, off float64) {
	share, value = share[:len(at)], value[:len(at)]
	var even, evenAlong, odd, oddAlong float64
	i := 0
	for ; i+1 < len(at); i += 2 {
		dx, ex := at[i]-a, at[i+1]-a
		r, s := dx*dx+off, ex*ex+off
		p, q := share[i]*value[i]/(r*r), share[i+1]*value[i+1]/(s*s)
		even += p
		evenAlong += p * dx
		odd += q
		oddAlong += q * ex
	}
	if i < len(at) {
		dx := at[i] - a
		r := dx*dx + off
		p := share[i] * value[i] / (r * r)
		even += p
		evenAlong += p * dx
	}
	to.plain += even + odd
	to.along += evenAlong + oddAlong
}

// rowSolid adds up value/r^3 over a part of a row.
func rowSolid(at, share, value []float64, a, off float64) float64 {
	share, value = share[:len(at)], value[:len(at)]
	sum := 0.0
	for i, x := range at {
		dx := x - a
		r2 := dx*dx + off
		sum += share[i] * value[i] / (r2 * math.Sqrt(r2))
	}
	return sum
}

// weighed adds up the rectangle with the receptor's own response everywhere.
func (k *kernel) weighed(w *sight) float64 {
	sx, sy, share := k.slopes()
	w.u.fade(k.a, k.c, sx)
	w.v.fade(k.b, k.c, sy)
	sum := 0.0
	for j, y := range w.v.at {
		from := w.rowAt(k.glow, j)
		for _, r := range w.u.runs {
			for i, value := range w.values(from, r) {
				sum += w.v.share[j] * w.u.share[r.from+i] * value * k.response(w.u.at[r.from+i], y)
			}
		}
	}
	return sum * share
}

// response is the receptor's to a unit of exitance times area at a place.
func (k *kernel) response(x, y float64) float64 {
	dx, dy := x-k.a, y-k.b
	r2 := dx*dx + dy*dy + k.c*k.c
	r := math.Sqrt(r2)
	d := k.glow.back(dx/r, dy/r, -k.c/r)
	sent := k.c / (r2 * r) / math.Pi
	if k.glow.walls != nil {
		sent *= k.glow.walls.glows(math.Abs(dx)/k.c, math.Abs(dy)/k.c)
	}
	return sent * k.meter.weigh(d)
}

// rowAt is the sheet's values, at its own places along u, at the span's jth place along
// v; valid until the next one.
func (w *sight) rowAt(g *glow, j int) []float64 {
	stored := len(g.sheet.nodeU)
	from := g.value[w.v.panel[j]*order*stored:]
	for _, r := range w.v.runs {
		if j < r.to {
			if r.own {
				return from[(j-r.from)%order*stored:][:stored]
			}
			break
		}
	}
	if cap(w.blend) < stored {
		w.blend = make([]float64, stored)
	}
	b, to := &w.v.basis[j], w.blend[:stored]
	r0, r1, r2 := from[:stored], from[stored:][:stored], from[2*stored:][:stored]
	for i := range to {
		to[i] = b[0]*r0[i] + b[1]*r1[i] + b[2]*r2[i]
	}
	return to
}

// values are those of a row at a run of the span's places along u: the row's own, or
// its polynomials there; valid until the next ones.
func (w *sight) values(row []float64, r run) []float64 {
	n := r.to - r.from
	if r.own {
		return row[w.u.panel[r.from]*order:][:n]
	}
	if cap(w.mixed) < n {
		w.mixed = make([]float64, n)
	}
	to := w.mixed[:n]
	for i := range to {
		b, v := &w.u.basis[r.from+i], row[w.u.panel[r.from+i]*order:][:order:order]
		to[i] = b[0]*v[0] + b[1]*v[1] + b[2]*v[2]
	}
	return to
}
