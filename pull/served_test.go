package pull

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"softloft/finding"
	"softloft/kit"
	"softloft/stock"
)

func shopOf(t *testing.T, rows string) *stock.Shop {
	t.Helper()
	shop, mistakes := stock.Read("s.yaml", []byte("stock: 1\ncurrency: EUR\nitems:\n"+rows))
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	return shop
}

// A list by hand: two tubes of 2 m and a lamp, a supply of the lamp, and a load that no kit has.
func twoTubes() []Row {
	nan := finding.Number(math.NaN())
	return []Row{
		{ID: "pull.tube.a", Item: "tube", Kind: "tube", Kit: "tube-48", Count: 2, Length: 2, Each: 6, Parts: []string{"t1", "t2"}},
		{ID: "pull.lamp.b", Item: "lamp", Kind: "lamp", Kit: "panel-2x1", Count: 3, Length: nan, Each: 7, Parts: []string{"l1", "l2", "l3"}},
		{ID: "pull.power-supply.lamp.panel-2x1", Item: "supply", Kind: "lamp", Kit: "panel-2x1", Count: 3, Length: nan, Each: nan},
		{ID: "pull.added-load.c", Item: "microphones", Count: 1, Length: nan, Each: 2},
	}
}

func TestAgainst(t *testing.T) {
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	shop := shopOf(t, `
  - {kind: tube, kit: tube-48, length: 4 m, count: 1, shelf: rack, packed: [4 m, 0.1 m, 0.1 m]}
  - {kind: lamp, kit: panel-2x1, count: 1, shelf: cage, packed: [1 m, 1 m, 0.1 m]}
  - {kind: lamp, kit: panel-2x1, count: 1, rate: 30, from: house, packed: [1 m, 1 m, 0.1 m]}
  - {kind: lamp, kit: nobody-knows, count: 1}
`)
	s := Against(twoTubes(), shop, base, 4)
	if len(s.Rows) != 4 {
		t.Fatalf("%d rows", len(s.Rows))
	}
	for i, row := range s.Rows {
		if row.ID != twoTubes()[i].ID || strings.Join(row.Parts, " ") != strings.Join(twoTubes()[i].Parts, " ") {
			t.Errorf("row %d: %+v", i, row)
		}
		if row.Short != nil && row.Own+row.Rented+*row.Short != row.Count {
			t.Errorf("row %s: %d own, %d rented, %d short of %d", row.ID, row.Own, row.Rented, *row.Short, row.Count)
		}
	}
	if tubes := s.Rows[0]; tubes.Own != 2 || *tubes.Shelf != "rack" || len(s.Cuts) != 1 || len(s.Cuts[0].Bars) != 1 || !s.Cuts[0].Proved {
		t.Errorf("two tubes of 2 m come out of one of 4 m: %+v, %+v", tubes, s.Cuts)
	}
	if lamps := s.Rows[1]; lamps.Own != 1 || lamps.Rented != 1 || *lamps.Short != 1 {
		t.Errorf("%+v", lamps)
	}
	for _, row := range s.Rows[2:] {
		if row.Short != nil || row.Shelf != nil || row.Why == "" {
			t.Errorf("%s is not the shop's: %+v", row.ID, row)
		}
	}
	total := s.Totals
	if total.Cost != 120 || math.Abs(float64(total.Volume)-0.24) > 1e-12 || total.Short != 1 {
		t.Errorf("%+v: 120 EUR, 0.24 m3 and one piece short are due", total)
	}
	if finding.Known(float64(total.Mass)) || total.MassKnown != 2*6+3*7+2 || len(total.MassUnknown) != 1 {
		t.Errorf("a mass that is not known makes the sum not known: %+v", total)
	}
	if len(s.Odd) != 1 || !strings.Contains(s.Odd[0], "line 8: the kit has no lamp nobody-knows") {
		t.Errorf("%q", s.Odd)
	}
}

// The keys of the contract stay in the rows, and nothing is NaN.
func TestServedRowsKeepTheirKeys(t *testing.T) {
	base, _ := kit.Standard()
	text, err := json.Marshal(Against(twoTubes(), shopOf(t, "  - {kind: lamp, kit: panel-2x1, count: 9}\n"), base, 1))
	if err != nil {
		t.Fatal(err)
	}
	var told struct {
		Pull []map[string]any `json:"pull"`
	}
	if err := json.Unmarshal(text, &told); err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"id", "item", "kit", "shelf", "count", "length_m", "each_kg", "short", "parts", "own", "rented"} {
		if _, ok := told.Pull[0][key]; !ok {
			t.Errorf("no key %s", key)
		}
	}
}
