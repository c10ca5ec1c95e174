package plan

import (
	"fmt"
	"math"

	"softloft/quantity"
)

const (
	flatWithin   = 0.005 // m: how far a surface's corner may lie off its plane
	cornersApart = 1e-4  // m
)

type vector [3]float64

func (a vector) minus(b vector) vector { return vector{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func (a vector) dot(b vector) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func (a vector) length() float64 { return math.Sqrt(a.dot(a)) }

// polygon complains of corners that bound no flat area.
func (c *checker) polygon(path string, lengths [][3]quantity.Length) {
	corners := make([]vector, len(lengths))
	for i, at := range lengths {
		corners[i] = vector{float64(at[0]), float64(at[1]), float64(at[2])}
	}
	if problem, hint := polygonMistake(corners); problem != "" {
		c.wrong(path, problem, hint)
	}
}

func polygonMistake(corners []vector) (problem, hint string) {
	const around = "give the corners in order around the edge"
	switch {
	case len(corners) < 3:
		return fmt.Sprintf("a surface with %d corners", len(corners)), "three or more"
	case len(corners) > mostCorners:
		return fmt.Sprintf("a surface with %d corners", len(corners)), fmt.Sprintf("at most %d", mostCorners)
	}
	for i, at := range corners {
		if j := (i + 1) % len(corners); at.minus(corners[j]).length() < cornersApart {
			return fmt.Sprintf("corners %d and %d of a surface are at the same place", i+1, j+1), "leave one out; the last corner joins the first by itself"
		}
	}
	normal, area := newell(corners)
	if area < cornersApart*cornersApart {
		return "the corners of a surface lie on one line or its edges cross: it has no area", around
	}
	if off, far := farthest(corners, normal); off > flatWithin {
		return fmt.Sprintf("corner %d of a surface lies %.3g m off the plane of the others", far+1, off), fmt.Sprintf("all corners in one plane, within %g mm", flatWithin*1000)
	}
	if i, j, crossed := crossing(corners, normal); crossed {
		return fmt.Sprintf("edges %d and %d of a surface cross", i+1, j+1), around
	}
	return "", ""
}

// newell returns the unit normal of a polygon and its area in m², by Newell's sum
// (Sutherland, Sproull, Schumacker 1974).
func newell(corners []vector) (normal vector, area float64) {
	from := corners[0]
	for i := range corners {
		a, b := corners[i].minus(from), corners[(i+1)%len(corners)].minus(from)
		normal[0] += (a[1] - b[1]) * (a[2] + b[2])
		normal[1] += (a[2] - b[2]) * (a[0] + b[0])
		normal[2] += (a[0] - b[0]) * (a[1] + b[1])
	}
	twice := normal.length()
	if twice == 0 {
		return normal, 0
	}
	return vector{normal[0] / twice, normal[1] / twice, normal[2] / twice}, twice / 2
}

// farthest returns the largest distance of a corner from the plane through the
// corners' mean.
func farthest(corners []vector, normal vector) (off float64, corner int) {
	var mean float64
	for _, at := range corners {
		mean += at.minus(corners[0]).dot(normal) / float64(len(corners))
	}
	for i, at := range corners {
		if d := math.Abs(at.minus(corners[0]).dot(normal) - mean); d > off {
			off, corner = d, i
		}
	}
	return off, corner
}

// crossing finds two edges that cross or touch without being neighbors, seen along
// the axis nearest to the normal.
func crossing(corners []vector, normal vector) (i, j int, crossed bool) {
	drop := 0
	for axis := range normal {
		if math.Abs(normal[axis]) > math.Abs(normal[drop]) {
			drop = axis
		}
	}
	n := len(corners)
	at := func(i int) [2]float64 {
		p := corners[i%n]
		return [2]float64{p[(drop+1)%3], p[(drop+2)%3]}
	}
	for i := range n {
		for j := i + 2; j < n; j++ {
			if (j+1)%n != i && segmentsMeet(at(i), at(i+1), at(j), at(j+1)) {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// segmentsMeet tells whether two segments have a point in common.
func segmentsMeet(a, b, c, d [2]float64) bool {
	turn := func(p, q, r [2]float64) float64 { return (q[0]-p[0])*(r[1]-p[1]) - (q[1]-p[1])*(r[0]-p[0]) }
	between := func(p, q, r [2]float64) bool {
		return turn(p, q, r) == 0 && min(p[0], q[0]) <= r[0] && r[0] <= max(p[0], q[0]) && min(p[1], q[1]) <= r[1] && r[1] <= max(p[1], q[1])
	}
	opposite := func(x, y float64) bool { return x > 0 && y < 0 || x < 0 && y > 0 }
	if opposite(turn(a, b, c), turn(a, b, d)) && opposite(turn(c, d, a), turn(c, d, b)) {
		return true
	}
	return between(a, b, c) || between(a, b, d) || between(c, d, a) || between(c, d, b)
}
