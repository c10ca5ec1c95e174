package light

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// A veil is something opaque and without end, held up between a place and the source
// to learn which part of the light comes from where: half of a plane, a plane with a
// window in it. It stands so near the place that only the directions count.

// endless is how far a veil goes, over how far it stands from the place.
const endless = 1e5

// veiled is an engine with more that stands between the box and what is below it.
func (e *Engine) veiled(veils ...shape.Polygon) *Engine {
	c := *e
	c.hides.below = slices.Clone(e.hides.below)
	for _, v := range veils {
		c.hides.below = append(c.hides.below, polygonOccluder(v, -1))
	}
	return &c
}

// halfVeil covers, before a place that looks along a unit axis, all directions that
// lean toward a unit vector at a right angle to it by more than an angle with this
// tangent.
func halfVeil(at, axis, toward r3.Vec, tangent, distance float64) shape.Polygon {
	side := r3.Cross(axis, toward)
	far := endless * distance
	edge := r3.Add(at, r3.Scale(distance, r3.Add(axis, r3.Scale(tangent, toward))))
	return shape.Rectangle(r3.Add(edge, r3.Scale(far, toward)), r3.Scale(far, toward), r3.Scale(far, side))
}

// wholeVeil covers all directions on the side of a unit axis.
func wholeVeil(at, axis, across r3.Vec, distance float64) shape.Polygon {
	far := endless * distance
	return shape.Rectangle(r3.Add(at, r3.Scale(distance, axis)), r3.Scale(far, across), r3.Scale(far, r3.Cross(axis, across)))
}

// pane is a rectangle in space by its center and half edges, at right angles.
type pane struct{ center, u, v r3.Vec }

func (p pane) polygon() shape.Polygon { return shape.Rectangle(p.center, p.u, p.v) }

// area in m2.
func (p pane) area() float64 { return 4 * norm(r3.Cross(p.u, p.v)) }

// near is the pane as seen from a place, moved so close to it that nothing else stands
// between.
func (p pane) near(at r3.Vec) pane {
	const close = 0.02
	return pane{r3.Add(at, r3.Scale(close, r3.Sub(p.center, at))), r3.Scale(close, p.u), r3.Scale(close, p.v)}
}

// frame are the veils that leave only a pane to be seen from a place: four around it,
// and one behind the place.
func (p pane) frame(at r3.Vec) []shape.Polygon {
	q := p.near(at)
	off := r3.Sub(q.center, at)
	distance := norm(off)
	far := endless * distance
	u, v := r3.Scale(1/norm(q.u), q.u), r3.Scale(1/norm(q.v), q.v)
	beside := func(a, b, half r3.Vec) shape.Polygon { // beyond the edge toward a
		edge := r3.Add(q.center, half)
		return shape.Rectangle(r3.Add(edge, r3.Scale(far, a)), r3.Scale(far, a), r3.Scale(far, b))
	}
	back := shape.Rectangle(r3.Sub(at, off), r3.Scale(far, u), r3.Scale(far, v))
	return []shape.Polygon{
		beside(u, v, q.u), beside(r3.Scale(-1, u), v, r3.Scale(-1, q.u)),
		beside(v, u, q.v), beside(r3.Scale(-1, v), u, r3.Scale(-1, q.v)), back,
	}
}
