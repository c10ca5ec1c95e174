package finding

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func told(id string, result Result, causes ...string) Finding {
	return Finding{ID: id, Result: result, Causes: causes}
}

func TestSilence(t *testing.T) {
	findings := []Finding{
		told("rope", NotKnown),
		told("line", NotKnown, "rope"),
		told("point", NotKnown, "line"),            // by way of the line
		told("tie-off", Over, "rope"),              // not known never hides over
		told("tumbles", Over),                      //
		told("pose", NotKnown, "tumbles", "rope"),  // two roots
		told("stand", Within, "rope"),              // needs no explaining
		told("frame", NotKnown, "absent", "stand"), // neither explains
		told("a", NotKnown, "b"), told("b", NotKnown, "a"),
		told("self", Over, "self"),
	}
	want := map[string][]string{"line": {"rope"}, "point": {"rope"}, "pose": {"tumbles", "rope"}}
	for _, f := range Silence(findings) {
		if !slices.Equal(f.Causes, want[f.ID]) {
			t.Errorf("%s is explained by %v, want %v", f.ID, f.Causes, want[f.ID])
		}
	}
	var visible []string
	for _, f := range Roots(Silence(findings)) {
		visible = append(visible, f.ID)
	}
	if !slices.Equal(visible, []string{"rope", "tie-off", "tumbles", "stand", "frame", "a", "b", "self"}) {
		t.Errorf("visible are %v", visible)
	}
	if len(findings[1].Causes) != 1 || findings[1].Causes[0] != "rope" || findings[3].Causes[0] != "rope" {
		t.Error("the findings given were changed")
	}
}

// Silencing never makes the whole look better, drops nothing, and only roots
// explain; done twice it changes nothing.
func TestSilenceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 8).Draw(t, "n")
		id := func(i int) string { return fmt.Sprint("f", i) }
		findings := make([]Finding, n)
		for i := range findings {
			result := rapid.SampledFrom([]Result{Within, Tight, NotKnown, Over}).Draw(t, "result")
			findings[i] = told(id(rapid.IntRange(0, n).Draw(t, "id")), result)
			for range rapid.IntRange(0, 3).Draw(t, "causes") {
				findings[i].Causes = append(findings[i].Causes, id(rapid.IntRange(0, n).Draw(t, "cause")))
			}
		}
		silenced := Silence(findings)
		roots := Roots(silenced)
		if len(silenced) != n || Overall(roots) != Overall(findings) {
			t.Fatalf("%v becomes %v", findings, silenced)
		}
		for _, f := range silenced {
			for _, cause := range f.Causes {
				if !slices.ContainsFunc(roots, func(r Finding) bool { return r.ID == cause && r.Result.severity() >= f.Result.severity() }) {
					t.Fatalf("%s is explained by %s, which is no root", f.ID, cause)
				}
			}
		}
		again := Silence(silenced)
		for i := range again {
			if !slices.Equal(again[i].Causes, silenced[i].Causes) {
				t.Fatalf("%s: %v, then %v", again[i].ID, silenced[i].Causes, again[i].Causes)
			}
		}
	})
}
