package load

import (
	"math"
	"testing"

	"softloft/finding"
)

// named returns the finding with an id, a zero one where there is none.
func named(found []finding.Finding, id string) finding.Finding {
	for _, f := range found {
		if f.ID == id {
			return f
		}
	}
	return finding.Finding{}
}

func lifted(lift string) hungSquare {
	h := stiffBox(-0.3)
	h.rest += "lift: {" + lift + "}\n"
	h.hung = "  pulley: block\n"
	return h
}

// Haul over one sheave of efficiency e: T/e while it is raised, e·T to T/e at rest, with a
// 2:1 purchase T/(e+e²): the sum of a tackle's parts, W 100 n 1 e 0.9: 111.11; n 2: 58.48,
// holding n 1: 90.0 (a theatre rigging mathematics primer). The start factor stands on it.
func TestHaul(t *testing.T) {
	got, found := analyze(t, lifted("start_factor: 1.25, people_per_line: 2").text())
	rest := 656.339 / 4
	for i, l := range got.Lift.Lines {
		near(t, l.Name+" at rest", float64(l.Rest), rest, 1e-5)
		near(t, l.Name+" haul", float64(l.Haul), 1.25*rest*1.1111, 1e-4)
		near(t, l.Name+" per person", float64(l.PerPerson), 1.25*rest*1.1111/2, 1e-4)
		near(t, l.Name+" two to one", float64(l.TwoToOne), 1.25*rest*0.5848/2, 1e-4)
		near(t, l.Name+" lift case", float64(got.Lines[i].Cases.Lift), 1.25*rest, 1e-5)
		near(t, l.Name+" holding, least", float64(got.Lines[i].HaulRange[0]), rest*0.900, 1e-5)
		near(t, l.Name+" holding, most", float64(got.Lines[i].HaulRange[1]), rest*1.1111, 1e-4)
		// Both sides straight down: the point gets (1+1/e)·T.
		near(t, "point", -float64(got.Points[i].Cases.Lift[2]), 1.25*rest*(1+1/0.9), 1e-4)
		near(t, "point built", -float64(got.Points[i].Cases.Built[2]), 2*rest, 1e-5)
	}
	if len(got.Lift.Cases) != 2 {
		t.Errorf("cases %v", got.Lift.Cases)
	}
	f := named(found, "load.haul.L1")
	near(t, "finding", f.Value, 1.25*rest/0.9/2, 1e-5)
	near(t, "limit", f.Limit, 23*9.80665, 1e-12) // the lifting equation's load constant
}

// Only two lines lift, on a diagonal; the center of gravity lies under them: each carries
// half. Over them it rolls over, and that is told before any tension.
func TestLiftByTwo(t *testing.T) {
	got, _ := analyze(t, lifted("lines: [L1, L3], start_factor: 1").text())
	near(t, "L1", float64(got.Lines[0].Cases.Lift), 656.339/2, 1e-5)
	near(t, "L2", float64(got.Lines[1].Cases.Lift), 0, 0)
	top := stiffBox(0.3)
	top.rest += "lift: {lines: [L1, L3]}\n"
	got, found := analyze(t, top.text())
	if f := named(found, "load.lift"); f.Result != finding.Over {
		t.Errorf("a lift that tumbles is %q", f.Result)
	}
	if !math.IsNaN(float64(got.Lines[0].Cases.Lift)) {
		t.Errorf("a lift that tumbles gives %g N", float64(got.Lines[0].Cases.Lift))
	}
}

// One line hauled further by e, a rigid box with its center of gravity in the plane of the
// attachments: T = W/4 ± x, from statics (only the diagonal pattern is free) and the ropes'
// stretch T·(n+H)/EA, n the unstretched load side and H the haul side:
// x = e·(EA + W/4)/(4·(n+H) − e). Anchors 3 m over the box at trim, 8 m over the floor.
func TestLead(t *testing.T) {
	h := lifted("start_factor: 1, lead: 20 mm")
	h.rest = stiffBox(0).rest + "lift: {start_factor: 1, lead: 20 mm}\n"
	got, _ := analyze(t, h.text())
	const ea, haul, lead, quarter = 60e3, 8.0, 0.020, 656.339 / 4
	length := (3 - quarter*haul/ea) / (1 + quarter/ea)
	x := lead * (ea + quarter) / (4*(length+haul) - lead)
	near(t, "L1", float64(got.Lift.Lines[0].Rest), quarter+x, 2e-5)
	if len(got.Lift.Cases) != 10 {
		t.Errorf("cases %v", got.Lift.Cases)
	}
}

// A line that lifts and has no pulley: how it is hauled is not known.
func TestLiftWithoutPulley(t *testing.T) {
	h := lifted("people_per_line: 1")
	h.hung = ""
	_, found := analyze(t, h.text())
	if f := named(found, "load.haul.L1"); f.Result != finding.NotKnown {
		t.Errorf("%+v", f)
	}
}
