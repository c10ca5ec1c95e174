package shape

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func vec(t *rapid.T, label string, low, high float64) r3.Vec {
	g := rapid.Float64Range(low, high)
	return r3.Vec{X: g.Draw(t, label+" x"), Y: g.Draw(t, label+" y"), Z: g.Draw(t, label+" z")}
}

// Going out and in again changes nothing, and keeps lengths; turning a quarter
// about z takes x to y (right-hand rule).
func TestPose(t *testing.T) {
	if got := Turn(r3.Vec{X: 1}, r3.Vec{Z: 1}, math.Pi/2); r3.Norm(r3.Sub(got, r3.Vec{Y: 1})) > 1e-15 {
		t.Errorf("quarter turn of x about z: %v", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		axis := vec(t, "axis", -1, 1)
		p := At(vec(t, "origin", -9, 9)).Rotated(axis, rapid.Float64Range(-4, 4).Draw(t, "angle"))
		x := vec(t, "x", -9, 9)
		if d := r3.Norm(r3.Sub(p.In(p.Out(x)), x)); d > 1e-12 {
			t.Fatalf("off by %g", d)
		}
		if d := r3.Norm(p.OutDirection(x)) - r3.Norm(x); math.Abs(d) > 1e-12 {
			t.Fatalf("longer by %g", d)
		}
	})
}

// An L of 2 x 2 less 1 x 1 covers 3 and stays inside itself.
func TestConvexCover(t *testing.T) {
	l := Polygon{{X: 0}, {X: 2}, {X: 2, Y: 1}, {X: 1, Y: 1}, {X: 1, Y: 2}, {Y: 2}}
	sum := 0.0
	for _, p := range l.Convex() {
		sum += p.Area()
		if p.Covers(r3.Vec{X: 1.5, Y: 1.5}) {
			t.Error("covers the notch")
		}
	}
	if math.Abs(sum-3) > 1e-12 {
		t.Errorf("area %g, want 3", sum)
	}
	square := Rectangle(r3.Vec{}, r3.Vec{X: 1}, r3.Vec{Y: 2})
	if n := len(square.Convex()); n != 1 || math.Abs(square.Area()-8) > 1e-12 {
		t.Errorf("%d pieces, area %g", n, square.Area())
	}
}

// What clipping leaves and what clipping from the other side leaves add up.
func TestClipKeepsArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Rectangle(vec(t, "center", -1, 1), r3.Vec{X: 1, Z: 0.3}, r3.Vec{Y: 0.7})
		at, n := vec(t, "at", -1, 1), vec(t, "normal", -1, 1)
		var c Cutter
		sum := c.Clip(p, at, n).Area() + c.Clip(p, at, r3.Scale(-1, n)).Area()
		if r3.Norm(n) > 1e-9 && math.Abs(sum-p.Area()) > 1e-12 {
			t.Fatalf("area %g of %g", sum, p.Area())
		}
	})
}

// What stays visible beside solids and faces is what rays reach: the pieces
// against a count of straight ways that meet nothing.
func TestHideAgainstRays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		eye := vec(t, "eye", -0.5, 0.5)
		target := Rectangle(r3.Vec{Z: 4}, r3.Vec{X: 1}, r3.Vec{Y: 1})
		box := Box{Pose: At(vec(t, "box", -0.5, 0.5)).Rotated(vec(t, "axis", -1, 1), 1), Half: [3]float64{0.3, 0.2, 0.1}}
		box.Pose.Origin.Z = rapid.Float64Range(1.2, 3.3).Draw(t, "height")
		bar := Cylinder{From: r3.Vec{X: -9, Y: rapid.Float64Range(-1, 1).Draw(t, "y"), Z: 2}, To: r3.Vec{X: 9, Z: 2.5}, Radius: 0.15}
		sheet := Rectangle(vec(t, "sheet", -0.4, 0.4), r3.Vec{X: 0.3}, r3.Vec{Y: 0.3, Z: 0.1})
		for i := range sheet {
			sheet[i].Z += 1.5
		}
		var c Cutter
		pieces := c.Hide([]Polygon{target}, eye, sheet)
		for _, s := range []Solid{box, bar} {
			for _, f := range s.Faces(eye, nil) {
				pieces = c.Hide(pieces, eye, f)
			}
		}
		visible := 0.0
		for _, p := range pieces {
			visible += p.Area()
		}
		const n = 60
		reached := 0
		for i := range n {
			for j := range n {
				x := r3.Vec{X: 2*(float64(i)+0.5)/n - 1, Y: 2*(float64(j)+0.5)/n - 1, Z: 4}
				if !sheet.Crosses(eye, x) && !box.Crosses(eye, x) && !bar.Crosses(eye, x) {
					reached++
				}
			}
		}
		if rays := 4 * float64(reached) / n / n; math.Abs(rays-visible) > 0.05 {
			t.Fatalf("pieces %g, rays %g", visible, rays)
		}
	})
}

// A face hides nothing before it nor in its own plane, and all straight behind.
func TestHideEnds(t *testing.T) {
	face := Rectangle(r3.Vec{Z: 1}, r3.Vec{X: 1}, r3.Vec{Y: 1})
	var c Cutter
	for _, row := range []struct{ z, want float64 }{{0.5, 1}, {1, 1}, {2, 0}} {
		target := Rectangle(r3.Vec{Z: row.z}, r3.Vec{X: 0.5}, r3.Vec{Y: 0.5})
		sum := 0.0
		for _, p := range c.Hide([]Polygon{target}, r3.Vec{}, face) {
			sum += p.Area()
		}
		if math.Abs(sum-row.want) > 1e-12 {
			t.Errorf("at %g m: %g m2 seen, want %g", row.z, sum, row.want)
		}
	}
}

// A bar's width is exact along it: the shadow of a radius r at d from the eye
// spans the angle 2 asin(r/d) (elementary geometry).
func TestBarShadow(t *testing.T) {
	bar := Cylinder{From: r3.Vec{Y: -5, Z: 2}, To: r3.Vec{Y: 5, Z: 2}, Radius: 0.5}
	f := bar.Faces(r3.Vec{}, nil)
	if len(f) != 1 {
		t.Fatalf("%d faces", len(f))
	}
	half := math.Atan2(math.Abs(f[0][0].X), f[0][0].Z)
	if math.Abs(half-math.Asin(0.25)) > 1e-12 {
		t.Errorf("half angle %g, want %g", half, math.Asin(0.25))
	}
}

// Broken input hides nothing and never panics.
func TestDegenerate(t *testing.T) {
	var c Cutter
	target := Rectangle(r3.Vec{Z: 1}, r3.Vec{X: 1}, r3.Vec{Y: 1})
	for _, face := range []Polygon{nil, {{}}, {{}, {X: 1}}, {{X: 1}, {X: 2}, {X: 3}}, {{}, {}, {}}} {
		if n := len(c.Hide([]Polygon{target}, r3.Vec{}, face)); n != 1 {
			t.Errorf("%v: %d pieces", face, n)
		}
		if face.Crosses(r3.Vec{Z: -1}, r3.Vec{Z: 1}) {
			t.Errorf("%v crosses", face)
		}
	}
	if got := (Cylinder{}).Faces(r3.Vec{Z: 1}, nil); got != nil {
		t.Errorf("a bar of no size has faces %v", got)
	}
	if (Cylinder{}).Crosses(r3.Vec{Z: 1}, r3.Vec{Z: -1}) {
		t.Error("a bar of no size is crossed")
	}
}
