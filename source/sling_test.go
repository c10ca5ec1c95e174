package source

import (
	"math"
	"testing"
)

// EN 1492 mode factors, as a user manual gives them; none promises more than the
// legs' own geometry: n cos β at the flattest angle of its band.
func TestModeFactors(t *testing.T) {
	for _, c := range []struct {
		legs   int
		beta   float64 // degrees from the vertical
		factor float64
		carry  float64 // legs that carry
	}{
		{1, 0, 1, 1}, {2, 0, 1.4, 2}, {2, 45, 1.4, 2}, {2, 46, 1, 2}, {2, 60, 1, 2}, {3, 45, 2.1, 3}, {4, 45, 2.1, 3}, {3, 60, 1.5, 3}, {4, 60, 1.5, 3},
	} {
		mode, ok := ModeFactor(c.legs, c.beta*degree)
		if !ok || mode.Value != c.factor {
			t.Errorf("%d legs at %g°: %+v, want %g", c.legs, c.beta, mode, c.factor)
		}
		if most := c.carry * math.Cos(c.beta*degree); mode.Value > most*(1+1e-12) {
			t.Errorf("%d legs at %g°: %g is more than %g legs can give: %g", c.legs, c.beta, mode.Value, c.carry, most)
		}
	}
	for _, c := range []struct {
		legs int
		beta float64
	}{{2, 60.1}, {2, -1}, {5, 10}, {0, 0}, {2, math.NaN()}, {1, 10}} {
		if mode, ok := ModeFactor(c.legs, c.beta*degree); ok {
			t.Errorf("%d legs at %g°: %+v", c.legs, c.beta, mode)
		}
	}
}

// EN 818-6 as users' texts give it: two unequal legs count as one, more as two.
func TestLegsCounted(t *testing.T) {
	for _, c := range []struct {
		legs   int
		proved bool
		want   float64
	}{{1, false, 1}, {2, false, 1}, {2, true, 2}, {3, false, 2}, {4, false, 2}, {4, true, 4}} {
		if got, ok := LegsCounted(c.legs, c.proved); !ok || got.Value != c.want {
			t.Errorf("%d legs, proved %v: %+v, want %g", c.legs, c.proved, got, c.want)
		}
	}
	if _, ok := LegsCounted(0, true); ok {
		t.Error("no leg counts")
	}
	// The diagonal rule is the same count: two of four lines carry all.
	if two, _ := LegsCounted(4, false); DiagonalShare().Value != 1/two.Value {
		t.Error("half of the weight is not two of four lines")
	}
}

func TestAngles(t *testing.T) {
	for name, c := range map[string]struct {
		limit Limit
		want  float64 // degrees
	}{
		"bridle questioned": {BridleQuestioned(), 90},    // common practice
		"bridle refused":    {BridleRefused(), 120},      // theatre rigging mathematics primer, read
		"from horizontal":   {SlingFromHorizontal(), 30}, // ASME B30.9, second-hand
		"from vertical":     {SlingFromVertical(), 60},   // EN 818-6, second-hand
		"counts vertical":   {CountsAsVertical(), 5},     // 29 CFR 1910.184(b), read
		"fleet":             {FleetAngle(), 1.5},         // the primer, read
	} {
		if got := c.limit.Value / degree; math.Abs(got-c.want) > 1e-12 || c.limit.Unit != "rad" {
			t.Errorf("%s is %g°, want %g°", name, got, c.want)
		}
	}
	// A leg at 30° from the horizontal is one at 60° from the vertical, in a
	// bridle of 120°: the three texts agree.
	if math.Abs(SlingFromHorizontal().Value+SlingFromVertical().Value-math.Pi/2) > 1e-12 || math.Abs(BridleRefused().Value-2*SlingFromVertical().Value) > 1e-12 {
		t.Error("the limits from horizontal, vertical and between the legs differ")
	}
	// The primer: 25 ft off a sheave the fleet angle allows 0.65 ft.
	if got := 25 * math.Tan(FleetAngle().Value); math.Abs(got-0.65) > 0.005 {
		t.Errorf("25 ft off the sheave allow %g ft", got)
	}
}
