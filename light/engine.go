package light

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/photometry"
	"softloft/shape"
)

// Engine is a scene worked out so far that any receiver can be asked. It does
// not change after Prepare and may be used from many goroutines.
type Engine struct {
	scene   Scene
	missing []string

	planes     []plane
	windows    []shape.Polygon // the clear part of every plane
	lamps      []lamp
	hides      occluders
	faces      []face
	rooms      []room
	patchCount int
	direct     [][]float64   // per face, at its points, lx; nil where not worked out
	single     [][][]float64 // per face and lamp, that of the lamp alone; nil where not kept
	exchange   exchange
	glows      []glow
	cloth      []float64 // arriving on the lowest floor's points, lx
	stamps     []stamp
	relays     []relay
	primary    int // the lowest cloth's own relay
	bounces    []bounce
	cell       *cellWalls // of a crate that reflects, or nil
	wallStamps []stamp    // at the crate's lower edge

	memory *sync.Pool
}

// stamp is what an opening that lies on the lowest cloth leaves below it:
// uniform, with edges of its own.
type stamp struct {
	opening   shape.Polygon
	luminance float64
}

// Prepare works out a scene. An error says what of it cannot be computed.
func Prepare(scene Scene) (*Engine, error) {
	if err := scene.check(); err != nil {
		return nil, err
	}
	e := &Engine{scene: scene}
	e.memory = &sync.Pool{New: func() any { return new(sight) }}
	e.planes = scene.planes()
	for _, p := range e.planes {
		e.windows = append(e.windows, e.level(scene.Clear, p.z))
	}
	for i, l := range scene.Lamps {
		e.lamps = append(e.lamps, e.prepareLamp(i, l))
	}
	e.gatherOccluders()
	e.listRelays()
	if c := scene.Crate; c != nil && c.Reflectance > 0 {
		e.cell = solveCell(c)
	}
	e.chambers()
	w := new(sight)
	e.directOnFaces(w)
	e.settle()
	e.relight(w)
	e.estimated()
	return e, nil
}

// light sets what leaves every face that a receiver may see.
func (e *Engine) light(w *sight) {
	last := len(e.planes) - 1
	for i := range e.faces {
		f := &e.faces[i]
		if f.kind == floor && f.chamber == last {
			e.cloth = e.arriving(i)
			e.listBounces()
			e.underside(f)
			e.addWalls(w, f)
		}
	}
	if !e.seenInside() {
		return
	}
	for i := range e.faces {
		f := &e.faces[i]
		if f.kind != floor && !allOpen(f.open) {
			e.glows = append(e.glows, e.glowOf(i))
		}
	}
}

// seenInside tells whether a receiver can see faces inside the box.
func (e *Engine) seenInside() bool {
	return e.planes[len(e.planes)-1].passes() > 0 || e.leaky(r3.Vec{Z: math.Inf(1)})
}

// underside adds the lowest cloth as seen from below.
func (e *Engine) underside(f *face) {
	p := e.planes[len(e.planes)-1]
	if p.bare {
		return
	}
	value := make([]float64, len(e.cloth))
	direct := e.direct[e.faceIndex(f)]
	diffuse := e.gainOf().diffuse
	for i, lux := range e.cloth {
		value[i] = diffuse * lux
		if len(e.bounces) == 0 { // little comes back: its lobe counts as Lambertian
			value[i] += p.cloth.ForwardPart * (lux - direct[i])
		}
	}
	clear := e.windows[len(e.planes)-1]
	g := glow{sheet: &f.sheet, value: value, u: 0, v: 1, normal: 2, level: 0, toward: -1, chamber: len(e.planes)}
	g.subject = subjectOf(clear, -1)
	e.glows = append(e.glows, g)
	for i := range e.lamps {
		l := &e.lamps[i]
		if opening := e.lying(l, 0); opening != nil {
			e.stamps = append(e.stamps, stamp{opening, l.luminance * diffuse})
		}
	}
}

func (e *Engine) faceIndex(f *face) int {
	for i := range e.faces {
		if &e.faces[i] == f {
			return i
		}
	}
	return -1
}

// glowOf is a face inside the box as a receiver may see it.
func (e *Engine) glowOf(index int) glow {
	f := &e.faces[index]
	lux := e.arriving(index)
	var other []float64
	if f.twin >= 0 {
		other = e.arriving(f.twin)
	}
	value := make([]float64, len(lux))
	s := &f.sheet
	for j, v := range s.nodeV {
		for i, u := range s.nodeU {
			k := j*len(s.nodeU) + i
			reflect, _ := e.optics(f, u, v)
			value[k] = reflect * lux[k]
			if other != nil && e.clears(u, v) {
				c := e.planes[f.chamber-1].cloth
				value[k] += c.Diffuse*other[k] + c.ForwardPart*(other[k]-e.direct[f.twin][k])
			}
		}
	}
	u, v := f.across()
	g := glow{sheet: s, value: value, u: u, v: v, normal: f.normal, level: f.level, toward: f.toward, chamber: f.chamber}
	g.subject = subjectOf(f.outline(), -1)
	return g
}

// outline of a face; its Normal() is against the way it looks.
func (f *face) outline() shape.Polygon {
	u0, u1 := f.patchU[0], f.patchU[len(f.patchU)-1]
	v0, v1 := f.patchV[0], f.patchV[len(f.patchV)-1]
	p := shape.Polygon{f.place(u0, v0), f.place(u1, v0), f.place(u1, v1), f.place(u0, v1)}
	if r3.Dot(p.Normal(), f.looks()) > 0 {
		p[1], p[3] = p[3], p[1]
	}
	return p
}

// At is the illuminance (lx) at p in box axes. Facing need not be a unit
// vector; one of no length, or a place that is no number, gives NaN.
func (e *Engine) At(p, facing r3.Vec, receptor Receptor) float64 {
	w := e.memory.Get().(*sight)
	defer e.memory.Put(w)
	return e.at(w, p, facing, receptor)
}

func (e *Engine) at(w *sight, p, facing r3.Vec, receptor Receptor) float64 {
	length := r3.Norm(facing)
	if !(length > 0) || math.IsInf(length, 0) || math.IsNaN(p.X+p.Y+p.Z) || math.IsInf(p.X+p.Y+p.Z, 0) {
		return math.NaN()
	}
	m := meter{receptor, r3.Scale(1/length, facing)}
	from := e.stationAt(p)
	sum := e.lampLight(w, from, m) + e.forwarded(w, from, m)
	for i := range e.glows {
		sum += e.seen(w, &e.glows[i], from, m)
	}
	for i := range e.stamps {
		sum += e.stamped(w, &e.stamps[i], from, m)
	}
	for i := range e.wallStamps {
		sum += e.walled(w, &e.wallStamps[i], from, m)
	}
	return sum
}

// stamped is what an opening that lies on the lowest cloth gives through it by
// diffusion, lx.
func (e *Engine) stamped(w *sight, s *stamp, from station, m meter) float64 {
	if from.at.Z >= 0 {
		return 0
	}
	l := lamp{Lamp: Lamp{Axis: r3.Vec{Z: -1}, Size: [2]float64{1, 1}, Lumens: s.luminance * math.Pi, Distribution: photometry.Lambertian{}}, lambertian: true, luminance: s.luminance}
	return e.shine(w, &l, e.seenBelow(w, s.opening, from.at, m), from.at, m, e.scene.Crate != nil)
}

// seenBelow are the pieces of a polygon under the cloth that are seen from
// below.
func (e *Engine) seenBelow(w *sight, p shape.Polygon, eye r3.Vec, m meter) []shape.Polygon {
	w.cut.Reset()
	what := subjectOf(p, -1)
	if what.polygon = m.horizon(w, p, eye); what.polygon == nil {
		return nil
	}
	w.pieces = append(w.pieces[:0], what.polygon)
	w.pieces = w.hide(w.pieces, eye, &what, e.hides.common)
	w.pieces = w.hide(w.pieces, eye, &what, e.hides.below)
	return w.pieces
}

// Vector is the light vector (lx) at p: it points to where the light comes
// from, and for any direction n the illuminances from before and from behind
// differ by Vector . n.
func (e *Engine) Vector(p r3.Vec) r3.Vec {
	w := e.memory.Get().(*sight)
	defer e.memory.Put(w)
	along := func(x r3.Vec) float64 {
		return e.at(w, p, x, Flat) - e.at(w, p, r3.Scale(-1, x), Flat)
	}
	return r3.Vec{X: along(r3.Vec{X: 1}), Y: along(r3.Vec{Y: 1}), Z: along(r3.Vec{Z: 1})}
}

// Missing lists what the scene asks for and the answers leave out, in plain words.
func (e *Engine) Missing() []string { return e.missing }
