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
