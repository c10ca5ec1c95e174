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
	h.box = make([]float64, h.count)
	away := make([]float64, h.count)
	for i := range away {
		away[i] = 1 / math.Sqrt(h.area[i]) // of leaves, of which the smaller's places are the nearer
		if i < h.first {
			s := h.sideOf(i)
			away[i] = h.away(s.cell(i - s.first))
		}
	}
	// Rows are found on all cores and spread in their order, so that the number of cores
	// doesn't change a bit of the sums.
	rows := make([][]found, h.count)
	overCores(h.count, func(i int) { rows[i] = h.row(i) })
	for i, row := range rows {
		h.spread(i, row, away)
	}
	h.close()
}

// found is what a patch finds of another beyond the empty room's form factor.
type found struct {
	patch int
	share float64
}

// row is all that a patch finds; it sets the box's share.
func (h *Hall) row(i int) []found {
	if i < h.first && h.void[i] {
		return nil
	}
	w := h.memory.Get().(*glance)
	defer h.memory.Put(w)
	if len(w.row) != h.count {
		w.row = make([]float64, h.count)
	}
	clear(w.row)
	if i < h.first {
		s := h.sideOf(i)
		for _, at := range h.placesOn(s, i-s.first) {
			h.box[i] += at.weight * h.lost(w, s, meter{Flat, s.inward()}, at, w.row)
		}
	} else {
		for _, at := range h.placesOnLeaf(i - h.first) {
			h.box[i] += at.weight * h.view(w, meter{Flat, h.leaves[i-h.first].looks}, at, w.row)
		}
	}
	var out []found
	for patch, share := range w.row {
		if share != 0 && (patch >= h.first || !h.void[patch]) {
			out = append(out, found{patch, share})
		}
	}
	return out
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
				whole(w, other, from.at, m, nil, take)
			}
		}
		return 1
	}
	h.look(w, from.at)
	for k := range h.sides {
		if other := &h.sides[k]; other != s {
			hidden(w, other, from.at, m, nil, add)
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
	h.seen(w, from.at, m, nil, func(patch int, share float64) { row[patch] += from.weight * share })
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

// spread puts a patch's row into both ways of the exchange. What two patches exchange
// is found from either, and the one that is farther from what stands in the way counts
// the more: a shadow's edge is wide on it, and is cut exactly on the other. Between a
// face of the room and a leaf, whose places are the nearer, the leaf's row counts alone.
func (h *Hall) spread(from int, row []found, away []float64) {
	for _, f := range row {
		to, value := f.patch, f.share
		a, b := math.Pow(away[from], farther), math.Pow(away[to], farther)
		part := a / (a + b)
		if from >= h.first && to < h.first {
			part = 1
		}
		h.factor[from*h.count+to] += part * value
		h.factor[to*h.count+from] += part * value * h.area[from] / h.area[to]
	}
}

// farther is how strongly the distance counts.
const farther = 2

// close finds the worst row.
func (h *Hall) close() {
	for i := range h.count {
		if i < h.first && h.void[i] {
			continue
		}
		sum := h.box[i]
		for _, f := range h.factor[i*h.count:][:h.count] {
			sum += f
		}
		h.closure = math.Max(h.closure, math.Abs(sum-1))
	}
}

// away is the distance of a patch, by two opposite corners, to what stands in the way.
func (h *Hall) away(p, q r3.Vec) float64 {
	least := math.Inf(1)
	for k := range h.blocks {
		least = math.Min(least, h.blocks[k].distance(p, q))
	}
	return math.Min(least, 1e3) // in an empty room anything will do
}

// placesOn are places on a room's patch, more where the box or a set wall is near. A
// patch is cut where it changes from one side of a set wall to the other.
func (h *Hall) placesOn(s *roomSide, patch int) []placeOn {
	p, q := s.cell(patch)
	away := h.away(p, q)
	pieces := []shape.Polygon{s.outline(p, q)}
	for k := range h.blocks {
		if b := &h.blocks[k]; b.solid == nil {
			pieces = cutBoth(pieces, b.polygon[0], r3.Unit(b.polygon.Normal()))
		}
	}
	x := components(r3.Sub(q, p))
	size := math.Max(math.Abs(x[s.u]), math.Abs(x[s.v]))
	n := min(max(int(math.Ceil(size/(nearPlaces*away))), 1), mostNear)
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

// cutAtFoot cuts convex pieces of a face along the foot of a polygon that stands on it,
// and across it at the foot's ends.
func cutAtFoot(pieces []shape.Polygon, by shape.Polygon, s *roomSide) []shape.Polygon {
	n := r3.Unit(by.Normal())
	if math.Abs(r3.Dot(n, s.inward())) > 1-1e-6 { // it lies on the face
		return pieces
	}
	pieces = cutBoth(pieces, by[0], n)
	for _, corner := range by {
		if x := components(corner); math.Abs(x[s.normal]-s.level) < touches {
			pieces = cutBoth(pieces, corner, r3.Cross(n, s.inward()))
		}
	}
	return pieces
}

// cutBoth cuts convex pieces in two by a plane.
func cutBoth(pieces []shape.Polygon, through, normal r3.Vec) []shape.Polygon {
	var cut shape.Cutter
	var out []shape.Polygon
	for _, p := range pieces {
		for _, side := range [2]r3.Vec{normal, r3.Scale(-1, normal)} {
			if q := cut.Clip(p, through, side); q != nil && q.Area() > 1e-6*p.Area() {
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
			area := norm(r3.Cross(r3.Sub(t[1], t[0]), r3.Sub(t[2], t[0]))) / 2
			out = onTriangle(t, weight*area/whole, out)
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

// placesOnLeaf are places on a set wall's patch, more where a face of the room is near.
func (h *Hall) placesOnLeaf(i int) []placeOn {
	p := h.leaves[i].polygon
	if h.leaves[i].onFace {
		return placesIn(p, 2, 1, nil)
	}
	low, high := p.Extent()
	a, b, first, last := components(low), components(high), components(h.room.Low), components(h.room.High)
	away, size := math.Inf(1), norm(r3.Sub(high, low))
	for k := range a {
		away = math.Min(away, math.Min(a[k]-first[k], last[k]-b[k]))
	}
	return placesIn(p, min(max(int(math.Ceil(size/math.Max(away, 1e-9))), 1), mostNear), 1, nil)
}

// onTriangle are Radon's places.
func onTriangle(t [3]r3.Vec, weight float64, out []placeOn) []placeOn {
	for _, q := range cubature {
		x := r3.Add(r3.Add(r3.Scale(q.a, t[0]), r3.Scale(q.b, t[1])), r3.Scale(1-q.a-q.b, t[2]))
		out = append(out, placeOn{x, q.weight * weight})
	}
	return out
}
