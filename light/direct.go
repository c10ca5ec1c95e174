package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// lampLight is what the lamps alone give at a station, lx.
func (e *Engine) lampLight(w *sight, from station, m meter) float64 {
	sum := 0.0
	for i := range e.lamps {
		sum += e.oneLamp(w, i, from, m)
	}
	return sum
}

// oneLamp is what one lamp gives at a station, lx.
func (e *Engine) oneLamp(w *sight, index int, from station, m meter) float64 {
	l := &e.lamps[index]
	if l.Lumens == 0 || !l.reaches(from.at) {
		return 0
	}
	sum := 0.0
	for k := range l.parts {
		p := &l.parts[k]
		if l.touches && from.inside {
			continue // all of its flux goes into the cloth it touches
		}
		w.cut.Reset()
		what := l.whole
		if what.polygon = m.horizon(w, p.opening, from.at); what.polygon == nil {
			continue
		}
		if from.inside || (from.at.Z < 0 && p.chamber < len(e.planes)) {
			pieces, v := e.through(w, from, &what, p.chamber, !p.inside)
			sum += v.factor * e.shine(w, l, pieces, from.at, m, v.crated)
		}
		if !from.inside && !e.holds(from.at, p) {
			sum += e.shine(w, l, e.around(w, from.at, &what), from.at, m, false)
		}
	}
	return sum
}

// holds tells quickly that nothing of a part can be seen past the box from
// below: every straight way to it goes through the lowest plane. An opening as wide
// as the box that lies in that plane counts as held, whatever way its corners round.
func (e *Engine) holds(eye r3.Vec, p *part) bool {
	if eye.Z >= 0 || p.chamber == len(e.planes) {
		return false
	}
	for _, c := range p.opening {
		t := eye.Z / (eye.Z - c.Z)
		x, y := eye.X+t*(c.X-eye.X), eye.Y+t*(c.Y-eye.Y)
		if math.Abs(x) > e.scene.Size[0]/2+snap || math.Abs(y) > e.scene.Size[1]/2+snap {
			return false
		}
	}
	return true
}

// shine is what the visible pieces of a lamp's opening give, lx.
func (e *Engine) shine(w *sight, l *lamp, pieces []shape.Polygon, eye r3.Vec, m meter, crated bool) float64 {
	if crated {
		pieces = e.scene.Crate.split(w, pieces, eye)
	}
	sum := 0.0
	for _, p := range pieces {
		if l.lambertian && m.closed() && !crated {
			sum += l.luminance * m.uniform(p, eye)
			continue
		}
		sum += e.sampled(w, l, p, eye, m, crated)
	}
	return sum
}

// sampled adds up a piece of an opening by quadrature.
func (e *Engine) sampled(w *sight, l *lamp, p shape.Polygon, eye r3.Vec, m meter, crated bool) float64 {
	grain := sampleRatio
	if crated { // its share falls steeply
		grain *= closer
	}
	if m.receptor == Cylinder { // its response has a point at the axis
		grain *= closer
	}
	value := func(x r3.Vec) float64 {
		perArea, distance, direction := l.toward(x, eye)
		if perArea == 0 {
			return 0
		}
		back := r3.Scale(-1, direction)
		value := perArea * m.weigh(back) / (distance * distance)
		if crated {
			value *= e.scene.Crate.passes(back)
		}
		return value
	}
	if l.lambertian || l.scale >= 1 {
		return overPolygon(p, eye, grain, value)
	}
	if p = l.beamOn(w, p, eye); p == nil {
		return 0
	}
	return w.overBeam(l, p, eye, grain, value)
}

const (
	// sampleRatio is the widest step over an opening, over its distance.
	sampleRatio = 0.5
	// closer narrows that where the response is less smooth.
	closer = 0.6
	// deepest is how often a triangle is cut in four, for a point very near.
	deepest = 7
)

// overPolygon integrates a smooth function over a convex polygon, finer where
// the eye is near.
func overPolygon(p shape.Polygon, eye r3.Vec, grain float64, value func(r3.Vec) float64) float64 {
	sum := 0.0
	for i := 2; i < len(p); i++ {
		sum += overTriangle(p[0], p[i-1], p[i], eye, grain, deepest, value)
	}
	return sum
}

func overTriangle(a, b, c, eye r3.Vec, grain float64, depth int, value func(r3.Vec) float64) float64 {
	middle := r3.Scale(1.0/3, r3.Add(a, r3.Add(b, c)))
	away2 := r3.Norm2(r3.Sub(middle, eye))
	longest2 := max(r3.Norm2(r3.Sub(b, a)), r3.Norm2(r3.Sub(c, b)), r3.Norm2(r3.Sub(a, c)))
	if depth > 0 && longest2 > grain*grain*away2 {
		ab, bc, ca := r3.Scale(0.5, r3.Add(a, b)), r3.Scale(0.5, r3.Add(b, c)), r3.Scale(0.5, r3.Add(c, a))
		return overTriangle(a, ab, ca, eye, grain, depth-1, value) + overTriangle(ab, b, bc, eye, grain, depth-1, value) +
			overTriangle(ca, bc, c, eye, grain, depth-1, value) + overTriangle(ab, bc, ca, eye, grain, depth-1, value)
	}
	return byCubature(a, b, c, value)
}

// byCubature is a triangle's integral by the rule of degree five.
func byCubature(a, b, c r3.Vec, value func(r3.Vec) float64) float64 {
	area := norm(r3.Cross(r3.Sub(b, a), r3.Sub(c, a))) / 2
	sum := 0.0
	for _, q := range cubature {
		x := r3.Add(r3.Add(r3.Scale(q.a, a), r3.Scale(q.b, b)), r3.Scale(1-q.a-q.b, c))
		sum += q.weight * value(x)
	}
	return sum * area
}
