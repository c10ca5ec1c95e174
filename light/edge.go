package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// edgeVector is Lambert's edge formula (Lambert 1760, Photometria): half the
// sum over the edges of the angle each subtends at p times the unit vector at
// a right angle to the plane through p and the edge. For a Lambertian polygon
// of luminance L, L times the result is the light vector at p; its product
// with a receiver's unit normal is the illuminance where the whole polygon
// stands before the receiver. The corners must run so that polygon.Normal()
// points away from p. In the polygon's own plane it gives pi toward the
// emitting side's back for p inside, half of it on an edge, 0 outside.
func edgeVector(polygon shape.Polygon, p r3.Vec) r3.Vec {
	var sum r3.Vec
	if len(polygon) < 3 {
		return sum
	}
	last := r3.Sub(polygon[len(polygon)-1], p)
	for _, corner := range polygon {
		next := r3.Sub(corner, p)
		cross := r3.Cross(last, next)
		size := norm(cross)
		if size > 0 {
			angle := math.Atan2(size, r3.Dot(last, next))
			sum = r3.Add(sum, r3.Scale(angle/(2*size), cross))
		}
		last = next
	}
	return sum
}

// solidAngle of a convex polygon seen from p, sr, as a fan of triangles
// (van Oosterom and Strackee 1983, from memory).
func solidAngle(polygon shape.Polygon, p r3.Vec) float64 {
	if len(polygon) < 3 {
		return 0
	}
	sum := 0.0
	a := r3.Sub(polygon[0], p)
	b := r3.Sub(polygon[1], p)
	na, nb := norm(a), norm(b)
	for _, corner := range polygon[2:] {
		c := r3.Sub(corner, p)
		nc := norm(c)
		volume := math.Abs(r3.Dot(a, r3.Cross(b, c)))
		flat := na*nb*nc + r3.Dot(a, b)*nc + r3.Dot(a, c)*nb + r3.Dot(b, c)*na
		sum += 2 * math.Atan2(volume, flat)
		b, nb = c, nc
	}
	return sum
}

// norm is a vector's length, without care for overflow: places are meters.
func norm(v r3.Vec) float64 { return math.Sqrt(r3.Norm2(v)) }
