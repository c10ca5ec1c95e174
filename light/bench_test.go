package light

import (
	"fmt"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// planScene is a whole plan's light: four or nine lamps with bodies, three
// ribs, one cloth, a crate.
func planScene(perSide int) Scene {
	s := boxScene()
	s.Cloths = []Cloth{{Diffuse: 0.35, Back: 0.45}}
	s.Crate = &Crate{CellX: 0.1, CellY: 0.1, Depth: 0.1}
	s.Lamps = nil
	for i := range perSide {
		for j := range perSide {
			at := func(k int) float64 { return 2.7 * ((float64(k)+0.5)/float64(perSide) - 0.5) }
			l := downward(at(i), at(j), 0.5, 0.3, 0.3, 10000)
			l.Body = [3]float64{0.18, 0.18, 0.06}
			s.Lamps = append(s.Lamps, l)
		}
	}
	return s
}

// area is what a plan asks for: n x n points at 1.5 m over the floor.
func area(e *Engine, n int, trim float64) (sum float64) {
	for i := range n {
		for j := range n {
			at := func(k int) float64 { return 6 * (float64(k)/float64(n-1) - 0.5) }
			sum += e.At(r3.Vec{X: at(i), Y: at(j), Z: 1.5 - trim}, up, Flat)
		}
	}
	return sum
}

var sink float64

// Every iteration edits trim, aim and one cloth value, so nothing can be remembered.
func benchmarkPlan(b *testing.B, s Scene, n int) {
	prepare := 0.0
	for i := 0; b.Loop(); i++ {
		step := float64(i%100) / 100
		s.Cloths[0].Diffuse = 0.3 + 0.01*step
		s.Lamps[0].Centre.X = -0.9 + 0.01*step
		e := prepared(b, s)
		prepare++
		sink += area(e, n, trim+0.1*step)
	}
}

func BenchmarkPlan(b *testing.B) {
	for _, lamps := range []int{2, 3} {
		for _, n := range []int{9, 17, 33} {
			b.Run(fmt.Sprintf("lamps%d/area%d", lamps*lamps, n), func(b *testing.B) { benchmarkPlan(b, planScene(lamps), n) })
		}
	}
}

func BenchmarkForward(b *testing.B) {
	for _, sides := range []float64{0.04, 0.8} {
		for _, sigma := range []float64{0.1, 0.3} {
			s := planScene(2)
			s.Cloths = []Cloth{{Diffuse: 0.2, ForwardPart: 0.3, ForwardSigma: sigma, Through: 0.05, Back: 0.3}}
			for i := range s.Sides {
				s.Sides[i].Inner = sides
			}
			b.Run(fmt.Sprintf("sides%g/sigma%g", sides, sigma), func(b *testing.B) { benchmarkPlan(b, s, 33) })
		}
	}
}

func BenchmarkPrepare(b *testing.B) {
	white := planScene(3)
	for i := range white.Sides {
		white.Sides[i].Inner = 0.8
	}
	white.Roof = Roof{Reflectance: 0.8}
	for name, s := range map[string]Scene{"open": planScene(3), "white": white} {
		b.Run(name, func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				s.Lamps[0].Centre.X = -0.9 + 0.01*float64(i%100)/100
				sink += prepared(b, s).cloth[0]
			}
		})
	}
}

func BenchmarkGather(b *testing.B) {
	for name, s := range map[string]Scene{"cloth": boxScene(), "crate": planScene(2)} {
		e := prepared(b, s)
		b.Run(name, func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				x := float64(i%33)/16.5 - 1
				sink += e.At(r3.Vec{X: 3 * x, Y: 1, Z: -3}, up, Flat)
			}
		})
	}
}
