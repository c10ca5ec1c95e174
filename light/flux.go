package light

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// FluxReport is the tally of one scene, lm. It is added up from what arrives
// at the Gauss points of every face and opening, straight from the lamps and
// from every patch, not from the solved rows of the exchange; so lamps = out +
// absorbed + lost is a check of both.
type FluxReport struct {
	LampsLm float64 // leaves the lamps
	// OutLm leaves below through the clear area, less what a crate returns.
	OutLm float64
	// AbsorbedLm stays in cloths, sides, roof and rims, and in what shades
	// inside the box.
	AbsorbedLm float64
	// LostLm leaves over the sides, through an open roof or a side that is not there.
	LostLm float64
	// ToFacesLm arrives straight from the lamps: on the floors, ceilings and
	// walls of the box.
	ToFacesLm [3]float64
	// PastLm is the part of LostLm that never comes into the box.
	PastLm float64
	// ClosureBeforeCorrection is the largest deviation of a patch's form
	// factors, with the openings, from 1. Nothing is corrected afterwards.
	ClosureBeforeCorrection float64
}

// Flux reports the tally. It is worked out when it is asked for.
func (e *Engine) Flux() FluxReport {
	w := e.memory.Get().(*sight)
	defer e.memory.Put(w)
	r := FluxReport{ClosureBeforeCorrection: e.exchange.closure}
	bare := *e
	bare.hides.common = nil
	for i := range e.lamps {
		r.LampsLm += e.lamps[i].Lumens
	}
	for i := range e.faces {
		e.tallyFace(w, &r, i, &bare)
	}
	e.tallyLamps(w, &r, &bare)
	return r
}

// tallyFace adds what one face takes, passes on and loses.
func (e *Engine) tallyFace(w *sight, r *FluxReport, index int, bare *Engine) {
	f := &e.faces[index]
	s := &f.sheet
	direct := e.direct[index]
	if direct == nil {
		direct = e.directOn(w, f)
	}
	free := e.freeOn(w, f, direct, bare)
	for j, v := range s.nodeV {
		for i, u := range s.nodeU {
			k := j*len(s.nodeU) + i
			area := s.shareU[i] * s.shareV[j]
			kept := area * e.endsAt(f, u, v)
			arriving := direct[k]
			if f.kind != floor || e.under(f.chamber, f.place(u, v)) == nil {
				indirect := e.indirect(f, u, v)
				arriving += indirect
				r.AbsorbedLm += kept * (e.unblocked(f, u, v) - indirect)
			}
			r.ToFacesLm[f.kind] += area * direct[k]
			r.AbsorbedLm += kept * (free[k] - direct[k])
			e.tally(r, f, u, v, area*arriving)
		}
	}
}

// freeOn is what would come straight from the lamps at a face's points with nothing of
// what is opaque in the box; worked out again only where something may stand between.
func (e *Engine) freeOn(w *sight, f *face, direct []float64, bare *Engine) []float64 {
	s := &f.sheet
	out := append([]float64(nil), direct...)
	m := meter{Flat, f.looks()}
	for j, v := range s.nodeV {
		for i, u := range s.nodeU {
			at := f.place(u, v)
			if (f.kind == floor && e.under(f.chamber, at) != nil) || !e.mayShade(at, f.chamber) {
				continue
			}
			from := station{at, f.chamber, true}
			out[j*len(s.nodeU)+i] = bare.lampLight(w, from, m) + bare.forwarded(w, from, m)
		}
	}
	return out
}

// mayShade tells whether something opaque in the box may stand between a place in a
// chamber and a lamp that reaches it, or a cloth above that sends by its lobe.
func (e *Engine) mayShade(at r3.Vec, chamber int) bool {
	for i := range e.relays {
		if e.relays[i].plane < chamber {
			return true
		}
	}
	for i := range e.lamps {
		l := &e.lamps[i]
		if l.Lumens == 0 || !l.reaches(at) {
			continue
		}
		under := e.hides.under(at, &l.whole)
		for k := range under {
			if o := &under[k]; o.lamp != i && !o.clear(at, &l.whole) {
				return true
			}
		}
	}
	return false
}

// endsAt is the share of light toward a place that is not counted again behind
// it: what a cloth inside the box passes unscattered arrives once more below.
func (e *Engine) endsAt(f *face, u, v float64) float64 {
	lowest := f.kind == floor && f.chamber == len(e.planes)-1
	if f.kind == wall || lowest || (f.kind == ceiling && f.chamber == 0) || !e.clears(u, v) {
		return 1
	}
	return 1 - e.clothOf(f).Through
}

// tally books the light that arrives at a place of a face.
func (e *Engine) tally(r *FluxReport, f *face, u, v, lm float64) {
	reflect, open := e.optics(f, u, v)
	below := f.kind == floor && f.chamber == len(e.planes)-1
	if e.top() == 0 { // nothing stands over the plane: what it returns is gone
		r.LostLm += lm * reflect
	}
	if below && e.clears(u, v) {
		e.tallyLowest(r, lm)
		return
	}
	switch {
	case open:
		r.LostLm += lm
	case f.kind == wall || (f.kind == ceiling && f.chamber == 0) || !e.clears(u, v):
		r.AbsorbedLm += lm * (1 - reflect)
	default:
		c := e.clothOf(f)
		r.AbsorbedLm += lm * (1 - c.Back - c.Through - c.ForwardPart - c.Diffuse)
	}
}

// tallyLowest books what arrives on the lowest plane's clear part: what leaves
// below for good goes out, and what neither does nor returns stays in the cloth.
func (e *Engine) tallyLowest(r *FluxReport, lm float64) {
	g := e.gainOf()
	out := g.all
	if e.cell != nil {
		out *= 1 - e.cell.returns
	}
	r.OutLm += lm * out
	r.AbsorbedLm += lm * (1 - out - g.back)
}

// clothOf is the cloth that a floor or ceiling is a face of.
func (e *Engine) clothOf(f *face) Cloth {
	if f.kind == ceiling {
		return e.planes[f.chamber-1].cloth
	}
	return e.planes[f.chamber].cloth
}

// tallyLamps adds what lies on the cloths and what never comes into the box.
func (e *Engine) tallyLamps(w *sight, r *FluxReport, bare *Engine) {
	for i := range e.lamps {
		l := &e.lamps[i]
		if l.touches {
			e.tallyTouching(r, l)
			continue
		}
		for k := range l.parts {
			p := &l.parts[k]
			lm := l.Lumens * p.share
			switch {
			case p.chamber == len(e.planes):
				r.OutLm += lm
			case !p.inside:
				past := lm - bare.entering(w, i, k)
				r.PastLm += past
				r.LostLm += past
			}
		}
	}
}

// tallyTouching books a lamp that lies on a plane: all of it goes into the
// cloth, what comes back goes into the lamp.
func (e *Engine) tallyTouching(r *FluxReport, l *lamp) {
	c := l.parts[0].chamber
	last := c == len(e.planes)-1
	half := e.scene.Clear
	share := e.touchingShare(l, half)
	r.ToFacesLm[floor] += l.Lumens
	r.AbsorbedLm += l.Lumens * (1 - share)
	lm := l.Lumens * share
	if last {
		e.tallyLowest(r, lm)
		r.AbsorbedLm += lm * e.gainOf().back // into the lamp itself
		return
	}
	p := e.planes[c].cloth
	r.AbsorbedLm += lm * (1 - p.Through - p.ForwardPart - p.Diffuse)
}

// touchingShare is the share of an opening within the clear area.
func (e *Engine) touchingShare(l *lamp, clear [2]float64) float64 {
	whole := l.rect.Area()
	p := l.rect
	w := new(sight)
	for _, cut := range [4]struct{ at, normal r3.Vec }{
		{r3.Vec{X: -clear[0] / 2}, r3.Vec{X: 1}}, {r3.Vec{X: clear[0] / 2}, r3.Vec{X: -1}},
		{r3.Vec{Y: -clear[1] / 2}, r3.Vec{Y: 1}}, {r3.Vec{Y: clear[1] / 2}, r3.Vec{Y: -1}},
	} {
		if p = w.cut.Clip(p, cut.at, cut.normal); p == nil {
			return 0
		}
	}
	return p.Area() / whole
}

// entering is what a lamp part outside of the box sends into it, lm: through
// the open roof and through sides that are not there, or, where there are no
// sides at all, onto the plane.
func (e *Engine) entering(w *sight, lamp, part int) float64 {
	sum := 0.0
	for i := range e.faces {
		f := &e.faces[i]
		faces := r3.Scale(-1, f.looks())
		switch {
		case e.scene.Depth == 0 && f.kind == floor && f.chamber == 0:
			faces = f.looks()
		case e.scene.Depth == 0 || f.kind == floor || (f.kind == ceiling && f.chamber > 0):
			continue
		}
		s := &f.sheet
		m := meter{Flat, faces}
		for j, v := range s.nodeV {
			for k, u := range s.nodeU {
				if _, open := e.optics(f, u, v); !open && e.scene.Depth > 0 {
					continue
				}
				at := f.place(u, v)
				sum += s.shareU[k] * s.shareV[j] * e.free(w, lamp, part, at, m)
			}
		}
	}
	return sum
}

// free is what a lamp part gives with nothing between.
func (e *Engine) free(w *sight, lamp, part int, at r3.Vec, m meter) float64 {
	l := &e.lamps[lamp]
	if r3.Dot(l.Axis, r3.Sub(at, l.Centre)) < -snap {
		return 0
	}
	w.cut.Reset()
	p := m.horizon(w, l.parts[part].opening, at)
	if p == nil {
		return 0
	}
	w.pieces = append(w.pieces[:0], p)
	return e.shine(w, l, w.pieces, at, m, false)
}
