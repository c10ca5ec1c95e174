package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// What is read at few nodes is within 0.1 % of what is read at every node, rms, and
// nowhere farther than a cell may bend, of all light on the area's height and on two
// walls of the panel's room.
func TestSmoothGrid(t *testing.T) {
	t.Parallel()
	e, h := panelRoom(t, patchesAlong)
	l := h.Light(e)
	const n = 33
	for _, c := range []struct {
		name      string
		center    r3.Vec
		a, b, way r3.Vec
	}{
		{"area", r3.Vec{Z: 1.5}, r3.Vec{X: 6}, r3.Vec{Y: 6}, r3.Vec{Z: 1}},
		{"north", r3.Vec{Y: 6, Z: 3}, r3.Vec{X: 10}, r3.Vec{Z: 6}, r3.Vec{Y: -1}},
		{"east", r3.Vec{X: 5, Z: 3}, r3.Vec{Y: 12}, r3.Vec{Z: 6}, r3.Vec{X: -1}},
	} {
		points := nodes(c.center, c.a, c.b, [2]int{n, n})
		readings := 0
		base := make([]float64, len(points))
		for i, p := range points {
			base[i] = e.At(h.pose.In(p), h.pose.InDirection(c.way), Flat)
		}
		got := smooth(n, base, func(nodes []int, give []float64) {
			readings += len(nodes)
			for i, k := range nodes {
				give[i] = l.At(points[k], c.way, Flat)
			}
		})
		var off spread
		for i, p := range points {
			off.add(base[i]+got[i], base[i]+l.At(p, c.way, Flat))
		}
		t.Logf("%s: %d readings of %d", c.name, readings, n*n)
		off.check(t, c.name, 0.001, evenEnough)
	}
}

// A grid of a parabola is exact from the first nodes; a step is read where it is.
func TestSmoothKnown(t *testing.T) {
	const n = 33
	value := func(k int) float64 {
		x, y := float64(k%n)/(n-1), float64(k/n)/(n-1)
		return 10 + x - 0.3*y + 0.2*x*y + 0.1*x*x
	}
	read := 0
	for k, got := range smooth(n, make([]float64, n*n), func(nodes []int, give []float64) {
		read += len(nodes)
		for i, k := range nodes {
			give[i] = value(k)
		}
	}) {
		if math.Abs(got-value(k)) > 1e-12 {
			t.Fatalf("node %d: %g, want %g", k, got, value(k))
		}
	}
	if read != 81 {
		t.Errorf("%d readings, want those of 9 x 9 nodes", read)
	}
	step := func(k int) float64 { return math.Floor(1.5 + float64(k%n)/n) }
	for k, got := range smooth(n, make([]float64, n*n), func(nodes []int, give []float64) {
		for i, k := range nodes {
			give[i] = step(k)
		}
	}) {
		if got != step(k) && math.Abs(float64(k%n)-n/2) > 1 {
			t.Fatalf("node %d: %g, want %g", k, got, step(k))
		}
	}
}
