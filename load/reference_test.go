package load

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// The reference values are those of an independent finite-element solver and of a
// corotational solver written apart from this program, both held to closed forms:
// square frame of round tube 42.16 × 3.56 mm, side 3.658 m, E 69 GPa, lines EA 60 kN.
// Tensions within 0.5 %, sag and stress within 1 %.
func TestReferenceFrames(t *testing.T) {
	spreads := [3]spreadOf{{what: "tension"}, {what: "sag"}, {what: "stress"}}
	note := func(k int, got, want float64) { spreads[k].add(got, want) }
	for _, c := range []struct {
		name    string
		plan    hungSquare
		tension [4]float64 // N
		sag     float64    // mm
		stress  float64    // MPa
	}{
		{"L1 frame and cloth", hungSquare{above: 3, lengths: all(3)}, all(50.0148), 5.95889, 6.27025},
		{"L2-A two ribs, four lamps", hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: onRibs}, all(164.085), 47.1197, 33.8193},
		{"L2-A a lamp moved", hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: moved}, [4]float64{192.968, 153.029, 157.312, 153.029}, 43.0856, 30.7776},
		{"L2-B ribs at thirds, lamps on arms", hungSquare{above: 3, lengths: all(3), ribs: atThird, lamps: onRibs}, all(164.085), 54.4289, 41.6842},
		{"L2-A rib ends pinned", hungSquare{above: 3, lengths: all(3), ribs: pinned, lamps: onRibs}, all(164.085), 53.9850, 33.8193},
		{"L4 points out, frame and cloth", hungSquare{out: 1.2, above: 3.5, lengths: all(3.889730)}, all(55.572), 5.9341, 6.2834},
		{"L4 points out, four lamps", hungSquare{out: 1.2, above: 3.5, lengths: all(3.889730), ribs: ribsAt, lamps: onRibs}, all(182.234), 46.690, 33.426},
		{"L4 points in, four lamps", hungSquare{out: -1.2, above: 3.5, lengths: all(3.889730), ribs: ribsAt, lamps: onRibs}, all(182.217), 47.479, 34.441},
		{"L4 points in, a lamp moved", hungSquare{out: -1.2, above: 3.5, lengths: all(3.889730), ribs: ribsAt, lamps: moved}, [4]float64{212.346, 170.958, 174.401, 170.945}, 0, 0},
		{"L7 a line 10 mm short", hungSquare{above: 3, lengths: [4]float64{2.99, 3, 3, 3}}, [4]float64{52.6232, 47.4066, 52.6232, 47.4066}, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, _ := analyze(t, c.plan.text())
			if got.Frame == nil {
				t.Fatal("no place of rest")
			}
			for i, want := range c.tension {
				near(t, got.Lines[i].Name, float64(got.Lines[i].Cases.Built), want, 0.005)
				note(0, float64(got.Lines[i].Cases.Built), want)
			}
			if c.sag > 0 {
				note(1, 1000*float64(got.Frame.Sag), c.sag)
				note(2, float64(got.Frame.Stress)/1e6, c.stress)
				near(t, "sag, mm", 1000*float64(got.Frame.Sag), c.sag, 0.01)
				near(t, "stress, MPa", float64(got.Frame.Stress)/1e6, c.stress, 0.01)
			}
			balanced(t, got)
		})
	}
	for _, s := range spreads {
		s.log(t, "frames on elastic lines, "+s.what, "independent finite-element and corotational solvers")
	}
}

// spreadOf gathers how far values lie from a reference, relative to it.
type spreadOf struct {
	what       string
	sum, worst float64
	n          int
}

func (s *spreadOf) add(got, want float64) {
	d := math.Abs(got/want - 1)
	s.sum, s.worst, s.n = s.sum+d*d, math.Max(s.worst, d), s.n+1
}

// log prints the line that docs/generate collects into docs/accuracy.md.
func (s *spreadOf) log(t *testing.T, what, reference string) {
	t.Helper()
	t.Logf("accuracy\t%s\t%d\t%.2g %%\t%.2g %%\t%s", what, s.n, 100*math.Sqrt(s.sum/float64(s.n)), 100*s.worst, reference)
}

// near reports a value that differs from a reference by more than a share of it.
func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: got %.6g, want %.6g within %.2g %%", what, got, want, 100*share)
	}
	t.Logf("%s: %.6g, reference %.6g, %+.3f %%", what, got, want, 100*(got/want-1))
}

// balanced recomputes forces and moments from what the answer reports, and from
// nothing else: the box's weight at its center against the lines' forces on it.
func balanced(t testing.TB, a Answer) {
	t.Helper()
	weight := float64(a.Mass) * 9.80665
	at, force := map[string]Vec{}, map[string]Vec{}
	for _, l := range a.Lines {
		at[l.Name], force[l.Name] = *l.At, *l.ForceOnBox
	}
	balance(t, "built", weight, a.Center, at, force)
	for _, step := range a.TiltPath {
		if step.Center != nil {
			balance(t, fmt.Sprintf("tilt %g", float64(step.Degrees)), weight, step.Center, step.At, step.ForceOnBox)
		}
	}
	for _, l := range a.Lost {
		if l.Center != nil {
			balance(t, l.What+" "+l.Name, weight, l.Center, l.At, l.ForceOnBox)
		}
	}
}

// balance holds what is left of forces, and of moments over 1 m, to 1e-9 of the weight.
func balance(t testing.TB, what string, weight float64, center *Vec, at, on map[string]Vec) {
	t.Helper()
	force, moment := [3]float64{0, 0, -weight}, cross(center, &Vec{0, 0, Number(-weight)})
	for name, f := range on {
		place := at[name]
		m := cross(&place, &f)
		for k := range 3 {
			force[k] += float64(f[k])
			moment[k] += m[k]
		}
	}
	for k := range 3 {
		if !(math.Abs(force[k]) < 1e-9*weight && math.Abs(moment[k]) < 1e-9*weight) {
			t.Errorf("%s: out of balance by force %.3g N, moment %.3g N m, of a weight of %.1f N", what, force, moment, weight)
			return
		}
	}
}

func cross(a, b *Vec) [3]float64 {
	x, y := [3]float64{float64(a[0]), float64(a[1]), float64(a[2])}, [3]float64{float64(b[0]), float64(b[1]), float64(b[2])}
	return [3]float64{x[1]*y[2] - x[2]*y[1], x[2]*y[0] - x[0]*y[2], x[0]*y[1] - x[1]*y[0]}
}

// The moved lamp tilts the plane of the corners: independent solver, L2-A moved,
// closed form W·e/(4·k·h²) = 0.0139620°.
func TestTiltOfMovedLamp(t *testing.T) {
	got, _ := analyze(t, hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: moved}.text())
	near(t, "tilt about x", float64(got.Pose.Tilt[0]), -0.0139620, 0.005)
	near(t, "tilt about y", float64(got.Pose.Tilt[1]), 0.0139620, 0.005)
	near(t, "center x", float64(got.Center[0]), 0.0993606, 0.005)
}

// One of four lines cut, symmetric load, lamps in the plane of the attachments:
// independent solver, L3, h = 0.
func TestLineLost(t *testing.T) {
	got, _ := analyze(t, hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: onRibs}.text())
	lost := got.Lost[3]
	if lost.Name != "L4" || lost.Outcome != Rests {
		t.Fatalf("loss of L4: %+v", lost)
	}
	near(t, "L1", float64(lost.Tension["L1"]), 327.03, 0.005)
	near(t, "L3", float64(lost.Tension["L3"]), 327.05, 0.005)
	if math.Abs(float64(lost.Tension["L2"])-2.26) > 0.3 {
		t.Errorf("L2: got %.3f N, want 2.26", float64(lost.Tension["L2"]))
	}
	near(t, "drop", float64(lost.Drop), 0.390, 0.02)
	near(t, "stress, MPa", float64(lost.Stress)/1e6, 56.4, 0.01)
}

// The center of gravity over the plane of the attachments rolls the box over;
// under it the box comes to rest: closed form, L3.
func TestHeightDecidesALoss(t *testing.T) {
	for _, c := range []struct {
		above   string
		outcome string
	}{{"0.3 m", Tumbles}, {"-0.3 m", Rests}} {
		lamps := "lamps:\n"
		for _, at := range []string{"[0.9 m, 0.9 m]", "[-0.9 m, 0.9 m]", "[-0.9 m, -0.9 m]", "[0.9 m, -0.9 m]"} {
			lamps += "  - {kit: panel, at: " + at + ", above: " + c.above + "}\n"
		}
		got, found := analyze(t, hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: lamps}.text())
		for _, lost := range got.Lost[:4] {
			if lost.Outcome != c.outcome {
				t.Errorf("lamps %s over the cloth plane, %s gone: %s, want %s (%s)", c.above, lost.Name, lost.Outcome, c.outcome, lost.Why)
			}
			if lost.Outcome == Tumbles && lost.Tension != nil {
				t.Errorf("a box that tumbles gets tensions: %v", lost.Tension)
			}
		}
		over := 0
		for _, f := range found {
			if f.Result == "over" && strings.HasPrefix(f.ID, "load.lost.line.") {
				over++
			}
		}
		if (over == 4) != (c.outcome == Tumbles) {
			t.Errorf("lamps %s over the cloth plane: %d losses are refused", c.above, over)
		}
	}
}

// Looking only at the pieces that may be worst finds what looking at all of them finds.
func TestNearIsEnough(t *testing.T) {
	for name, h := range map[string]hungSquare{
		"frame":  {above: 3, lengths: all(3)},
		"lamps":  {above: 3, lengths: all(3), ribs: ribsAt, lamps: "lamps:\n" + lampA + lampC + lampD},
		"thirds": {above: 3.5, out: 1.2, lengths: all(3.889730), ribs: atThird, lamps: onRibs},
		"cloth":  {above: 3, lengths: all(3), ribs: ribsAt, lamps: onRibs, box: "  cloth_tie: {sag: 50 mm}\n"},
	} {
		m, err := build(derive(t, h.text()))
		if err != nil {
			t.Fatal(err)
		}
		loads, err := m.built()
		if err != nil {
			t.Fatal(err)
		}
		w := &work{rig: m.rig, model: m}
		w.tie(loads)
		s, err := m.rest(loads)
		if err != nil {
			t.Fatal(err)
		}
		var stress, use float64
		for i, p := range m.pieces {
			row := Member{Stress: -1}
			m.worstOf(s, i, &m.rig.Tubes[p.tube], &row)
			stress, use = math.Max(stress, float64(row.Stress)), math.Max(use, float64(row.Use))
		}
		gotStress, gotUse := m.stressed(s)
		near(t, name+" stress", float64(gotStress), stress, 0)
		near(t, name+" use", float64(gotUse), use, 0)
		worst, _ := m.hardest(s, "built")
		near(t, name+" hardest", float64(worst.Use), use, 0)
	}
}
