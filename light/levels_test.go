package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// An engine at levels is the engine of a scene with these lumens: straight light,
// exchange, lobes of two cloths, a reflecting crate, lamps that lie on the cloth.
func TestAtLevels(t *testing.T) {
	t.Parallel()
	crate := whiteBox(Cloth{Diffuse: 0.3, Back: 0.4, Through: 0.1})
	crate.Crate = &Crate{CellX: 0.1, CellY: 0.1, Depth: 0.1, Reflectance: 0.5}
	lying := whiteBox(Cloth{Diffuse: 0.3, Back: 0.4, Through: 0.1})
	lying.Lamps = append(lying.Lamps, downward(0, 0, 0, 0.4, 0.4, 9000))
	for name, s := range map[string]Scene{"one of everything": full(), "crate": crate, "on the cloth": lying} {
		whole := prepared(t, s)
		for _, levels := range [][]float64{{1, 0.25, 0, 0.7, 0.4}, {0.5, 0.5, 0.5, 0.5, 0.5}} {
			levels = levels[:len(s.Lamps)]
			other := s
			other.Lamps = append([]Lamp(nil), s.Lamps...)
			for i := range other.Lamps {
				other.Lamps[i].Lumens *= levels[i]
			}
			anew, dimmed := prepared(t, other), whole.AtLevels(levels)
			for _, r := range walkPoints {
				rel(t, name, dimmed.At(r.p, r.n, Flat), anew.At(r.p, r.n, Flat), 1e-9)
			}
			rel(t, name+", on the cloth", dimmed.clothFlux(), anew.clothFlux(), 1e-9)
		}
		anew := prepared(t, s)
		for _, r := range walkPoints { // the one it is called on stays
			if got, want := whole.At(r.p, r.n, Flat), anew.At(r.p, r.n, Flat); got != want {
				t.Errorf("%s: %v after, %v before", name, got, want)
			}
		}
		if z := whole.AtLevels(make([]float64, len(s.Lamps))).At(r3.Vec{Z: -2}, up, Flat); z != 0 {
			t.Errorf("%s: %g lx with all lamps off", name, z)
		}
	}
}

// One level for all, above 0; with no lamps nothing is dimmed.
func TestOneLevel(t *testing.T) {
	for _, c := range []struct {
		levels []float64
		want   float64
	}{{nil, 1}, {[]float64{1}, 1}, {[]float64{0.4, 0.4}, 0.4}, {[]float64{0.4, 0.5}, math.NaN()}, {[]float64{0, 0}, math.NaN()}} {
		if got := oneLevel(c.levels); got != c.want && !(math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("%v: got %g, want %g", c.levels, got, c.want)
		}
	}
}
