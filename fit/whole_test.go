package fit_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"softloft/answer"
	"softloft/finding"
	"softloft/kit"
	"softloft/plan"
)

func answers(t testing.TB, text string) *answer.Answers {
	t.Helper()
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	file, mistakes := plan.Read("test.yaml", []byte(text), base)
	if len(mistakes) > 0 {
		t.Fatalf("the plan is not read:\n%v", mistakes)
	}
	return answer.Of(file)
}

// The plan to learn from goes over in the five ways that its comments number and is not
// known in the two: no others, and each comment is there.
func TestFiveOverTwoUnknown(t *testing.T) {
	raw, err := os.ReadFile("../examples/five-over-two-unknown.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(raw)
	got := map[finding.Result]map[string]bool{finding.Over: {}, finding.NotKnown: {}}
	for _, f := range finding.Roots(answers(t, text).Findings) {
		if set, ok := got[f.Result]; ok {
			set[f.ID] = true
		}
	}
	want := map[finding.Result]map[string]bool{
		finding.Over:     {"fit.clear.duct": true, "fit.keep_off.lamp.tungsten": true, "load.stand.west": true, "fit.castors.east": true, "load.head.side": true},
		finding.NotKnown: {"fit.wrap": true, "load.stand.side": true},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("wanted and found:\n%s", diff)
	}
	for word, n := range map[string]int{"OVER": 5, "NOT KNOWN": 2} {
		for k := 1; k <= n+1; k++ {
			if has := strings.Contains(text, fmt.Sprintf("# %s %d.", word, k)); has != (k <= n) {
				t.Errorf("the comment %s %d: %v", word, k, has)
			}
		}
	}
}

// The examples on stands: nothing of theirs is over, and what they say is not known is.
func TestStandingExamples(t *testing.T) {
	for name, unknown := range map[string][]string{
		"tailors-cutting-table": {"fit.sprinkler_shadow"},
		"late-train":            {"fit.wrap", "load.wind.stakes"},
	} {
		raw, err := os.ReadFile("../examples/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		a := answers(t, string(raw))
		if a.Result != finding.NotKnown {
			t.Errorf("%s: %s", name, a.Result)
		}
		seen := map[string]bool{}
		for _, f := range a.Findings {
			seen[f.ID] = f.Result == finding.NotKnown
		}
		for _, id := range unknown {
			if !seen[id] {
				t.Errorf("%s: %s is not among what is not known", name, id)
			}
		}
		if len(a.Load.Stands) != 4 || a.Load.Frame == nil {
			t.Errorf("%s: %d stands, frame %v", name, len(a.Load.Stands), a.Load.Frame)
		}
	}
}

// Heavy diffusion costs about 2.5 stops (common practice; here within half a stop): a head
// with a beam of 55° straight down onto a meter, bare and through the kit's heavy cloth.
func TestHeavyDiffusion(t *testing.T) {
	lux := func(cloth string) float64 {
		a := answers(t, `softloft: 1
derive: none
box: {size: [4 ft, 4 ft], cloth_at: 10 ft, cloth: [`+cloth+`], sides: none}
lamps: [{kit: spot-300, at: [0 ft, 0 ft], above: 2 ft}]
probes: [{name: meter, at: [0 ft, 0 ft, 4 ft], facing: up}]
`)
		return float64(a.Light.Probes[0].Lux[0])
	}
	stops := math.Log2(lux("") / lux("heavy"))
	if math.Abs(stops-2.5) > 0.5 {
		t.Errorf("heavy diffusion costs %.2f stops, want about 2.5", stops)
	}
	t.Logf("heavy diffusion costs %.2f stops", stops)
}
