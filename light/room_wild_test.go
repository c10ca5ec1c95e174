package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"softloft/shape"
)

// Whatever hangs and stands in a room, through its walls or against its ceiling, with
// corners in one line or crossing: no panic, and light that is a number from 0 up.
func TestRoomWild(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		number := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		place := func(name string) r3.Vec {
			return r3.Vec{X: number(-4, 4, name), Y: number(-4, 4, name), Z: math.Max(0, number(-1, 4, name))}
		}
		room := roomOf(number(0.5, 8, "x"), number(0.5, 8, "y"), number(0.5, 4, "z"), number(0, 1, "floor"), number(0, 0.95, "walls"), number(0, 0.95, "ceiling"))
		for range rapid.IntRange(0, 2).Draw(t, "surfaces") {
			s := SetWall{Reflectance: number(0, 1, "reflectance")}
			for range rapid.IntRange(0, 5).Draw(t, "corners") {
				s.Corners = append(s.Corners, place("corner"))
			}
			room.Surfaces = append(room.Surfaces, s)
		}
		scene := panelScene()
		scene.Depth = math.Max(0, number(-1, 1, "depth"))
		for i := range scene.Skirts {
			scene.Skirts[i] = math.Max(0, number(-1, 1, "skirt"))
		}
		if rapid.Bool().Draw(t, "crated") {
			scene.Crate = &Crate{CellX: 0.2, CellY: 0.2, Depth: number(0.05, 0.5, "crate")}
		}
		pose := shape.At(place("box")).Rotated(r3.Vec{X: 1}, number(-1, 1, "tilt"))
		h, err := prepareRoom(room, &scene, pose, 4)
		if err != nil {
			t.Fatal(err)
		}
		e, err := Prepare(scene)
		if err != nil {
			t.Fatal(err)
		}
		l := h.Light(e)
		for range 3 {
			p, n := place("meter"), place("facing")
			n.Z -= 1.5
			for _, receptor := range []Receptor{Flat, Dome, Cylinder, Scalar} {
				if lux := l.At(p, n, receptor); !(lux >= 0) || math.IsInf(lux, 0) {
					t.Fatalf("%v facing %v: %g lx", p, n, lux)
				}
			}
		}
	})
}

// What cannot be computed is told.
func TestRoomRefuses(t *testing.T) {
	for _, room := range []Room{roomOf(0, 3, 3, 0, 0, 0), roomOf(3, math.Inf(1), 3, 0, 0, 0), roomOf(3, 3, math.NaN(), 0, 0, 0), roomOf(3, 3, 3, 1.2, 0, 0), roomOf(3, 3, 3, 0.2, -0.1, 0), roomOf(3, 3, 3, 0.2, 0.1, math.NaN())} {
		if _, err := PrepareRoom(room, nil, shape.Identity()); err == nil {
			t.Errorf("%+v: no error", room)
		}
	}
	h := hallOf(t, roomOf(3, 3, 3, 0.5, 0.5, 0.5), nil, shape.Identity(), 4)
	l := lit(h, func(int) float64 { return 1 })
	for _, c := range [][2]r3.Vec{{{X: math.NaN()}, {Z: 1}}, {{Z: 1}, {}}, {{Z: math.Inf(1)}, {Z: 1}}} {
		if lux := l.At(c[0], c[1], Flat); !math.IsNaN(lux) {
			t.Errorf("%v: %g lx, want no number", c, lux)
		}
	}
	if lux := l.At(r3.Vec{X: 5, Z: 1}, up, Flat); lux != 0 {
		t.Errorf("outside of the room: %g lx", lux)
	}
}
