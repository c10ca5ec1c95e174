package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// crossings takes what box and set walls hide from the empty room's factors, and adds
// the set walls' own. What one patch sees is averaged over places on it, from each of
// which the sight is cut exactly; what two patches exchange is then the mean of what
// either finds, so that light is neither made nor lost on the way.
func (h *Hall) crossings() {
	w := &glance{all: true}
	h.box = make([]float64, h.count)
	row := make([]float64, h.count)
	for k := range h.sides {
		s := &h.sides[k]
		m := meter{Flat, s.inward()}
		for i := range s.patches() {
			clear(row)
			for _, at := range h.placesOn(s, i) {
				h.box[s.first+i] += at.weight * h.lost(w, s, m, at, row)
			}
			h.share(s.first+i, row)
		}
	}
	for i := range h.leaves {
		clear(row)
		m := meter{Flat, h.leaves[i].looks}
		for _, at := range placesOnLeaf(h.leaves[i].polygon) {
			h.box[h.first+i] += at.weight * h.view(w, m, at, row)
		}
		h.share(h.first+i, row)
	}
	h.close()
}

// placeOn is a place on a patch with its share of the area.
type placeOn struct {
	at     r3.Vec
	weight float64
}

// lost puts into a patch's row what the blocks hide from a place on it, and tells the
// box's own share of the view.
func (h *Hall) lost(w *glance, s *roomSide, m meter, from placeOn, row []float64) (box float64) {
	add := func(patch int, share float64) { row[patch] += from.weight * share }
	if h.inBlock(from.at) {
		take := func(patch int, share float64) { add(patch, -share) }
		for k := range h.sides {
			if other := &h.sides[k]; other != s {
				h.whole(w, other, from.at, m, take)
			}
		}
		return 1
	}
	h.look(w, from.at)
	for k := range h.sides {
		if other := &h.sides[k]; other != s {
			h.hidden(w, other, from.at, m, add)
		}
	}
	return h.boxShare(w, from.at, m)
}

// view puts into a leaf's row what is seen from a place on it.
func (h *Hall) view(w *glance, m meter, from placeOn, row []float64) (box float64) {
	if h.inBlock(from.at) {
		return 1
	}
	h.look(w, from.at)
	h.seen(w, from.at, m, func(patch int, share float64) { row[patch] += from.weight * share })
	return h.boxShare(w, from.at, m)
}

// boxShare is the form factor to what is seen of the box.
func (h *Hall) boxShare(w *glance, eye r3.Vec, m meter) float64 {
	sum := 0.0
	for i := range w.casts {
		c := &w.casts[i]
		if c.block >= h.boxes {
			break
		}
		w.cut.Reset()
		p := m.horizon(&w.sight, c.polygon, eye)
		if p == nil {
			continue
		}
		what := subjectOf(p, -1)
		w.pieces = append(w.pieces[:0], p)
		w.pieces = w.hide(w.pieces, eye, &what, h.blocks[:c.block])
		w.pieces = w.hide(w.pieces, eye, &what, h.blocks[c.block+1:])
		for _, piece := range w.pieces {
			sum += math.Abs(m.from(piece, eye))
		}
	}
	return sum
}

// share spreads a patch's row over both ways: half of it counts, the other half
// comes from the other patch. Between a face of the room and a leaf, whose places are
// the nearer, the leaf's row counts alone.
func (h *Hall) share(from int, row []float64) {
	for to, value := range row {
		if value == 0 {
			continue
		}
		part := 0.5
		if from >= h.first && to < h.first {
			part = 1
		}
		h.factor[from*h.count+to] += part * value
		h.factor[to*h.count+from] += part * value * h.area[from] / h.area[to]
	}
}

// close finds the worst row.
func (h *Hall) close() {
	for i := range h.count {
		sum := h.box[i]
		for _, f := range h.factor[i*h.count:][:h.count] {
			sum += f
		}
		h.closure = math.Max(h.closure, math.Abs(sum-1))
	}
}

// placesOn are places on a room's patch, more where the box or a set wall is near. A
// patch on which a set wall stands is cut along it, since it is the edge of a shadow.
func (h *Hall) placesOn(s *roomSide, patch int) []placeOn {
	i, j := patch%s.nu(), patch/s.nu()
	u0, u1, v0, v1 := s.lineU[i], s.lineU[i+1], s.lineV[j], s.lineV[j+1]
	away := math.Inf(1)
	pieces := []shape.Polygon{s.outline(u0, u1, v0, v1)}
	for k := range h.blocks {
		b := &h.blocks[k]
		gap := b.distance(s.place(u0, v0), s.place(u1, v1))
		away = math.Min(away, gap)
		if b.solid == nil && gap < touches {
			pieces = cutAlong(pieces, b.polygon)
		}
	}
	n := min(max(int(math.Ceil(math.Max(u1-u0, v1-v0)/(nearPlaces*away))), 1), mostNear)
	var out []placeOn
	for _, piece := range pieces {
		out = placesIn(piece, n, piece.Area()/h.area[s.first+patch], out)
	}
	return out
}

const (
	// nearPlaces is the width of the cells with two by two places each, over the
	// distance of what is in the way.
	nearPlaces = 0.6
	// mostNear bounds the cells along a patch's edge.
	mostNear = 3
	// touches is the distance at which a set wall stands on a patch, m.
	touches = 0.01
)

// cutAlong cuts convex pieces along a polygon's plane.
func cutAlong(pieces []shape.Polygon, by shape.Polygon) []shape.Polygon {
	var cut shape.Cutter
	var out []shape.Polygon
	n := r3.Unit(by.Normal())
	for _, p := range pieces {
		for _, side := range [2]r3.Vec{n, r3.Scale(-1, n)} {
			if q := cut.Clip(p, by[0], side); q != nil && q.Area() > 1e-6*p.Area() {
				out = append(out, q)
			}
		}
	}
	return out
}

// placesIn are Gauss's points in n x n cells of a parallelogram, Radon's in the
// triangles of any other convex polygon.
func placesIn(p shape.Polygon, n int, weight float64, out []placeOn) []placeOn {
	if len(p) == 4 && norm(r3.Sub(r3.Add(p[0], p[2]), r3.Add(p[1], p[3]))) < 1e-9 {
		a, b := r3.Sub(p[1], p[0]), r3.Sub(p[3], p[0])
		for j := range 2 * n {
			for i := range 2 * n {
				x := r3.Add(p[0], r3.Add(r3.Scale(gaussTwo(0, 1, i, n), a), r3.Scale(gaussTwo(0, 1, j, n), b)))
				out = append(out, placeOn{x, weight / float64(4*n*n)})
			}
		}
		return out
	}
	whole := p.Area()
	for i := 2; i < len(p); i++ {
		for _, t := range split([3]r3.Vec{p[0], p[i-1], p[i]}, min(n-1, 1)) {
			triangle := shape.Polygon{t[0], t[1], t[2]}
			for _, at := range placesOnLeaf(triangle) {
				out = append(out, placeOn{at.at, at.weight * weight * triangle.Area() / whole})
			}
		}
	}
	return out
}

// gaussTwo is point k of Gauss's two-point rule in n equal steps (Abramowitz and
// Stegun, table 25.4, from memory).
func gaussTwo(low, high float64, k, n int) float64 {
	const off = 0.28867513459481288225
	t := (float64(k/2) + 0.5 - off + 2*off*float64(k%2)) / float64(n)
	return low + t*(high-low)
}

// placesOnLeaf are Gauss's points on a parallelogram, Radon's on a triangle.
func placesOnLeaf(p shape.Polygon) []placeOn {
	var out []placeOn
	if len(p) == 3 {
		for _, q := range cubature {
			x := r3.Add(r3.Add(r3.Scale(q.a, p[0]), r3.Scale(q.b, p[1])), r3.Scale(1-q.a-q.b, p[2]))
			out = append(out, placeOn{x, q.weight})
		}
		return out
	}
	a, b := r3.Sub(p[1], p[0]), r3.Sub(p[3], p[0])
	for i := range order {
		for j := range order {
			x := r3.Add(p[0], r3.Add(r3.Scale(gaussPlace[i], a), r3.Scale(gaussPlace[j], b)))
			out = append(out, placeOn{x, gaussWeight[i] * gaussWeight[j]})
		}
	}
	return out
}
