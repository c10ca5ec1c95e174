package build

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"softloft/finding"
	"softloft/kit"
	"softloft/load"
	"softloft/plan"
	"softloft/pull"
	"softloft/rig"
)

// fatal is a test, Go's own or rapid's.
type fatal interface {
	Helper()
	Fatal(...any)
	Fatalf(string, ...any)
}

// derived reads and places a plan.
func derived(t fatal, text string) *rig.Rig {
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
	{"floor", "frame"}, {"horses", "frame"}, {"frame", "uprights"}, {"uprights", "upper"}, {"upper", "rib"}, {"frame", "drops"}, {"rib", "drops"}, {"rib", "bar"}, {"owner", "points"}, {"points", "ropes"}, {"torque", "bump"}, {"bump", "again"}, {"again", "lift"},
	{"clear", "bump"}, {"tag", "bump"}, {"lamps", "bump"}, {"light", "cloth"}, {"light", "roof"}, {"light", "bump"}, {"cloth", "crate"}, {"cloth", "sides"},
	{"crate", "skirts"}, {"cloth", "bump"}, {"fast.hauled", "bump"}, {"lift", "tieoff"}, {"tieoff", "fast.dead"}, {"lift", "secondaries"},
	{"secondaries", "beneath"}, {"guys.set", "beneath"}, {"lock", "beneath"}, {"lift", "beneath"}, {"seat", "lamps"}, {"ears", "seat"}, {"beneath", "power"}, {"power", "open"},
}

func TestRulesOfTheTrade(t *testing.T) {
	kept := map[[2]string]bool{}
	for name, text := range examples(t) {
		_, a, _ := run(t, text)
		needs, back := needsOf(a.Build), needsOf(a.Strike)
		for _, rule := range rules {
			for _, s := range a.Build {
				for _, after := range a.Build {
					if !is(s, rule[0]) || !is(after, rule[1]) || rule[1] == "ropes" && rule[0] == "points" && beamIn(s) != beamIn(after) {
						continue
					}
					kept[rule] = true
					if !reachable(needs, after.ID, s.ID) {
						t.Errorf("%s: %s does not need %s", name, after.ID, s.ID)
					}
					one, other := struck(s.ID), struck(after.ID)
					if back[one] != nil && back[other] != nil && !reachable(back, one, other) {
						t.Errorf("%s: %s does not need %s", name, one, other)
					}
				}
			}
		}
		for _, s := range a.Build {
			if stand, ok := strings.CutPrefix(s.ID, "build.bags."); ok && standHolds(t, text, stand) && !reachable(needs, "build.seat", s.ID) {
				t.Errorf("%s: the box may be on %s before its bags", name, stand)
			}
		}
	}
	for _, rule := range rules {
		if !kept[rule] {
			t.Errorf("no plan has %s and %s: the rule was not looked at", rule[0], rule[1])
		}
	}
}

// beamIn is the beam in a step's id: a line needs the points of its own.
func beamIn(s Step) string {
	if i := strings.LastIndex(s.ID, "-beam"); i >= 0 {
		return s.ID[strings.LastIndex(s.ID, "."):]
	}
	return ""
}

// needsOf are the needs of each step; a step without any has an empty list.
func needsOf(steps []Step) map[string][]string {
	needs := map[string][]string{}
	for _, s := range steps {
		needs[s.ID] = s.Needs
	}
	return needs
}

func struck(id string) string { return "strike." + strings.TrimPrefix(id, "build.") }

// From the clearing of the floor until people may go beneath, every step either waits
// for the lift or is one of the lift; on the way back too (common practice: nobody
// beneath during a lift).
func TestNobodyBeneathWhileItMoves(t *testing.T) {
	for name, text := range examples(t) {
		_, a, _ := run(t, text)
		needs := needsOf(a.Build)
		if needs["build.lift"] == nil {
			continue
		}
		for _, s := range a.Build {
			ofTheLift := s.ID == "build.clear" || s.ID == "build.bump" || s.ID == "build.again" || s.ID == "build.lift"
			if !ofTheLift && !reachable(needs, s.ID, "build.lift") && !reachable(needs, "build.clear", s.ID) {
				t.Errorf("%s: %s may go on while the box moves", name, s.ID)
			}
		}
		back := needsOf(a.Strike)
		for _, s := range a.Strike {
			if s.ID != "strike.lift" && !reachable(back, s.ID, "strike.lift") && !reachable(back, "strike.lift", s.ID) {
				t.Errorf("%s: %s may go on while the box comes down", name, s.ID)
			}
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
	return key == name || strings.HasPrefix(key, name+".") && !strings.HasPrefix(key, name+".stand.")
}

// Whatever is joined and put up in two steps, one of them needs the other, directly or
// through others: nothing goes up beside what it is joined to.
func TestEveryJointOrdersTwoSteps(t *testing.T) {
	for name, text := range examples(t) {
		r, a, _ := run(t, text)
		home, needs := map[string]string{}, map[string][]string{}
		for _, s := range a.Build {
			needs[s.ID] = s.Needs
			for _, id := range s.Parts {
				home[id] = s.ID
			}
		}
		joints := 0
		for i := range r.Parts {
			p := &r.Parts[i]
			for _, id := range p.Joined {
				one, other := home[p.ID], home[id]
				if other == "" || one == other {
					continue
				}
				joints++
				made := one
				if p.What == "line" { // it is run before, and made fast after both
					made = "build.fast.hauled"
					if _, ok := needs[made]; !ok || !reachable(needs, made, one) {
						made = "build.fast.dead"
					}
					if !reachable(needs, made, one) || !reachable(needs, made, other) {
						t.Errorf("%s: %s is made fast to %s before either is there", name, p.ID, id)
					}
					continue
				}
				if !reachable(needs, one, other) && !reachable(needs, other, one) {
					t.Errorf("%s: %s is joined to %s, and neither step needs the other", name, p.ID, id)
				}
			}
		}
		if joints == 0 {
			t.Errorf("%s: no joint between two steps was looked at", name)
		}
	}
}

// reachable reports whether a step needs another, directly or through others.
func reachable(needs map[string][]string, from, to string) bool {
	seen := map[string]bool{}
	for next := []string{from}; len(next) > 0; next = next[1:] {
		for _, need := range needs[next[0]] {
			if need == to {
				return true
			}
			if !seen[need] {
				seen[need] = true
				next = append(next, need)
			}
		}
	}
	return false
}
