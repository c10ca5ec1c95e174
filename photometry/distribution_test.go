package photometry

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// Whatever the type, the mirror and the steps, the distribution adds up to 1 lm/lm over
// the sphere. The sum is by midpoints over directions: a second route to the exact
// integral.
func TestDistributionAddsUpToOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.IntRange(1, 3).Draw(t, "type")
		vertical, horizontal := "0 10 25 45 60 90", rapid.SampledFrom([]string{"0", "0 20 90", "0 60 90 180", "0 100 200 300", "0 90 180 270 360", "90 120 180 270"}).Draw(t, "planes")
		if rapid.Bool().Draw(t, "up") {
			vertical = "0 20 90 120 150 180"
		}
		if kind > 1 {
			vertical, horizontal = "-90 -40 -5 10 60 90", rapid.SampledFrom([]string{"0 10 50 90", "-90 -30 0 20 60 90"}).Draw(t, "planes")
		}
		var rows []string
		pole := rapid.Float64Range(0, 1000).Draw(t, "pole")
		for range countFields(horizontal) {
			row := ""
			for j := range countFields(vertical) {
				value := rapid.Float64Range(0, 1000).Draw(t, "cd")
				if j == 0 {
					value = pole
				}
				row += fmt.Sprintf("%.3f ", value+1)
			}
			rows = append(rows, row)
		}
		text := typed(lm63(vertical, horizontal, rows...), kind)
		f, err := ReadFile("a.ies", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		if got := overSphere(f.Distribution, [4]goniometer{0, typeC, typeB, typeA}[kind]); math.Abs(got-1) > 1e-3 {
			t.Fatalf("%g lm/lm\n%s", got, text)
		}
		if s := f.Distribution.Scale(); !(s > 0 && s <= 1) {
			t.Fatalf("scale %g", s)
		}
	})
}

// overSphere adds up by midpoints of a goniometer's own angles, each with its solid
// angle: sin V for type C, cos V for A, cos H for B.
func overSphere(d Distribution, kind goniometer) float64 {
	const n, m = 360, 360
	sum := 0.0
	for i := range n {
		latitude := math.Pi * ((float64(i)+0.5)/n - 0.5)
		for j := range m {
			around := 2 * math.Pi * ((float64(j)+0.5)/m - 0.5)
			h, v := around, latitude
			switch kind {
			case typeB:
				h, v = latitude, around
			case typeC:
				v = latitude + math.Pi/2
			}
			sum += math.Cos(latitude) * d.Intensity(kind.direction(h, v))
		}
	}
	return sum * 2 * math.Pi * math.Pi / (n * m)
}

// The scale of a table is that of the closed form it was made from: a radian for
// Lambert's law, about half of the beam angle for a beam.
func TestScale(t *testing.T) {
	beam, err := NewBeam(60*degree, 90*degree)
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		from Distribution
		want float64
	}{"Lambert": {Lambertian{}, 1}, "beam": {beam, beam.Scale()}} {
		var v, cd strings.Builder
		for a := range 91 {
			fmt.Fprintf(&v, "%d ", a)
			fmt.Fprintf(&cd, "%.9f ", 1000*c.from.Intensity(typeC.direction(0, float64(a)*degree)))
		}
		f := read(t, "a.ies", lm63(v.String(), "0", cd.String()))
		if got := f.Distribution.Scale(); math.Abs(got/c.want-1) > 0.1 {
			t.Errorf("%s: scale %g, want about %g", name, got, c.want)
		}
	}
}

// A lamp that is turned by any angle about its aim gives what its file says: a round
// table has the same intensity all around, and a direction that is no number gives 0.
func TestRoundTable(t *testing.T) {
	f := read(t, "a.ies", z1)
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(0, math.Pi).Draw(t, "v")
		h := rapid.Float64Range(0, 2*math.Pi).Draw(t, "h")
		a, b := f.Distribution.Intensity(typeC.direction(h, v)), f.Distribution.Intensity(typeC.direction(0, v))
		if math.Abs(a-b) > 1e-12 {
			t.Fatalf("%g and %g", a, b)
		}
	})
	if got := f.Distribution.Intensity(r3.Vec{X: math.NaN(), Z: 1}); got != 0 {
		t.Errorf("%g toward no direction", got)
	}
}
