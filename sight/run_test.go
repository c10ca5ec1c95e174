package sight

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/shape"
)

const standing = "cameras: [{name: A, at: [-8 m, 0 m, 1 m], looks: [0 m, 0 m, 1 m], lens: %s, sensor: [24 mm, 16 mm], tilt: [0 deg, %s]}]\n"

// A level cloth over a level lens comes into frame over its far edge: at a distance D the
// frame's upper edge is D·tan(tilt + atan(h/2f)) over the lens; and the lens whose edge
// meets the cloth's height z is f = h/(2·tan(atan(z/D) - tilt)). Closed form; the far edge
// of the 4 m cloth is at 10 m, its planned height over the lens 4 m.
func TestClearTrimAndLensInClosedForm(t *testing.T) {
	for _, c := range []struct{ lens, tilt float64 }{{20, 0}, {35, 0}, {35, 10}, {50, 12}, {85, 20}, {12, 0}} {
		text := sheetOfCloth + fmt.Sprintf(standing, fmt.Sprintf("%g mm", c.lens), fmt.Sprintf("%g deg", c.tilt))
		a, _ := Run(derive(t, text))
		camera := a.Cameras[0]
		tilt := c.tilt * degree
		if got, want := float64(camera.ClearTrim), 1+10*math.Tan(tilt+math.Atan(8/c.lens)); math.Abs(got-want) > 2*trimError {
			t.Errorf("%v: clear trim %.6f m, %.6f m is due", c, got, want)
		}
		if got, want := float64(camera.WidestClear), 8/math.Tan(math.Atan(0.4)-tilt); math.Abs(got/want-1) > 2e-5 {
			t.Errorf("%v: widest lens %.5f mm, %.5f mm is due", c, got, want)
		}
		if seen := len(camera.Sees) > 0; seen != (1+10*math.Tan(tilt+math.Atan(8/c.lens)) > 5) {
			t.Errorf("%v: sees %v", c, camera.Sees)
		}
	}
}

// A lens that tilts past the zenith is cleared by no trim, and no lens helps where the
// axis itself meets the cloth.
func TestNothingClears(t *testing.T) {
	a, found := Run(derive(t, sheetOfCloth+fmt.Sprintf(standing, "20 mm", "80 deg")))
	if c := a.Cameras[0]; finding.Known(float64(c.ClearTrim)) || finding.Known(float64(c.WidestClear)) || len(c.Sees) != 1 {
		t.Errorf("%+v", c)
	}
	if finding.Overall(found) != finding.Over {
		t.Error("a box in shot is not over")
	}
}

// Raised to the clear trim the box is out of every frame, and a millimeter lower it isn't.
func TestClearTrimOfTheExample(t *testing.T) {
	r := derive(t, example(t))
	w, err := wayOf(&r.Plan.Cameras[0])
	if err != nil {
		t.Fatal(err)
	}
	trim := clearTrim(r, w)
	planned := plannedTrim(r)
	for by, want := range map[float64]bool{0: false, 0.05: false, 1: false, -0.001: true, -0.05: true, -0.5: true} {
		if got := boxSeen(r, w, trim-planned+by); got != want {
			t.Errorf("%g m over the clear trim the box is seen: %t", by, got)
		}
	}
}

func parts(a *Answer, prefix string) int {
	seen := map[string]bool{}
	for _, s := range a.Cameras[0].Sees {
		if strings.HasPrefix(s.Part, prefix) {
			seen[s.Part] = true
		}
	}
	return len(seen)
}

// The example keeps its tie-offs on a walkway, because on the floor they are in shot
// (the scene's own words); box, lines and tie-offs stay out as it stands.
func TestTieOffsOnTheFloorShow(t *testing.T) {
	up, _ := Run(derive(t, example(t)))
	for _, prefix := range []string{"line.", "frame.", "crate", "cloth", "side.", "lamp.", "rib.", "drop."} {
		if n := parts(up, prefix); n != 0 {
			t.Errorf("%d parts %s are in shot", n, prefix)
		}
	}
	down, found := Run(derive(t, strings.ReplaceAll(example(t), ", 21 ft], allows", ", 3 ft], allows")))
	if parts(down, "line.") != 12 {
		t.Errorf("%d ropes and tie-offs are in shot, 12 are due", parts(down, "line."))
	}
	if finding.Overall(found) != finding.Over {
		t.Error("tie-offs in shot are not over")
	}
	low, _ := Run(derive(t, strings.ReplaceAll(example(t), "trim: 17 ft", "trim: 11 ft")))
	if parts(low, "crate") != 1 || parts(low, "frame.") == 0 {
		t.Errorf("at 11 ft crate and frame are not in shot: %v", low.Cameras[0].Sees)
	}
}

// A box on an orbit with fourfold symmetry is seen alike from all four sides.
func TestFourSidesAreAlike(t *testing.T) {
	a, _ := Run(derive(t, strings.ReplaceAll(example(t), "trim: 17 ft", "trim: 11 ft")))
	var corners []string
	for _, s := range a.Cameras[0].Sees {
		if strings.HasPrefix(s.Part, "frame.corner.") {
			corners = append(corners, fmt.Sprintf("%.6f", float64(s.ToDeg-s.FromDeg)))
		}
	}
	if len(corners) == 0 || len(corners)%4 != 0 {
		t.Fatalf("%d stretches of corners", len(corners))
	}
	for _, each := range corners {
		if each != corners[0] {
			t.Errorf("corners are seen over %v", corners)
			break
		}
	}
}

func TestSameBytes(t *testing.T) {
	text := strings.ReplaceAll(example(t), ", 21 ft], allows", ", 3 ft], allows")
	var last []byte
	for range 2 {
		a, _ := Run(derive(t, text))
		data, err := json.Marshal(a)
		if err != nil {
			t.Fatal(err)
		}
		if last != nil && !bytes.Equal(last, data) {
			t.Error("two runs differ")
		}
		last = data
	}
}

// What hides the cloth from a mark, by clipping and by a count of rays to 300 × 300
// places of the cloth.
func TestHiddenShareAgainstRays(t *testing.T) {
	cloth := flat(shape.Rectangle(r3.Vec{Z: 5}, r3.Vec{X: 2}, r3.Vec{Y: 2}))
	for _, c := range []struct{ eye, from r3.Vec }{{r3.Vec{X: 1.2, Z: 1.6}, r3.Vec{Z: 1.2}}, {r3.Vec{X: 0.9, Y: 0.5, Z: 1.5}, r3.Vec{X: 0.2, Z: 0.6}}, {r3.Vec{X: 4, Z: 1.5}, r3.Vec{Z: 1.6}}, {r3.Vec{X: 0.3, Y: 0.3, Z: 3}, r3.Vec{Z: 1.4}}} {
		w := &way{kind: "stands", at: c.eye, looks: r3.Vec{Z: 1.5}, frame: frame{0.3, 0.2}}
		crew := crewAt(w, 0, 0)
		const n = 300
		count := 0
		for i := range n * n {
			to := r3.Vec{X: 4*(float64(i%n)+0.5)/n - 2, Y: 4*(float64(i/n)+0.5)/n - 2, Z: 5}
			for j := range crew {
				if crew[j].solid.Crosses(c.from, to) {
					count++
					break
				}
			}
		}
		got, want := hiddenShare(&cloth, c.from, crew), float64(count)/(n*n)
		if math.Abs(got-want) > 4.0/n*math.Sqrt(math.Max(want, 1.0/n)) {
			t.Errorf("from %v: %.5f is hidden, the rays say %.5f", c.from, got, want)
		}
	}
}

// What a camera can't be: findings in words, never a panic, never nothing.
func TestTrouble(t *testing.T) {
	const room = "room: {size: [20 m, 10 m, 8 m], surfaces: [{name: flat, corners: [[3 m, 3 m, 0 m], [5 m, 3 m, 0 m], [5 m, 3 m, 3 m], [3 m, 3 m, 3 m]]}]}\n"
	for _, c := range []struct {
		camera, id string
		result     finding.Result
	}{
		{"{name: A, at: [1 m, 1 m, 5 m], looks: [5 m, 0 m, 1 m], lens: 35 mm}", "sight.inside.A", finding.Over},
		{"{name: A, orbit: {radius: 6 m, height: 1.5 m}, looks: [0 m, 0 m, 1 m], lens: 35 mm}", "sight.wall.A", finding.Over},
		{"{name: A, orbit: {radius: 4.5 m, height: 1.5 m}, looks: [0 m, 0 m, 1 m], lens: 35 mm}", "sight.set.A", finding.Over},
		{"{name: A, at: [7 m, 1 m, 1 m], looks: [5 m, 0 m, 1 m]}", "sight.camera.A", finding.NotKnown},
		{"{name: A, at: [7 m, 1 m, 1 m], lens: 35 mm}", "sight.camera.A", finding.NotKnown},
		{"{name: A, at: [7 m, 0 m, 1 m], looks: [7 m, 0 m, 0 m], lens: 35 mm}", "sight.shot.A", finding.Within},
		{"{name: A, at: [7 m, 0 m, 1 m], looks: [7 m, 0 m, 9 m], lens: 35 mm}", "sight.shot.A", finding.Within},
		{"{name: A, track: [[7 m, 0 m, 1 m], [7 m, 0 m, 1 m]], looks: [0 m, 0 m, 1 m], lens: 85 mm}", "sight.shot.A", finding.Within},
		{"{name: A, orbit: {radius: 3 m, height: 1.5 m}, boom: [1 m, 6 m], looks: [0 m, 0 m, 1 m], lens: 35 mm}", "sight.shot.A", finding.Over},
		{"{name: A, track: [[6 m, -2 m, 1 m], [6 m, 2 m, 1 m]], looks: [0 m, 0 m, 1 m], lens: 25 mm, pan: [-20 deg, 20 deg], tilt: [-5 deg, 20 deg], boom: [1 m, 2 m]}", "sight.shot.A", finding.Over},
	} {
		_, found := Run(derive(t, sheetOfCloth+room+"cameras: ["+c.camera+"]\n"))
		result := finding.Result("nothing")
		for _, f := range found {
			if f.ID == c.id {
				result = f.Result
			}
		}
		if result != c.result {
			t.Errorf("%s: %s is %s, %s is due; %d findings", c.camera, c.id, result, c.result, len(found))
		}
	}
}

// A cable that the rig leads straight up from the floor is seen, and not known rather
// than over: no key of the plan says how it is led.
func TestCableToTheBox(t *testing.T) {
	a, found := Run(derive(t, example(t)))
	if parts(a, feedPrefix) == 0 {
		t.Skip("the rig leads no cable through the frame")
	}
	for _, f := range found {
		want := map[string]finding.Result{"sight.cable.A": finding.NotKnown, "sight.shot.A": finding.Within}[f.ID]
		if want != "" && f.Result != want {
			t.Errorf("%s: %s, %s is due", f.ID, f.Result, want)
		}
	}
}
