package load

import (
	"math"
	"testing"
)

// The membrane's coefficient: a square 0.0736713533 (L8: series; finite differences with
// extrapolation 0.0736713528), a long strip 1/8.
func TestMembrane(t *testing.T) {
	near(t, "square", membrane(3, 3), 0.0736713533, 1e-9)
	near(t, "strip", membrane(1, 50), 0.125, 1e-12)
	near(t, "either way", membrane(2, 3), membrane(3, 2), 0)
}

// Edge-tied cloth, middle sag 50 mm: independent solvers, L8. The frame is L1; its weight
// bends it down and hardly touches how the cloth bows it inward.
func TestClothPull(t *testing.T) {
	h := hungSquare{above: 3, lengths: all(3), box: "  cloth_tie: {sag: 50 mm}\n"}
	got, _ := analyze(t, h.text())
	balanced(t, got)
	near(t, "pull, N/m", float64(got.Cloth.Pull), 48.3367, 1e-5)
	near(t, "bow x, mm", 1000*float64(got.Cloth.Bow[0])/2, 4.04953, 0.005)
	near(t, "bow y, mm", 1000*float64(got.Cloth.Bow[1])/2, 4.04953, 0.005)
	slack, _ := analyze(t, hungSquare{above: 3, lengths: all(3)}.text())
	for i, m := range got.Frame.Members {
		// At mid-side 24.1193 N·m from the weight (L1) and 26.950 N·m from the pull (L8),
		// square to each other; at the corner the pull's 53.899 N·m alone.
		near(t, m.ID+" moment", float64(m.M), 53.899, 0.01)
		near(t, m.ID+" axial", math.Abs(float64(m.N)), 88.408, 0.01)
		near(t, m.ID+" stress, MPa", float64(m.Stress)/1e6, 14.217, 0.01)
		if float64(slack.Frame.Members[i].Stress) >= float64(m.Stress) {
			t.Errorf("%s: the pull adds no stress", m.ID)
		}
	}
	// The tensions of the lines do not change.
	for i := range got.Lines {
		near(t, got.Lines[i].Name, float64(got.Lines[i].Cases.Built), 50.0148, 1e-4)
	}
}

// A cloth cut for 50 mm of sag on a rigid frame, 1.822 mm longer than it, ends at 92.2 mm and
// 26.22 N/m where cloth and frame are solved together (L8, inextensible middle strip).
func TestClothAndFrameTogether(t *testing.T) {
	h := hungSquare{above: 3, lengths: all(3), box: "  cloth_tie: {cut: [3659.822 mm, 3659.822 mm], pretension: 0 N/m}\n"}
	got, _ := analyze(t, h.text())
	near(t, "sag, mm", 1000*float64(got.Cloth.Sag), 92.2, 0.005)
	near(t, "pull, N/m", float64(got.Cloth.Pull), 26.22, 0.005)
	// On a rigid frame it stays what it was cut for.
	h.young, h.section = "10000 GPa", "outer: 400 mm, wall: 100 mm"
	got, _ = analyze(t, h.text())
	near(t, "sag on a rigid frame, mm", 1000*float64(got.Cloth.Sag), 50, 0.001)
	near(t, "pull on a rigid frame, N/m", float64(got.Cloth.Pull), 48.3367, 0.001)
}

// More pretension, more pull and less sag; never less pull than was laced.
func TestPretension(t *testing.T) {
	was := 0.0
	for _, laced := range []string{"0 N/m", "5 N/m", "20 N/m", "80 N/m"} {
		h := hungSquare{above: 3, lengths: all(3), box: "  cloth_tie: {cut: [3.6 m, 3.6 m], pretension: " + laced + "}\n"}
		got, _ := analyze(t, h.text())
		pull := float64(got.Cloth.Pull)
		if !(pull > was) {
			t.Errorf("laced with %s: pull %g N/m, before %g", laced, pull, was)
		}
		near(t, "sag times pull", float64(got.Cloth.Sag)*pull, 0.0736713533*2.45166*3.658*3.658, 1e-5)
		was = pull
	}
}

// The pull is within the box: it turns nothing, whatever the attitude and whatever is lost.
func TestPullBalances(t *testing.T) {
	h := hungSquare{above: 3, ribs: ribsAt, lamps: moved, box: "  cloth_tie: {sag: 50 mm}\n  tilt: {about: y, by: 20 deg}\n  turn: 33 deg\n"}
	got, _ := analyze(t, h.text())
	balanced(t, got)
	if got.Lost[0].Outcome != Rests || got.TiltPath[16].Tension == nil {
		t.Errorf("lost %+v, tilt %+v", got.Lost[0], got.TiltPath[16])
	}
}

// The same with pinned corners, which bow five times as far: 146.3 mm and 16.52 N/m (L8).
func TestClothOnPinnedCorners(t *testing.T) {
	h := hungSquare{above: 3, lengths: all(3), box: "  corners: pinned\n  cloth_tie: {cut: [3659.822 mm, 3659.822 mm], pretension: 0 N/m}\n"}
	got, _ := analyze(t, h.text())
	near(t, "sag, mm", 1000*float64(got.Cloth.Sag), 146.3, 0.01)
	near(t, "pull, N/m", float64(got.Cloth.Pull), 16.52, 0.01)
}

// The bow of pinned corners is five times that of rigid ones, 20.1415 mm by the beam formula,
// over 1 − N/N_E for the pull that presses the sides: 88.408 N of 4126.8 N (L8). The opening
// closes a little more: a side bent by δ has a chord shorter by 2.43·δ²/L (half the integral
// of the slope squared of the simply supported beam's quartic), here by bow and sag.
func TestPullOnPinnedCorners(t *testing.T) {
	h := hungSquare{above: 3, lengths: all(3), box: "  corners: pinned\n  cloth_tie: {sag: 50 mm}\n"}
	got, _ := analyze(t, h.text())
	balanced(t, got)
	bow := 20.1415 / (1 - 88.408/4126.8)
	near(t, "bow, mm", 1000*float64(got.Cloth.Bow[0])/2, bow+2.43*(bow*bow+5.95889*5.95889)/3658/2, 0.001)
	near(t, "axial", -float64(got.Frame.Members[0].N), 88.408, 0.01)
}
