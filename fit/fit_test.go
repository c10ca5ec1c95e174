package fit

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"softloft/finding"
	"softloft/shape"
)

// Each habit of the trade as one change to a plan that keeps to it: the finding that it
// brings, and its result. All are common practice; the ranges and places are the plan's.
func TestWhatShouldNotBeBuilt(t *testing.T) {
	tailor := example(t, "tailors-cutting-table")
	for _, c := range []struct {
		name     string
		old, by  string
		id       string
		result   finding.Result
		whenKept finding.Result // of the same finding before; empty where there was none
	}{
		{"2 in under the deflectors", "12 ft 2 in]}\n    - {name: sprinkler east", "10 ft 9 in]}\n    - {name: sprinkler east", "fit.sprinkler.sprinkler west", finding.Over, finding.Tight},
		{"duct too near", "at: [0 ft, 10 ft, 11 ft 6 in]", "at: [0 ft, 4 ft 6 in, 11 ft]", "fit.clear.heating duct", finding.Over, finding.Within},
		{"duct through the box", "at: [0 ft, 10 ft, 11 ft 6 in]", "at: [0 ft, 0 ft, 10 ft]", "fit.clear.heating duct", finding.Over, finding.Within},
		{"stand under the box", "at: [-5 ft, -2 ft 6 in]", "at: [-2 ft, 0 ft]", "fit.in_light.south-west", finding.Over, ""},
		{"stand beside its ear", "at: [-5 ft, -2 ft 6 in]", "at: [-7 ft, -2 ft 6 in]", "fit.beside.south-west", finding.Over, finding.Within},
		{"stand at another height", "rise: 10 ft 7 in, castors: locked, bags: {mass: 25 lb, count: 3}, holds: {ear: west}}\n  - {name: north-west", "rise: 11 ft, castors: locked, bags: {mass: 25 lb, count: 3}, holds: {ear: west}}\n  - {name: north-west", "fit.height.south-west", finding.Over, finding.Within},
		{"stand over its range", "rise: 10 ft 7 in", "rise: 15 ft", "fit.rise.south-west", finding.Over, finding.Within},
		{"stand under its range", "rise: 10 ft 7 in", "rise: 4 ft", "fit.rise_low.south-west", finding.Over, ""},
		{"stand outside of the room", "at: [-5 ft, -2 ft 6 in]", "at: [-15 ft, -2 ft 6 in]", "fit.outside.stand.south-west", finding.Over, ""},
		{"box through the ceiling", "trim: 8 ft 9 in", "trim: 11 ft", "fit.outside.box", finding.Over, ""},
		{"castors that roll", "castors: locked", "castors: rolling", "fit.castors.south-west", finding.Over, ""},
		{"lamps in one place", "at: [0 ft, 0 ft], above: 6 in, on: {rib: 2}", "at: [-3 ft 4 in, 1 ft], above: 6 in, on: {rib: 2}", "fit.crowd.lamp.west panel.lamp.middle panel", finding.Over, ""},
		{"a lamp provided where one hangs", "provision:\n", "provision:\n  lamps: [{name: more, kit: panel-2x2, at: [1 ft, 0 ft], above: 6 in, on: {rib: 2}}]\n", "fit.crowd.lamp.middle panel.provision.more", finding.Over, ""},
		{"a side rolled up", "sides: white", "sides: {north: none}", "fit.wrap", finding.NotKnown, ""},
	} {
		before := byID(Run(derive(t, tailor)), c.id)
		if (before == nil) != (c.whenKept == "") || before != nil && before.Result != c.whenKept {
			t.Errorf("%s: kept to, it is %+v, want %q", c.name, before, c.whenKept)
		}
		after := byID(Run(derive(t, change(t, tailor, c.old, c.by))), c.id)
		if after == nil || after.Result != c.result {
			t.Errorf("%s: %+v, want %s", c.name, after, c.result)
		}
	}
}

// A set wall through the box or through a stand is seen, one beside is not.
func TestSetWalls(t *testing.T) {
	tailor := example(t, "tailors-cutting-table")
	for _, c := range []struct {
		x, part string
	}{{"0 ft", "box"}, {"-5 ft", "stand.north-west"}, {"-12 ft", ""}} {
		wall := "  surfaces: [{name: flat, corners: [[X, 2 ft, 0 ft], [X, 8 ft, 0 ft], [X, 8 ft, 10 ft], [X, 2 ft, 10 ft]]}]\n  obstacles:"
		found := Run(derive(t, change(t, tailor, "  obstacles:", strings.ReplaceAll(wall, "X", c.x))))
		for _, part := range []string{"box", "stand.north-west"} {
			if seen := byID(found, "fit.through.flat."+part) != nil; seen != (part == c.part) {
				t.Errorf("wall at x = %s: %s is %v", c.x, part, seen)
			}
		}
	}
}

// A box over 4 ft wide shadows sprinklers and the fire authority decides (common
// practice): not known. A narrow one does not.
func TestSprinklerShadow(t *testing.T) {
	tailor := example(t, "tailors-cutting-table")
	if f := byID(Run(derive(t, tailor)), "fit.sprinkler_shadow"); f == nil || f.Result != finding.NotKnown {
		t.Errorf("6 ft wide: %+v", f)
	}
	narrow := strings.ReplaceAll(change(t, tailor, "size: [10 ft, 6 ft]", "size: [10 ft, 4 ft]"), "2 ft 6 in]", "1 ft 6 in]")
	if f := byID(Run(derive(t, narrow)), "fit.sprinkler_shadow"); f != nil {
		t.Errorf("4 ft wide: %+v", f)
	}
}

// Polyester softens well below 250 °C (common practice): a lower frame on textile beside a
// lamp is held to the label's distance, on chain it is not.
func TestTextileOutOfTheHeat(t *testing.T) {
	waltz := example(t, "waltz-in-the-old-corn-exchange")
	if f := byID(Run(derive(t, waltz)), "fit.heat.drop.1"); f != nil {
		t.Errorf("on chain: %+v", f)
	}
	soft := change(t, waltz, "join: {drops: {kit: chain-7/32", "join: {drops: {kit: round-sling-1t")
	if f := byID(Run(derive(t, soft)), "fit.heat.drop.1"); f == nil || f.Result != finding.NotKnown {
		t.Errorf("on a round sling, labels silent: %+v", f)
	}
	for keep, want := range map[string]finding.Result{"0.5 m": finding.Within, "9 ft": finding.Over} {
		if f := byID(Run(derive(t, change(t, soft, "      hook: 12 in", "      keep_off: "+keep+"\n      hook: 12 in"))), "fit.heat.drop.1"); f == nil || f.Result != want {
			t.Errorf("label asks for %s: %+v, want %s", keep, f, want)
		}
	}
}

// An arm is weighed down and no longer than it is (common practice; arm-junior is 4 ft).
func TestArms(t *testing.T) {
	five := example(t, "five-over-two-unknown")
	for id, c := range map[string][2]string{
		"fit.counterweight.side":       {"bags: {mass: 35 lb, count: 3}, ", ""},
		"fit.reach.side":               {"reach: 3 ft 6 in", "reach: 5 ft"},
		"fit.arm_end.lamp.small":       {"at: [1 ft, 1 ft], above: 3 in", "at: [3 ft, 1 ft], above: 3 in"},
		"fit.castors.side":             {"rise: 9 ft 3 in", "rise: 9 ft 3 in, castors: locked"},
		"rig.pin.lamp.small":           {"source: demo value}\n", "source: demo value}\n  arm: {arm-junior: {fits: [pin-19]}}\n"},
		"rig.ear.east":                 {"  upper: {tube: square-1-1/4}", "  upper: {tube: pipe-2}"},
		"fit.mount.lamp.small.adapter": {"source: demo value}\n", "source: demo value}\n  lamp: {panel-1x1: {mass: 40 lb, size: [1 ft, 1 ft], hook: 12 in, pin: 16 mm}}\n"},
	} {
		before, after := byID(Run(derive(t, five)), id), byID(Run(derive(t, change(t, five, c[0], c[1]))), id)
		bad := func(f *finding.Finding) bool {
			return f != nil && (f.Result == finding.Over || f.Result == finding.NotKnown)
		}
		if bad(before) || !bad(after) {
			t.Errorf("%s: before %+v, after %+v", id, before, after)
		}
	}
}

// The distance between blocks: closed forms, and against the nearest of many places.
func TestApart(t *testing.T) {
	unit := func(x, y, z, turn float64) block {
		return block{Box: shape.Box{Pose: shape.At(r3.Vec{X: x, Y: y, Z: z}).Rotated(r3.Vec{Z: 1}, turn), Half: [3]float64{1, 1, 1}}}
	}
	for _, c := range []struct {
		a, b block
		want float64
	}{
		{unit(0, 0, 0, 0), unit(5, 0, 0, 0), 3},
		{unit(0, 0, 0, 0), unit(5, 6, 0, 0), 5}, // edge to edge: 3, 4, 5
		{unit(0, 0, 0, 0), unit(5, 0, 0, math.Pi/4), 4 - math.Sqrt2},
		{unit(0, 0, 0, 0), unit(1, 1, 1, 0.3), 0},
		{segment("", "", "", r3.Vec{X: -1}, r3.Vec{X: 1}), segment("", "", "", r3.Vec{Y: -1, Z: 2}, r3.Vec{Y: 1, Z: 2}), 2}, // skew
	} {
		if got := apart(c.a, c.b); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("got %.9g, want %.9g", got, c.want)
		}
	}
	rapid.Check(t, func(r *rapid.T) {
		num := func(name string) float64 { return rapid.Float64Range(-4, 4).Draw(r, name) }
		a, b := unit(0, 0, 0, num("ta")), unit(num("x"), num("y"), num("z"), num("tb"))
		got, back := apart(a, b), apart(b, a)
		if math.Abs(got-back) > 1e-9 {
			r.Fatalf("%g there, %g back", got, back)
		}
		for range 200 {
			at := a.Pose.Out(r3.Vec{X: num("px") / 4, Y: num("py") / 4, Z: num("pz") / 4})
			if d := r3.Norm(r3.Sub(b.near(at), at)); d < got-1e-9 {
				r.Fatalf("a place at %g, nearest is said to be %g", d, got)
			}
		}
	})
}
