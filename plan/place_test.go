package plan

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"softloft/kit"
	"softloft/quantity"
	"softloft/shape"
)

// TestInRoom: the check's own way of placing a point of the box agrees with package shape's.
func TestInRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle := rapid.Float64Range(-math.Pi, math.Pi)
		place := rapid.Float64Range(-10, 10)
		height := quantity.Length(rapid.Float64Range(0, 10).Draw(t, "height"))
		b := &Box{
			At: [2]quantity.Length{quantity.Length(place.Draw(t, "x")), quantity.Length(place.Draw(t, "y"))}, ClothAt: &height,
			Turn: quantity.Angle(angle.Draw(t, "turn")),
			Tilt: &Tilt{About: Axis(rapid.SampledFrom([]string{"x", "y"}).Draw(t, "about")), By: quantity.Angle(angle.Draw(t, "tilt"))},
		}
		pose := shape.At(r3.Vec{X: float64(b.At[0]), Y: float64(b.At[1]), Z: float64(height)}).Rotated(r3.Vec{Z: 1}, float64(b.Turn))
		about := pose.X
		if b.Tilt.About == "y" {
			about = pose.Y
		}
		pose = pose.Rotated(about, float64(b.Tilt.By))
		at := vector{place.Draw(t, "ax"), place.Draw(t, "ay"), place.Draw(t, "az")}
		want := pose.Out(r3.Vec{X: at[0], Y: at[1], Z: at[2]})
		if got := b.inRoom(at, kit.Kit{}); got.minus(vector{want.X, want.Y, want.Z}).length() > 1e-12*30 {
			t.Fatalf("at %v: %v, want %v", at, got, want)
		}
	})
}

// TestClothHeight: trim is the height of the lowest edge. Source: softloft's contract.
func TestClothHeight(t *testing.T) {
	for _, c := range []struct {
		box  string
		want float64
	}{
		{"trim: 4 m", 4},
		{"cloth_at: 4 m, skirt: 1 m", 4},
		{"trim: 4 m, skirt: 1 m", 5},
		{"trim: 4 m, skirt: {north: 0.05 m}, crate: crate-4x4", 4 + 4*0.0254},
		{"trim: 4 m, skirt: {north: 1 m, east: 2 m}, crate: crate-4x4", 6},
	} {
		f, mistakes := Read("p", []byte("{softloft: 1, box: {size: [3 m, 3 m], "+c.box+"}}"), testKit(t))
		if len(mistakes) > 0 {
			t.Fatal(mistakes)
		}
		if got := float64(f.Plan.Box.ClothHeight(f.Kit)); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.box, got, c.want)
		}
	}
}

// TestPolygons: a flat simple polygon is taken however it is turned and wherever it starts;
// a regular one with two corners swapped crosses itself.
func TestPolygons(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(4, 12).Draw(t, "corners")
		pose := shape.At(r3.Vec{X: 100, Y: -50}).Rotated(r3.Vec{X: 1}, rapid.Float64Range(0, 6).Draw(t, "a")).Rotated(r3.Vec{Z: 1}, rapid.Float64Range(0, 6).Draw(t, "b"))
		corners := make([]vector, n)
		for i := range corners {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			radius := rapid.Float64Range(1, 5).Draw(t, "radius")
			at := pose.Out(r3.Vec{X: radius * cos, Y: radius * sin})
			corners[i] = vector{at.X, at.Y, at.Z}
		}
		if problem, _ := polygonMistake(corners); problem != "" {
			t.Fatalf("a star-shaped polygon: %s", problem)
		}
		swapped := make([]vector, n)
		for i := range swapped {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			at := pose.Out(r3.Vec{X: 3 * cos, Y: 3 * sin})
			swapped[i] = vector{at.X, at.Y, at.Z}
		}
		swapped[1], swapped[2] = swapped[2], swapped[1]
		if problem, _ := polygonMistake(swapped); !strings.Contains(problem, "cross") && !strings.Contains(problem, "no area") {
			t.Fatalf("two corners swapped: %q", problem)
		}
		bent := append([]vector{}, corners...)
		up := pose.Out(r3.Vec{Z: 1})
		origin := pose.Out(r3.Vec{})
		for axis, x := range []float64{up.X - origin.X, up.Y - origin.Y, up.Z - origin.Z} {
			bent[0][axis] += x
		}
		if problem, _ := polygonMistake(bent); !strings.Contains(problem, "off the plane") {
			t.Fatalf("a corner lifted by 1 m: %q", problem)
		}
	})
}
