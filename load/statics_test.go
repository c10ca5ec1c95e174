package load

import (
	"fmt"
	"math"
	"testing"
)

// Four vertical lines of one stiffness on a rigid box: T = W/4 + W·ex·x/Σx² + W·ey·y/Σy², statics.
// Corners of 20 × 12 ft, center of gravity off by (2, 1) ft.
func TestOffCenterLoad(t *testing.T) {
	const foot = 0.3048
	h := stiffBox(0)
	h.half = [2]float64{10 * foot, 6 * foot}
	h.rest = fmt.Sprintf("added:\n  - {name: load, mass: 100 kg, at: [%g m, %g m, 0 m]}\n", 2*foot, 1*foot)
	h.lengths = all(3)
	got, _ := analyze(t, h.text())
	for i, share := range [4]float64{0.34167, 0.24167, 0.15833, 0.25833} { // ne, nw, sw, se
		near(t, got.Lines[i].Name, float64(got.Lines[i].Cases.Built)/(100*9.80665), share, 3e-4)
	}
	balanced(t, got)
}

// The line over the heavy corner lets go: the box turns about the diagonal that is left until
// its center of gravity hangs under it: tilt = atan(e/|h|), e the distance of the center from
// the diagonal, h its depth under the attachments (L3, closed form).
func TestTiltAfterALoss(t *testing.T) {
	for _, c := range []struct{ off, deep float64 }{{0.5, 1}, {0.3, 0.8}, {0.2, 0.3}} {
		h := stiffBox(0)
		h.stiffness = "100000 kN"
		h.rest = fmt.Sprintf("added:\n  - {name: load, mass: 66.9279 kg, at: [%g m, %g m, %g m]}\n", c.off, c.off, -c.deep)
		got, _ := analyze(t, h.text())
		l := got.Lost[0] // ne
		if l.Outcome != Rests {
			t.Fatalf("%s gone: %s, %s", l.Name, l.Outcome, l.Why)
		}
		near(t, "tilt", float64(l.Tilt), math.Atan(c.off*math.Sqrt2/c.deep)/degree, 1e-3)
		near(t, "nw", float64(l.Tension["L2"]), 656.339/2, 1e-3)
		near(t, "se", float64(l.Tension["L4"]), 656.339/2, 1e-3)
		near(t, "sw", 1+float64(l.Tension["L3"]), 1, 1e-3)
	}
}

// A cloth held on two sides only, w·L²/(8·s): M4 to M8 by the parabola.
func TestOneWayCloth(t *testing.T) {
	const foot = 0.3048
	for _, c := range []struct{ mass, length, sag, pull float64 }{
		{0.060, 12 * foot, 0.02, 13.451}, {0.060, 12 * foot, 0.05, 5.380}, {0.140, 20 * foot, 0.05, 20.923},
		{0.200, 20 * foot, 0.03, 49.818}, {0.400, 20 * foot, 0.05, 59.781},
	} {
		w := c.mass * gravity
		got := membrane(c.length, 100*c.length) * w * c.length * c.length / (c.sag * c.length)
		near(t, fmt.Sprintf("%g kg/m², %.3g m, %g", c.mass, c.length, c.sag), got, c.pull, 1e-4) // the printed digits
	}
}

// A short line on a rigid frame: T = W/4 ± k·e/4, and one diagonal carries all where that is
// more than W/4 (L7 rigid: with EA ten times as stiff 328.169, 0, 328.169, 0).
func TestShortLineOnARigidFrame(t *testing.T) {
	h := stiffBox(0)
	h.lengths = [4]float64{2.99, 3, 3, 3}
	got, _ := analyze(t, h.text())
	k := 60e3 / 3.0
	for i, sign := range [4]float64{1, -1, 1, -1} {
		near(t, got.Lines[i].Name, float64(got.Lines[i].Cases.Built), 656.339/4+sign*k*0.01/4, 0.002)
	}
	h.stiffness = "600 kN"
	got, _ = analyze(t, h.text())
	near(t, "L1", float64(got.Lines[0].Cases.Built), 328.169, 1e-4)
	near(t, "L3", float64(got.Lines[2].Cases.Built), 328.169, 1e-4)
	if !got.Lines[1].Slack || !got.Lines[3].Slack {
		t.Errorf("the other diagonal is not slack: %g, %g N", float64(got.Lines[1].Cases.Built), float64(got.Lines[3].Cases.Built))
	}
}
