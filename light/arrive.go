package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// allOpen tells whether a face is an opening all over.
func allOpen(open []bool) bool {
	for _, o := range open {
		if !o {
			return false
		}
	}
	return true
}

// directOn is what comes straight from the lamps at a face's Gauss points, lx,
// without the lamps that lie on it; where one lies, nothing else arrives.
func (e *Engine) directOn(w *sight, f *face) []float64 {
	out := make([]float64, len(f.sheet.value))
	for i := range e.lamps {
		for k, lux := range e.oneOn(w, i, f) {
			out[k] += lux
		}
	}
	return out
}

// oneOn is that of one lamp: straight, and by the lobes of cloths above.
func (e *Engine) oneOn(w *sight, lamp int, f *face) []float64 {
	s := &f.sheet
	out := make([]float64, len(s.value))
	m := meter{Flat, f.looks()}
	for j, v := range s.nodeV {
		for i, u := range s.nodeU {
			at := f.place(u, v)
			if f.kind == floor && e.under(f.chamber, at) != nil {
				continue
			}
			from := station{at, f.chamber, true}
			out[j*len(s.nodeU)+i] = e.oneLamp(w, lamp, from, m) + e.forwardedOf(w, lamp, from, m)
		}
	}
	return out
}

// under is the lamp whose opening lies on a floor over a point, or nil.
func (e *Engine) under(chamber int, p r3.Vec) *lamp {
	for i := range e.lamps {
		l := &e.lamps[i]
		if l.touches && l.parts[0].chamber == chamber && l.rect.Covers(p) {
			return l
		}
	}
	return nil
}

// touching integrates a value over the parts of a floor's rectangle that lamp
// openings lie on.
func (e *Engine) touching(chamber int, x0, x1, y0, y1 float64, value func(*lamp) float64) float64 {
	sum := 0.0
	var cut shape.Cutter
	for i := range e.lamps {
		l := &e.lamps[i]
		if !l.touches || l.parts[0].chamber != chamber {
			continue
		}
		p := cut.Clip(l.rect, r3.Vec{X: x0}, r3.Vec{X: 1})
		p = cut.Clip(p, r3.Vec{X: x1}, r3.Vec{X: -1})
		p = cut.Clip(p, r3.Vec{Y: y0}, r3.Vec{Y: 1})
		p = cut.Clip(p, r3.Vec{Y: y1}, r3.Vec{Y: -1})
		if p != nil {
			sum += p.Area() * value(l)
		}
	}
	return sum
}

// indirect is what all patches send to a point on a face, lx. Close behind a
// lamp it may come out a little below 0, so that the mean over the patch holds.
func (e *Engine) indirect(f *face, u, v float64) float64 {
	return e.unblocked(f, u, v) - e.shadedAt(f, u, v)
}

// unblocked is that with nothing in the way: closed forms from the point to
// every patch.
func (e *Engine) unblocked(f *face, u, v float64) float64 {
	sum := 0.0
	for j := range e.faces {
		g := &e.faces[j]
		pass := e.passesBetween(f, g)
		if pass == 0 || allOpen(g.open) {
			continue
		}
		sum += pass * e.fromFace(f, u, v, g)
	}
	return sum
}

// fromFace sums what one face's patches send to a point on another face.
func (e *Engine) fromFace(f *face, u, v float64, g *face) float64 {
	p := components(f.place(u, v))
	gu, gv := g.across()
	corner := func(x, y float64) float64 { return pointParallelCorner(x, y, math.Abs(f.level-g.level)) }
	if f.normal != g.normal {
		c := math.Abs(p[g.normal] - g.level)
		corner = func(x, y float64) float64 {
			if gu == f.normal {
				return pointPerpendicularCorner(c, x, y)
			}
			return pointPerpendicularCorner(c, y, x)
		}
	}
	nu := len(g.patchU) - 1
	last := make([]float64, nu+1)
	leaves := e.exchange.leaves[g.first : g.first+g.patches()]
	sum := 0.0
	for j, y := range g.patchV {
		left := 0.0
		for i, x := range g.patchU {
			here := corner(x-p[gu], y-p[gv])
			if i > 0 && j > 0 {
				sum += math.Abs(here-left-last[i]+last[i-1]) * leaves[(j-1)*nu+i-1]
			}
			if i > 0 {
				last[i-1] = left
			}
			left = here
		}
		last[nu] = left
	}
	return sum
}

// arriving is what arrives in all at a face's Gauss points, lx, without the
// lamps that lie on it.
func (e *Engine) arriving(index int) []float64 {
	f := &e.faces[index]
	s := &f.sheet
	out := append([]float64(nil), e.direct[index]...)
	for j, v := range s.nodeV {
		for i, u := range s.nodeU {
			if f.kind == floor && e.under(f.chamber, f.place(u, v)) != nil {
				continue
			}
			out[j*len(s.nodeU)+i] += e.indirect(f, u, v)
		}
	}
	return out
}
