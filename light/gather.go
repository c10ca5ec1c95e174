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
	w.u.fill(g.sheet.lineU, a, c, low[0], high[0])
	w.v.fill(g.sheet.lineV, b, c, low[1], high[1])
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
	w.interpolate(k.glow)
	n := len(w.u.at)
	row := w.mixed[:n]
	var plain, alongU, alongV, solid float64
	for j, y := range w.v.at {
		w.blend(j, n, row)
		dy := y - k.b
		off := dy*dy + k.c*k.c
		rowPlain, rowU, rowSolid := 0.0, 0.0, 0.0
		for i, x := range w.u.at[:len(row)] {
			dx := x - k.a
			r2 := dx*dx + off
			q := row[i] / (r2 * r2)
			rowPlain += q
			rowU += q * dx
			if scalar {
				rowSolid += q * math.Sqrt(r2)
			}
		}
		wv := w.v.share[j]
		plain += wv * rowPlain
		alongU += wv * rowU
		alongV += wv * dy * rowPlain
		solid += wv * rowSolid
	}
	scale := share * k.c / math.Pi
	return flow{k.glow.back(scale*alongU, scale*alongV, -scale*k.c*plain), scale * solid}
}

// weighed adds up the rectangle with the receptor's own response everywhere.
func (k *kernel) weighed(w *sight) float64 {
	sx, sy, share := k.slopes()
	w.u.fade(k.a, k.c, sx)
	w.v.fade(k.b, k.c, sy)
	w.interpolate(k.glow)
	n := len(w.u.at)
	row := w.mixed[:n]
	sum := 0.0
	for j, y := range w.v.at {
		w.blend(j, n, row)
		for i, x := range w.u.at {
			sum += w.v.share[j] * row[i] * k.response(x, y)
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

// interpolate brings the sheet's rows to the span along u, share included.
func (w *sight) interpolate(g *glow) {
	n, stored := len(w.u.at), len(g.sheet.nodeU)
	rows := len(g.sheet.nodeV)
	if cap(w.rows) < n*rows {
		w.rows = make([]float64, n*rows)
	}
	w.rows = w.rows[:n*rows]
	if cap(w.mixed) < n {
		w.mixed = make([]float64, n)
	}
	if len(w.v.at) == 0 {
		return
	}
	first, last := w.v.panel[0], w.v.panel[0]
	for _, p := range w.v.panel {
		first, last = min(first, p), max(last, p)
	}
	for j := first * order; j < (last+1)*order; j++ {
		from, to := g.value[j*stored:][:stored], w.rows[j*n:][:n]
		for i := range to {
			b, p := &w.u.basis[i], w.u.panel[i]*order
			to[i] = w.u.share[i] * (b[0]*from[p] + b[1]*from[p+1] + b[2]*from[p+2])
		}
	}
}

// blend is the row of values, share included, at the span's jth place along v.
func (w *sight) blend(j, n int, row []float64) {
	b, p := &w.v.basis[j], w.v.panel[j]*order
	r0, r1, r2 := w.rows[p*n:][:n], w.rows[(p+1)*n:][:n], w.rows[(p+2)*n:][:n]
	for i := range row {
		row[i] = b[0]*r0[i] + b[1]*r1[i] + b[2]*r2[i]
	}
}
