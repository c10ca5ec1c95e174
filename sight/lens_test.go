package sight

import (
	"math"
	"testing"
)

// A published table of angles of view for common focal lengths on 36 × 24 mm (2006,
// read): width, height, diagonal in degrees, printed to a tenth.
func TestFieldsOfView(t *testing.T) {
	for _, row := range []struct{ lens, across, up, diagonal float64 }{
		{10, 121.9, 100.4, 130.4}, {14, 104.3, 81.2, 114.2}, {18, 90.0, 67.4, 100.5}, {20, 84.0, 61.9, 94.5},
		{24, 73.7, 53.1, 84.1}, {28, 65.5, 46.4, 75.4}, {35, 54.4, 37.8, 63.4}, {50, 39.6, 27.0, 46.8},
		{60, 33.4, 22.6, 39.7}, {85, 23.9, 16.1, 28.6}, {100, 20.4, 13.7, 24.4}, {135, 15.2, 10.2, 18.2},
	} {
		got := frameOf(row.lens/1000, [2]float64{0.036, 0.024}, 1).field()
		for _, pair := range [3][2]float64{{float64(got.Horizontal), row.across}, {float64(got.Vertical), row.up}, {float64(got.Diagonal), row.diagonal}} {
			if math.Abs(pair[0]-pair[1]) > 0.0501 {
				t.Errorf("%g mm: %.3f°, the table has %g°", row.lens, pair[0], pair[1])
			}
		}
	}
}

// A published handbook text for cinematographers (read): the tangent of half the viewing
// angle is half the aperture times the squeeze ratio over the focal length; at 2:1 the
// field is doubled in the horizontal only.
func TestSqueeze(t *testing.T) {
	plain, squeezed := frameOf(0.05, [2]float64{0.022, 0.018}, 1), frameOf(0.05, [2]float64{0.022, 0.018}, 2)
	if squeezed.up != plain.up || squeezed.across != 2*plain.across {
		t.Errorf("%v squeezed is %v", plain, squeezed)
	}
	if got, want := squeezed.field().Horizontal, 2*math.Atan(0.5*0.022*2/0.05)*180/math.Pi; math.Abs(float64(got)-want) > 1e-12 {
		t.Errorf("%g°, %g° is due", float64(got), want)
	}
}
