package light_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"softloft/kit"
	"softloft/light"
	"softloft/plan"
	"softloft/rig"
)

// dimmedPlan is four panels at four levels over a cloth, and an area with a stop.
const dimmedPlan = `softloft: 1
derive: none
kit:
  lamp: {panel: {size: [0.3 m, 0.3 m], lumens: 20000 lm}}
box:
  size: [3.6 m, 3.6 m]
  trim: 4 m
  depth: 0.6 m
  sides: white
  cloth: [heavy]
action:
  area: {size: [2 m, 2 m], height: 1.5 m}
want:
  exposure: {stop: T4, iso: 800}
`

func readRig(t *testing.T, text string) *rig.Rig {
	t.Helper()
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	file, mistakes := plan.Read("test.yaml", []byte(text), base)
	if len(mistakes) > 0 {
		t.Fatalf("the plan is not read:\n%v\n%s", mistakes, text)
	}
	return rig.Derive(file.Plan, file.Doc, file.Kit)
}

func lampsAt(levels ...float64) string {
	var text strings.Builder
	text.WriteString("lamps:\n")
	for i, at := range [4]string{"[0.9 m, 0.9 m]", "[-0.9 m, 0.9 m]", "[-0.9 m, -0.9 m]", "[0.9 m, -0.9 m]"} {
		fmt.Fprintf(&text, "  - {name: L%d, kit: panel, at: %s, above: 0.5 m, level: %g %%}\n", i, at, 100*levels[i])
	}
	return text.String()
}

// What is in hand is told for full level, and is the same however the lamps are dimmed
// today; today's light is in proportion where they are dimmed alike.
func TestReserveDoesNotDependOnLevels(t *testing.T) {
	area := func(levels ...float64) light.AreaAnswer {
		a, _ := light.Run(readRig(t, dimmedPlan+lampsAt(levels...)))
		if a.Area == nil {
			t.Fatalf("no area; missing %q", a.Missing)
		}
		return *a.Area
	}
	full := area(1, 1, 1, 1)
	for _, levels := range [][]float64{{0.5, 0.5, 0.5, 0.5}, {1, 0.2, 0.7, 0}, {0, 0, 0, 0}} {
		got := area(levels...)
		if d := float64(got.Reserve - full.Reserve); !(math.Abs(d) < 1e-9) {
			t.Errorf("%v: %g stops in hand, %g at full level", levels, got.Reserve, full.Reserve)
		}
	}
	if got := area(0.5, 0.5, 0.5, 0.5); !(math.Abs(float64(got.Mean/full.Mean)-0.5) < 1e-9) {
		t.Errorf("at half: %g lx of %g", got.Mean, full.Mean)
	}
}

// A plan without lamps has maps without light, and no panic.
func TestMapsWithoutLamps(t *testing.T) {
	m, err := light.MapsOf(readRig(t, dimmedPlan))
	if err != nil {
		return // said in words
	}
	for _, lux := range m.Area.Lux {
		if lux != 0 {
			t.Fatalf("%g lx without a lamp", lux)
		}
	}
}
