package draw

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"softloft/shape"
)

// What is hidden lies in the face's outline and behind its plane, what is seen doesn't,
// and together they are the whole way: tested at places along it, by the sides of the
// outline one after the other and by the ray that meets the plane.
func TestHidden(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.Float64Range(-2, 2)
		vector := func(name string) r3.Vec {
			return r3.Vec{X: number.Draw(t, name+"x"), Y: number.Draw(t, name+"y"), Z: number.Draw(t, name+"z")}
		}
		corners := shape.Polygon{vector("p"), vector("q"), vector("r")}
		f, ok := faceOf(corners)
		if !ok || f.normal.Z < 0.05 {
			t.Skip("seen on edge")
		}
		a, b := vector("a"), vector("b")
		seen, hidden := visible(a, b, []face{f})
		var whole float64
		for _, s := range append(append([]span(nil), seen...), hidden...) {
			whole += s.to - s.from
		}
		if math.Abs(whole-1) > 1e-9 {
			t.Fatalf("seen and hidden are %g of the way", whole)
		}
		for i := range 50 {
			at := (float64(i) + 0.5) / 50
			p := between(a, b, at)
			depth, inside := meets(corners, p)
			if math.Abs(depth) < 1e-4 || math.Abs(inside) < 1e-4 {
				continue // on the outline or on the face
			}
			want := depth > 0 && inside > 0
			if got := contains(hidden, at); got != want {
				t.Fatalf("at %g of the way: hidden %v, want %v", at, got, want)
			}
		}
	})
}

// meets returns how far over p the plane of a triangle is, and the least barycentric
// coordinate of p in it, seen along z: positive inside.
func meets(c shape.Polygon, p r3.Vec) (depth, inside float64) {
	det := (c[1].Y-c[2].Y)*(c[0].X-c[2].X) + (c[2].X-c[1].X)*(c[0].Y-c[2].Y)
	k := ((c[1].Y-c[2].Y)*(p.X-c[2].X) + (c[2].X-c[1].X)*(p.Y-c[2].Y)) / det
	l := ((c[2].Y-c[0].Y)*(p.X-c[2].X) + (c[0].X-c[2].X)*(p.Y-c[2].Y)) / det
	m := 1 - k - l
	return k*c[0].Z + l*c[1].Z + m*c[2].Z - p.Z, math.Min(k, math.Min(l, m))
}

func contains(spans []span, at float64) bool {
	for _, s := range spans {
		if at > s.from && at < s.to {
			return true
		}
	}
	return false
}

// Two faces hide no less than each of them alone.
func TestHiddenByTwo(t *testing.T) {
	square := func(u, w float64) face {
		f, _ := faceOf(shape.Polygon{{X: u, Z: w}, {X: u + 1, Z: w}, {X: u + 1, Y: 1, Z: w}, {X: u, Y: 1, Z: w}})
		return f
	}
	seen, hidden := visible(r3.Vec{X: -1, Y: 0.5}, r3.Vec{X: 3, Y: 0.5}, []face{square(0, 1), square(0.5, 2)})
	var dark float64
	for _, s := range hidden {
		dark += s.to - s.from
	}
	if math.Abs(dark-1.5/4) > 1e-5 || len(seen) != 2 {
		t.Errorf("hidden %g of the way in view %v, want 0.375", dark, seen)
	}
}
