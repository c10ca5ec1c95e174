package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// A lamp that isn't Lambertian may send most of its light in few directions. Of an
// opening that is wide for that, a receiver sees spots and rings: the places from
// which the steep parts of the distribution point at it. The sum over the opening is
// cut into triangles no larger than what the distribution does in their directions,
// and these are cut further only where four parts tell another sum than the whole.

// inLamp is a place in a lamp's own axes: along U, along V, before the opening.
func (l *lamp) inLamp(p r3.Vec) (u, v, ahead float64) {
	d := r3.Sub(p, l.Centre)
	return r3.Dot(d, l.U), r3.Dot(d, l.V), r3.Dot(d, l.Axis)
}

// reaches tells quickly that none of a lamp's light goes toward a place: it lies
// behind the opening, or beyond the reach of the beam from all of it.
func (l *lamp) reaches(p r3.Vec) bool {
	u, v, ahead := l.inLamp(p)
	if ahead < -snap {
		return false
	}
	if math.IsInf(l.reach, 1) {
		return true
	}
	away := l.reach*math.Max(0, ahead) + snap
	u, v = math.Max(0, math.Abs(u)-l.Size[0]/2), math.Max(0, math.Abs(v)-l.Size[1]/2)
	return u*u+v*v <= away*away
}

// beamOn is the part of a piece of the opening from which the beam reaches a place.
func (l *lamp) beamOn(w *sight, p shape.Polygon, eye r3.Vec) shape.Polygon {
	if math.IsInf(l.reach, 1) {
		return p
	}
	u, v, ahead := l.inLamp(eye)
	away := l.reach*math.Max(0, ahead) + snap
	clip := func(at, half float64, along r3.Vec) {
		for _, side := range [2]float64{1, -1} {
			if p != nil && side*at+half > away {
				p = w.cut.Clip(p, r3.Sub(eye, r3.Scale(side*away, along)), r3.Scale(side, along))
			}
		}
	}
	clip(u, l.Size[0]/2, l.U)
	clip(v, l.Size[1]/2, l.V)
	return p
}

// slopesAlong are how far the beam's reach goes along x or y, per meter down, for
// that component of the aim; infinite where it is not bounded. An upright plane with
// the slope X touches the cone of half angle r about the aim (d, -z) where
//
//	(d - X z)^2 = (1 + X^2) sin^2 r
func (l *lamp) slopesAlong(d float64) [2]float64 {
	z := -l.Axis.Z
	sin2 := l.reach * l.reach / (1 + l.reach*l.reach)
	if z <= 0 || math.IsInf(l.reach, 1) || z*z <= sin2 {
		return [2]float64{math.Inf(-1), math.Inf(1)}
	}
	root := math.Sqrt(sin2 * math.Max(0, d*d+z*z-sin2))
	return [2]float64{(d*z - root) / (z*z - sin2), (d*z + root) / (z*z - sin2)}
}

// tile is a triangle with its integral by one rule.
type tile struct {
	a, b, c r3.Vec
	sum     float64
	fine    bool // needs no proof
}

// beamSum is a sum over an opening under way.
type beamSum struct {
	lamp  *lamp
	eye   r3.Vec
	ahead float64 // of the eye before the opening
	grain float64 // the widest step over its distance for Lambertian light
	value func(r3.Vec) float64
	tiles []tile
	total float64
}

// overBeam integrates over a convex piece of an opening.
func (w *sight) overBeam(l *lamp, p shape.Polygon, eye r3.Vec, grain float64, value func(r3.Vec) float64) float64 {
	_, _, ahead := l.inLamp(eye)
	b := beamSum{lamp: l, eye: eye, ahead: math.Max(0, ahead), grain: grain, value: value, tiles: w.tiles[:0]}
	for i := 2; i < len(p); i++ {
		b.cut(p[0], p[i-1], p[i], deepest+3)
	}
	w.tiles = b.tiles
	sum := 0.0
	for i := range b.tiles {
		sum += b.refined(&b.tiles[i], deepest)
	}
	return sum
}

// fineness is the side of a triangle over how far the distribution changes little in
// its directions.
func (b *beamSum) fineness(p, q, r r3.Vec) float64 {
	side, middle := longest(p, q, r)
	away := norm(r3.Sub(middle, b.eye))
	angle, around := math.Acos(math.Min(1, b.ahead/away)), math.Atan(0.67*side/away)
	return side / (away * math.Min(b.grain, tileWide*b.lamp.Distribution.Grain(angle-around, angle+around)))
}

// longest is a triangle's longest side, and its middle.
func longest(a, b, c r3.Vec) (side float64, middle r3.Vec) {
	middle = r3.Scale(1.0/3, r3.Add(a, r3.Add(b, c)))
	return math.Sqrt(max(r3.Norm2(r3.Sub(b, a)), r3.Norm2(r3.Sub(c, b)), r3.Norm2(r3.Sub(a, c)))), middle
}

// quarters calls for the four triangles between a triangle's corners and the
// middles of its sides.
func quarters(a, b, c r3.Vec, each func(a, b, c r3.Vec)) {
	ab, bc, ca := r3.Scale(0.5, r3.Add(a, b)), r3.Scale(0.5, r3.Add(b, c)), r3.Scale(0.5, r3.Add(c, a))
	each(a, ab, ca)
	each(ab, b, bc)
	each(ca, bc, c)
	each(ab, bc, ca)
}

// cut lists tiles none of which is larger than that.
func (b *beamSum) cut(p, q, r r3.Vec, depth int) {
	fineness := b.fineness(p, q, r)
	if depth > 0 && fineness > 1 {
		quarters(p, q, r, func(p, q, r r3.Vec) { b.cut(p, q, r, depth-1) })
		return
	}
	sum := byCubature(p, q, r, b.value)
	b.tiles = append(b.tiles, tile{p, q, r, sum, fineness <= tileFine})
	b.total += sum
}

const (
	// tileWide is the side of a tile over the distribution's grain.
	tileWide = 3
	// tileChange is the difference of a tile's sum and its quarters', over the whole
	// sum, from which they are cut again. What is left of the error is a 63rd of it
	// where the rule's degree is reached.
	tileChange = 1e-2
	// tileLeast is the share of the whole sum under which a tile doesn't count.
	tileLeast = 1e-5
	// tileFine is the share of a tile's side that needs no proof.
	tileFine = 0.3
)

// refined is a tile's integral, cut further where that changes it.
func (b *beamSum) refined(t *tile, depth int) float64 {
	if depth == 0 || t.fine || math.Abs(t.sum) <= tileLeast*b.total {
		return t.sum
	}
	var parts [4]tile
	n, sum := 0, 0.0
	quarters(t.a, t.b, t.c, func(p, q, r r3.Vec) {
		parts[n] = tile{p, q, r, byCubature(p, q, r, b.value), b.fineness(p, q, r) <= tileFine}
		sum += parts[n].sum
		n++
	})
	change := sum - t.sum
	if math.Abs(change) <= tileChange*b.total {
		return sum + change/63
	}
	sum = 0
	for i := range parts {
		sum += b.refined(&parts[i], depth-1)
	}
	return sum
}
