package build

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"softloft/finding"
	"softloft/kit"
	"softloft/load"
	"softloft/plan"
	"softloft/pull"
	"softloft/rig"
)

// derived reads and places a plan.
func derived(t testing.TB, text string) *rig.Rig {
	t.Helper()
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	file, mistakes := plan.Read("test.yaml", []byte(text), base)
	if len(mistakes) > 0 {
		t.Fatalf("the plan is not read: %v", mistakes)
	}
	return rig.Derive(file.Plan, file.Doc, file.Kit)
}

// run builds a plan.
func run(t testing.TB, text string) (*rig.Rig, Answer, []finding.Finding) {
	t.Helper()
	r := derived(t, text)
	loads, _ := load.Run(r)
	a, found := Run(r, loads, pull.List(r))
	return r, a, found
}

// examples are all example plans and a few that were made to be awkward.
func examples(t testing.TB) map[string]string {
	t.Helper()
	texts := map[string]string{}
	for _, folder := range []string{"../examples/*.yaml", "testdata/*.yaml"} {
		files, err := filepath.Glob(folder)
		if err != nil || len(files) == 0 {
			t.Fatalf("no plans in %s: %v", folder, err)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			texts[filepath.Base(file)] = string(text)
		}
	}
	return texts
}

// Every part is in exactly one step of the build and one of the strike, and the strike
// counts back exactly what is on the pull list.
func TestNothingIsLeftOut(t *testing.T) {
	for name, text := range examples(t) {
		r, a, _ := run(t, text)
		for what, steps := range map[string][]Step{"build": a.Build, "strike": a.Strike} {
			times := map[string]int{}
			for _, s := range steps {
				for _, id := range s.Parts {
					times[id]++
				}
			}
			for i := range r.Parts {
				if id := r.Parts[i].ID; times[id] != 1 {
					t.Errorf("%s: %s is in %d steps of the %s", name, id, times[id], what)
				}
			}
			if len(times) != len(r.Parts) {
				t.Errorf("%s: the %s has %d parts, the rig %d", name, what, len(times), len(r.Parts))
			}
		}
		back := map[string]int{}
		for _, s := range a.Strike {
			for _, ret := range s.Returns {
				back[ret.Row] += ret.Count
			}
		}
		for _, row := range pull.List(r) {
			if back[row.ID] != row.Count {
				t.Errorf("%s: %d of %s come back, %d went out", name, back[row.ID], row.Item, row.Count)
			}
		}
	}
}

// Every step comes after what it needs, in number and in time; nobody is in two places.
func TestEveryNeedIsKept(t *testing.T) {
	for name, text := range examples(t) {
		r, a, _ := run(t, text)
		for _, steps := range [][]Step{a.Build, a.Strike} {
			at := map[string]Step{}
			for n, s := range steps {
				if s.Number != n+1 || at[s.ID].ID != "" {
					t.Fatalf("%s: step %s has number %d at place %d", name, s.ID, s.Number, n+1)
				}
				for _, need := range s.Needs {
					before, there := at[need]
					if !there {
						t.Errorf("%s: %s comes before %s", name, s.ID, need)
					}
					if before.Finish > s.Start {
						t.Errorf("%s: %s starts before %s ends", name, s.ID, need)
					}
				}
				at[s.ID] = s
			}
			if r.Plan.Crew == nil || !finding.Known(float64(a.Job.Seconds)) {
				continue
			}
			for _, s := range steps {
				var busy float64
				for _, other := range steps {
					if other.Start <= s.Start && s.Start < other.Finish {
						busy += float64(other.People)
					}
				}
				if busy > float64(r.Plan.Crew.People) {
					t.Errorf("%s: %g people at the start of %s", name, busy, s.ID)
				}
			}
		}
	}
}

// The rules of the trade that no joint tells (common practice): each row is before and
// after, where both are there.
var rules = [][2]string{
	{"floor", "frame"}, {"horses", "frame"}, {"owner", "points"}, {"points", "ropes"}, {"torque", "bump"}, {"bump", "again"}, {"again", "lift"},
	{"clear", "bump"}, {"tag", "bump"}, {"lamps", "bump"}, {"light", "cloth"}, {"light", "roof"}, {"light", "bump"}, {"cloth", "crate"}, {"cloth", "sides"},
	{"crate", "skirts"}, {"cloth", "bump"}, {"fast.hauled", "bump"}, {"lift", "tieoff"}, {"tieoff", "fast.dead"}, {"lift", "secondaries"},
	{"secondaries", "beneath"}, {"guys.set", "beneath"}, {"lock", "beneath"}, {"lift", "beneath"}, {"seat", "lamps"}, {"ears", "seat"}, {"beneath", "power"}, {"power", "open"},
}

func TestRulesOfTheTrade(t *testing.T) {
	kept := map[[2]string]bool{}
	for name, text := range examples(t) {
		_, a, _ := run(t, text)
		for _, rule := range rules {
			for _, s := range a.Build {
				for _, after := range a.Build {
					if !is(s, rule[0]) || !is(after, rule[1]) {
						continue
					}
					kept[rule] = true
					if s.Number >= after.Number {
						t.Errorf("%s: %s comes after %s", name, s.ID, after.ID)
					}
				}
			}
		}
		for _, s := range a.Build {
			if stand, ok := strings.CutSuffix(s.ID, ".bags"); ok {
				for _, after := range a.Build {
					if after.ID == "build.seat" && standHolds(t, text, strings.TrimPrefix(stand, "build.")) && after.Number < s.Number {
						t.Errorf("%s: the box is on %s before its bags", name, stand)
					}
				}
			}
		}
	}
	for _, rule := range rules {
		if !kept[rule] {
			t.Errorf("no plan has %s and %s: the rule was not looked at", rule[0], rule[1])
		}
	}
}

func standHolds(t *testing.T, text, part string) bool {
	r := derived(t, text)
	for i := range r.Stands {
		if r.Stands[i].Part == part {
			return r.Stands[i].Ear != nil
		}
	}
	return false
}

// is reports whether a step is of a name, or of a name and what it is on; not lamps on
// stands.
func is(s Step, name string) bool {
	key := strings.TrimPrefix(s.ID, "build.")
	return key == name || strings.HasPrefix(key, name+".") && !strings.HasPrefix(key, name+".stand.") && !slices.Contains([]string{"guys.set", "cloth.1.more"}, key)
}
