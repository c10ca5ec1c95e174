package frame

import (
	"math"
	"testing"
)

// Schedule 40 pipe: Mott, Machine Elements in Mechanical Design, 4th edition, Table A16-6 (outside, wall, I, S read; A and J
// computed there from the same formulas); inches. 0.5 % as the table rounds.
func TestScheduleForty(t *testing.T) {
	for _, c := range []struct {
		name                       string
		outer, wall, area, i, s, j float64
	}{
		{"3/4", 1.050, 0.113, 0.3326, 0.0370, 0.0705, 0.0741},
		{"1", 1.315, 0.133, 0.4939, 0.0873, 0.1328, 0.1747},
		{"1-1/4", 1.660, 0.140, 0.6685, 0.1947, 0.2346, 0.3894},
		{"1-1/2", 1.900, 0.145, 0.7995, 0.3099, 0.3262, 0.6198},
		{"2", 2.375, 0.154, 1.0745, 0.6657, 0.5606, 1.3315},
		{"2-1/2", 2.875, 0.203, 1.7041, 1.5296, 1.0640, 3.0591},
	} {
		s := RoundTube(c.outer, c.wall)
		near(t, c.name+" A", s.Area, c.area, 5e-3, 0)
		near(t, c.name+" I", s.InertiaY, c.i, 5e-3, 0)
		near(t, c.name+" S", s.ModulusZ, c.s, 5e-3, 0)
		near(t, c.name+" J", s.Torsion, c.j, 5e-3, 0)
	}
}

// 48.3 mm tube: EN 39 / BS 1139 / TG20:13 tables (read), cm.
func TestScaffoldTube(t *testing.T) {
	for _, c := range []struct{ wall, area, i, w float64 }{{0.40, 5.57, 13.8, 5.70}, {0.447, 6.15, 14.9, 6.18}} {
		s := RoundTube(4.83, c.wall)
		near(t, "A", s.Area, c.area, 5e-3, 0)
		near(t, "I", s.InertiaZ, c.i, 5e-3, 0)
		near(t, "W", s.ModulusY, c.w, 5e-3, 0)
	}
}

// Square tube with sharp corners, inches: I = (b⁴−bᵢ⁴)/12, J after Bredt (the formulas' numbers from an independent
// computation).
func TestSquareTube(t *testing.T) {
	for _, c := range []struct{ b, wall, area, i, s, j float64 }{
		{1, 0.0625, 0.2344, 0.03448, 0.06897, 0.0515},
		{1, 0.125, 0.4375, 0.05697, 0.11393, 0.0837},
		{1.25, 0.0625, 0.2969, 0.06997, 0.11195, 0.1047},
		{1.25, 0.125, 0.5625, 0.12012, 0.19219, 0.1780},
		{1.5, 0.0625, 0.3594, 0.12400, 0.16534, 0.1857},
		{1.5, 0.125, 0.6875, 0.21842, 0.29123, 0.3250},
	} {
		s := SquareTube(c.b, c.wall)
		near(t, "A", s.Area, c.area, 3e-4, 0)
		near(t, "I", s.InertiaY, c.i, 3e-4, 0)
		near(t, "S", s.ModulusZ, c.s, 3e-4, 0)
		near(t, "J", s.Torsion, c.j, 1e-3, 0)
	}
	r := RectangularTube(60, 40, 3)
	near(t, "strong", r.InertiaY, (40*math.Pow(60, 3)-34*math.Pow(54, 3))/12, 1e-12, 0)
	near(t, "weak", r.InertiaZ, (60*math.Pow(40, 3)-54*math.Pow(34, 3))/12, 1e-12, 0)
}

// A corner adds the two bending stresses, a round tube combines them; an unknown modulus gives no number.
func TestStress(t *testing.T) {
	square := SquareTube(0.04, 0.003)
	near(t, "corner", square.Stress(-100, 30, 40), 100/square.Area+70/square.ModulusY, 1e-12, 0)
	round := RoundTube(0.04, 0.003)
	near(t, "round", round.Stress(100, 30, -40), 100/round.Area+50/round.ModulusY, 1e-12, 0)
	if !math.IsNaN((Section{Area: 1}).Stress(1, 1, 1)) {
		t.Error("without a modulus the stress is not known")
	}
}
