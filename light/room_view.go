package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// Seen from a place in the room, every patch gives a meter some light per exitance:
// for whole patches of the empty room in closed form over the corners, less what the
// blocks hide, plus what is seen of the set walls.

// cornerGrid holds the corner terms of one face.
type cornerGrid struct {
	du, dv []float64
	au, bv []float64 // distances of the lines from the eye
	term   []cornerTerm
}

// cornerTerm is Lambert's edge formula over two edges from a corner; the light vector
// of luminance 1 is its second difference. Solid is that of the solid angle.
type cornerTerm struct{ u, v, n, solid float64 }

// fill works out the corners of a face at height c under the eye.
func (g *cornerGrid) fill(s *roomSide, eye [3]float64, c float64, solid bool) {
	g.du, g.dv, g.au, g.bv, g.term = g.du[:0], g.dv[:0], g.au[:0], g.bv[:0], g.term[:0]
	for _, u := range s.lineU {
		d := u - eye[s.u]
		g.du, g.au = append(g.du, d), append(g.au, math.Sqrt(d*d+c*c))
	}
	for _, v := range s.lineV {
		d := v - eye[s.v]
		g.dv, g.bv = append(g.dv, d), append(g.bv, math.Sqrt(d*d+c*c))
	}
	for j, dv := range g.dv {
		for i, du := range g.du {
			a, b := math.Atan(dv/g.au[i])/g.au[i], math.Atan(du/g.bv[j])/g.bv[j]
			t := cornerTerm{u: -c * a / 2, v: -c * b / 2, n: (du*a + dv*b) / 2}
			if solid {
				t.solid = math.Atan(du * dv / (c * math.Sqrt(du*du+dv*dv+c*c)))
			}
			g.term = append(g.term, t)
		}
	}
}

// cell is what patch i, j of the face sends: light vector in the face's axes, the
// normal one toward the face, and solid angle.
func (g *cornerGrid) cell(i, j int) cornerTerm {
	n := len(g.du)
	a, b, c, d := &g.term[j*n+i], &g.term[j*n+i+1], &g.term[(j+1)*n+i], &g.term[(j+1)*n+i+1]
	return cornerTerm{a.u - b.u - c.u + d.u, a.v - b.v - c.v + d.v, a.n - b.n - c.n + d.n, a.solid - b.solid - c.solid + d.solid}
}

// seen calls add with every patch of which the meter sees some: lx per lm/m2 that
// leaves it. A patch may come several times, also with less than 0: what is hidden.
// The blocks must have been looked at. The meter must have a closed form. Only lit
// patches count; nil is all.
func (h *Hall) seen(w *glance, eye r3.Vec, m meter, lit []bool, add func(patch int, share float64)) {
	for k := range h.sides {
		h.seenSide(w, &h.sides[k], eye, m, lit, add)
	}
	h.seenLeaves(w, eye, m, add)
}

// seenSide is that of one face, or of a finer part of one.
func (h *Hall) seenSide(w *glance, s *roomSide, eye r3.Vec, m meter, lit []bool, add func(patch int, share float64)) {
	if s.flush(eye, m) {
		return
	}
	whole(w, s, eye, m, lit, add)
	hidden(w, s, eye, m, lit, add)
}

// flush tells whether a flat receiver lies on a face of the room: it gets nothing
// from its own plane.
func (s *roomSide) flush(eye r3.Vec, m meter) bool {
	x := components(eye)
	return m.receptor == Flat && (x[s.normal]-s.level)*s.toward < 2*onFace && math.Abs(r3.Dot(m.faces, s.inward())) > 1-1e-9
}

// whole gives a face's patches as if nothing stood in the room.
func whole(w *glance, s *roomSide, eye r3.Vec, m meter, lit []bool, add func(int, float64)) {
	x := components(eye)
	c := (x[s.normal] - s.level) * s.toward
	if c <= 0 {
		return
	}
	f := components(m.faces)
	fu, fv, fn := f[s.u], f[s.v], -s.toward*f[s.normal]
	if m.receptor == Flat && s.below(x, c, fu, fv, fn) {
		return
	}
	w.grid.fill(s, x, c, m.receptor != Flat)
	g := &w.grid
	for j := range s.nv() {
		for i := range s.nu() {
			patch := s.first + j*s.nu() + i
			if lit != nil && !lit[patch] {
				continue
			}
			if m.receptor == Flat {
				low := fn*c + math.Min(fu*g.du[i], fu*g.du[i+1]) + math.Min(fv*g.dv[j], fv*g.dv[j+1])
				high := fn*c + math.Max(fu*g.du[i], fu*g.du[i+1]) + math.Max(fv*g.dv[j], fv*g.dv[j+1])
				if high <= 0 {
					continue
				}
				if low < 0 {
					clipped(w, s, i, j, eye, m, add)
					continue
				}
			}
			t := g.cell(i, j)
			straight := fu*t.u + fv*t.v + fn*t.n
			switch m.receptor {
			case Flat:
				add(patch, straight/math.Pi)
			case Dome:
				add(patch, (t.solid+straight)/(2*math.Pi))
			default:
				add(patch, t.solid/(4*math.Pi))
			}
		}
	}
}

// below tells whether a face lies wholly under a flat receiver's horizon.
func (s *roomSide) below(eye [3]float64, c, fu, fv, fn float64) bool {
	most := fn * c
	most += math.Max(fu*(s.lineU[0]-eye[s.u]), fu*(s.lineU[s.nu()]-eye[s.u]))
	most += math.Max(fv*(s.lineV[0]-eye[s.v]), fv*(s.lineV[s.nv()]-eye[s.v]))
	return most <= 0
}

// clipped gives one patch corner by corner.
func clipped(w *glance, s *roomSide, i, j int, eye r3.Vec, m meter, add func(int, float64)) {
	w.cut.Reset()
	p := m.horizon(&w.sight, s.outline(s.place(s.lineU[i], s.lineV[j]), s.place(s.lineU[i+1], s.lineV[j+1])), eye)
	if p != nil {
		add(s.first+j*s.nu()+i, m.from(p, eye))
	}
}

// from is what a Lambertian polygon before the horizon gives per lm/m2, lx.
func (m meter) from(p shape.Polygon, eye r3.Vec) float64 { return m.uniform(p, eye) / math.Pi }

// hidden takes away what the blocks hide of a face.
func hidden(w *glance, s *roomSide, eye r3.Vec, m meter, lit []bool, add func(int, float64)) {
	for _, piece := range w.shadows(s, eye) {
		w.overCells(s, piece, func(patch int, part shape.Polygon) {
			if lit != nil && !lit[patch] {
				return
			}
			w.cut.Reset()
			if part = m.horizon(&w.sight, part, eye); part != nil {
				add(patch, -m.from(part, eye))
			}
		})
	}
}

// seenLeaves adds what is seen of the set walls.
func (h *Hall) seenLeaves(w *glance, eye r3.Vec, m meter, add func(int, float64)) {
	for i := range h.leaves {
		l := &h.leaves[i]
		if r3.Dot(l.looks, r3.Sub(eye, l.polygon[0])) <= onFace/10 {
			continue
		}
		w.cut.Reset()
		what := subjectOf(l.polygon, -1)
		if what.polygon = m.horizon(&w.sight, l.polygon, eye); what.polygon == nil {
			continue
		}
		w.pieces = append(w.pieces[:0], what.polygon)
		w.pieces = w.hide(w.pieces, eye, &what, h.blocks)
		for _, p := range w.pieces {
			add(h.first+i, m.from(p, eye))
		}
	}
}
