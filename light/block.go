package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// Lamps, ribs and tubes inside the box stand in the way of the exchange, and
// are taken as black. From a patch each of their faces covers a part of the
// view whose form factor is exact (edge formula); that much is taken from the
// patches which are seen behind it, piece by piece.

// block takes from every patch's row what stands between, and keeps it apart.
func (e *Engine) block(x *exchange) {
	x.behind = make([][]covering, e.patchCount)
	inside := e.insiders()
	if len(inside) == 0 {
		return
	}
	w := new(sight)
	for i := range e.faces {
		f := &e.faces[i]
		if len(e.faces) <= 2 {
			return // no sides: nothing to exchange with
		}
		for k := range f.patches() {
			x.behind[f.first+k] = e.coverings(w, f, k, inside)
			row := x.factor[(f.first+k)*e.patchCount:][:e.patchCount]
			for _, c := range x.behind[f.first+k] {
				row[c.patch] -= c.share
			}
		}
	}
}

// covering is a part of a patch's view that is hidden: which patch stands
// behind it, and the form factor that it takes.
type covering struct {
	patch int
	share float64
}

// insiders are the occluders that reach into the box. A lamp with a body counts
// with the body only, whose front is the opening's plane.
func (e *Engine) insiders() []occluder {
	var out []occluder
	for _, o := range e.hides.common {
		if o.lamp >= 0 && o.solid == nil && e.lamps[o.lamp].body != nil {
			continue
		}
		if o.lamp >= 0 && e.lamps[o.lamp].touches && o.solid == nil {
			continue
		}
		c, r := o.center, o.radius
		if math.Abs(c.X)-r < e.scene.Size[0]/2 && math.Abs(c.Y)-r < e.scene.Size[1]/2 && c.Z-r < e.scene.Depth && c.Z+r > 0 {
			out = append(out, o)
		}
	}
	return out
}

// coverings of one patch: for every occluder from as many places as its
// nearness asks for.
func (e *Engine) coverings(w *sight, f *face, patch int, inside []occluder) []covering {
	n := len(f.patchU) - 1
	i, j := patch%n, patch/n
	u, v := f.patchU[i:i+2], f.patchV[j:j+2]
	corner, opposite := f.place(u[0], v[0]), f.place(u[1], v[1])
	var out []covering
	for k := range inside {
		away := inside[k].distance(corner, opposite)
		nu, nv := placesFor(u[1]-u[0], away), placesFor(v[1]-v[0], away)
		for a := range nu {
			for b := range nv {
				at := f.place(u[0]+(u[1]-u[0])*(float64(a)+0.5)/float64(nu), v[0]+(v[1]-v[0])*(float64(b)+0.5)/float64(nv))
				out = e.coverFrom(w, f, at, inside, k, 1/float64(nu*nv), out)
			}
		}
	}
	return out
}

// placesFor is how many places along a patch's edge see something so far away.
func placesFor(length, away float64) int {
	return max(1, min(mostPlaces, int(math.Ceil(length/(placeRatio*away)))))
}

const (
	// placeRatio is the distance of two places over that of the occluder.
	placeRatio = 1.5
	// mostPlaces bounds the places along a patch's edge.
	mostPlaces = 4
)

// distance is that between two upright blocks: the occluder's and the one
// between two corners; never 0.
func (o *occluder) distance(a, b r3.Vec) float64 {
	low, high := components(o.low), components(o.high)
	p, q := components(a), components(b)
	sum := 0.0
	for i := range low {
		gap := math.Max(low[i]-math.Max(p[i], q[i]), math.Min(p[i], q[i])-high[i])
		sum += math.Pow(math.Max(0, gap), 2)
	}
	return math.Max(math.Sqrt(sum), 1e-3)
}

// coverFrom adds what one occluder hides from one place.
func (e *Engine) coverFrom(w *sight, f *face, at r3.Vec, inside []occluder, own int, weight float64, out []covering) []covering {
	o := &inside[own]
	if r3.Dot(f.looks(), r3.Sub(o.center, at)) < -o.radius {
		return out
	}
	w.faces = w.faces[:0]
	if o.solid != nil {
		w.faces = o.solid.Faces(at, w.faces)
	} else {
		w.faces = append(w.faces, o.polygon)
	}
	for _, p := range w.faces {
		out = e.coverBy(w, f, at, p, inside, own, weight, out)
	}
	return out
}

// coverBy adds what one face of an occluder hides, in pieces that are small for
// their distance.
func (e *Engine) coverBy(w *sight, f *face, at r3.Vec, p shape.Polygon, inside []occluder, own int, weight float64, out []covering) []covering {
	if len(p) != 4 {
		middle, _ := p.Bound()
		return e.coverPiece(w, f, at, p, middle, inside, own, weight, out)
	}
	a, b := r3.Sub(p[1], p[0]), r3.Sub(p[3], p[0])
	half := r3.Scale(0.5, r3.Add(a, b))
	away := norm(r3.Sub(r3.Add(p[0], half), at)) - norm(half)
	away = math.Max(away, 0.1*norm(half))
	steps := func(length float64) int { return max(1, min(mostPieces, int(math.Ceil(length/(coverRatio*away))))) }
	na, nb := steps(norm(a)), steps(norm(b))
	da, db := r3.Scale(1/float64(na), a), r3.Scale(1/float64(nb), b)
	toMiddle := r3.Scale(0.5, r3.Add(da, db))
	for i := range na {
		for j := range nb {
			o := r3.Add(p[0], r3.Add(r3.Scale(float64(i), da), r3.Scale(float64(j), db)))
			piece := [4]r3.Vec{o, r3.Add(o, da), r3.Add(r3.Add(o, da), db), r3.Add(o, db)}
			out = e.coverPiece(w, f, at, piece[:], r3.Add(o, toMiddle), inside, own, weight, out)
		}
	}
	return out
}

const (
	// coverRatio is the longest edge of a piece over its distance.
	coverRatio = 1.0
	// mostPieces bounds the pieces along an edge of an occluder's face.
	mostPieces = 3
)

// coverPiece adds one piece with the patches that stand behind its middle.
func (e *Engine) coverPiece(w *sight, f *face, at r3.Vec, p shape.Polygon, middle r3.Vec, inside []occluder, own int, weight float64, out []covering) []covering {
	if !e.holdsPoint(middle) {
		return out
	}
	start := len(out)
	out = e.trace(f.chamber, at, r3.Sub(middle, at), middle, weight, out)
	if len(out) == start {
		return out
	}
	for k := range inside { // what stands nearer counts alone
		if o := &inside[k]; k != own && o.crosses(at, middle) {
			return out[:start]
		}
	}
	w.cut.Reset()
	share := 0.0
	if p = w.cut.Clip(p, at, f.looks()); p != nil {
		share = math.Abs(r3.Dot(edgeVector(p, at), f.looks())) / math.Pi
	}
	for k := start; k < len(out); k++ {
		out[k].share *= share
	}
	return out
}

// holdsPoint tells whether a point is in the box.
func (e *Engine) holdsPoint(p r3.Vec) bool {
	return math.Abs(p.X) < e.scene.Size[0]/2 && math.Abs(p.Y) < e.scene.Size[1]/2 && p.Z > 0 && p.Z < e.top()
}

// top is the level of the highest face.
func (e *Engine) top() float64 { return math.Max(e.scene.Depth, e.planes[0].z) }

// crosses tells whether the occluder stands on the way.
func (o *occluder) crosses(a, b r3.Vec) bool {
	what := subject{center: b, low: b, high: b}
	if o.clear(a, &what) {
		return false
	}
	if o.solid != nil {
		return o.solid.Crosses(a, b)
	}
	return o.polygon.Crosses(a, b)
}

// trace follows a direction from a place in a chamber to the box's shell and
// adds every patch whose light comes from there: the first one, and through
// planes that pass some the next ones. Only what lies beyond `from` counts, and
// openings send nothing.
func (e *Engine) trace(chamber int, at, d, from r3.Vec, share float64, out []covering) []covering {
	step := 1
	if d.Z > 0 {
		step = -1
	}
	beyond := r3.Norm2(r3.Sub(from, at)) / r3.Norm2(d) * (1 - 1e-12)
	for {
		index, t := e.rooms[chamber].exit(at, d)
		if index < 0 {
			return out
		}
		f := &e.faces[index]
		if t*t >= beyond {
			if patch := f.patchAt(r3.Add(at, r3.Scale(t, d))); !f.open[patch] {
				out = append(out, covering{f.first + patch, share})
			}
		}
		next := chamber + step
		if f.kind == wall || next < 0 || next >= len(e.planes) {
			return out
		}
		share *= e.planes[max(chamber, next)-1].passes()
		if share == 0 {
			return out
		}
		chamber = next
	}
}

// room is a chamber's extent and its faces: per axis the low and the high one.
type room struct {
	low, high [3]float64
	face      [3][2]int
}

// exit is the face through which a ray leaves, and where; -1 for none.
func (r *room) exit(at, d r3.Vec) (index int, t float64) {
	index, t = -1, math.Inf(1)
	a, v := components(at), components(d)
	for i := range a {
		if v[i] > 0 {
			if q := (r.high[i] - a[i]) / v[i]; q < t {
				index, t = r.face[i][1], q
			}
		} else if v[i] < 0 {
			if q := (r.low[i] - a[i]) / v[i]; q < t {
				index, t = r.face[i][0], q
			}
		}
	}
	return index, t
}

// measureRooms notes every chamber's extent.
func (e *Engine) measureRooms() {
	e.rooms = make([]room, len(e.planes))
	for i := range e.faces {
		f := &e.faces[i]
		r := &e.rooms[f.chamber]
		if f.toward > 0 {
			r.low[f.normal], r.face[f.normal][0] = f.level, i
		} else {
			r.high[f.normal], r.face[f.normal][1] = f.level, i
		}
	}
}

// patchAt is the patch that holds a point of the face.
func (f *face) patchAt(p r3.Vec) int {
	x := components(p)
	u, v := f.across()
	i, _ := locate(f.patchU, x[u])
	j, _ := locate(f.patchV, x[v])
	return j*(len(f.patchU)-1) + i
}

// shade works out what the blocked light would have added at each patch, lx:
// values for the patches' middles, such that between them its mean over every
// patch is right.
func (e *Engine) shade(x *exchange) {
	mean := make([]float64, len(x.area))
	for i, row := range x.behind {
		for _, c := range row {
			mean[i] += c.share * x.leaves[c.patch]
		}
	}
	x.shaded = append([]float64(nil), mean...)
	if len(e.insiders()) == 0 {
		return
	}
	for range 4 {
		got := make([]float64, len(mean))
		for i := range e.faces {
			f := &e.faces[i]
			s := &f.sheet
			value := make([]float64, len(s.value))
			for j, v := range s.nodeV {
				for k, u := range s.nodeU {
					value[j*len(s.nodeU)+k] = e.shadedAt(f, u, v)
				}
			}
			e.overPatches(f, value, got)
		}
		for i := range got {
			x.shaded[i] += mean[i] - got[i]
		}
	}
}

// shadedAt is that at a place of a face, between the patches' middles.
func (e *Engine) shadedAt(f *face, u, v float64) float64 {
	values := e.exchange.shaded[f.first : f.first+f.patches()]
	i, s := between(f.patchU, u)
	j, t := between(f.patchV, v)
	n := len(f.patchU) - 1
	i1, j1 := min(i+1, n-1), min(j+1, len(f.patchV)-2)
	low := values[j*n+i]*(1-s) + values[j*n+i1]*s
	high := values[j1*n+i]*(1-s) + values[j1*n+i1]*s
	return low*(1-t) + high*t
}

// between finds the two intervals between whose middles a place lies, and how
// far it is from the first to the second; held at the ends.
func between(lines []float64, x float64) (first int, share float64) {
	last := len(lines) - 2
	middle := func(i int) float64 { return (lines[i] + lines[i+1]) / 2 }
	for first < last-1 && x > middle(first+1) {
		first++
	}
	if last == 0 {
		return 0, 0
	}
	share = (x - middle(first)) / (middle(first+1) - middle(first))
	return first, math.Max(0, math.Min(1, share))
}
