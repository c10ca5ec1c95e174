package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// What a crate's walls throw leaves at its lower edge. How much depends on what
// comes in at the top of each cell: Lambertian light as it is; light straight
// from a lamp, and its lobe, by how much more or less of it strikes the walls
// than of Lambertian light.

// gain is what a cloth and a reflecting crate under it do together, for 1 lx on
// the cloth: what leaves down Lambertian, in all, and what returns up.
type gain struct{ diffuse, all, back float64 }

// gainOf follows the light between the lowest cloth and its crate.
func (e *Engine) gainOf() gain {
	p := e.planes[len(e.planes)-1]
	r := 0.0
	if e.cell != nil {
		r = e.cell.returns
	}
	if p.bare {
		return gain{diffuse: 0, all: 1, back: r}
	}
	c := p.cloth
	passed := c.Through + c.ForwardPart + c.Diffuse
	all := passed / (1 - c.Back*r)
	return gain{diffuse: c.Diffuse + c.Back*r*all, all: all, back: c.Back + passed*r*all}
}

// addWalls adds the crate's lower edge as a face that glows.
func (e *Engine) addWalls(w *sight, f *face) {
	if e.cell == nil {
		return
	}
	g := e.gainOf()
	s := &f.sheet
	value := make([]float64, len(s.value))
	for j, v := range s.nodeV {
		for i, u := range s.nodeU {
			k := j*len(s.nodeU) + i
			value[k] = e.drives(w, f, u, v, e.cloth[k], g)
		}
	}
	z := -e.scene.Crate.Depth
	edge := e.level(e.scene.Clear, z)
	e.glows = append(e.glows, glow{sheet: s, value: value, u: 0, v: 1, normal: 2, level: z, toward: -1, chamber: len(e.planes), walls: e.cell, subject: subjectOf(edge, -1)})
	for i := range e.lamps {
		l := &e.lamps[i]
		if opening := e.lying(l, z); opening != nil {
			e.wallStamps = append(e.wallStamps, stamp{opening, l.luminance * g.all})
		}
	}
}

// drives is the Lambertian exitance, lm/m2, that strikes the crate's walls like
// what comes in at a place.
func (e *Engine) drives(w *sight, f *face, u, v, lux float64, g gain) float64 {
	c := e.planes[f.chamber].cloth
	straight := c.Through + c.ForwardPart
	if e.planes[f.chamber].bare {
		straight = 1
	}
	out := g.all * lux
	if straight == 0 {
		return out
	}
	from, m := station{f.place(u, v), f.chamber, true}, meter{Flat, f.looks()}
	if e.under(f.chamber, from.at) != nil {
		return out
	}
	for i := range e.lamps {
		if lux := e.oneLamp(w, i, from, m); lux > 0 {
			d := r3.Sub(e.lamps[i].Centre, from.at)
			struck := 1 - e.scene.Crate.passes(r3.Scale(1/norm(d), d))/e.scene.Crate.openShare()
			out += straight * lux * (struck/(1-e.cell.direct) - 1)
		}
	}
	return math.Max(0, out)
}

// estimated says what is an estimate: where two cloths pass light forward, and under
// a crate that reflects.
func (e *Engine) estimated() {
	if len(e.relays) > 1 {
		e.missing = append(e.missing, "light that two cloths pass forward counts as one wider lobe about the straight way from the lamp: levels below may be off by up to 2 %")
	}
	if e.cell == nil {
		return
	}
	p := e.planes[len(e.planes)-1]
	straight := p.cloth.Through+p.cloth.ForwardPart > 0
	for i := range e.lamps {
		straight = straight || p.bare && !e.lamps[i].touches
	}
	if straight {
		e.missing = append(e.missing, "what a crate's reflecting walls throw of light straight from the lamps is an estimate: levels below may be off by up to 7 %")
	}
}

// lying is the opening of a lamp that lies on the lowest plane, cut to the
// clear area and brought to a level; nil for any other lamp.
func (e *Engine) lying(l *lamp, z float64) shape.Polygon {
	if !l.touches || l.parts[0].chamber != len(e.planes)-1 {
		return nil
	}
	var cut shape.Cutter
	p := cut.Window(l.rect, r3.Vec{Z: -1}, e.windows[len(e.planes)-1])
	if p == nil {
		return nil
	}
	out := append(shape.Polygon(nil), p...)
	for i := range out {
		out[i].Z = z
	}
	return out
}

// walled is what the crate's walls give under an opening that lies on the
// cloth plane, lx.
func (e *Engine) walled(w *sight, s *stamp, from station, m meter) float64 {
	height := s.opening[0].Z - from.at.Z
	if height <= 0 {
		return 0
	}
	sum := 0.0
	for _, p := range e.seenBelow(w, s.opening, from.at, m) {
		sum += overPolygon(p, from.at, sampleRatio, func(x r3.Vec) float64 {
			d := r3.Sub(x, from.at)
			r := norm(d)
			share := e.cell.glows(math.Abs(d.X)/height, math.Abs(d.Y)/height)
			return s.luminance * share * height / (r * r * r) * m.weigh(r3.Scale(1/r, d))
		})
	}
	return sum
}
