package finding

import (
	"testing"

	"softloft/source"
)

func TestCited(t *testing.T) {
	got := Cited("β_max", source.BridleRefused())
	want := Input{Symbol: "β_max", Name: "included angle of a bridle, refused above", Value: 120, Unit: "deg", Origin: "a theatre rigging mathematics primer"}
	if got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	factor, ok := source.FactorOf("asme-b30.9", source.Chain)
	if in := Cited("n", factor.Limit()); !ok || in.Value != 4 || in.Unit != "" || in.Origin != "ASME B30.9, Slings (from memory)" {
		t.Errorf("%+v", in)
	}
}
