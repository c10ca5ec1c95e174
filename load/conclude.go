package load

import (
	"fmt"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// conclude holds what was worked out to what is stated.
func (w *work) conclude() {
	w.concludeStands()
	if w.unsolved != "" && w.floor.holdsBox {
		return
	}
	if w.turnsOver {
		w.add(finding.Refused("load.hangs", w.subject("box", "hang"), "How the box hangs and what each line carries", w.unsolved))
		return
	}
	if w.unsolved != "" {
		w.add(finding.Unknown("load.hangs", w.subject("box", "hang"), "How the box hangs and what each line carries", w.unsolved))
		return
	}
	for i := range w.rig.Lines {
		w.concludeLine(i)
	}
	for i := range w.rig.Drops {
		w.concludeDrop(i)
	}
	for i := range w.rig.Points {
		w.concludePoint(&w.rig.Points[i])
	}
	for i := range w.rig.Beams {
		w.concludeBeam(&w.rig.Beams[i])
	}
	w.concludePose()
	w.concludeFloor()
	w.concludeLevel()
	w.concludePath()
	w.concludeLift()
	w.concludeLosses()
	w.concludeFrame()
}

func (w *work) add(f finding.Finding) { w.findings = append(w.findings, f) }

// demoOf is what a check says whose limit is an invented rating.
func demoOf(demo bool) []string {
	if demo {
		return []string{demoNote}
	}
	return nil
}

// ropeLimit is the work of what a line's rope may carry.
func (w *work) ropeLimit(l *rig.Line) (finding.Work, source.Citation) {
	rope := l.Rope
	return w.allowed(rating{rope.Breaks, !rope.Working, rope.Kind, rope.Knot, !rope.Working,
		kitOrigin("rope", rope.ID, rope.Source), rope.Demo}, w.rig.Plan.Rules.Factor.Rope, "rules.factor.rope")
}

// concludeLine checks a line's rope, its hardware, pulley, tie-off and bridle.
func (w *work) concludeLine(i int) {
	l := &w.rig.Lines[i]
	if w.model.lines[i] < 0 {
		w.add(finding.Unknown("load.line."+l.Name, w.subject("line."+l.Name+".rope", l.Path), "Line "+l.Name,
			"it holds no tube of the box, or its point or rope is not placed"))
		return
	}
	cases := w.caseInputs(i)
	limit, cite := w.ropeLimit(l)
	w.addLargest(finding.Check{
		ID: "load.line." + l.Name, Subject: w.subject("line."+l.Name+".rope", l.Path),
		Statement: fmt.Sprintf("Line %s, its rope", l.Name), Case: governs(w.cases(i)), Relation: finding.AtMost, Unit: "N",
		Limit: limit, Source: cite, Assumptions: demoOf(l.Rope.Demo),
	}, cases, mostTension)
	w.concludeHardware(i, cases)
	w.concludePulley(i, cases)
	w.concludeTieOff(l, cases)
	w.concludeBridle(i)
}
