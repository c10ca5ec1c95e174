package stock

import (
	"os"
	"strings"
	"testing"

	"softloft/kit"
)

const head = "stock: 1\ncurrency: USD\nitems:\n"

// What is wrong is told with its place and what would be right.
func TestMistakes(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"negative count", head + "  - {kind: tube, kit: pipe-1-1/4, length: 20 ft, count: -3}\n", "s.yaml:4:57: count: a count of -3; 0 to 100000 pieces"},
		{"no unit", head + "  - {kind: tube, kit: pipe-1-1/4, length: 20, count: 3}\n", "bare number 20, a length needs its unit"},
		{"no length", head + "  - {kind: tube, kit: pipe-1-1/4, count: 3}\n", "missing: a tube is cut from a length; write length: 20 ft"},
		{"no such kind", head + "  - {kind: tubes, kit: pipe-1-1/4, count: 3}\n", `s.yaml:4:12: kind: the kit has no kind "tubes"; did you mean tube?`},
		{"no id", head + "  - {kind: tube, kit: '', length: 3 ft, count: 3}\n", "no id stands here"},
		{"unknown key", head + "  - {kind: lamp, kit: panel-2x1, cuont: 3}\n", "unknown key"},
		{"no count", head + "  - {kind: lamp, kit: panel-2x1}\n", "count: missing"},
		{"rate without currency", "stock: 1\nitems:\n  - {kind: lamp, kit: panel-2x1, count: 1, rate: 4}\n", "a rate without a currency; write currency: USD at the top"},
		{"negative rate", head + "  - {kind: lamp, kit: panel-2x1, count: 1, rate: -4}\n", "a rate of -4 a day"},
		{"no currency", "stock: 1\ncurrency: dollars\nitems: []\n", `no currency "dollars"; three capital letters`},
		{"version", "stock: 2\nitems: []\n", "version 2 of the stock file; this softloft reads version 1"},
		{"negative mass", head + "  - {kind: lamp, kit: panel-2x1, count: 1, each: -4 kg}\n", "a mass of -4 kg"},
		{"flat", head + "  - {kind: lamp, kit: panel-2x1, count: 1, packed: [1 ft, 0 ft, 1 ft]}\n", "packed item 2: a side of 0 m"},
		{"thick saw", "stock: 1\nkerf: 1 ft\nitems: []\n", "a saw cut of"},
		{"table", "Item No,Description,Qty\n1,pipe,20\n", "s.yaml:1:1: a table of separated values stands here, a stock file is due; write stock: 1"},
		{"table with semicolons", "\ufeffArtikel;Menge;Preis\r\nRohr;20;1,50\r\n", "a table of separated values"},
		{"tabs", "item\tcount\trate\n", "a table of separated values"},
		{"a plan", "softloft: 1\nbox: {}\n", "softloft: unknown key"},
		{"empty", "", "s.yaml"},
	} {
		shop, mistakes := Read("s.yaml", []byte(c.text))
		if shop != nil || !strings.Contains(mistakes.Error(), c.want) {
			t.Errorf("%s: %q, want %q", c.name, mistakes.Error(), c.want)
		}
	}
}

func TestExample(t *testing.T) {
	text, err := os.ReadFile("../examples/shop/stock.yaml")
	if err != nil {
		t.Fatal(err)
	}
	shop, mistakes := Read("stock.yaml", text)
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	base, _ := kit.Standard()
	odd := shop.Odd(base)
	if len(odd) != 2 || !strings.Contains(odd[0], "the kit has no lamp hall-panel") {
		t.Errorf("%q; the plan's own panel is all that the kit doesn't have", odd)
	}
}

func FuzzRead(f *testing.F) {
	if text, err := os.ReadFile("../examples/shop/stock.yaml"); err == nil {
		f.Add(text)
	}
	f.Add([]byte("a,b,c\n"))
	f.Add([]byte(head + "  - {kind: rope, kit: x, length: 1e9 ft, count: 99999999999, rate: 1e300, packed: [1 m]}\n"))
	base, _ := kit.Standard()
	f.Fuzz(func(t *testing.T, text []byte) {
		shop, mistakes := Read("s.yaml", text)
		if (shop == nil) != (len(mistakes) > 0) {
			t.Errorf("shop %v, mistakes %v", shop, mistakes)
		}
		for _, m := range mistakes {
			if m.Problem == "" || m.Place.File == "" {
				t.Errorf("a mistake without words or place: %+v", m)
			}
		}
		if shop == nil {
			return
		}
		needs := []Need{{"a", "tube", "pipe-1-1/4", 3, 4}, {"b", "rope", "manila-1/2", 7, 2}, {"c", "lamp", "panel-2x1", 0, 3}}
		if fault := shop.served(needs, shop.Serve(needs, base, 2)); fault != "" {
			t.Error(fault)
		}
	})
}
