package load

import "testing"

// Masses off by 5 %, the default: total and lines as far, all loads being in proportion. A
// lamp that was weighed is not off.
func TestSpread(t *testing.T) {
	h := hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: onRibs}
	got, _ := analyze(t, h.text())
	near(t, "least", float64(got.Spread.Least), 0.95*66.9279, 1e-5)
	near(t, "most", float64(got.Spread.Most), 1.05*66.9279, 1e-5)
	near(t, "line", float64(got.Spread.Tension), 1.05*164.085, 1e-4)
	h.rest = "rules: {mass_tolerance: 20%}\nmeasured:\n  - {part: panel, mass: 9.5 kg, by: prep, on: 2027-01-01}\n"
	got, _ = analyze(t, h.text())
	near(t, "weighed", float64(got.Spread.Weighed), 38, 1e-12)
	near(t, "least", float64(got.Spread.Least), 38+0.8*28.9279, 1e-5)
	near(t, "line", float64(got.Spread.Tension), (38+1.2*28.9279)*9.80665/4, 1e-4)
}
