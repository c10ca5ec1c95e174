package load

import (
	"fmt"
	"math"

	"softloft/finding"
	"softloft/source"
)

// concludeLosses tells what tumbles or falls, and the peak of what is caught.
func (w *work) concludeLosses() {
	for _, l := range w.losses {
		id := fmt.Sprintf("load.lost.%s.%s", l.what, l.name)
		subject := w.subject(l.part, l.path)
		statement := fmt.Sprintf("With %s gone", l.label())
		switch {
		case l.unknown:
			w.add(finding.Unknown(id, subject, statement, "where the box comes to rest was not found: "+l.why))
		case l.outcome != Rests && l.what == "mount":
			w.add(finding.Refused(id, subject, statement+" the lamp "+l.outcome, l.why))
		case l.outcome != Rests:
			w.add(finding.Refused(id, subject, statement+" the box "+l.outcome, l.why))
		case l.what != "mount":
			w.concludeSudden(l, subject)
		}
	}
}

// hardest is the line with the highest peak in time, or the largest new tension at rest
// where no motion was followed; -1 where none carries.
func (w *work) hardest(l loss) int {
	hardest, most := -1, 0.0
	for i := range w.rig.Lines {
		t := w.model.tension(l.state, i)
		if p := l.peaks.of(i); finding.Known(p) {
			t = p
		}
		if t > most {
			hardest, most = i, t
		}
	}
	return hardest
}

// concludeSudden sets the estimated peak of a sudden loss against what the rope of
// the hardest-hit line breaks at, less its knot. No published factor for such a peak
// was found: the margin that is printed is what is left of the strength.
func (w *work) concludeSudden(l loss, subject finding.Subject) {
	hardest := w.hardest(l)
	if hardest < 0 {
		return
	}
	line := &w.rig.Lines[hardest]
	strength := finding.Work{Formula: "F = B * k", Name: "breaking strength less the knot", Inputs: []finding.Input{
		{Symbol: "B", Name: "breaking strength", Value: optional(line.Rope.Breaks), Unit: "N", Origin: kitOrigin("rope", line.Rope.ID, line.Rope.Source)},
		knotInput(rating{kind: line.Rope.Kind, knot: line.Rope.Knot, origin: kitOrigin("rope", line.Rope.ID, line.Rope.Source)}),
	}}
	if line.Rope.Working {
		strength = finding.Given(finding.Input{Symbol: "W", Name: "working load limit", Value: optional(line.Rope.Breaks), Unit: "N", Origin: kitOrigin("rope", line.Rope.ID, line.Rope.Source)})
	}
	estimate := []finding.Input{
		{Symbol: "c", Name: "peak over the largest new tension at rest", Value: suddenFactor, Origin: "it held in all reference runs, worst 1.884; an estimate, no bound"},
		{Symbol: "T_rest", Name: "largest new tension at rest", Value: w.model.largestTension(l.state), Unit: "N", Origin: elastic},
	}
	statement := "Estimated peak"
	value := finding.Work{Formula: "P = c * T_rest", Name: "estimated peak", Inputs: estimate}
	assumed := append(demoOf(line.Rope.Demo), "held to the strength itself, not to a working load: no published factor for such a peak was found")
	switch {
	case l.peaks == nil:
	case l.peaks.why != "":
		assumed = append(assumed, "the motion in time was not worked out: "+l.peaks.why)
	default:
		statement = "Peak"
		value = finding.Work{Formula: "P = max(c * T_rest, P_time)", Name: "peak", Inputs: append(estimate, finding.Input{
			Symbol: "P_time", Name: "largest tension in the first second", Value: l.peaks.of(hardest), Unit: "N", Origin: "motion in time of the elastic frame, undamped, docs/method-load.md#loss"})}
	}
	w.add(finding.Check{
		ID: "load.sudden." + l.what + "." + l.name, Subject: subject, Case: "lost",
		Statement: fmt.Sprintf("%s on line %s when %s lets go suddenly", statement, line.Name, l.label()),
		Relation:  finding.AtMost, Unit: "N",
		Value: value,
		Limit: strength, Source: source.Cite("design-assumption", "peak of a sudden loss"),
		Assumptions: assumed,
	}.Conclude())
}

func optional(x *float64) float64 {
	if x == nil {
		return math.NaN()
	}
	return *x
}
