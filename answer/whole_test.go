package answer

import (
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"softloft/load"
	"softloft/pull"
	"softloft/rig"
)

// A part that is drawn is weighed, and a part that is weighed is on the pull list:
// the ids in the JSON's parts, in what weighs, and on the list are one set, but for
// what is derived without a weight.
func TestPartsAreWeighedAndPulled(t *testing.T) {
	for name, text := range examples(t) {
		a := of(t, text)
		if fault := whole(a.Rig.Parts, weighs(a.Model), a.Pull); fault != "" {
			t.Errorf("%s: %s", name, fault)
		}
		if len(a.Rig.Parts) == 0 {
			t.Errorf("%s: no part", name)
		}
	}
}

// The check above fails where any one part is dropped from any one of the three.
func TestDroppingAPartIsSeen(t *testing.T) {
	for name, text := range examples(t) {
		a := of(t, text)
		weighing := weighs(a.Model)
		for i, p := range a.Rig.Parts {
			if whole(slices.Delete(slices.Clone(a.Rig.Parts), i, i+1), weighing, a.Pull) == "" {
				t.Errorf("%s: %s dropped from the parts, and nothing is seen", name, p.ID)
			}
			if p.Weightless {
				continue
			}
			without := maps.Clone(weighing)
			delete(without, p.ID)
			if whole(a.Rig.Parts, without, a.Pull) == "" {
				t.Errorf("%s: %s dropped from what weighs, and nothing is seen", name, p.ID)
			}
			model := *a.Model
			model.Parts = slices.Delete(slices.Clone(a.Model.Parts), i, i+1)
			if whole(a.Rig.Parts, weighing, pull.List(&model)) == "" {
				t.Errorf("%s: %s dropped from the pull list, and nothing is seen", name, p.ID)
			}
		}
	}
}

// weighs lists the parts that something of the load rests on: tubes, weights, edge
// loads, and the lines' own parts.
func weighs(r *rig.Rig) map[string]float64 {
	masses := map[string]float64{}
	for _, t := range r.Tubes {
		p, _ := r.Part(t.Part)
		masses[t.Part] += t.MassPerLength * p.Length
	}
	for _, w := range r.Weights {
		masses[w.Part] += w.Mass
	}
	for _, e := range r.EdgeLoads {
		for k := 1; k < len(e.Stations); k++ {
			a, b := e.Stations[k-1], e.Stations[k]
			masses[e.Part] += (a.PerLength + b.PerLength) / 2 * (b.At - a.At)
		}
	}
	for _, l := range r.Lines {
		for _, id := range l.Parts {
			if p, ok := r.Part(id); ok && p.Mass != nil {
				masses[id] += *p.Mass
			}
		}
	}
	return masses
}

// whole says what differs between the three; empty where nothing does.
func whole(parts []Part, masses map[string]float64, list []pull.Row) string {
	placed := map[string]Part{}
	for _, p := range parts {
		if _, twice := placed[p.ID]; twice {
			return p.ID + " is placed twice"
		}
		placed[p.ID] = p
	}
	pulled := map[string]bool{}
	for _, row := range list {
		if row.Count != len(row.Parts) {
			return row.ID + " counts other than its parts"
		}
		for _, id := range row.Parts {
			pulled[id] = true
		}
	}
	for id, p := range placed {
		if p.Weightless {
			continue
		}
		mass, weighed := masses[id]
		if !weighed {
			return id + " is placed and does not weigh"
		}
		if math.Abs(mass-float64(p.Mass)) > 1e-9*(1+mass) {
			return fmt.Sprintf("%s weighs %g kg and is listed with %g kg", id, mass, float64(p.Mass))
		}
		if !pulled[id] {
			return id + " is placed and not on the pull list"
		}
	}
	for id := range pulled {
		if _, ok := placed[id]; !ok {
			return id + " is on the pull list and not placed"
		}
	}
	for id := range masses {
		if _, ok := placed[id]; !ok {
			return id + " weighs and is not placed"
		}
	}
	return ""
}

// The take-off's total is the sum of the parts that hang on the lines.
func TestTakeOffIsTheParts(t *testing.T) {
	for name, text := range examples(t) {
		a := of(t, text)
		var sum float64
		for i := range a.Model.Parts {
			p := &a.Model.Parts[i]
			if load.OnBox(a.Model, p) {
				sum += *p.Mass
			}
		}
		if math.Abs(sum-float64(a.Load.Mass)) > 1e-9*sum {
			t.Errorf("%s: the take-off says %.12g kg, the parts %.12g kg", name, float64(a.Load.Mass), sum)
		}
	}
}

// examples are the texts of all example plans.
func examples(t testing.TB) map[string]string {
	t.Helper()
	files, err := filepath.Glob("../examples/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	texts := map[string]string{}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		texts[filepath.Base(file)] = string(text)
	}
	return texts
}
