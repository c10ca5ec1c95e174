package build

import (
	"math"
	"testing"

	"softloft/source"
)

// Waters, Putz-Anderson and Garg, Applications Manual for the Revised NIOSH Lifting
// Equation (DHHS (NIOSH) 94-110): examples 1 (loading a punch press) and 2 (loading
// supply rolls), inputs and printed digits from memory. The worksheet multiplies
// multipliers of two decimals, of which it prints 0.44 for 10/23 = 0.435 (its own table
// has 0.43); so full precision lies beside the printed limit. full is the closed form in
// full, computed independently.
var manual = []struct {
	name        string
	lift        Lifting
	load        float64
	multipliers [4]float64 // H, V, D, C as printed
	printed     float64    // RWL in lb
	index       float64    // printed lifting index
	full        float64
}{
	{"punch press, origin", Lifting{23, 15, 49, 0, 0.2, Fair}, 44, [4]float64{0.44, 0.89, 0.86, 0.95}, 16.3, 2.7, 16.02},
	{"punch press, destination", Lifting{23, 64, 49, 0, 0.2, Fair}, 44, [4]float64{0.44, 0.75, 0.86, 1}, 14.5, 3.0, 14.15},
	{"supply rolls, origin", Lifting{15, 27, 17, 0, 0.2, Poor}, 35, [4]float64{0.67, 0.98, 0.93, 0.90}, 28.0, 1.3, 27.69},
	{"supply rolls, destination", Lifting{20, 10, 17, 0, 0.2, Poor}, 35, [4]float64{0.50, 0.85, 0.93, 0.90}, 18.1, 1.9, 18.06},
}

func TestLiftingEquationOfTheManual(t *testing.T) {
	for _, c := range manual {
		m := US().Multipliers(c.lift)
		product := 51.0
		for i, got := range [4]float64{m.H, m.V, m.D, m.C} {
			product *= c.multipliers[i]
			if math.Abs(got-c.multipliers[i]) > 0.0053 { // two decimals, and the 0.44
				t.Errorf("%s: multiplier %d is %.4f, the manual prints %.2f", c.name, i+1, got, c.multipliers[i])
			}
		}
		if math.Abs(product-c.printed) > 0.05+1e-9 {
			t.Errorf("%s: %.2f lb from the printed multipliers, the manual prints %.1f", c.name, product, c.printed)
		}
		if index := c.load / c.printed; math.Abs(index-c.index) > 0.05+1e-9 {
			t.Errorf("%s: index %.2f, printed %.1f", c.name, index, c.index)
		}
		if got := US().Recommended(c.lift); math.Abs(got-c.full) > 0.0051 {
			t.Errorf("%s: %.3f lb, want %.2f", c.name, got, c.full)
		}
	}
}

// The best lift leaves the whole load constant, 51 lb or 23 kg (the same manual).
func TestBestLift(t *testing.T) {
	if got := US().Recommended(Lifting{10, 30, 10, 0, 0.2, Good}); got != 51 {
		t.Errorf("%v lb, want 51", got)
	}
	if got := Metric().Recommended(Lifting{0.25, 0.75, 0.25, 0, 0.2, Good}); math.Abs(got-23) > 1e-12 || Metric().Load != source.LoadConstant().Value {
		t.Errorf("%v kg, want 23", got)
	}
}

// Beyond its limits the equation lets nothing be lifted (the same manual).
func TestOutOfReach(t *testing.T) {
	for name, l := range map[string]Lifting{
		"too far away": {Hands: 0.64, From: 0.75}, "too high": {Hands: 0.25, From: 1.76}, "twisted": {Hands: 0.25, From: 0.75, Angle: 136},
		"too often": {Hands: 0.25, From: 0.75, PerMinute: 16}, "through the floor": {Hands: 0.25, From: -0.1}, "too long a way": {Hands: 0.25, From: 0.75, Way: 1.8},
	} {
		if got := Metric().Recommended(l); got != 0 {
			t.Errorf("%s: %g kg", name, got)
		}
	}
}
