package shape

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Pose places one set of axes in another: X, Y and Z are the inner axes' unit
// vectors and Origin their origin (m), all seen from the outer axes.
type Pose struct {
	Origin  r3.Vec
	X, Y, Z r3.Vec
}

// Identity is the pose of axes that coincide.
func Identity() Pose {
	return Pose{X: r3.Vec{X: 1}, Y: r3.Vec{Y: 1}, Z: r3.Vec{Z: 1}}
}

// At is Identity moved to origin.
func At(origin r3.Vec) Pose {
	p := Identity()
	p.Origin = origin
	return p
}

// Rotated is the pose turned by angle (rad, right-hand rule) about an axis of
// the outer axes through the pose's own origin, which keeps its place.
func (p Pose) Rotated(axis r3.Vec, angle float64) Pose {
	p.X, p.Y, p.Z = Turn(p.X, axis, angle), Turn(p.Y, axis, angle), Turn(p.Z, axis, angle)
	return p
}

// Out takes a point from the inner to the outer axes.
func (p Pose) Out(v r3.Vec) r3.Vec { return r3.Add(p.Origin, p.OutDirection(v)) }

// OutDirection takes a direction from the inner to the outer axes.
func (p Pose) OutDirection(v r3.Vec) r3.Vec {
	return r3.Vec{
		X: v.X*p.X.X + v.Y*p.Y.X + v.Z*p.Z.X,
		Y: v.X*p.X.Y + v.Y*p.Y.Y + v.Z*p.Z.Y,
		Z: v.X*p.X.Z + v.Y*p.Y.Z + v.Z*p.Z.Z,
	}
}

// In takes a point from the outer to the inner axes.
func (p Pose) In(v r3.Vec) r3.Vec { return p.InDirection(r3.Sub(v, p.Origin)) }

// InDirection takes a direction from the outer to the inner axes.
func (p Pose) InDirection(v r3.Vec) r3.Vec {
	return r3.Vec{X: r3.Dot(v, p.X), Y: r3.Dot(v, p.Y), Z: r3.Dot(v, p.Z)}
}

// Turn rotates v by angle (rad, right-hand rule) about axis, which need not be
// a unit vector. An axis of no length turns nothing. Rodrigues' formula.
func Turn(v, axis r3.Vec, angle float64) r3.Vec {
	length := r3.Norm(axis)
	if length == 0 {
		return v
	}
	k := r3.Scale(1/length, axis)
	sin, cos := math.Sincos(angle)
	turned := r3.Add(r3.Scale(cos, v), r3.Scale(sin, r3.Cross(k, v)))
	return r3.Add(turned, r3.Scale(r3.Dot(k, v)*(1-cos), k))
}
