package kit

import (
	"math"
	"testing"

	"softloft/quantity"
)

func TestLossInStops(t *testing.T) {
	// -log2(T): computed by an independent script; 0.5 and 0.25 are exact by definition of the stop.
	for _, row := range []struct{ passed, stops float64 }{
		{0.9, 0.152003}, {0.85, 0.234465}, {0.7, 0.514573}, {0.5, 1}, {0.4, 1.321928}, {0.25, 2}, {0.2, 2.321928}, {0.1, 3.321928},
	} {
		cloth := Cloth{Through: row.passed / 4, Forward: &Forward{Part: row.passed / 4}, Diffuse: row.passed / 2}
		loss, ok := cloth.Loss()
		if !ok || math.Abs(float64(loss)-row.stops) > 1e-6 {
			t.Errorf("passes %v: loses %v (%v), want %v", row.passed, loss, ok, row.stops)
		}
	}
	if _, ok := (Cloth{Back: 0.5}).Loss(); ok {
		t.Error("a cloth that passes nothing has a loss")
	}
}

// From much to little diffusion a cloth passes more and throws less back: common practice.
func TestClothsFromHeavyToLight(t *testing.T) {
	k := standard(t)
	order := []string{"heavy", "half", "quarter", "light"}
	for i := 1; i < len(order); i++ {
		more, less := k.Cloth[order[i-1]], k.Cloth[order[i]]
		if !(more.Passed() < less.Passed() && more.Back > less.Back && *more.Mass > *less.Mass) {
			t.Errorf("%s isn't more than %s", order[i-1], order[i])
		}
	}
}

// Masking cotton is sold by the running yard of 54 in: 8 oz is 5.333 oz/yd², 180.8 g/m²; 16 oz 361.7. Read
// as a published weight; with the trap of taking 8 oz for 8 oz/yd².
func TestMaskingCotton(t *testing.T) {
	k := standard(t)
	const yard = 3 * float64(quantity.Foot)
	for id, ounces := range map[string]float64{"black": 8, "black-heavy": 16} {
		want := ounces * float64(quantity.Ounce) / (yard * 54 * inch)
		near(t, id, float64(*k.Wrap[id].Mass), want, 3e-4)
	}
}

func TestCutOff(t *testing.T) {
	k := standard(t)
	// Geometry of a louvre: cut-off is the complement of the shielding angle atan(depth/cell), CIE e-ILV 17-30-036.
	for id, degrees := range map[string]float64{"crate-4x4": 45, "crate-4x2": 63.434949, "crate-2x4": 26.565051} {
		for _, angle := range k.Crate[id].CutOff() {
			near(t, id, float64(angle/quantity.Degree), degrees, 1e-7)
		}
	}
}
