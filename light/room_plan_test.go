package light_test

import (
	"fmt"
	"math"
	"runtime"
	"strings"
	"testing"

	"softloft/answer"
	"softloft/finding"
	"softloft/kit"
	"softloft/plan"
)

// planned reads a plan and answers it.
func planned(t *testing.T, text string) *answer.Answers {
	t.Helper()
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	file, mistakes := plan.Read("test.yaml", []byte(text), base)
	if len(mistakes) > 0 {
		t.Fatalf("the plan is not read:\n%v\n%s", mistakes, text)
	}
	return answer.Of(file)
}

// panelPlan is the reference panel, 1000 lm/m2, in its room of 10 x 12 x 6 m.
const panelPlan = `softloft: 1
derive: none
kit:
  lamp: {panel: {size: [3.658 m, 3.658 m], lumens: 13380.964 lm}}
lamps:
  - {kit: panel, at: [0 m, 0 m], above: 0 m}
box:
  size: [3.658 m, 3.658 m]
  sides: none
  cloth: []
  at: [0 m, 0 m]
  cloth_at: 4.572 m
room:
  size: [10 m, 12 m, 6 m]
  reflectance: {floor: 0.2, walls: 0.5, ceiling: 0.1}
action:
  area: {at: [0 m, 0 m], size: [6 m, 6 m], height: 0 m}
want:
  spill: [{on: north, under: %s}]
probes:
  - {name: floor, at: [0 m, 0 m, 0 m], size: [6 m, 6 m], n: [9, 9], facing: [0, 0, 1]}
`

// The floor of the room from the plan to the answers, against an unbiased path tracer
// and a fine radiosity: corner, edge and middle of its table (testdata/room_floor.csv).
func TestRoomPlan(t *testing.T) {
	a := planned(t, fmt.Sprintf(panelPlan, "1 stop"))
	lux := a.Light.Probes[0].Lux
	for _, c := range []struct {
		at   int
		want float64
	}{{0, 72.0553}, {36, 108.39}, {10, 101.266}} {
		if d := float64(lux[c.at])/c.want - 1; !(math.Abs(d) < 0.002) {
			t.Errorf("point %d: %.6g lx, want %.6g lx (%+.3f %%)", c.at, float64(lux[c.at]), c.want, 100*d)
		}
	}
	if len(a.Light.Missing) > 0 {
		t.Errorf("nothing is missing, got %q", a.Light.Missing)
	}
	if c := float64(a.Light.Flux.RoomClosure); !(c <= 1e-3) {
		t.Errorf("room closure %g", c)
	}
}

// Spill indoors is judged: within where much is left, over where not.
func TestRoomSpillJudged(t *testing.T) {
	t.Parallel()
	for under, want := range map[string]finding.Result{"0.1 stop": finding.Within, "6 stop": finding.Over} {
		a := planned(t, fmt.Sprintf(panelPlan, under))
		judged := false
		for _, f := range a.Findings {
			if f.ID != "light.spill.north" {
				continue
			}
			judged = true
			if f.Result != want {
				t.Errorf("%s under: %s, want %s", under, f.Result, want)
			}
		}
		if !judged {
			t.Error("the spill is not judged")
		}
	}
}

// A gray room gives more everywhere than a black one, which is direct light alone, as
// outdoors.
func TestRoomBlackIsDirect(t *testing.T) {
	t.Parallel()
	gray := planned(t, fmt.Sprintf(panelPlan, "1 stop"))
	black := planned(t, strings.Replace(fmt.Sprintf(panelPlan, "1 stop"), "{floor: 0.2, walls: 0.5, ceiling: 0.1}", "{floor: 0, walls: 0, ceiling: 0}", 1))
	open := strings.Replace(panelPlan, "want:\n  spill: [{on: north, under: %s}]\n", "", 1)
	outdoors := planned(t, strings.Replace(open, "  size: [10 m, 12 m, 6 m]", "  size: [10 m, 12 m, 6 m]\n  outdoors: {}", 1))
	for i, lux := range black.Light.Probes[0].Lux {
		if lux != outdoors.Light.Probes[0].Lux[i] {
			t.Errorf("point %d: %g lx in a black room, %g lx outdoors", i, float64(lux), float64(outdoors.Light.Probes[0].Lux[i]))
		}
		if gray.Light.Probes[0].Lux[i] <= lux {
			t.Errorf("point %d: %g lx in a gray room, %g lx in a black one", i, float64(gray.Light.Probes[0].Lux[i]), float64(lux))
		}
	}
	if !math.IsNaN(float64(outdoors.Light.Flux.RoomClosure)) {
		t.Error("outdoors there is no room closure")
	}
}

// The number of cores changes no bit.
func TestRoomRepeats(t *testing.T) {
	t.Parallel()
	text := fmt.Sprintf(panelPlan, "1 stop")
	many := planned(t, text)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	one := planned(t, text)
	told := func(a *answer.Answers) string {
		return fmt.Sprint(*a.Light.Area, a.Light.Spill, a.Light.Probes, *a.Light.Flux)
	}
	if told(many) != told(one) {
		t.Error("one core gives another answer than many")
	}
}
