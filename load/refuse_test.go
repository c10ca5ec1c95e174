package load

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"softloft/finding"
	"softloft/source"
)

// Rigs that cannot hang, or that nobody should ask about: a clear sentence or a finding that
// is over or not known; no number that is none, no hang.
func TestRigsThatCannotHang(t *testing.T) {
	full := hungSquare{above: 3, ribs: ribsAt, lamps: onRibs, hung: "  safety: {kit: wire}\n"}
	with := func(change func(*hungSquare)) string {
		h := full
		change(&h)
		return h.text()
	}
	replace := func(old, new string) string {
		text := full.text()
		if !strings.Contains(text, old) {
			t.Fatalf("%q is not in the plan", old)
		}
		return strings.ReplaceAll(text, old, new)
	}
	for _, c := range []struct {
		name, text string
		id         string // a finding that must be told
		result     finding.Result
	}{
		{"one line", strings.Split(full.text(), "    - {name: L2")[0] + "kit:" + strings.SplitN(full.text(), "\nkit:", 2)[1], "load.hangs", finding.Over},
		{"upside down: the weight far over the lines", full.text() + "added:\n  - {name: mast, mass: 400 kg, at: [0 m, 0 m, 6 m]}\n", "load.lost.line.L1", finding.Over},
		{"all lines slack but one pair", with(func(h *hungSquare) { h.lengths = [4]float64{3, 9, 3, 9} }), "load.line.L2", ""},
		{"lines that pool on the floor", with(func(h *hungSquare) { h.lengths = all(30) }), "load.line.L1", ""},
		{"points inside the box", with(func(h *hungSquare) { h.above = 0.01; h.out = -1.8 }), "load.line.L1", ""},
		{"a rope of no strength", replace("breaks: 120 kN", "breaks: 1 N"), "load.line.L1", finding.Over},
		{"points that allow nothing", replace("allows: 20 kN", "allows: 0 N"), "load.point.P1", finding.Over},
		{"a rope as soft as rubber", replace("stiffness: 60 kN", "stiffness: 0.1 kN"), "load.line.L1", ""},
		{"a rope as stiff as can be written", replace("stiffness: 60 kN", "stiffness: 1000000 kN"), "load.line.L1", ""},
		{"tubes as soft as rope", replace("E: 69 GPa", "E: 0.01 GPa"), "", ""},
		{"tubes like foil", replace("wall: 3.56 mm", "wall: 0.01 mm"), "", ""},
		{"a lamp of ten tons", replace("mass: 9.5 kg", "mass: 10000 kg"), "", ""},
		{"a lamp of nothing", replace("mass: 9.5 kg", "mass: 0 kg"), "load.line.L1", finding.Within},
	} {
		t.Run(c.name, func(t *testing.T) {
			begin := time.Now()
			got, found := analyze(t, c.text)
			if took := time.Since(begin); took > 10*time.Second {
				t.Errorf("it took %v", took)
			}
			text, err := json.Marshal(got)
			if err != nil {
				t.Fatal(err)
			}
			balancedJSON(t, text)
			for _, f := range found {
				if f.Result == finding.NotKnown && f.Why == "" && len(f.Causes) == 0 {
					t.Errorf("%s is not known and does not say why", f.ID)
				}
			}
			f := named(found, c.id)
			if c.id != "" && got.Frame != nil && f.ID == "" {
				t.Errorf("no finding %s", c.id)
			}
			if c.result != "" && f.Result != c.result {
				t.Errorf("%s is %q (%s), want %q", c.id, f.Result, f.Why, c.result)
			}
			if got.Frame == nil && named(found, "load.hangs").Why == "" {
				t.Error("nothing is told about why it does not hang")
			}
		})
	}
}

// Very many members: the work is limited, whatever comes out.
func TestManyMembers(t *testing.T) {
	if testing.Short() {
		t.Skip("it takes seconds")
	}
	h := hungSquare{above: 3, lengths: all(3)}
	var at []string
	h.hung = "  safety: {kit: wire}\n"
	h.lamps = "lamps:\n"
	for i := range 200 {
		x := -1.8 + 3.6*float64(i)/199
		at = append(at, fmt.Sprintf("%.4f m", x))
		h.lamps += fmt.Sprintf("  - {name: l%d, kit: panel, at: [%.4f m, %.4f m], above: 0 m, on: {rib: %d}}\n", i, x, 0.01*float64(i%100), i+1)
	}
	h.ribs = "  ribs: {tube: pipe, at: [" + strings.Join(at, ", ") + "], along: y, level: lower, ends: rigid}\n"
	begin := time.Now()
	got, found := analyze(t, h.text())
	t.Logf("%v, %d members", time.Since(begin), len(got.Frame.Members))
	if took := time.Since(begin); took > 60*time.Second {
		t.Errorf("it took %v", took)
	}
	if len(found) == 0 {
		t.Error("nothing is told")
	}
}

// A case that is not known hides nothing: where what is known is over, so is the whole.
func TestUnknownPartHidesNoOver(t *testing.T) {
	w := &work{}
	limit := finding.Given(finding.Input{Symbol: "F", Name: "limit", Value: 100, Unit: "N", Origin: "test"})
	for _, c := range []struct {
		built float64
		want  finding.Result
	}{{150, finding.Over}, {50, finding.NotKnown}} {
		f := w.addLargest(finding.Check{ID: "x", Statement: "x", Relation: finding.AtMost, Unit: "N", Limit: limit, Source: source.Cite("plan", "")}, []finding.Input{
			{Symbol: "T_built", Name: "built", Value: c.built, Unit: "N", Origin: "test"},
			{Symbol: "T_lost", Name: "lost", Value: math.NaN(), Unit: "N", Origin: "was not worked out"},
		}, mostTension)
		if f.Result != c.want {
			t.Errorf("%g N of 100 N beside what is not known: %s, want %s", c.built, f.Result, c.want)
		}
	}
}
