package plan

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"softloft/document"
)

const commented = `# A box, written by hand.
softloft: 1

box:              # the source
  size: [12 ft, 12 ft]   # between center-lines
  trim:   14 ft   # to the skirt's edge
  # nothing hangs in it yet
  cloth: [muslin]

lamps:
  - {kit: panel, at: [0 ft, 0 ft], above: 2 ft}   # the first
  - kit: par
    at: [1 ft, 1 ft]
    above: 2 ft
# the end
`

// TestSet: a value changes and nothing else in the file.
func TestSet(t *testing.T) {
	base := testKit(t)
	file, mistakes := Read("plan.yaml", []byte(commented), base)
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	for _, c := range []struct{ key, text, from, to string }{
		{"box.trim", "13'6\"", "trim:   14 ft   #", "trim:   13'6\"   #"},
		{"box.size", "[10 ft, 10 ft]", "[12 ft, 12 ft]   #", "[10 ft, 10 ft]   #"},
		{"box.size[1]", "10 ft", "[12 ft, 12 ft]   #", "[12 ft, 10 ft]   #"},
		{"box.cloth", "[muslin, silk]", "[muslin]\n", "[muslin, silk]\n"},
		{"lamps[1].above", "3 ft", "    above: 2 ft\n#", "    above: 3 ft\n#"},
		{"lamps[0].level", "50%", "above: 2 ft}", "above: 2 ft, level: 50%}"},
		{"lamps[1].level", "50%", "    above: 2 ft\n#", "    above: 2 ft\n    level: 50%\n#"},
		{"sheet.units", "metres", "# the end", "sheet: {units: metres}\n# the end"},
		{"want.exposure.stop", "T2.8", "# the end", "want: {exposure: {stop: T2.8}}\n# the end"},
		{`kit.rope["1.5 in"]`, "{kind: manila}", "# the end", "kit: {rope: {1.5 in: {kind: manila}}}\n# the end"},
	} {
		changed, err := file.Set(c.key, c.text)
		if err != nil {
			t.Errorf("%s: %v", c.key, err)
			continue
		}
		want := strings.Replace(commented, c.from, c.to, 1)
		if diff := cmp.Diff(want, string(changed.Doc.Bytes())); diff != "" {
			t.Errorf("%s: %s", c.key, diff)
		}
		if text := string(file.Doc.Bytes()); text != commented {
			t.Fatalf("%s changed the plan that it was set in: %s", c.key, text)
		}
	}
}

// TestSetWrong: a change that leaves a mistake is told with its place, and the plan stays.
func TestSetWrong(t *testing.T) {
	file, mistakes := Read("plan.yaml", []byte(commented), testKit(t))
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	for _, c := range []struct {
		key, text, want string
		placed          bool
	}{
		{"box.trim", "14", "bare number 14", true},
		{"box.trim", "-14 ft", "a height of -14 ft", true},
		{"box.cloth_at", "14 ft", "given by trim and by cloth_at", true},
		{"lamps[0].kit", "pannel", `did you mean "panel"?`, true},
		{"box.trimm", "14 ft", "write trim", true},
		{"lamps[7].level", "50%", "lamps[7]", false},
		{"box.trim", "14 ft\nderive: none", "", false},
		{"", "{}", "", false},
		{"box.trim.x", "1 ft", "", false},
	} {
		changed, err := file.Set(c.key, c.text)
		if err == nil || changed != nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %s: told %v", c.key, c.text, err)
			continue
		}
		var placed document.Mistakes
		if errors.As(err, &placed) != c.placed {
			t.Errorf("%s: %s: told %T: %v", c.key, c.text, err, err)
		}
	}
}

// TestSetKeepsComments: whatever is set, every comment stays, in its order, and so does every
// other line; what was set is what is read.
func TestSetKeepsComments(t *testing.T) {
	base := testKit(t)
	everything, err := os.ReadFile("testdata/everything.yaml")
	if err != nil {
		t.Fatal(err)
	}
	plans := []string{commented, strings.ReplaceAll(string(everything), "\n", "   # kept\n")}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(plans).Draw(t, "plan")
		file, mistakes := Read("plan.yaml", []byte(text), base)
		if len(mistakes) > 0 {
			t.Fatal(mistakes)
		}
		for range rapid.IntRange(1, 4).Draw(t, "changes") {
			feet := rapid.IntRange(8, 12).Draw(t, "feet")
			change := rapid.SampledFrom([][2]string{
				{"box.trim", "%d ft"}, {"box.turn", "%d deg"}, {"box.at", "[%d ft, 0 ft]"}, {"lamps[0].above", "%d in"}, {"lamps[1].roll", "%d deg"},
				{"title", "plan %d"}, {"rules.push", "%d N"}, {"added", "[{name: a, mass: %d kg, at: [0 m, 0 m, 0 m]}]"}, {"crew.people", "%d"},
			}).Draw(t, "key")
			set := fmt.Sprintf(change[1], feet)
			before := strings.Split(string(file.Doc.Bytes()), "\n")
			changed, err := file.Set(change[0], set)
			if err != nil {
				t.Fatalf("%s: %v", change[0], err)
			}
			after := strings.Split(string(changed.Doc.Bytes()), "\n")
			if lost := notIn(before, after); len(lost) > 1 {
				t.Fatalf("setting %s to %s changed %d lines: %q", change[0], set, len(lost), lost)
			}
			if diff := cmp.Diff(comments(before), comments(after)); diff != "" {
				t.Fatalf("setting %s to %s: %s", change[0], set, diff)
			}
			if typed, ok := changed.Doc.Typed(change[0]); ok && typed != set {
				t.Fatalf("set %s to %s and it is %s", change[0], set, typed)
			}
			file = changed
		}
	})
}

// notIn lists the lines of a that b hasn't, counting how often each stands there.
func notIn(a, b []string) []string {
	count := map[string]int{}
	for _, line := range b {
		count[line]++
	}
	var lost []string
	for _, line := range a {
		if count[line]--; count[line] < 0 {
			lost = append(lost, line)
		}
	}
	return lost
}

func comments(lines []string) []string {
	var all []string
	for _, line := range lines {
		if _, comment, ok := strings.Cut(line, "#"); ok {
			all = append(all, comment)
		}
	}
	return all
}
