package load

import (
	"fmt"
	"math"
	"testing"

	"softloft/finding"
)

// bridled hangs the rigid box on four lines, each from a bridle whose points lie h1 to the
// west and h2 to the east of its apex, v1 and v2 over it (ft); the apex is 2 m over the box.
func bridled(h1, v1, h2, v2 float64) hungSquare {
	const foot = 0.3048
	h := stiffBox(-0.3)
	h.stiffness = "1000000 kN"
	for i, c := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		h.points += fmt.Sprintf("    - {name: W%d, at: [%.12g m, %.12g m, %.12g m], allows: 200 kN, direction: any}\n",
			i+1, c[0]*1.829-h1*foot, c[1]*1.829, 7+v1*foot)
		h.points += fmt.Sprintf("    - {name: E%d, at: [%.12g m, %.12g m, %.12g m], allows: 200 kN, direction: any}\n",
			i+1, c[0]*1.829+h2*foot, c[1]*1.829, 7+v2*foot)
		h.to[i] = fmt.Sprintf("{bridle: [W%d, E%d], apex: 7 m}", i+1, i+1)
	}
	return h
}

// Two-leg bridles: a theatre rigging mathematics primer, lessons 3 and 4, whose inputs and
// lengths of S1 and S2 are printed there; the rest by its formulas T1 = W·L1·H2/(V1·H2+V2·H1).
func TestBridles(t *testing.T) {
	for _, c := range []struct {
		name                                    string
		w, h1, v1, h2, v2                       float64
		l1, l2, t1, t2, thrust, up1, up2, angle float64
	}{
		{"S1", 500, 3, 4, 6, 3, 5, 6.708, 454.55, 304.92, 272.73, 363.64, 136.36, 100.3},
		{"S2", 1000, 4, 10, 3, 6, 10.770, 6.708, 598.35, 496.90, 222.22, 555.56, 444.44, 48.37},
		{"S3", 600, 6, 8, 6, 8, 10, 10, 375, 375, 225, 300, 300, 73.74},
		{"S4", 400, 2, 12, 10, 4, 12.166, 10.770, 380.17, 67.32, 62.5, 375, 25, 77.66},
		{"S5 flat", 1000, 10, 1, 10, 1, 10.05, 10.05, 5024.9, 5024.9, 5000, 500, 500, 168.6},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, found := analyze(t, bridled(c.h1, c.v1, c.h2, c.v2).text())
			balanced(t, got)
			for _, l := range got.Lines {
				scale := float64(l.Cases.Built) / c.w
				for k, want := range [2][4]float64{{c.l1, c.t1, c.up1}, {c.l2, c.t2, c.up2}} {
					leg := l.Bridle.Legs[k]
					near(t, leg.Point+" length, ft", float64(leg.Length)/0.3048, want[0], 1e-3)
					near(t, leg.Point+" tension", float64(leg.Tension)/scale, want[1], 2e-4)
					near(t, leg.Point+" side pull", float64(leg.Side)/scale, c.thrust, 2e-4)
					near(t, leg.Point+" vertical", -float64(leg.OnPoint[2])/scale, want[2], 2e-4)
				}
				near(t, "angle", float64(l.Bridle.Angle), c.angle, 5e-4)
			}
			angle := named(found, "load.bridle.L1")
			if (angle.Result == finding.Over) != (c.angle > 120) { // handbook rule: not over 120°
				t.Errorf("a bridle of %g° is %s", c.angle, angle.Result)
			}
			if wide := named(found, "load.bridle_wide.L1").ID != ""; wide != (c.angle > 90 && c.angle < 120) {
				t.Errorf("a bridle of %g° is questioned: %v", c.angle, wide)
			}
			leg := named(found, "load.leg.L1.W1")
			if want := float64(got.Lines[0].Bridle.Legs[0].Tension); !(leg.Value >= want*(1-1e-9)) {
				t.Errorf("the leg's finding %g N is under its tension %g N", leg.Value, want)
			}
		})
	}
}

// A pulley at the apex, its haul side straight down: the legs carry twice the tension; a
// haul side that leads away swings the apex, and the legs are not known.
func TestPulleyAtApex(t *testing.T) {
	h := bridled(6, 8, 6, 8)
	h.hung = "  pulley: block\n"
	got, _ := analyze(t, h.text())
	leg := got.Lines[0].Bridle.Legs[0]
	near(t, "leg", float64(leg.Tension), 2*float64(got.Lines[0].Cases.Built)*375/600, 1e-6)
	for i := range h.to {
		h.to[i] += ", tie_off: {at: [0 m, 0 m, 1 m]}"
	}
	got, found := analyze(t, h.text())
	if leg := got.Lines[0].Bridle.Legs[0]; !math.IsNaN(float64(leg.Tension)) {
		t.Errorf("a leg under a slanting haul side: %g N", float64(leg.Tension))
	}
	for _, id := range []string{"load.leg.L1.W1", "load.point.W1"} {
		if f := named(found, id); f.Result != finding.NotKnown {
			t.Errorf("%s is %q", id, f.Result)
		}
	}
}

// Friction of a block and what hangs on it: f = 2·cos(θ/2) for the angle θ between the two
// sides; 200 lb at 90° puts 282.84 lb on the block (a theatre rigging mathematics primer).
func TestBlockLoad(t *testing.T) {
	for _, c := range []struct{ theta, f float64 }{
		{0, 2}, {20, 1.9696}, {30, 1.9319}, {45, 1.8478}, {60, 1.7321}, {90, 1.4142}, {120, 1}, {135, 0.7654}, {150, 0.5176},
	} {
		h := stiffBox(-0.3)
		h.hung = "  pulley: block\n"
		sin, cos := math.Sincos(c.theta * degree)
		for i, at := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
			h.to[i] = fmt.Sprintf("P%d, tie_off: {at: [%.12g m, %.12g m, %.12g m]}", i+1, at[0]*1.829+4*sin, at[1]*1.829, 8-4*cos)
		}
		got, found := analyze(t, h.text())
		tension := float64(got.Lines[0].Cases.Built)
		p := got.Points[0].Cases.Built
		near(t, "point", math.Hypot(float64(p[0]), float64(p[2])), c.f*tension, 1e-4)
		near(t, "block", named(found, "load.line.L1.pulley").Value, c.f*float64(got.Lines[0].Cases.Diagonal), 1e-4)
	}
}

// A sheave of 100 mm over a wire of 5 mm: 20, at least 18 for 7×19 wire (from memory).
func TestSheave(t *testing.T) {
	h := stiffBox(-0.3)
	h.hung = "  pulley: block\n"
	_, found := analyze(t, h.text())
	f := named(found, "load.line.L1.sheave")
	near(t, "sheave", f.Value, 20, 1e-12)
	if f.Result != finding.Within {
		t.Errorf("%+v", f)
	}
}
