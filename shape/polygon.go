package shape

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Polygon is a planar polygon by its corners in order (m). Fewer than three
// corners are an empty one.
type Polygon []r3.Vec

// Rectangle is the parallelogram about a center with half edges u and v (m),
// counter-clockwise when seen from where u x v points.
func Rectangle(center, u, v r3.Vec) Polygon {
	return Polygon{
		r3.Sub(r3.Sub(center, u), v), r3.Sub(r3.Add(center, u), v),
		r3.Add(r3.Add(center, u), v), r3.Add(r3.Sub(center, u), v),
	}
}

// Normal is twice the polygon's area (m2) as a vector at a right angle to it,
// toward the side from which the corners run counter-clockwise (Newell).
func (p Polygon) Normal() r3.Vec {
	var n r3.Vec
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		n.X += (a.Y - b.Y) * (a.Z + b.Z)
		n.Y += (a.Z - b.Z) * (a.X + b.X)
		n.Z += (a.X - b.X) * (a.Y + b.Y)
	}
	return n
}

// Area in m2.
func (p Polygon) Area() float64 { return length(p.Normal()) / 2 }

// length is a vector's, without care for overflow: places are meters.
func length(v r3.Vec) float64 { return math.Sqrt(r3.Norm2(v)) }

// Bound is the sphere about the corners' mean that holds them all.
func (p Polygon) Bound() (center r3.Vec, radius float64) {
	if len(p) == 0 {
		return center, 0
	}
	for _, c := range p {
		center = r3.Add(center, c)
	}
	center = r3.Scale(1/float64(len(p)), center)
	for _, c := range p {
		radius = math.Max(radius, length(r3.Sub(c, center)))
	}
	return center, radius
}

// Extent are the lowest and highest coordinates of the corners (m).
func (p Polygon) Extent() (low, high r3.Vec) {
	if len(p) == 0 {
		return low, high
	}
	low, high = p[0], p[0]
	for _, c := range p[1:] {
		low = r3.Vec{X: math.Min(low.X, c.X), Y: math.Min(low.Y, c.Y), Z: math.Min(low.Z, c.Z)}
		high = r3.Vec{X: math.Max(high.X, c.X), Y: math.Max(high.Y, c.Y), Z: math.Max(high.Z, c.Z)}
	}
	return low, high
}

// Convex splits the polygon into convex ones that cover it: itself where it is
// convex, else triangles cut off ear by ear. A polygon that crosses itself
// gives some cover of it, no more is promised.
func (p Polygon) Convex() []Polygon {
	if len(p) < 3 {
		return nil
	}
	n := p.Normal()
	if p.turnsOneWay(n) {
		return []Polygon{p}
	}
	rest := append(Polygon(nil), p...)
	var out []Polygon
	for len(rest) > 3 {
		i := rest.ear(n)
		k := len(rest)
		out = append(out, Polygon{rest[(i+k-1)%k], rest[i], rest[(i+1)%k]})
		rest = append(rest[:i], rest[i+1:]...)
	}
	return append(out, rest)
}

func (p Polygon) turnsOneWay(n r3.Vec) bool {
	for i := range p {
		if p.turn(i, n) < -1e-12*r3.Norm(n) {
			return false
		}
	}
	return true
}

// turn is positive where the polygon bends outward at corner i.
func (p Polygon) turn(i int, n r3.Vec) float64 {
	k := len(p)
	a, b, c := p[(i+k-1)%k], p[i], p[(i+1)%k]
	return r3.Dot(r3.Cross(r3.Sub(b, a), r3.Sub(c, b)), n)
}

// ear is a corner whose triangle holds no other corner; 0 where none is found.
func (p Polygon) ear(n r3.Vec) int {
	k := len(p)
	for i := range p {
		if p.turn(i, n) <= 0 {
			continue
		}
		triangle := Polygon{p[(i+k-1)%k], p[i], p[(i+1)%k]}
		clear := true
		for j := range p {
			if j != i && j != (i+1)%k && j != (i+k-1)%k && triangle.covers(p[j], n) {
				clear = false
				break
			}
		}
		if clear {
			return i
		}
	}
	return 0
}

// Covers tells whether a point in the plane of a convex polygon lies in it or
// on its edge.
func (p Polygon) Covers(x r3.Vec) bool { return len(p) >= 3 && p.covers(x, p.Normal()) }

func (p Polygon) covers(x, n r3.Vec) bool {
	slack := -1e-12 * r3.Norm2(n)
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		if r3.Dot(r3.Cross(r3.Sub(b, a), r3.Sub(x, a)), n) < slack {
			return false
		}
	}
	return true
}
