package load

import (
	"fmt"
	"math"
	"testing"
)

// stiffBox is the rigid box of the closed forms: weightless tubes a million times as
// stiff in bending as those of the reference frames, 66.9279 kg in one place at a height over the cloth plane.
func stiffBox(height float64) hungSquare {
	return hungSquare{
		above: 3, young: "10000 GPa", section: "outer: 400 mm, wall: 100 mm", density: "0 kg/m3", sheet: "0 kg/m2",
		rest: fmt.Sprintf("added:\n  - {name: load, mass: 66.9279 kg, at: [0 m, 0 m, %g m]}\n", height),
	}
}

// Tilt about x by unequal lengths: closed form with 6-direction residual under 1e-12,
// L5. Anchors 3 m over the plane of a square of 3.658 m, W 656.339 N, lines EA 60 kN,
// center of gravity 0.6 m over, in and under the plane of the attachments.
func TestTiltedRigidBox(t *testing.T) {
	for _, c := range []struct {
		height, y, cutHigh, cutLow, high, low, leanHigh, leanLow float64
	}{
		{+0.6, 0.00477, 2.52095, 3.46377, 150.620, 177.622, 1.3049, -1.1065},
		{0, 0.01017, 2.52023, 3.46471, 165.032, 163.208, 1.1824, -1.1957},
		{-0.6, 0.01542, 2.51952, 3.46565, 179.431, 148.807, 1.0634, -1.2823},
	} {
		plan := stiffBox(c.height)
		plan.box = "  tilt: {about: x, by: 15 deg}\n"
		got, _ := analyze(t, plan.text())
		if len(got.TiltPath) != 17 {
			t.Fatalf("%d steps", len(got.TiltPath))
		}
		last := got.TiltPath[16]
		near(t, "deg", float64(last.Degrees), 15, 1e-12)
		for i, high := range []bool{true, true, false, false} {
			name := fmt.Sprintf("L%d", i+1)
			tension, length, lean := c.low, c.cutLow, c.leanLow
			if high {
				tension, length, lean = c.high, c.cutHigh, c.leanHigh
			}
			near(t, name+" tension", float64(last.Tension[name]), tension, 1e-5)
			near(t, name+" built tension", float64(got.Lines[i].Cases.Built), tension, 1e-5)
			near(t, name+" length", float64(last.Lengths[name]), length, 5e-6)
			f := last.ForceOnBox[name]
			near(t, name+" lean", math.Atan2(float64(f[1]), float64(f[2]))/degree, lean, 1e-4)
			if worst := float64(got.Lines[i].Cases.TiltWorst); worst < tension*(1-1e-5) {
				t.Errorf("%s: the path's worst %g N is under its end's %g N", name, worst, tension)
			}
		}
		if y := float64(got.Pose.At[1]); math.Abs(y-c.y) > 6e-6 {
			t.Errorf("the box's middle lies at y = %.5f m, want %.5f", y, c.y)
		}
		balanced(t, got)
	}
}

// A tilt that the caller asks for gives the same path as the plan's own.
func TestAskedTiltIsThePlans(t *testing.T) {
	level := stiffBox(0.6)
	own := level
	own.box = "  tilt: {about: y, by: -12 deg}\n"
	want, _ := analyze(t, own.text())
	got, _ := RunWith(derive(t, level.text()), Options{Tilt: &TiltAsk{About: "y", By: -12 * degree}})
	for k := range want.TiltPath {
		for name, tension := range want.TiltPath[k].Tension {
			near(t, name, float64(got.TiltPath[k].Tension[name]), float64(tension), 1e-7)
		}
	}
	if got.Pose.Tilt[1] > 1e-6 || got.Pose.Tilt[1] < -1e-6 {
		t.Errorf("a tilt that is asked about tilts the built box by %g°", float64(got.Pose.Tilt[1]))
	}
}

// A tilt past where a box hangs by its corners is told, not solved.
func TestTiltOutOfReach(t *testing.T) {
	got, found := RunWith(derive(t, stiffBox(-0.6).text()), Options{Tilt: &TiltAsk{About: "x", By: 170 * degree}})
	if s := got.TiltPath[16]; s.Tension != nil || s.Why == "" {
		t.Errorf("a tilt of 170° gives %+v", s)
	}
	if f := named(found, "load.tilt"); f.Result != "not known" {
		t.Errorf("the tilt's finding: %+v", f)
	}
	if f := named(found, "load.line.L1"); f.Result != "not known" {
		t.Errorf("a line whose tilt is not known is %s", f.Result)
	}
}
