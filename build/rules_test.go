package build

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"softloft/finding"
	"softloft/load"
	"softloft/plan"
	"softloft/pull"
	"softloft/rig"
	"softloft/source"
)

// Parts that wait for each other have no order: the finding names them, and no steps
// are told.
func TestCircleIsAFinding(t *testing.T) {
	r := derived(t, "softloft: 1\nbox: {size: [8 ft, 8 ft], trim: 10 ft, frame: pipe-1-1/4, cloth: [light]}\n")
	weight := 1.0
	for _, part := range [][2]string{{"one", "other"}, {"other", "one"}} {
		r.Parts = append(r.Parts, rig.Part{ID: "added." + part[0], What: "added load", Name: part[0], Mass: &weight, Joined: []string{"added." + part[1]}, Center: r3.Vec{Z: 1}})
	}
	loads, _ := load.Run(r)
	a, found := Run(r, loads, pull.List(r))
	if a.Build != nil || a.Strike != nil || len(found) != 1 {
		t.Fatalf("%d steps, %d findings", len(a.Build), len(found))
	}
	f := found[0]
	if f.ID != "build.order" || f.Result != finding.NotKnown || !strings.Contains(f.Why, "added.one") || !strings.Contains(f.Why, "added.other") {
		t.Errorf("%s: %s", f.ID, f.Line())
	}
}

// hungPlan is a box on two hauled lines with a crew.
func hungPlan(crew string) string {
	return `softloft: 1
room: {size: [40 ft, 40 ft, 20 ft], points: [{name: A, at: [-4 ft, 0 ft, 18 ft], allows: 300 lb}, {name: B, at: [4 ft, 0 ft, 18 ft], allows: 300 lb}]}
box: {size: [8 ft, 8 ft], trim: 10 ft, frame: pipe-1-1/4, cloth: [light]}
hang: {rope: polyester-1/2, pulley: block-6, lines: [{name: W, from: [-4 ft, 0 ft], to: A}, {name: E, from: [4 ft, 0 ft], to: B}]}
` + crew + "\n"
}

// Two lines at one person each, the caller and one who looks: four, by counting.
func TestCrewIsHeldToTheStepThatNeedsMost(t *testing.T) {
	for crew, want := range map[int]finding.Result{2: finding.Over, 3: finding.Over, 4: finding.Tight, 6: finding.Within} {
		_, a, found := run(t, hungPlan(fmt.Sprintf("crew: {people: %d}", crew)))
		f := found[slices.IndexFunc(found, func(f finding.Finding) bool { return f.ID == "build.crew" })]
		if f.Result != want || f.Value != 4 || a.Job.LeastPeople != 4 {
			t.Errorf("crew of %d: %s", crew, f.Line())
		}
		if known := finding.Known(float64(a.Job.Seconds)); known != (want != finding.Over) {
			t.Errorf("crew of %d: length known: %v", crew, known)
		}
	}
	if _, a, found := run(t, hungPlan("")); len(found) > 0 || finding.Known(float64(a.Job.Seconds)) || len(a.Build) == 0 {
		t.Errorf("without a crew: %d findings", len(found))
	}
}

// Nobody named: lines to sign, no finding. One named: every other is asked for.
func TestNamesOfHolds(t *testing.T) {
	count := func(text string) (asked int, a Answer) {
		_, a, found := run(t, text)
		for _, f := range found {
			if strings.HasPrefix(f.ID, "build.hold.") {
				asked++
			}
		}
		return asked, a
	}
	if asked, a := count(hungPlan("crew: {people: 6}")); asked != 0 || len(a.Job.Signs) == 0 || a.Job.Signs[0].Name != nil {
		t.Errorf("nobody named: %d asked", asked)
	}
	if asked, a := count(hungPlan("crew: {people: 6, names: {caller: key grip}}")); asked != 2 { // rigging and floor: no power in this plan
		t.Errorf("one named: %d asked, %v", asked, a.Job.Signs)
	}
	asked, a := count(hungPlan("crew: {people: 6, names: {caller: key grip, rigging: rigger, floor: second}}"))
	if asked != 0 {
		t.Errorf("all named: %d asked", asked)
	}
	for _, s := range a.Build {
		if s.Hold != nil && s.SignedBy == nil {
			t.Errorf("%s is signed by nobody", s.ID)
		}
	}
}

// A part without a mass: how many people is not known, and so no time is.
func TestUnknownMass(t *testing.T) {
	_, a, found := run(t, `softloft: 1
kit: {lamp: {old: {size: [1 ft, 1 ft]}}}
box: {size: [8 ft, 8 ft], trim: 10 ft, depth: 2 ft, frame: pipe-1-1/4, cloth: [light], ribs: {tube: pipe-1-1/4, count: 1, level: lower}}
lamps: [{kit: old, at: [0 ft, 0 ft], above: 1 ft, on: {rib: 1}}]
crew: {people: 6}
`)
	if finding.Known(float64(a.Job.Seconds)) || finding.Known(float64(a.Job.LeastPeople)) {
		t.Error("times are told where a mass is not known")
	}
	i := slices.IndexFunc(found, func(f finding.Finding) bool { return f.ID == "build.people" })
	if i < 0 || found[i].Result != finding.NotKnown || !slices.Contains(found[i].Causes, "load.mass.lamp.old 1") {
		t.Errorf("%+v", found)
	}
}

// Nothing hauls: how the box gets up is not known.
func TestNothingHauls(t *testing.T) {
	text := strings.Replace(hungPlan("crew: {people: 6}"), "pulley: block-6, ", "", 1)
	_, _, found := run(t, text)
	i := slices.IndexFunc(found, func(f finding.Finding) bool { return f.ID == "build.people" })
	if i < 0 || !strings.Contains(found[i].Why, "no line hauls") {
		t.Errorf("%+v", found)
	}
}

// Of three people a share is published, of four none: a piece for four is not known.
func TestPieces(t *testing.T) {
	w := &work{rig: &rig.Rig{Plan: &plan.Plan{}}}
	for _, c := range []struct {
		mass   float64
		people int
		beyond bool
	}{{23, 1, false}, {23.1, 2, false}, {30.6, 2, false}, {30.7, 3, false}, {34.5, 3, false}, {34.6, 4, true}, {46.1, 5, true}} {
		at := w.pieceOf(&rig.Part{Mass: &c.mass, InRoom: true})
		if at.people != c.people || at.beyond != c.beyond {
			t.Errorf("%g kg: %d people, beyond %v; want %d, %v (23 kg: NIOSH 1991; 2/3 and 1/2: guidance on team lifts)", c.mass, at.people, at.beyond, c.people, c.beyond)
		}
	}
	light := 2.0
	if w.pieceOf(&rig.Part{Mass: &light}) != nil {
		t.Error("2 kg is no lift (ISO 11228-1, from memory: from 3 kg on)")
	}
	if at := w.pieceOf(&rig.Part{Mass: &light, KitKind: "tube", Length: 4}); at == nil || at.people != 2 {
		t.Error("a long tube takes two (common practice)")
	}
}

// The finding's formula and the equation give one number.
func TestFormulaIsTheEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := &work{rig: &rig.Rig{Plan: &plan.Plan{}}}
		mass := rapid.Float64Range(3, 30).Draw(t, "mass")
		p := &rig.Part{ID: "x", Name: "x", Mass: &mass, Center: r3.Vec{Z: rapid.Float64Range(-0.5, 1.5).Draw(t, "z")}}
		at := w.pieceOf(p)
		if at.beyond {
			return
		}
		w.concludePiece(at)
		if f := w.findings[0]; f.Why != "" || math.Abs(f.Limit-at.allowed) > 1e-9*at.allowed || f.Result == finding.Over {
			t.Fatalf("the formula gives %g, the equation %g: %s", f.Limit, at.allowed, f.Line())
		}
	})
}

// No knot that is told leaves less of the rope than the loads count on (shares: the
// published knot tests in package source).
func TestKnotsLeaveWhatTheLoadsCountOn(t *testing.T) {
	w := &work{}
	for _, counts := range []float64{0.3, 0.5, 0.6, 0.61, 0.75, 0.9, 0.95, 0.99} {
		for _, usual := range []string{"bowline", "two half hitches"} {
			name, _ := w.endKnot(&rig.Rope{Knot: &counts}, usual, "")
			knot, ok := source.Knot(name)
			if ok && knot.Share < counts || !ok && counts <= 0.95 {
				t.Errorf("loads count on %g, told %q", counts, name)
			}
		}
	}
}

// Whatever the box: every part once in build and strike, every need before, the strike
// needs what the build was needed by.
func TestAnyBox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := anyBox(t)
		r := derived(t, text)
		loads := load.Answer{}
		for i := range r.Stands {
			if r.Stands[i].Ear != nil {
				loads.Stands = append(loads.Stands, load.Stand{Name: r.Stands[i].Name, Holds: "ear", Load: 200})
			}
		}
		a, found := Run(r, loads, pull.List(r))
		if a.Build == nil {
			t.Fatalf("no order: %v\n%s", found, text)
		}
		place := map[string]int{}
		for _, steps := range [][]Step{a.Build, a.Strike} {
			seen := map[string]bool{}
			parts := 0
			for _, s := range steps {
				for _, need := range s.Needs {
					if !seen[need] {
						t.Fatalf("%s before %s\n%s", s.ID, need, text)
					}
				}
				seen[s.ID], place[s.ID] = true, s.Number
				parts += len(s.Parts)
			}
			if parts != len(r.Parts) {
				t.Fatalf("%d parts of %d\n%s", parts, len(r.Parts), text)
			}
		}
		for _, s := range a.Build {
			for _, need := range s.Needs {
				back, there := place["strike."+strings.TrimPrefix(s.ID, "build.")]
				before, alsoThere := place["strike."+strings.TrimPrefix(need, "build.")]
				if there && alsoThere && back >= before {
					t.Fatalf("%s is struck after %s, on which it was built\n%s", s.ID, need, text)
				}
			}
		}
	})
}

// anyBox draws a plan of a box that hangs, stands, or neither.
func anyBox(t *rapid.T) string {
	pick := func(name string, from ...string) string { return rapid.SampledFrom(from).Draw(t, name) }
	tube := pick("tube", "pipe-1-1/4", "square-1-1/4")
	text := "softloft: 1\nderive: " + pick("derive", "all", "all", "none") + "\nroom: {size: [60 ft, 60 ft, 30 ft], points: [{name: A, at: [-4 ft, 0 ft, 28 ft]}, {name: B, at: [4 ft, 0 ft, 28 ft]}]}\n"
	text += "box:\n  size: [" + pick("x", "6 ft", "12 ft") + ", " + pick("y", "6 ft", "10 ft") + "]\n  trim: 12 ft\n  depth: " + pick("depth", "1 ft", "3 ft") + "\n"
	text += pick("frame", "  frame: "+tube+"\n", "  frame: "+tube+"\n", "")
	text += pick("upper", "", "  upper: {tube: "+tube+"}\n")
	ribs := pick("ribs", "", "  ribs: {tube: "+tube+", count: 2, along: x}\n", "  ribs: {tube: "+tube+", count: 3, along: y, level: lower}\n")
	text += ribs
	how, on := pick("how", "hung", "stands"), []string{"", ", on: {frame: north}"}
	if ribs != "" {
		on = append(on, ", on: {rib: 1}", ", on: {bar: "+tube+"}")
	}
	if how == "stands" {
		on = append(on, ", on: {arm: 1}")
	}
	text += pick("join", "", "  join: {uprights: {tube: "+tube+", count: 4}}\n", "  join: {uprights: {tube: "+tube+", count: 9}}\n", "  join: {drops: {kit: chain-7/32, count: 4}}\n")
	text += pick("cloth", "", "  cloth: [light]\n", "  cloth: [light, {kit: heavy, gap: 3 in}, light]\n")
	text += pick("sides", "", "  sides: black\n", "  sides: {north: none, south: white, east: black, west: none}\n")
	text += pick("roof", "", "  roof: white\n") + pick("skirt", "", "  skirt: 1 ft\n", "  skirt: {east: 2 ft}\n") + pick("crate", "", "  crate: crate-4x4\n")
	if lamps := rapid.IntRange(0, 3).Draw(t, "lamps"); lamps > 0 {
		text += "lamps:\n"
		for i := range lamps {
			text += fmt.Sprintf("  - {kit: panel-2x2, at: [%d ft, 0 ft], above: 1 ft%s}\n", i-1, pick("on", on...))
		}
	}
	text += pick("added", "", "added: [{name: over, mass: 3 kg, at: [0 ft, 0 ft, 1 ft]}, {name: under, mass: 3 kg, at: [0 ft, 0 ft, -1 ft]}]\n")
	if how == "hung" {
		text += "hang:\n  rope: " + pick("rope", "polyester-1/2", "wire-1/4") + "\n  pulley: " + pick("pulley", "none", "block-6") + "\n  lines: [{name: W, from: [-3 ft, 0 ft], to: A}, {name: E, from: [3 ft, 0 ft], to: {bridle: [A, B], apex: 20 ft}, pulley: block-6, shackle: shackle-3/8, clamp: beam-clamp}]\n"
		text += pick("secondary", "", "  secondary: {kit: wire-1/4}\n") + pick("guys", "", "  guys: [{from: nw, to: [-20 ft, 20 ft, 0 ft]}]\n")
		text += pick("lift", "", "lift: {lines: [W], people_per_line: 2}\n")
	} else {
		text += "stands:\n"
		for _, side := range []string{"west", "east"} {
			text += "  - {name: " + side + ", kit: roller-overhead, at: [0 ft, 0 ft], rise: 12 ft" + pick("bags", "", ", bags: {mass: 25 lb, count: 2}") + ", holds: {ear: " + side + "}}\n"
		}
		text += "  - {name: side, kit: roller-overhead, at: [9 ft, 9 ft], rise: 9 ft, bags: {mass: 35 lb, count: 2, at: leg 1}, holds: {arm: {kit: arm-junior, reach: 3 ft}}}\n"
	}
	text += pick("power", "", "power: {volts: 120 V, circuit: 20 A, tie_in: [-20 ft, 0 ft, 0 ft], cable: cable-12/3}\n")
	return text + pick("crew", "", "crew: {people: 3}\n", "crew: {people: 20}\n")
}

// The largest rigs that a plan may hold are put in order while somebody waits.
func BenchmarkLargest(b *testing.B) {
	var text strings.Builder
	text.WriteString("softloft: 1\nbox: {size: [200 ft, 200 ft], trim: 20 ft, depth: 3 ft, frame: pipe-1-1/4, upper: {tube: pipe-1-1/4}, join: {uprights: {tube: pipe-1-1/4, count: 100}}, ribs: {tube: pipe-1-1/4, count: 199}, cloth: [light], sides: black, crate: crate-4x4}\nlamps:\n")
	for i := range 1000 {
		fmt.Fprintf(&text, "  - {kit: panel-2x2, at: [%d ft, 0 ft], above: 1 ft, on: {rib: %d}}\n", i%150-75, i%199+1)
	}
	text.WriteString("stands:\n")
	for i := range 200 {
		fmt.Fprintf(&text, "  - {kit: roller-overhead, at: [%d ft, 120 ft], rise: 9 ft, bags: {mass: 25 lb, count: 2}}\n", i)
	}
	text.WriteString("crew: {people: 30}\n")
	r := derived(b, text.String())
	list := pull.List(r)
	b.ReportAllocs()
	for b.Loop() {
		if a, _ := Run(r, load.Answer{}, list); a.Build == nil {
			b.Fatal("no order")
		}
	}
}
