package head

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// form is a signed distance (m): negative inside. Far off it may tell less than it is.
type form func(p r3.Vec) float64

// solid is a form that lies in a sphere, and perhaps its mirror image on the other
// side of the face.
type solid struct {
	form     form
	center   r3.Vec
	radius   float64
	mirrored bool
}

func length(v r3.Vec) float64 { return math.Sqrt(r3.Norm2(v)) }

func ball(at r3.Vec, radius float64) solid {
	return solid{form: func(p r3.Vec) float64 { return length(r3.Sub(p, at)) - radius }, center: at, radius: radius}
}

// egg is an ellipsoid by its half axes; the distance is an estimate.
func egg(at, half r3.Vec) solid {
	least := math.Min(half.X, math.Min(half.Y, half.Z))
	inverse := v(1/half.X, 1/half.Y, 1/half.Z)
	return solid{form: func(p r3.Vec) float64 {
		d := r3.Sub(p, at)
		q := v(d.X*inverse.X, d.Y*inverse.Y, d.Z*inverse.Z)
		k0 := length(q)
		k1 := length(v(q.X*inverse.X, q.Y*inverse.Y, q.Z*inverse.Z))
		if k1 < 1e-9 {
			return -least
		}
		return k0 * (k0 - 1) / k1
	}, center: at, radius: math.Max(half.X, math.Max(half.Y, half.Z))}
}

// bar is a round bar whose radius goes from one end's to the other's.
func bar(a, b r3.Vec, ra, rb float64) solid {
	along := r3.Sub(b, a)
	long := r3.Norm2(along)
	return solid{form: func(p r3.Vec) float64 {
		d := r3.Sub(p, a)
		t := math.Max(0, math.Min(1, r3.Dot(d, along)/long))
		return length(r3.Sub(d, r3.Scale(t, along))) - (ra + t*(rb-ra))
	}, center: r3.Scale(0.5, r3.Add(a, b)), radius: math.Sqrt(long)/2 + math.Max(ra, rb)}
}

// both is a solid with its mirror image.
func both(s solid) solid {
	s.mirrored = true
	return s
}

// melt joins two distances with a seam about as wide as k (polynomial blend).
func melt(a, b, k float64) float64 {
	h := math.Max(0, k-math.Abs(a-b)) / k
	return math.Min(a, b) - h*h*k/4
}

// carve takes the second out of the first, with a rounded rim.
func carve(a, b, k float64) float64 { return -melt(-a, b, k) }
