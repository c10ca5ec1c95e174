package source

import (
	"math"
	"testing"
)

// DGUV Information 215-313, Table 1, people under the load, read.
func TestStrictestFactors(t *testing.T) {
	for kind, want := range map[Hardware]float64{WireRope: 10, SteelCoreSling: 10, RoundSling: 14, FiberRope: 14, Chain: 8, Shackle: 10, MetalPart: 8} {
		f, ok := StrictestFactor(kind)
		if !ok || f.Value != want || f.Source != "dguv-215-313" || f.Clause != "Table 1" || !f.Read() {
			t.Errorf("%s: %+v, want %g", kind, f, want)
		}
		general, ok := StrictestGeneralFactor(kind)
		if kind == SteelCoreSling {
			if ok {
				t.Errorf("%s: nobody states a general factor, got %+v", kind, general)
			}
			continue
		}
		// Machinery Directive 6.1.1: usually doubled for persons; where both are
		// cited, loads over people are never held to less than lifting in general.
		if !ok || general.Value > f.Value || general.PeopleBeneath {
			t.Errorf("%s: general %+v, over people %+v", kind, general, f)
		}
	}
	if _, ok := StrictestFactor("string"); ok {
		t.Error("string has a factor")
	}
}

func TestFactorsOfOneSource(t *testing.T) {
	for _, c := range []struct {
		id   ID
		kind Hardware
		want float64
		read bool
	}{
		{"machinery-directive", WireRope, 5, true},   // Annex I 4.1.2.5, read
		{"machinery-directive", Chain, 4, true},      //
		{"machinery-directive", RoundSling, 7, true}, //
		{"machinery-directive", MetalPart, 4, true},  //
		{"ci-1401", FiberRope, 12, true},             // range 5 to 12, read
		{"asme-b30.9", WireRope, 5, false},           // from memory
		{"asme-b30.9", Chain, 4, false},              // from memory
		{"asme-b30.26", Shackle, 5, false},           // from memory; a trade page's 4 is wrong for these sizes
	} {
		f, ok := FactorOf(c.id, c.kind)
		if !ok || f.Value != c.want || f.Read() != c.read {
			t.Errorf("%s, %s: %+v %v, want %g, read %v", c.id, c.kind, f, f.Read(), c.want, c.read)
		}
	}
	if f, ok := FactorOf("ci-1401", Chain); ok {
		t.Errorf("a rope guideline has a factor for chain: %+v", f)
	}
}

// D1: with the Machinery Directive's 7 for textile slings, half of the working
// load limit (DGUV 215-313, 1.4) and 14 on the breaking strength (its Table 1)
// are the same.
func TestHalfRuleAgreesWithTheTable(t *testing.T) {
	usual, _ := FactorOf("machinery-directive", RoundSling)
	over, _ := FactorOf("dguv-215-313", RoundSling)
	if got := WorkingLoadShare().Value * over.Value; got != usual.Value {
		t.Errorf("half of the limit is %g of the breaking strength's share, want %g", got, usual.Value)
	}
	if PersonsMultiplier().Value*usual.Value != over.Value {
		t.Error("doubling for persons and Table 1 differ")
	}
}

// Published knot tests (1946, 1964, 1970), read.
func TestKnots(t *testing.T) {
	for name, want := range map[string]float64{
		"anchor bend": 0.70, "Bowline": 0.60, "bowline on a bight": 0.60, "two half hitches": 0.75, " clove hitch ": 0.75, "timber hitch": 0.70,
		"square knot": 0.45, "sheepshank": 0.45, "figure-eight end knot": 0.48, "overhand knot": 0.45, "eye splice": 0.95, "short splice": 0.90,
	} {
		if got, ok := Knot(name); !ok || got.Share != want || !got.Read() {
			t.Errorf("%s: %+v, want %g", name, got, want)
		}
	}
	if _, ok := Knot("granny"); ok {
		t.Error("a knot that nobody tested has a share")
	}
	// CI 1401, read: knots can take up to 50 %.
	if k := UnnamedKnot(); k.Share != 0.5 || k.Source != "ci-1401" {
		t.Errorf("%+v", k)
	}
}

// From memory: clips 80 %, swaged 95 to 100 %, turnback 80 to 90 %; a bend at
// D/d 1, 2, 3, 8 keeps about 50, 65, 75, 100 %.
func TestEndsAndBends(t *testing.T) {
	for name, want := range map[string]float64{"clips": 0.8, "swaged sleeve": 0.95, "turnback": 0.8} {
		if got, ok := WireEnd(name); !ok || got.Share != want || got.Read() {
			t.Errorf("%s: %+v, want %g from memory", name, got, want)
		}
	}
	for ratio, want := range map[float64]float64{1: 0.5, 1.9: 0.5, 2: 0.65, 3: 0.75, 7.9: 0.75, 8: 1, 100: 1} {
		if got, ok := BendOver(ratio); !ok || got.Share != want {
			t.Errorf("bend at %g: %+v, want %g", ratio, got, want)
		}
	}
	for _, ratio := range []float64{0.9, 0, -1, math.NaN()} {
		if got, ok := BendOver(ratio); ok {
			t.Errorf("bend at %g: %+v", ratio, got)
		}
	}
}

// ASME B30.26-2010, extracts read: 70 % at 45°, 50 % at 90°.
func TestShackleSideLoad(t *testing.T) {
	for angle, want := range map[float64]float64{0: 1, 1: 0.7, 45: 0.7, 46: 0.5, 90: 0.5} {
		if got, ok := ShackleSideLoad(angle * degree); !ok || got.Value != want {
			t.Errorf("%g°: %+v, want %g", angle, got, want)
		}
	}
	for _, angle := range []float64{91, -1, math.NaN()} {
		if got, ok := ShackleSideLoad(angle * degree); ok {
			t.Errorf("%g°: %+v", angle, got)
		}
	}
}
