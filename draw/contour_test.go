package draw

import (
	"math"
	"testing"
)

func gridOf(n int, f func(x, y float64) float64) Grid {
	g := Grid{NX: n, NY: n, Low: Point{-1, -1}, High: Point{1, 1}}
	for j := range n {
		for i := range n {
			p := g.place(i, j)
			g.Values = append(g.Values, f(p.X, p.Y))
		}
	}
	return g
}

// The contour of x² + y² at r² is a circle: each place within the chord's sag of a cell
// (h²/8r), its length 2πr (mathematics).
func TestContourOfCircle(t *testing.T) {
	const n, r = 41, 0.7
	h := 2.0 / (n - 1)
	all := Contours(gridOf(n, func(x, y float64) float64 { return x*x + y*y }), r*r)
	if len(all) != 1 || len(all[0].Paths) != 1 {
		t.Fatalf("%d contours, want one closed path", len(all))
	}
	path := all[0].Paths[0]
	if !near(path[0], path[len(path)-1]) {
		t.Error("the circle is not closed")
	}
	var long float64
	for i, p := range path {
		if off := math.Abs(math.Hypot(p.X, p.Y) - r); off > h*h/r {
			t.Errorf("a place lies %g off the circle", off)
		}
		if i > 0 {
			long += math.Hypot(p.X-path[i-1].X, p.Y-path[i-1].Y)
		}
	}
	if math.Abs(long-2*math.Pi*r) > 0.005*r {
		t.Errorf("length %g, want %g", long, 2*math.Pi*r)
	}
}

// The contours of x·y at ±c are two branches each (a hyperbola), and a plane's are
// straight, whatever the level (mathematics).
func TestContourOfSaddleAndPlane(t *testing.T) {
	saddle := gridOf(20, func(x, y float64) float64 { return x * y })
	for _, level := range []float64{0.2, -0.2} {
		if got := len(Contours(saddle, level)[0].Paths); got != 2 {
			t.Errorf("level %g: %d branches, want 2", level, got)
		}
	}
	for _, p := range Contours(gridOf(9, func(x, y float64) float64 { return 2*x + y }), 0.3)[0].Paths[0] {
		if math.Abs(2*p.X+p.Y-0.3) > 1e-12 {
			t.Errorf("%v is not on the line", p)
		}
	}
}

func TestContourWithoutValues(t *testing.T) {
	g := gridOf(3, func(x, y float64) float64 { return math.NaN() })
	if got := Contours(g, 0)[0].Paths; got != nil {
		t.Errorf("values that nobody knows have contours: %v", got)
	}
	if Contours(Grid{NX: 3, NY: 3, Values: []float64{1}}, 0) != nil {
		t.Error("a grid without all its nodes has contours")
	}
}

func TestContourLabels(t *testing.T) {
	var paths []Contour
	for _, c := range Contours(gridOf(30, func(x, y float64) float64 { return x*x + y*y }), 0.2, 0.5) {
		for i, path := range c.Paths {
			for k := range path {
				c.Paths[i][k] = Point{50 + 40*path[k].X, 50 - 40*path[k].Y}
			}
		}
		paths = append(paths, c)
	}
	labels := 0
	for _, item := range ContourItems(paths, pen(Thin), func(level float64) string { return "T4" }) {
		if item.Text == "T4" {
			labels++
		}
	}
	if labels != 2 {
		t.Errorf("%d labels, want one a level", labels)
	}
}

// Steps of an axis are 1, 2 or 5 times a power of ten, and hold what is plotted.
func TestRounded(t *testing.T) {
	for _, test := range []struct{ low, high, wantLow, wantHigh, step float64 }{
		{0, 10, 0, 10, 2}, {0.13, 0.97, 0, 1, 0.2}, {-3, 41, -10, 50, 10}, {7, 7, 6.5, 7.5, 0.2},
	} {
		r := rounded(test.low, test.high, 5)
		if r.low > test.low+1e-12 || r.high < test.high-1e-12 || math.Abs(r.step-test.step) > 1e-12 {
			t.Errorf("%g to %g: %+v, want steps of %g", test.low, test.high, r, test.step)
		}
	}
}

func TestChart(t *testing.T) {
	c := Chart{Title: "trim", AlongX: "trim, ft", AlongY: "stop", Limits: []Limit{{"asked", 4}},
		Series: []Series{{Name: "area", X: []float64{10, 12, 14, 16}, Y: []float64{5.6, 4.8, math.NaN(), 3.9}}}}
	p := c.Picture(Space{120, 80})
	lines := 0
	for _, item := range p.Items {
		if item.Layer == Light && item.Text == "" {
			lines++
		}
	}
	if lines != 2 { // two known values, a gap, a dot
		t.Errorf("%d pieces, want a line and a dot with a gap between", lines)
	}
	empty := Chart{Series: []Series{{X: []float64{1}, Y: []float64{math.NaN()}}}}.Picture(Space{120, 80})
	if last := empty.Items[len(empty.Items)-1]; last.Text != "no value is known" {
		t.Errorf("a chart of nothing says %q", last.Text)
	}
}

// In one cell with two high corners on a diagonal, a level under the mean of the four
// leaves the high corners joined and cuts off the low ones; a level over it cuts off the
// high ones (the bilinear surface's middle has the mean's value: mathematics).
func TestSaddle(t *testing.T) {
	for _, flip := range []bool{false, true} {
		g := Grid{NX: 2, NY: 2, Low: Point{0, 0}, High: Point{1, 1}, Values: []float64{1, 0, 0, 1}}
		if flip {
			g.Values = []float64{0, 1, 1, 0}
		}
		for _, level := range []float64{0.4, 0.6} {
			paths := Contours(g, level)[0].Paths
			if len(paths) != 2 {
				t.Fatalf("%d pieces, want 2", len(paths))
			}
			for _, path := range paths {
				i, j := int(math.Round((path[0].X+path[1].X)/2)), int(math.Round((path[0].Y+path[1].Y)/2))
				if high := g.at(i, j) > level; high != (level > 0.5) {
					t.Errorf("flip %v, level %g: the corner %d, %d is cut off", flip, level, i, j)
				}
			}
		}
	}
}
