package load

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"softloft/source"
)

// Velocity pressures and forces as US texts tabulate them, ρ = 1.225 kg/m³ (q = 0.613 v²),
// computed for a published table of the wind on a 12 × 12 ft and a 20 × 20 ft sheet: mph,
// Pa, psf, then lbf of both for c = 1, an upright sheet c = 1.2, lifted open −0.5, and
// blocked −1.3 (the last two from EN 1991-1-4 Table 7.6).
func TestPressureTable(t *testing.T) {
	const density, lbf, psf = 1.225, 4.4482216, 47.880259
	for _, c := range []struct{ mph, q, psf, one12, one20, up12, up20, open12, open20, blocked12, blocked20 float64 }{
		{5, 3.06, 0.064, 9.2, 25.6, 11, 31, 4.6, 12.8, 12, 33},
		{10, 12.25, 0.256, 36.8, 102.3, 44, 123, 18.4, 51.2, 48, 133},
		{15, 27.56, 0.576, 82.9, 230.3, 99, 276, 41.4, 115, 108, 299},
		{17, 35.40, 0.740, 106.5, 295.8, 128, 355, 53.2, 148, 138, 384},
		{20, 49.00, 1.024, 147.4, 409.4, 177, 491, 73.7, 205, 192, 532},
		{25, 76.57, 1.600, 230.3, 639.6, 276, 768, 115, 320, 299, 831},
		{30, 110.25, 2.304, 331.6, 921.1, 398, 1105, 166, 461, 431, 1197},
		{40, 196.0, 4.096, 589.5, 1637.5, 707, 1965, 295, 819, 766, 2129},
	} {
		q := pressure(c.mph*mph, density)
		// The table was made with 0.613, the half of 1.225 rounded: 0.08 % more.
		near := func(what string, got, want, by float64) {
			if math.Abs(got-want) > 0.0015*want+by {
				t.Errorf("%.0f mph, %s: %.5g, want %.5g", c.mph, what, got, want)
			}
		}
		near("q", q, c.q, 0.005)
		near("psf", q/psf, c.psf, 5e-4)
		_, open, _ := canopy(0, 0)
		_, blocked, _ := canopy(0, 1)
		for k, want := range map[float64][2]float64{1: {c.one12, c.one20}, 1.2: {c.up12, c.up20}, open: {c.open12, c.open20}, blocked: {c.blocked12, c.blocked20}} {
			near("12 × 12", k*q*13.378/lbf, want[0], 0.5)
			near("20 × 20", k*q*37.161/lbf, want[1], 0.5)
		}
		if v := speedOf(q, density); math.Abs(v-c.mph*mph) > 1e-12 {
			t.Errorf("%.0f mph comes back as %g m/s", c.mph, v)
		}
	}
}

// Lift-off of the weight alone, computed for the same table: 12 × 12 ft of 55 lb, 20 × 20
// ft of 105.2 lb.
func TestLiftOff(t *testing.T) {
	const density, pound = 1.225, 0.45359237
	for _, c := range []struct{ pounds, area, coefficient, want float64 }{
		{55, 13.378, 0.5, 17.3}, {55, 13.378, 1.3, 10.7}, {105.2, 37.161, 0.5, 14.3}, {105.2, 37.161, 1.3, 8.9},
	} {
		if got := liftOff(c.pounds*pound*gravity, c.area, c.coefficient, density) / mph; math.Abs(got-c.want) > 0.05 {
			t.Errorf("%.1f lb, %.1f: %.3f mph, want %.1f", c.pounds, c.coefficient, got, c.want)
		}
	}
}

// EN 1991-1-4 Table 7.6, and its rule to go straight between blockages: 20° half blocked
// has +0.8 and −1.35.
func TestCanopyTable(t *testing.T) {
	for _, c := range []struct{ slope, blocked, down, up float64 }{
		{0, 0, 0.2, 0.5}, {0, 1, 0.2, 1.3}, {5, 0, 0.4, 0.7}, {5, 1, 0.4, 1.4}, {10, 0, 0.5, 0.9}, {15, 0, 0.7, 1.1}, {20, 0, 0.8, 1.3},
		{20, 0.5, 0.8, 1.35}, {25, 0, 1.0, 1.6}, {30, 0, 1.2, 1.8}, {30, 1, 1.2, 1.4}, {2.5, 0, 0.3, 0.6}, {2.5, 1, 0.3, 1.35},
	} {
		down, up, ok := canopy(c.slope*degree, c.blocked)
		if !ok || math.Abs(down-c.down) > 1e-9 || math.Abs(up-c.up) > 1e-9 {
			t.Errorf("%g°, %g: %g and %g, want %g and %g", c.slope, c.blocked, down, up, c.down, c.up)
		}
	}
	for _, c := range [][2]float64{{31, 0}, {-1, 0}, {0, 1.1}, {0, -0.1}, {math.NaN(), 0}, {0, math.NaN()}} {
		if down, up, ok := canopy(c[0]*degree, c[1]); ok || !math.IsNaN(down+up) {
			t.Errorf("%v has coefficients %g and %g", c, down, up)
		}
	}
}

// No slope and no blockage jumps: the table's steps are at most 0.3 in 5°.
func TestCanopyIsSmooth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slope, blocked := rapid.Float64Range(0, 29.9).Draw(t, "slope"), rapid.Float64Range(0, 1).Draw(t, "blocked")
		down, up, _ := canopy(slope*degree, blocked)
		downMore, upMore, ok := canopy((slope+0.1)*degree, blocked)
		if !ok || math.Abs(downMore-down) > 0.0061 || math.Abs(upMore-up) > 0.0061 || down < 0.2 || up < 0.5 {
			t.Errorf("%g°, %g: %g %g, then %g %g", slope, blocked, down, up, downMore, upMore)
		}
	})
}

// Beaufort's numbers, US National Weather Service, mph: the middle of each range gives
// its number; v = 0.836·B^1.5 has 4.34, 6.69, 9.35, 12.29, 15.48 and 18.92 m/s for 3 to 8.
func TestBeaufort(t *testing.T) {
	for b, mphs := range [][2]float64{{0, 0}, {1, 3}, {4, 7}, {8, 12}, {13, 18}, {19, 24}, {25, 31}, {32, 38}, {39, 46}, {47, 54}, {55, 63}, {64, 72}, {74, 90}} {
		if got := beaufort((mphs[0] + mphs[1]) / 2 * mph); got != b {
			t.Errorf("%v mph are %d, want %d", mphs, got, b)
		}
	}
	for b, v := range map[int]float64{3: 4.34, 4: 6.69, 5: 9.35, 6: 12.29, 7: 15.48, 8: 18.92} {
		if beaufort(v) != b {
			t.Errorf("%g m/s are %d, want %d", v, beaufort(v), b)
		}
	}
}

// What a one-way cloth pulls at 15 mph, 12 ft at 5 % of belly: 252 N/m, 922 N along the
// side (parabola H = w·a²/8f, computed for the same table). A square one has 0.0737 for 1/8.
func TestClothPullInWind(t *testing.T) {
	s := strip{k: 1.0 / 8, w: 27.56, a: 3.6576, slack: 8 * 0.05 * 0.05 * 3.6576 / 3, stretch: math.Inf(1)}
	got := s.tension()
	if math.Abs(got-252) > 0.5 || math.Abs(got*3.6576-922) > 1 {
		t.Errorf("one way: %.2f N/m, %.1f N", got, got*3.6576)
	}
	s.k = membrane(1, 1)
	if ratio := got / s.tension(); math.Abs(ratio-0.125/0.0736713533) > 1e-6 {
		t.Errorf("one way pulls %.6f times as hard", ratio)
	}
}

// Speeds at which others act, read: work on mobile towers stops at 17 mph, event structures
// act at 60 and 80 % of their own limit; force goes with the square.
func TestActionSpeeds(t *testing.T) {
	if v := source.TowerWorkStops().Value / mph; math.Abs(v-17) > 1e-9 {
		t.Errorf("towers at %g mph", v)
	}
	for share, force := range map[float64]float64{source.WatchShare().Value: 0.36, source.LowerShare().Value: 0.64} {
		if got := pressure(10*share, 1.25) / pressure(10, 1.25); math.Abs(got-force) > 1e-12 {
			t.Errorf("%g of the speed is %g of the force, want %g", share, got, force)
		}
	}
}
