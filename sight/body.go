package sight

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// body is what one part looks like in the room.
type body struct {
	part   string
	ofBox  bool // moves with the box
	ofRig  bool // is to stay out of the shot; false for the building's own points, and for cables to the box
	solids []solid
}

// solid is one convex piece of a body. Corners are those of a convex hull that holds it:
// exact for polygons and boxes, the square bar about a round one.
type solid struct {
	polygon shape.Polygon // or
	solid   shape.Solid
	corners []r3.Vec
	center  r3.Vec
	radius  float64
	hides   bool // thin lines hide nothing
}

func flat(p shape.Polygon) solid {
	center, radius := p.Bound()
	return solid{polygon: p, corners: p, center: center, radius: radius, hides: true}
}

func block(b shape.Box) solid {
	center, radius := b.Bound()
	s := solid{solid: b, center: center, radius: radius, hides: true}
	for i := range 8 {
		v := r3.Vec{X: b.Half[0], Y: b.Half[1], Z: b.Half[2]}
		if i&1 != 0 {
			v.X = -v.X
		}
		if i&2 != 0 {
			v.Y = -v.Y
		}
		if i&4 != 0 {
			v.Z = -v.Z
		}
		s.corners = append(s.corners, b.Pose.Out(v))
	}
	return s
}

// thinnestHider is the radius (m) from which on a round bar counts as hiding what is
// behind it: ropes don't.
const thinnestHider = 0.01

// bar is a round bar between two places.
func bar(from, to r3.Vec, radius float64) solid {
	c := shape.Cylinder{From: from, To: to, Radius: radius}
	center, reach := c.Bound()
	hull := block(squareBar(from, to, radius))
	return solid{solid: c, corners: hull.corners, center: center, radius: reach, hides: radius >= thinnestHider}
}

// squareBar is the square bar about two places, with an edge of two radii.
func squareBar(from, to r3.Vec, radius float64) shape.Box {
	along := r3.Sub(to, from)
	long := r3.Norm(along)
	pose := shape.At(r3.Scale(0.5, r3.Add(from, to)))
	if long > 0 {
		x := r3.Scale(1/long, along)
		side := r3.Vec{Z: 1}
		if math.Abs(x.Z) > 0.9 {
			side = r3.Vec{X: 1}
		}
		y := r3.Unit(r3.Cross(side, x))
		pose.X, pose.Y, pose.Z = x, y, r3.Cross(x, y)
	}
	return shape.Box{Pose: pose, Half: [3]float64{long / 2, radius, radius}}
}

// lump stands for a fitting whose size nobody gave: an upright block that hides nothing.
func lump(at r3.Vec, size float64) solid {
	s := block(shape.Box{Pose: shape.At(at), Half: [3]float64{size / 2, size / 2, size / 2}})
	s.hides = false
	return s
}

// strips is into how many strips the near half of a thick round bar is cut.
const strips = 4

// surface is faces for what is looked at, not looked past: the near half of a thick
// round bar as strips between the two lines that bound its outline, so that a cloth that
// it lies in cuts it about where it does.
func (s *solid) surface(eye r3.Vec, into []shape.Polygon) []shape.Polygon {
	c, round := s.solid.(shape.Cylinder)
	if !round || !s.hides {
		return s.faces(eye, into)
	}
	along := r3.Sub(c.To, c.From)
	axis := r3.Unit(along)
	toEye := r3.Sub(eye, c.From)
	off := r3.Sub(toEye, r3.Scale(r3.Dot(toEye, axis), axis))
	distance := r3.Norm(off)
	if distance <= c.Radius {
		return s.faces(eye, into)
	}
	w := r3.Scale(1/distance, off)
	side := r3.Cross(axis, w)
	most := math.Acos(c.Radius / distance) // from the line nearest to the eye to the outline
	last := c.From
	for i := 0; i <= strips; i++ {
		sin, cos := math.Sincos(most * (2*float64(i)/strips - 1))
		next := r3.Add(c.From, r3.Scale(c.Radius, r3.Add(r3.Scale(cos, w), r3.Scale(sin, side))))
		if i > 0 {
			into = append(into, shape.Polygon{last, r3.Add(last, along), r3.Add(next, along), next})
		}
		last = next
	}
	return into
}

// faces are the convex polygons that cover what the solid hides from the eye.
func (s *solid) faces(eye r3.Vec, into []shape.Polygon) []shape.Polygon {
	if s.solid == nil {
		return append(into, s.polygon)
	}
	return s.solid.Faces(eye, into)
}
