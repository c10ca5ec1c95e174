package frame

import (
	"math"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
)

// triad is three unit vectors square to each other, or the columns of a rotation matrix.
type triad [3]r3.Vec

// of gives the vector whose components along the triad are v.
func (t *triad) of(v r3.Vec) r3.Vec {
	return r3.Vec{
		X: t[0].X*v.X + t[1].X*v.Y + t[2].X*v.Z,
		Y: t[0].Y*v.X + t[1].Y*v.Y + t[2].Y*v.Z,
		Z: t[0].Z*v.X + t[1].Z*v.Y + t[2].Z*v.Z,
	}
}

// along gives the components of v along the triad.
func (t *triad) along(v r3.Vec) r3.Vec {
	return r3.Vec{X: r3.Dot(t[0], v), Y: r3.Dot(t[1], v), Z: r3.Dot(t[2], v)}
}

// turn is the rotation by |v| radians about v.
func turn(v r3.Vec) quat.Number {
	angle := norm(v)
	half := angle / 2
	s := 0.5 - half*half/12 // sin(half)/angle for small angles, to 1e-20 below the switch
	if angle > 1e-4 {
		s = math.Sin(half) / angle
	}
	return quat.Number{Real: math.Cos(half), Imag: s * v.X, Jmag: s * v.Y, Kmag: s * v.Z}
}

// turned applies the world-axes spin v after q, and keeps unit length.
func turned(q quat.Number, v r3.Vec) quat.Number {
	p := quat.Mul(turn(v), q)
	return quat.Scale(1/quat.Abs(p), p)
}

// columns is the rotation matrix of a unit quaternion.
func columns(q quat.Number) triad {
	w, x, y, z := q.Real, q.Imag, q.Jmag, q.Kmag
	return triad{
		{X: 1 - 2*(y*y+z*z), Y: 2 * (x*y + w*z), Z: 2 * (x*z - w*y)},
		{X: 2 * (x*y - w*z), Y: 1 - 2*(x*x+z*z), Z: 2 * (y*z + w*x)},
		{X: 2 * (x*z + w*y), Y: 2 * (y*z - w*x), Z: 1 - 2*(x*x+y*y)},
	}
}

// vector is the rotation vector of a unit quaternion, at most π long.
func vector(q quat.Number) r3.Vec {
	if q.Real < 0 {
		q = quat.Scale(-1, q)
	}
	v := r3.Vec{X: q.Imag, Y: q.Jmag, Z: q.Kmag}
	s := r3.Norm(v)
	if s < 1e-12 {
		return r3.Scale(2, v)
	}
	return r3.Scale(2*math.Atan2(s, q.Real)/s, v)
}

// norm is the length of a vector, without the care for overflow that the general routine takes in hot loops: what
// overflows here is refused as infinite.
func norm(v r3.Vec) float64 { return math.Sqrt(r3.Norm2(v)) }

// finite reports whether no component is NaN or infinite.
func finite(vs ...r3.Vec) bool {
	for _, v := range vs {
		if !finiteNumber(v.X, v.Y, v.Z) {
			return false
		}
	}
	return true
}

func finiteNumber(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// component reads x, y or z of a vector.
func component(v r3.Vec, k int) float64 {
	switch k {
	case 0:
		return v.X
	case 1:
		return v.Y
	}
	return v.Z
}
