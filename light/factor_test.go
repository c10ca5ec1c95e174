package light

import (
	"math"
	"testing"
)

// rel fails where got is off want by more than the tolerance, relative.
func rel(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance*math.Max(math.Abs(want), 1e-12) {
		t.Errorf("%s: got %.10g, want %.10g (off by %.3g)", what, got, want, got/want-1)
	}
}

func TestParallelRectangles(t *testing.T) {
	all := spread{reference: catalog + ", C-11 and C-13"}
	for _, c := range []struct {
		a, b, c, want float64
	}{ // catalog of configuration factors C-11, values computed from its closed form
		{1, 1, 1, 0.1998248957}, {2, 1, 1, 0.2858753849}, {12, 12, 8, 0.3200566885},
		{20, 20, 10, 0.4152532836}, {4, 8, 8, 0.1166536918}, {10, 10, 1, 0.8269945224}, {1, 1, 10, 0.0031620568},
	} {
		r := [4]float64{0, c.a, 0, c.b}
		all.rel(t, "C-11", parallelRectangles(r, r, c.c), c.want, 1e-7)
	}
	for _, c := range []struct {
		a, b    [4]float64
		z, want float64
	}{ // C-13, offset rectangles
		{[4]float64{-6, 6, -6, 6}, [4]float64{-10, 10, -10, 10}, 10, 0.5017515077},
		{[4]float64{-6, 6, -6, 6}, [4]float64{6, 18, -6, 6}, 12, 0.0860504892},
		{[4]float64{-2, 2, -4, 4}, [4]float64{0, 10, 4, 10}, 8, 0.0714124487},
		{[4]float64{-6, 6, -6, 6}, [4]float64{-2, 2, -2, 2}, 8, 0.0445860449},
	} {
		all.rel(t, "C-13", parallelRectangles(c.a, c.b, c.z), c.want, 1e-8)
	}
	all.told(t, "rectangle to parallel rectangle")
}

func TestPerpendicularRectangles(t *testing.T) {
	all := spread{reference: catalog + ", C-14"}
	for _, c := range []struct{ w, h, l, want float64 }{ // C-14
		{1, 1, 1, 0.2000437761}, {2, 1, 1, 0.1164263014}, {1, 2, 1, 0.2328526028}, {12, 8, 12, 0.1699858279},
		{20, 10, 20, 0.1461866791}, {4, 8, 8, 0.2923733582}, {1, 0.5, 2, 0.1668553950},
	} {
		got := perpendicularRectangles([4]float64{0, c.w, 0, c.l}, [4]float64{0, c.h, 0, c.l})
		all.rel(t, "C-14", got, c.want, 1e-9)
	}
	all.told(t, "rectangle to rectangle at a right angle")
}
