package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// What blocks hide of a face of the room, as seen from an eye, is their shadow on
// it: every block's outline thrown onto the face's plane, in the face's own two axes.
// All blocks stand before every face, so that shadows are laid together whatever
// their order. Convex pieces that do not overlap are kept.

// flat is a convex polygon in a face's axes.
type flat [][2]float64

// glance is one goroutine's working memory for looking around in a room.
type glance struct {
	sight
	corners []([2]float64) // of the flats of one look
	shade   []flat
	casts   []cast
	rest    []flat
	spare   []flat
	depth   [][3]float64
	other   [][3]float64
	grid    cornerGrid
	polygon shape.Polygon
	row     []float64 // of one patch to all
}

// cast is a convex face of a block with the block it belongs to.
type cast struct {
	polygon shape.Polygon
	block   int
	shadow  flat // on the face that is looked at
}

// look lists the faces of all blocks that the eye can see.
func (h *Hall) look(w *glance, eye r3.Vec) {
	w.casts = w.casts[:0]
	for i := range h.blocks {
		b := &h.blocks[i]
		if b.solid == nil {
			w.casts = append(w.casts, cast{polygon: b.polygon, block: i})
			continue
		}
		w.faces = b.solid.Faces(eye, w.faces[:0])
		for _, f := range w.faces {
			w.casts = append(w.casts, cast{polygon: f, block: i})
		}
	}
}

// shadows gives the pieces of a face that the blocks hide, without overlap. They are
// valid until the next call.
func (w *glance) shadows(s *roomSide, eye r3.Vec) []flat {
	w.corners, w.shade = w.corners[:0], w.shade[:0]
	x := components(eye)
	c := (x[s.normal] - s.level) * s.toward
	if c < onFace/2 {
		return nil
	}
	for i := range w.casts {
		w.casts[i].shadow = w.thrown(s, x, c, w.casts[i].polygon)
		if w.casts[i].shadow != nil {
			w.lay(i)
		}
	}
	return w.shade
}

// lay adds a shadow without what those of earlier blocks already cover. Faces of one
// block do not overlap.
func (w *glance) lay(index int) {
	added := &w.casts[index]
	w.rest = append(w.rest[:0], added.shadow)
	for k := range index {
		if w.casts[k].shadow == nil || w.casts[k].block == added.block || len(w.rest) == 0 {
			continue
		}
		w.spare = w.spare[:0]
		for _, piece := range w.rest {
			w.spare = w.without(piece, w.casts[k].shadow, w.spare)
		}
		w.rest, w.spare = w.spare, w.rest
	}
	w.shade = append(w.shade, w.rest...)
}

// without appends what is left of a convex piece beside a convex, counter-clockwise
// one, in convex pieces.
func (w *glance) without(piece, by flat, out []flat) []flat {
	for i := range by {
		if a, b, c := edgeLine(by, i); w.cutFlat(piece, a, b, c) == nil {
			return append(out, piece)
		}
	}
	for i := range by {
		a, b, c := edgeLine(by, i)
		if outside := w.cutFlat(piece, -a, -b, -c); outside != nil {
			out = append(out, outside)
		}
		if piece = w.cutFlat(piece, a, b, c); piece == nil {
			break
		}
	}
	return out
}

// edgeLine is the line along a polygon's edge: inside is a u + b v <= c.
func edgeLine(p flat, i int) (a, b, c float64) {
	from, to := p[i], p[(i+1)%len(p)]
	a, b = to[1]-from[1], from[0]-to[0]
	return a, b, a*from[0] + b*from[1]
}

// thrown is the shadow of a convex polygon on a face, cut to the face and
// counter-clockwise; nil for none. c is the eye's height over the face.
func (w *glance) thrown(s *roomSide, eye [3]float64, c float64, p shape.Polygon) flat {
	w.depth = w.depth[:0]
	before, behind := false, false
	for _, corner := range p {
		x := components(corner)
		h := (x[s.normal] - s.level) * s.toward
		w.depth = append(w.depth, [3]float64{x[s.u], x[s.v], h})
		before, behind = before || h < c, behind || h >= 0
	}
	if !before || !behind {
		return nil
	}
	// What stands at the eye's own height throws its shadow to infinity, and what
	// sticks out of the room none.
	w.other = cutDepth(w.depth, w.other[:0], -1, -c*(1-1e-6))
	w.depth = cutDepth(w.other, w.depth[:0], 1, -onFace)
	start := len(w.corners)
	for _, x := range w.depth {
		t := c / (c - x[2])
		w.corners = append(w.corners, [2]float64{eye[s.u] + (x[0]-eye[s.u])*t, eye[s.v] + (x[1]-eye[s.v])*t})
	}
	out := flat(w.corners[start:len(w.corners):len(w.corners)])
	if len(out) < 3 {
		return nil
	}
	out = w.cutFlat(out, -1, 0, -s.lineU[0])
	out = w.cutFlat(out, 1, 0, s.lineU[s.nu()])
	out = w.cutFlat(out, 0, -1, -s.lineV[0])
	out = w.cutFlat(out, 0, 1, s.lineV[s.nv()])
	area := out.area()
	if math.Abs(area) < 1e-12 {
		return nil
	}
	if area < 0 {
		for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
		}
	}
	return out
}

// cutDepth keeps where sign times the third coordinate is at least a limit.
func cutDepth(p, out [][3]float64, sign, least float64) [][3]float64 {
	for i, a := range p {
		b := p[(i+1)%len(p)]
		ha, hb := sign*a[2]-least, sign*b[2]-least
		if ha >= 0 {
			out = append(out, a)
		}
		if ha > 0 && hb < 0 || ha < 0 && hb > 0 {
			t := ha / (ha - hb)
			out = append(out, [3]float64{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1]), a[2] + t*(b[2]-a[2])})
		}
	}
	return out
}

// cutFlat keeps where a u + b v <= c: the polygon itself where nothing is cut off,
// nil where nothing is left.
func (w *glance) cutFlat(p flat, a, b, c float64) flat {
	in, off := false, false
	for _, x := range p {
		h := a*x[0] + b*x[1] - c
		in, off = in || h < 0, off || h > 0
	}
	if !off {
		return p
	}
	if !in {
		return nil
	}
	start := len(w.corners)
	last := p[len(p)-1]
	lastH := a*last[0] + b*last[1] - c
	for _, x := range p {
		h := a*x[0] + b*x[1] - c
		if h > 0 && lastH < 0 || h < 0 && lastH > 0 {
			t := lastH / (lastH - h)
			w.corners = append(w.corners, [2]float64{last[0] + t*(x[0]-last[0]), last[1] + t*(x[1]-last[1])})
		}
		if h <= 0 {
			w.corners = append(w.corners, x)
		}
		last, lastH = x, h
	}
	if len(w.corners)-start < 3 {
		w.corners = w.corners[:start]
		return nil
	}
	return flat(w.corners[start:len(w.corners):len(w.corners)])
}

// area of a flat, positive where it runs counter-clockwise, m2.
func (p flat) area() float64 {
	sum := 0.0
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		sum += a[0]*b[1] - a[1]*b[0]
	}
	return sum / 2
}

// overCells cuts a piece of a face along its lines and hands on every part with its
// patch and how the part lies in the room.
func (w *glance) overCells(s *roomSide, piece flat, give func(patch int, part shape.Polygon)) {
	low, high := piece[0], piece[0]
	for _, x := range piece {
		low = [2]float64{math.Min(low[0], x[0]), math.Min(low[1], x[1])}
		high = [2]float64{math.Max(high[0], x[0]), math.Max(high[1], x[1])}
	}
	j0, j1 := cellAt(s.lineV, low[1]), cellAt(s.lineV, high[1])
	for j := j0; j <= j1; j++ {
		row := piece
		if j > j0 {
			row = w.cutFlat(row, 0, -1, -s.lineV[j])
		}
		if j < j1 && row != nil {
			row = w.cutFlat(row, 0, 1, s.lineV[j+1])
		}
		if row == nil {
			continue
		}
		from, to := row[0][0], row[0][0]
		for _, x := range row {
			from, to = math.Min(from, x[0]), math.Max(to, x[0])
		}
		i0, i1 := cellAt(s.lineU, from), cellAt(s.lineU, to)
		for i := i0; i <= i1; i++ {
			part := row
			if i > i0 {
				part = w.cutFlat(part, -1, 0, -s.lineU[i])
			}
			if i < i1 && part != nil {
				part = w.cutFlat(part, 1, 0, s.lineU[i+1])
			}
			if part == nil {
				continue
			}
			w.polygon = w.polygon[:0]
			for _, x := range part {
				w.polygon = append(w.polygon, s.place(x[0], x[1]))
			}
			give(s.first+j*s.nu()+i, s.outward(w.polygon))
		}
	}
}

// cellAt is the interval of evenly spaced lines that holds a place.
func cellAt(lines []float64, x float64) int {
	n := len(lines) - 1
	return min(max(int((x-lines[0])/(lines[n]-lines[0])*float64(n)), 0), n-1)
}
