package rig_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"softloft/fit"
	"softloft/load"
	"softloft/pull"
	"softloft/rig"
)

// Standing plans of all sorts give answers, whatever they ask for: nothing panics, no
// number of the take-off is NaN while its parts have masses, ids are unique, and what is
// placed weighs and is pulled.
func TestWildStandingPlans(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		text := wildPlan(r)
		model := deriveOr(r, text)
		if fault := same(model, pull.List(model)); fault != "" {
			r.Fatalf("%s\n%s", fault, text)
		}
		answer, _ := load.Run(model)
		fit.Run(model)
		if math.IsNaN(float64(answer.Mass)) {
			r.Fatalf("the mass is not known\n%s", text)
		}
		again, _ := load.Run(deriveOr(r, text))
		for k := range answer.Stands {
			a, b := float64(answer.Stands[k].Load), float64(again.Stands[k].Load)
			if a != b && !(math.IsNaN(a) && math.IsNaN(b)) {
				r.Fatalf("stand %d carries %v, then %v\n%s", k, a, b, text)
			}
		}
	})
}

// deriveOr reads a plan that must be readable.
func deriveOr(r *rapid.T, text string) *rig.Rig {
	model, mistakes := read(text)
	if mistakes != "" {
		r.Fatalf("%s\n%s", mistakes, text)
	}
	return model
}

func wildPlan(r *rapid.T) string {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(r, name) }
	pick := func(name string, from ...string) string { return rapid.SampledFrom(from).Draw(r, name) }
	var b strings.Builder
	fmt.Fprintf(&b, "softloft: 1\nderive: %s\nrules: {push: %g N, load_cells: %s}\nroom: {size: [12 m, 12 m, 6 m]", pick("derive", "all", "none"), number("push", 0, 100), pick("cells", "true", "false"))
	b.WriteString(pick("outdoors", "", ", outdoors: {gust: 8 m/s}") + pick("floor", "", ", floor: {allows: 5 kPa}"))
	fmt.Fprintf(&b, ", obstacles: [{name: thing, kind: %s, at: [%g m, %g m, 3 m], size: [1 m, 1 m, 1 m], clear: 0.5 m}]}\n", pick("kind", "duct", "sprinkler", "lamp", "wall"), number("ox", -3, 3), number("oy", -3, 3))
	fmt.Fprintf(&b, "box:\n  size: [%g m, %g m]\n  cloth_at: 2.5 m\n  turn: %g deg\n  depth: 0.5 m\n  frame: %s\n", number("a", 1, 5), number("b", 1, 5), number("turn", -180, 180), pick("frame", "square-1", "pipe-1-1/2", "pipe-2-1/2"))
	b.WriteString(pick("upper", "", "  upper: {tube: square-1-1/4}\n  join: {uprights: {tube: square-1-1/4, count: 6}}\n", "  upper: {tube: pipe-1-1/2}\n  join: {drops: {kit: round-sling-1t, count: 4}}\n"))
	b.WriteString("  ribs: {tube: pipe-1-1/4, count: 2}\n" + pick("cloth", "", "  cloth: [heavy]\n", "  cloth: [{kit: half, gap: 0.1 m}, silk]\n") + pick("sides", "", "  sides: none\n", "  sides: {north: black, east: none}\n") + pick("crate", "", "  crate: crate-4x4\n"))
	b.WriteString("stands:\n")
	arms := 0
	for k := range rapid.IntRange(1, 5).Draw(r, "stands") {
		holds := pick("holds", "ear: north", "ear: south", "ear: east", "ear: west", "arm")
		if holds == "arm" {
			arms++
			holds = fmt.Sprintf("arm: {kit: %s, reach: %g m, bearing: %g deg, head: %s}", pick("arm", "arm-40", "arm-junior"), number("reach", 0, 2), number("bearing", 0, 360), pick("head", "left", "right"))
		}
		fmt.Fprintf(&b, "  - {name: s%d, kit: %s, at: [%g m, %g m], turn: %g deg, rise: %g m, castors: %s, bags: {mass: %g kg, count: %d, at: %s}, holds: {%s}}\n",
			k, pick("stand", "roller-overhead", "combo", "crank-stand"), number("sx", -4, 4), number("sy", -4, 4), number("st", 0, 360), number("rise", 0.5, 6),
			pick("castors", "none", "locked", "rolling"), number("bag", 0, 20), rapid.IntRange(0, 3).Draw(r, "count"), pick("at", "base", "leg 2"), holds)
	}
	b.WriteString("lamps:\n")
	for k := range rapid.IntRange(1, 3).Draw(r, "lamps") {
		on := pick("on", ", on: {rib: 1}", ", on: {rib: 2}", ", on: {frame: north}", "", ", on: {bar: pipe-1}")
		if arms > 0 && rapid.Bool().Draw(r, "on arm") {
			on = fmt.Sprintf(", on: {arm: %d}", rapid.IntRange(1, arms).Draw(r, "which"))
		}
		fmt.Fprintf(&b, "  - {name: l%d, kit: %s, at: [%g m, %g m], above: 0.2 m, aims: {tilt: %g deg}%s}\n", k, pick("lamp", "panel-1x1", "panel-2x2", "panel-4x2", "tungsten-1k", "tube-lamp"),
			number("lx", -1, 1), number("ly", -1, 1), number("tilt", 0, 60), on)
	}
	b.WriteString(pick("provision", "", "provision: {reserve: 2, lamps: [{name: more, kit: panel-1x1, at: [0 m, 0.3 m], above: 0.2 m, on: {rib: 1}}]}\n"))
	b.WriteString(pick("power", "", "power: {tie_in: [5 m, 4 m, 1 m], cable: cable-12/3}\n", "power: {phases: 3, tie_in: [-5 m, 0 m, 0 m], cable: cable-10/3}\n"))
	b.WriteString(pick("hang", "", "hang: {rope: polyester-3/8, safety: {kit: safety-30}, guys: [{from: nw, to: [-5 m, 5 m, 0 m]}, {from: s0, to: [5 m, -5 m, 0 m]}]}\n"))
	return b.String()
}
