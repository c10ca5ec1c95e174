package pull

import (
	"os"
	"testing"

	"softloft/kit"
	"softloft/plan"
	"softloft/rig"
)

func list(t testing.TB, name string) (*rig.Rig, []Row) {
	t.Helper()
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	text, err := os.ReadFile("../examples/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	file, mistakes := plan.Read(name, text, base)
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	r := rig.Derive(file.Plan, file.Doc, file.Kit)
	return r, List(r)
}

// What goes into the truck for the workroom, counted by hand from the plan: four stands,
// twelve bags of 25 lb, four ears, eight three-way corners, three panels with a clamp,
// a retainer and a safety each; 7 spaces of 10 ft and 4 of 6 ft at 18 in make 22 ties;
// 32 ft around takes two wrap panels.
func TestStandingList(t *testing.T) {
	_, rows := list(t, "tailors-cutting-table")
	got := map[string]int{}
	for _, row := range rows {
		got[row.Kind+" "+row.Kit] += row.Count
	}
	for what, want := range map[string]int{
		"stand roller-overhead": 4, "bag bag-25": 12, "ear ear-square-28": 4, "corner corner3-square-1-1/4": 8, "lamp panel-2x2": 3,
		"clamp lamp-clamp-28": 3, "retainer eight-penny-nail": 3 + 4, "safety safety-30": 3, "tie ball-tie": 22, "wrap white": 2, "tee tee-square-1-1/4": 6,
	} {
		if got[what] != want {
			t.Errorf("%s: %d, want %d", what, got[what], want)
		}
	}
}

// A row counts its parts, each part is on one row, and what weighs nothing is on none.
func TestRowsCountTheirParts(t *testing.T) {
	for _, name := range []string{"tailors-cutting-table", "late-train", "five-over-two-unknown", "waltz-in-the-old-corn-exchange"} {
		r, rows := list(t, name)
		on := map[string]int{}
		ids := map[string]bool{}
		for _, row := range rows {
			if row.Count != len(row.Parts) || ids[row.ID] {
				t.Errorf("%s: row %s counts %d of %d parts, twice: %v", name, row.ID, row.Count, len(row.Parts), ids[row.ID])
			}
			ids[row.ID] = true
			for _, id := range row.Parts {
				on[id]++
			}
		}
		for i := range r.Parts {
			want := 1
			if r.Parts[i].Weightless {
				want = 0
			}
			if on[r.Parts[i].ID] != want {
				t.Errorf("%s: %s is on %d rows, want %d", name, r.Parts[i].ID, on[r.Parts[i].ID], want)
			}
		}
	}
}
