package shape

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Solid is a convex body that light does not pass.
type Solid interface {
	// Faces appends convex planar polygons that together cover exactly what
	// the solid hides when it is seen from eye: whatever lies beyond one of
	// them is hidden. An eye inside the solid sees no faces.
	Faces(eye r3.Vec, dst []Polygon) []Polygon
	// Crosses tells whether the straight way between two points passes through.
	Crosses(from, to r3.Vec) bool
	// Bound is a sphere that holds the solid: center and radius, m.
	Bound() (center r3.Vec, radius float64)
	// Extent are the lowest and highest coordinates of the solid, m.
	Extent() (low, high r3.Vec)
}

// Box is a rectangular block: Half are half its edges (m) along the pose's axes.
type Box struct {
	Pose Pose
	Half [3]float64
}

// Cylinder is a round bar between the centers of its two ends (m).
type Cylinder struct {
	From, To r3.Vec
	Radius   float64
}

// Bound is the sphere through the corners.
func (b Box) Bound() (r3.Vec, float64) {
	return b.Pose.Origin, r3.Norm(r3.Vec{X: b.Half[0], Y: b.Half[1], Z: b.Half[2]})
}

// Extent is that of the eight corners.
func (b Box) Extent() (low, high r3.Vec) {
	var corners Polygon
	for _, sign := range [2]float64{-1, 1} {
		corners = append(corners, b.face(2, sign)...)
	}
	return corners.Extent()
}

// Faces are the up to three faces that turn toward the eye.
func (b Box) Faces(eye r3.Vec, dst []Polygon) []Polygon {
	local := b.Pose.In(eye)
	at := [3]float64{local.X, local.Y, local.Z}
	for axis := range at {
		switch {
		case at[axis] > b.Half[axis]:
			dst = append(dst, b.face(axis, 1))
		case at[axis] < -b.Half[axis]:
			dst = append(dst, b.face(axis, -1))
		}
	}
	return dst
}

// face is the face across an axis on the side of the sign.
func (b Box) face(axis int, sign float64) Polygon {
	u, v := (axis+1)%3, (axis+2)%3
	corners := make(Polygon, 4)
	for i, s := range [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		var c [3]float64
		c[axis], c[u], c[v] = sign*b.Half[axis], s[0]*b.Half[u], s[1]*b.Half[v]
		corners[i] = b.Pose.Out(r3.Vec{X: c[0], Y: c[1], Z: c[2]})
	}
	return corners
}

// Bound is the sphere about the middle that holds both ends.
func (c Cylinder) Bound() (r3.Vec, float64) {
	half := r3.Scale(0.5, r3.Sub(c.To, c.From))
	return r3.Add(c.From, half), math.Hypot(r3.Norm(half), c.Radius)
}

// Extent is that of balls of the bar's radius about both ends.
func (c Cylinder) Extent() (low, high r3.Vec) {
	low, high = Polygon{c.From, c.To}.Extent()
	r := r3.Vec{X: c.Radius, Y: c.Radius, Z: c.Radius}
	return r3.Sub(low, r), r3.Add(high, r)
}

// Faces is one rectangle between the two lines in which the planes through the
// eye touch the bar: exact along the bar, cut square at its ends (the ends'
// roundness, at most a radius, is left out). An eye beyond an end within the
// bar's own circle sees the end as a square of the bar's width.
func (c Cylinder) Faces(eye r3.Vec, dst []Polygon) []Polygon {
	along := r3.Sub(c.To, c.From)
	long := length(along)
	if long == 0 || c.Radius <= 0 {
		return dst
	}
	axis := r3.Scale(1/long, along)
	toEye := r3.Sub(eye, c.From)
	at := r3.Dot(toEye, axis)
	off := r3.Sub(toEye, r3.Scale(at, axis))
	d := length(off)
	if d <= c.Radius {
		return c.endFace(axis, at, long, dst)
	}
	w := r3.Scale(1/d, off)
	side := r3.Cross(axis, w)
	sin := c.Radius / d
	// The touching points stand at radius*sin toward the eye and at
	// radius*cos to both sides.
	near, half := c.Radius*sin, c.Radius*math.Sqrt(1-sin*sin)
	a := r3.Add(c.From, r3.Add(r3.Scale(near, w), r3.Scale(-half, side)))
	b := r3.Add(c.From, r3.Add(r3.Scale(near, w), r3.Scale(half, side)))
	return append(dst, Polygon{a, r3.Add(a, along), r3.Add(b, along), b})
}

func (c Cylinder) endFace(axis r3.Vec, at, long float64, dst []Polygon) []Polygon {
	if at >= 0 && at <= long {
		return dst
	}
	end := c.From
	if at > long {
		end = c.To
	}
	u := perpendicular(axis)
	v := r3.Cross(axis, u)
	corner := func(a, b float64) r3.Vec {
		return r3.Add(end, r3.Add(r3.Scale(a*c.Radius, u), r3.Scale(b*c.Radius, v)))
	}
	return append(dst, Polygon{corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)})
}

// perpendicular is some unit vector at a right angle to a unit vector.
func perpendicular(axis r3.Vec) r3.Vec {
	pick := r3.Vec{X: 1}
	if math.Abs(axis.X) > 0.7 {
		pick = r3.Vec{Y: 1}
	}
	return r3.Unit(r3.Cross(axis, pick))
}
