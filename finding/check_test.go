package finding

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"softloft/source"
)

// line is a check as the load analysis writes one. The figures are those of
// half-inch manila with a bowline at factor 10 (CI 1308-96: 2385 lb; published
// knot tests: 60 %), in newtons.
func line() Check {
	return Check{
		ID: "load.line.NW", Subject: Subject{"hang/lines/NW", Place{31, 7}}, Statement: "North-west line", Case: "lost SE",
		Relation: AtMost, Unit: "N",
		Value: Work{Formula: "T = max(T_built, T_lost)", Name: "tension", Inputs: []Input{
			{Symbol: "T_built", Name: "as built", Value: 164.085, Unit: "N", Origin: "frame"},
			{Symbol: "T_lost", Name: "one line lost", Value: 328.169, Unit: "N", Origin: "frame"},
		}},
		Limit: Work{Formula: "F = B * k / n", Name: "allowed", Inputs: []Input{
			{Symbol: "B", Name: "breaking strength", Value: 10609, Unit: "N", Origin: "kit rope/manila"},
			{Symbol: "k", Name: "knot", Value: 0.6, Origin: "bowline"},
			{Symbol: "n", Name: "design factor", Value: 10, Origin: "plan.yaml:9"},
		}},
		Source: source.Cite("plan", "rules.factor.rope"),
	}
}

func TestConclude(t *testing.T) {
	f := line().Conclude()
	want := Finding{
		ID: "load.line.NW", Subject: Subject{"hang/lines/NW", Place{31, 7}}, Statement: "North-west line", Case: "lost SE",
		Relation: AtMost, Value: 328.169, Limit: 636.54, Unit: "N", Margin: 636.54 / 328.169, Slack: 636.54 - 328.169, Result: Within,
		Formula: "T = max(T_built, T_lost) ≤ F = B · k / n",
		Inputs:  append(line().Value.Inputs, line().Limit.Inputs...),
		Steps: []Step{
			{"T = max(T_built, T_lost)", Input{Symbol: "T", Name: "tension", Value: 328.169, Unit: "N"}, "max(164.085, 328.169)"},
			{"F = B · k / n", Input{Symbol: "F", Name: "allowed", Value: 636.54, Unit: "N"}, "10609 × 0.6 / 10"},
		},
		Source: source.Cite("plan", "rules.factor.rope"),
	}
	if diff := cmp.Diff(want, f, cmpopts.EquateApprox(1e-12, 0)); diff != "" {
		t.Error(diff)
	}
}

func TestStepsFeedBothSides(t *testing.T) {
	c := line()
	c.Value.Steps = []Step{{Formula: "W = m * g"}}
	c.Value.Inputs = append(c.Value.Inputs, Input{Symbol: "m", Value: 10, Unit: "kg"}, Input{Symbol: "g", Value: 9.80665, Unit: "m/s2"})
	c.Value.Formula = "T = W / 4"
	c.Limit.Formula = "F = min(B * k / n, W)"
	f := c.Conclude()
	if !alike(f.Value, 24.516625) || !alike(f.Limit, 98.0665) || len(f.Steps) != 3 || f.Steps[0].Substituted != "10 × 9.80665" {
		t.Errorf("value %v, limit %v, steps %+v, %s", f.Value, f.Limit, f.Steps, f.Why)
	}
}

func TestNotKnown(t *testing.T) {
	for _, c := range []struct {
		name         string
		change       func(*Check)
		value, limit float64
		why          string
	}{
		{"no rating", func(c *Check) { c.Limit.Inputs[0].Value = nan }, 328.169, nan, "breaking strength B is not known"},
		{"no rating, no knot", func(c *Check) { c.Limit.Inputs[0].Value, c.Limit.Inputs[1].Value = nan, nan }, 328.169, nan,
			"breaking strength B is not known; knot k is not known"},
		{"one case unknown", func(c *Check) { c.Value.Inputs[1].Value = math.Inf(1) }, nan, 636.54, "one line lost T_lost is not known"},
		{"factor 0", func(c *Check) { c.Limit.Inputs[2].Value = 0 }, 328.169, nan, "B · k / n is a division by zero"},
		{"knot above 1", func(c *Check) {
			c.Limit.Inputs[1].Value = 1.2
			c.Limit.Ranges = []Range{{"k", 0, 1, "a knot never strengthens"}}
		}, 328.169, nan, "knot k is 1.2, the formula holds for 0 to 1 (a knot never strengthens)"},
		{"result out of range", func(c *Check) {
			c.Value.Ranges = []Range{{Symbol: "T", Low: math.Inf(-1), High: 300}}
		}, nan, 636.54, "tension T is 328.169 N, the formula holds for at most 300 N"},
		{"a step is unknown", func(c *Check) {
			c.Limit.Steps = []Step{{Formula: "s = 1 / (n - n)", Result: Input{Name: "nothing"}}}
			c.Limit.Formula = "F = B * s"
		}, 328.169, nan, "1 / (n - n) is a division by zero"},
		{"given limit unknown", func(c *Check) { c.Limit = Given(Input{Symbol: "F", Name: "allowed", Value: nan}) }, 328.169, nan, "allowed F is not known"},
	} {
		check := line()
		c.change(&check)
		if err := check.Err(); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		f := check.Conclude()
		if f.Result != NotKnown || !alike(f.Value, c.value) || !alike(f.Limit, c.limit) || f.Why != c.why || !math.IsNaN(f.Margin) {
			t.Errorf("%s: %s, value %v, limit %v, margin %v, %q", c.name, f.Result, f.Value, f.Limit, f.Margin, f.Why)
		}
	}
}

func TestFaultsOfACheck(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Check)
		says   string
	}{
		{"unknown symbol", func(c *Check) { c.Value.Formula = "T = T_built + x" }, `load.line.NW: x in "T = T_built + x" is given by no input and no step before it`},
		{"step too late", func(c *Check) {
			c.Value.Steps = []Step{{Formula: "a = b"}, {Formula: "b = T_built"}}
		}, "b in \"a = b\" is given by no input"},
		{"broken formula", func(c *Check) { c.Limit.Formula = "F = B *" }, "where a number, a symbol or a parenthesis is due"},
		{"no relation", func(c *Check) { c.Relation = "" }, `the relation is ""; at_most or at_least is due`},
		{"no source", func(c *Check) { c.Source = source.Citation{} }, `the source "" is not in the register`},
		{"unknown source", func(c *Check) { c.Source.Source = "hearsay" }, `the source "hearsay" is not in the register`},
		{"no id", func(c *Check) { c.ID = "" }, "a check without an id"},
		{"twice", func(c *Check) { c.Limit.Inputs[2].Symbol = "T_lost" }, "T_lost is given twice with different values"},
		{"given and computed", func(c *Check) { c.Limit.Inputs[2].Symbol = "T" }, "T is given and computed"},
		{"no symbol", func(c *Check) { c.Limit.Inputs[2].Symbol = "2n" }, `"2n" is no symbol`},
		{"a function's name", func(c *Check) { c.Limit.Inputs[2].Symbol = "min" }, `"min" is no symbol`},
		{"no limit", func(c *Check) { c.Limit = Work{} }, "a work without a formula has 0 inputs and 0 steps"},
		{"nameless step", func(c *Check) { c.Value.Steps = []Step{{Formula: "T_built / 2"}} }, "defines no symbol"},
		{"empty range", func(c *Check) { c.Value.Ranges = []Range{{Symbol: "T", Low: 2, High: 1}} }, "the range of T is empty"},
		{"range of nothing", func(c *Check) { c.Value.Ranges = []Range{{Symbol: "q", Low: 1, High: 2}} }, "a range is stated for q"},
	} {
		check := line()
		c.change(&check)
		err := check.Err()
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %q", c.name, err, c.says)
		}
		if f := check.Conclude(); f.Result != NotKnown || Known(f.Value) || Known(f.Limit) || !strings.Contains(f.Why, c.says) {
			t.Errorf("%s: %s, %v, %v, %q", c.name, f.Result, f.Value, f.Limit, f.Why)
		}
	}
}

// The same input may stand on both sides.
func TestSharedInput(t *testing.T) {
	c := line()
	c.Limit.Inputs = append(c.Limit.Inputs, c.Value.Inputs[0])
	if err := c.Err(); err != nil || len(c.Conclude().Inputs) != 5 {
		t.Errorf("%v, %d inputs", err, len(c.Conclude().Inputs))
	}
}

func TestUnknownAndRefused(t *testing.T) {
	u := Unknown("load.stand.A", Subject{Part: "stands/A"}, "Stand A", "no rating was given")
	if u.Result != NotKnown || u.Line() != "not known: Stand A (no rating was given)" {
		t.Errorf("%s", u.Line())
	}
	r := Refused("load.lost.NW", Subject{Part: "hang/lines/NW"}, "North-west line lost", "the box tumbles")
	if r.Result != Over || Known(r.Value) || Known(r.Limit) || r.Line() != "over: North-west line lost (the box tumbles)" {
		t.Errorf("%s", r.Line())
	}
}

func TestLines(t *testing.T) {
	stops := Check{ID: "light.even", Statement: "Evenness", Relation: AtMost, Unit: Stop, Source: source.Cite("plan", "want.even"),
		Value: Given(Input{Symbol: "e", Value: 0.4321, Unit: Stop}), Limit: Given(Input{Symbol: "e_max", Value: 0.5, Unit: Stop})}
	close := line()
	close.Value = Given(Input{Symbol: "T", Value: 636.5401, Unit: "N"})
	unrated := line()
	unrated.Limit.Inputs[0].Value = nan
	for want, c := range map[string]Check{
		"within: North-west line: 328.2 N, at most 636.5 N, margin 1.94, case lost SE":                            line(),
		"tight: Evenness: 0.4321 stop, at most 0.5 stop, slack 0.0679 stop":                                       stops,
		"over: North-west line: 636.5401 N, at most 636.54 N, margin 0.9999998, case lost SE":                     close,
		"not known: North-west line: 328.2 N, at most not known, case lost SE (breaking strength B is not known)": unrated,
	} {
		if got := c.Conclude().Line(); got != want {
			t.Errorf("got  %s\nwant %s", got, want)
		}
	}
}

// Whatever input is not known, the finding never passes and never shows a
// number in its place.
func TestUnknownNeverPasses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := line()
		for _, list := range [][]Input{c.Value.Inputs, c.Limit.Inputs} {
			for i := range list {
				list[i].Value = rapid.Float64Range(0.001, 1e6).Draw(t, list[i].Symbol)
			}
		}
		sides := [][]Input{c.Value.Inputs, c.Limit.Inputs}
		side := rapid.IntRange(0, 1).Draw(t, "side")
		i := rapid.IntRange(0, len(sides[side])-1).Draw(t, "input")
		sides[side][i].Value = rapid.SampledFrom([]float64{nan, math.Inf(1), math.Inf(-1)}).Draw(t, "bad")
		f := c.Conclude()
		if f.Result != NotKnown || Known([]float64{f.Value, f.Limit}[side]) || f.Why == "" || Known(f.Margin) || Known(f.Slack) {
			t.Fatalf("%+v", f)
		}
	})
}

// Concluding does not change the check, and gives the same finding each time.
func TestConcludeRepeats(t *testing.T) {
	c, pristine := line(), line()
	a, b := c.Conclude(), c.Conclude()
	if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(c, pristine) {
		t.Error("a second conclusion differs from the first")
	}
}

func TestCausesOfInputs(t *testing.T) {
	root := Unknown("load.rope", Subject{}, "Rope rating", "no rating was given")
	c := line()
	c.Limit.Inputs[0] = root.Input("B", "breaking strength")
	f := c.Conclude()
	if f.Result != NotKnown || !slices.Equal(f.Causes, []string{"load.rope"}) || f.Inputs[2].Origin != "finding load.rope" {
		t.Errorf("%+v", f)
	}
}

func BenchmarkConclude(b *testing.B) {
	b.ReportAllocs()
	c := line()
	for i := 0; b.Loop(); i++ {
		c.Value.Inputs[0].Value = 100 + float64(i%50)
		if c.Conclude().Result != Within {
			b.Fatal("not within")
		}
	}
}
