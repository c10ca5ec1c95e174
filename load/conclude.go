package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/plan"
	"softloft/rig"
	"softloft/source"
)

// conclude holds what was worked out to what is stated.
func (w *work) conclude() {
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
	w.concludeLosses()
	w.concludeFrame()
}

func (w *work) add(f finding.Finding) { w.findings = append(w.findings, f) }

// concludeLine checks a line's rope, its hardware, pulley, tie-off and bridle.
func (w *work) concludeLine(i int) {
	l := &w.rig.Lines[i]
	if w.model.lines[i] < 0 {
		w.add(finding.Unknown("load.line."+l.Name, w.subject("line."+l.Name+".rope", l.Path), "Line "+l.Name,
			"it holds no tube of the box, or its point or rope is not placed"))
		return
	}
	cases := w.caseInputs(i)
	rope := l.Rope
	limit, cite := w.allowed(rating{rope.Breaks, !rope.Working, rope.Kind, rope.Knot, !rope.Working,
		kitOrigin("rope", rope.ID, rope.Source), rope.Demo}, w.rig.Plan.Rules.Factor.Rope, "rules.factor.rope")
	check := finding.Check{
		ID: "load.line." + l.Name, Subject: w.subject("line."+l.Name+".rope", l.Path),
		Statement: fmt.Sprintf("Line %s, its rope", l.Name), Case: governs(w.cases(i)), Relation: finding.AtMost, Unit: "N",
		Value: tensionWork("largest tension", "T", cases), Limit: limit, Source: cite,
	}
	w.addRated(check, rope.Demo)
	w.concludeTop(i, cases)
	w.concludeTieOff(l, cases)
	w.concludeBridle(l)
}

// addRated concludes a check whose limit is a rating, and says DEMO where it is an
// invented one.
func (w *work) addRated(c finding.Check, demo bool) {
	if demo {
		c.Assumptions = append(c.Assumptions, demoNote)
	}
	w.add(c.Conclude())
}

// concludeTop checks what is in the line's load path. A shackle carries the line's
// tension. A pulley, and a clamp above it, carry the resultant of load and haul
// side: f times the tension, f = 2·cos(θ/2) for an angle θ between the two.
func (w *work) concludeTop(i int, cases []finding.Input) {
	l := &w.rig.Lines[i]
	f := w.resultantOf(i)
	factor := finding.Input{Symbol: "f", Name: "load on the block over the tension, 2·cos(θ/2)", Value: f,
		Origin: "directions of load side and haul side at rest"}
	work := func(resultant bool) finding.Work {
		if !resultant || l.Pulley == nil {
			return tensionWork("largest tension", "T", cases)
		}
		t := tensionWork("", "T", cases)
		return finding.Work{Formula: "R = f * T", Name: "largest load on the block", Inputs: append(cases[:len(cases):len(cases)], factor),
			Steps: []finding.Step{{Formula: t.Formula, Result: finding.Input{Symbol: "T", Name: "largest tension", Unit: "N"}}}}
	}
	for _, h := range l.Hardware {
		limit, cite := w.allowed(rating{rated: h.Rated, breaking: h.Breaking, kind: hardwareKind(h.What), origin: kitOrigin(h.What, h.ID, h.Source)},
			w.rig.Plan.Rules.Factor.Hardware, "rules.factor.hardware")
		w.addRated(finding.Check{
			ID: "load." + h.Part, Subject: w.subject(h.Part, l.Path), Statement: fmt.Sprintf("Line %s, its %s", l.Name, h.What),
			Relation: finding.AtMost, Unit: "N", Value: work(h.What == "clamp"), Limit: limit, Source: cite,
		}, h.Demo)
	}
	if p := l.Pulley; p != nil {
		limit, cite := w.allowed(rating{rated: p.Rated, breaking: p.Breaking, kind: source.MetalPart, origin: kitOrigin("pulley", p.ID, p.Source)},
			w.rig.Plan.Rules.Factor.Hardware, "rules.factor.hardware")
		w.addRated(finding.Check{
			ID: "load.line." + l.Name + ".pulley", Subject: w.subject("line."+l.Name+".pulley", l.Path), Statement: fmt.Sprintf("Line %s, its pulley", l.Name),
			Relation: finding.AtMost, Unit: "N", Value: work(true), Limit: limit, Source: cite,
		}, p.Demo)
	}
}

func hardwareKind(what string) source.Hardware {
	if what == "shackle" {
		return source.Shackle
	}
	return source.MetalPart
}

// resultantOf is the load on a line's block over its tension.
func (w *work) resultantOf(i int) float64 {
	l := &w.rig.Lines[i]
	cable := w.built.Cables[w.model.lines[i]]
	top, _ := w.rig.Top(l)
	load := r3.Scale(-1, cable.ForceOnI)
	if r3.Norm(load) == 0 {
		load = r3.Vec{Z: -1}
	}
	return r3.Norm(r3.Add(r3.Unit(load), w.model.haulDirection(l, top)))
}

// concludeTieOff checks where the haul side ends: it carries the line's tension.
func (w *work) concludeTieOff(l *rig.Line, cases []finding.Input) {
	if l.Pulley == nil {
		return
	}
	id, subject := "load.tie_off."+l.Name, w.subject("line."+l.Name+".tie_off", l.Path)
	statement := fmt.Sprintf("Line %s, its tie-off", l.Name)
	if l.TieOff == nil || l.TieOff.Allows == nil {
		w.add(finding.Unknown(id, subject, statement, "a hauled line's tie-off carries the line's tension, and nobody has stated what it allows"))
		return
	}
	w.add(finding.Check{ID: id, Subject: subject, Statement: statement, Relation: finding.AtMost, Unit: "N",
		Value:  tensionWork("largest tension", "T", cases),
		Limit:  finding.Given(finding.Input{Symbol: "F", Name: "what the tie-off allows", Value: *l.TieOff.Allows, Unit: "N", Origin: w.origin(l.Path + ".tie_off.allows")}),
		Source: source.Cite("plan", l.Path+".tie_off")}.Conclude())
}

// concludeBridle checks the included angle of a bridle's legs at the planned apex.
func (w *work) concludeBridle(l *rig.Line) {
	if l.Bridle == nil {
		return
	}
	one, okOne := w.rig.PointNamed(l.Bridle.Points[0])
	two, okTwo := w.rig.PointNamed(l.Bridle.Points[1])
	if !okOne || !okTwo {
		return
	}
	a, b := r3.Sub(one.InRoom, l.Bridle.ApexInRoom), r3.Sub(two.InRoom, l.Bridle.ApexInRoom)
	angle := math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b)) / degree
	refused, questioned := source.BridleRefused(), source.BridleQuestioned()
	subject := w.subject("line."+l.Name+".rope", l.Path+".to")
	w.add(finding.Check{ID: "load.bridle." + l.Name, Subject: subject, Statement: fmt.Sprintf("Bridle of line %s, the angle between its legs", l.Name),
		Relation: finding.AtMost, Unit: "deg",
		Value:  finding.Given(finding.Input{Symbol: "θ", Name: "included angle at the apex", Value: angle, Unit: "deg", Origin: "points and planned apex"}),
		Limit:  finding.Given(finding.Input{Symbol: "θ_max", Name: refused.Name, Value: refused.Value / degree, Unit: "deg", Origin: refused.Citation.String()}),
		Source: refused.Citation}.Conclude())
	if angle > questioned.Value/degree && angle <= refused.Value/degree {
		w.add(finding.Unknown("load.bridle_wide."+l.Name, subject, fmt.Sprintf("Bridle of line %s is wide: %.0f° between its legs", l.Name, angle),
			"over 90° a bridle is questioned (common practice): the house's rigger decides"))
	}
}

// concludeDrop checks a drop between two bodies.
func (w *work) concludeDrop(i int) {
	d := &w.rig.Drops[i]
	subject := w.subject(d.Part, "box.join")
	if w.model.drops[i] < 0 {
		w.add(finding.Unknown("load."+d.Part, subject, "Drop "+fmt.Sprint(i+1), "it has no tube above or below it"))
		return
	}
	at := func(s *solved) float64 {
		if s == nil {
			return math.NaN()
		}
		return s.Cables[w.model.drops[i]].Tension
	}
	cases := []finding.Input{{Symbol: "T_built", Name: "tension as built", Value: at(w.built), Unit: "N", Origin: elastic}}
	if w.rig.Plan.Provision != nil {
		cases = append(cases, finding.Input{Symbol: "T_grown", Name: "tension with the provision up", Value: at(w.grown), Unit: "N", Origin: elastic})
	}
	worst := math.NaN()
	for _, l := range w.losses {
		if l.state != nil {
			worst = greater(worst, at(l.state))
		}
	}
	if finding.Known(worst) {
		cases = append(cases, finding.Input{Symbol: "T_lost", Name: "largest tension at rest after a loss", Value: worst, Unit: "N", Origin: elastic})
	}
	part, _ := w.rig.Part(d.Part)
	limit, cite := w.allowed(rating{rated: d.Rated, breaking: d.Breaking, kind: d.Kind, origin: kitOrigin(part.KitKind, part.KitID, d.RatedSource)},
		w.rig.Plan.Rules.Factor.Hardware, "rules.factor.hardware")
	w.addRated(finding.Check{ID: "load." + d.Part, Subject: subject, Statement: "D" + d.Name[1:] + ", which holds the bottom frame",
		Relation: finding.AtMost, Unit: "N", Value: tensionWork("largest tension", "T", cases), Limit: limit, Source: cite}, d.Demo)
}

// concludeFrame checks the tube that is used most.
func (w *work) concludeFrame() {
	var worst *Member
	for i := range w.answer.Frame.Members {
		m := &w.answer.Frame.Members[i]
		if worst == nil || float64(m.Stress) > float64(worst.Stress) {
			worst = m
		}
		if finding.Known(float64(m.Use)) && float64(m.Use) > float64(worst.Use) {
			worst = m
		}
	}
	if worst == nil {
		return
	}
	t, _ := w.rig.Tube(worst.Part)
	part, _ := w.rig.Part(worst.Part)
	section, _, _ := properties(t)
	yield := math.NaN()
	key := "yield"
	if t.Welded {
		key = "welded_yield"
	}
	if allowed := allowedStress(t); finding.Known(allowed) {
		yield = allowed * yieldFactor
	}
	stress := part.KitID
	alloy := w.rig.Kit.Tube[stress].Alloy
	in := func(symbol, name string, value float64, unit, origin string) finding.Input {
		return finding.Input{Symbol: symbol, Name: name, Value: value, Unit: unit, Origin: origin}
	}
	w.add(finding.Check{
		ID: "load.frame." + worst.Part, Subject: w.subject(worst.Part, part.Path),
		Statement: fmt.Sprintf("Bending of the tubes: %s is used most", worst.Part), Case: worst.Case, Relation: finding.AtMost, Unit: "Pa",
		Value: finding.Work{
			Formula: "σ = sqrt(σ_n^2 + 3*τ^2)", Name: "equivalent stress",
			Steps: []finding.Step{
				{Formula: normalFormula(t), Result: in("σ_n", "normal stress", 0, "Pa", "")},
				{Formula: "τ = 2*V/A + abs(M_t)*q", Result: in("τ", "shear stress", 0, "Pa", "")},
			},
			Inputs: []finding.Input{
				in("N", "axial force", float64(worst.N), "N", elastic), in("M", "bending moment", float64(worst.M), "N m", elastic),
				in("V", "shear force", float64(worst.V), "N", elastic), in("M_t", "torque", float64(worst.T), "N m", elastic),
				in("A", "area of metal", section.Area, "m2", "section of "+part.KitID), in("W", "section modulus", section.ModulusZ, "m3", "section of "+part.KitID),
				in("q", "shear stress of a unit torque", torsionStress(section, t), "1/m3", "section of "+part.KitID),
			},
		},
		Limit: finding.Work{Formula: "f = F_y / s", Name: "allowed stress", Inputs: []finding.Input{
			in("F_y", "yield strength", yield, "Pa", kitOrigin("alloy", alloy, w.rig.Kit.Alloy[alloy].Source.For(key))),
			in("s", "safety factor on yield", yieldFactor, "", source.Cite(yieldSource, "").String()),
		}},
		Source:      source.Cite(yieldSource, ""),
		Assumptions: []string{"joints, welds, fittings and dents are not checked", "no buckling check of a tube in compression"},
	}.Conclude())
}

// yieldSource is the publication that states yieldFactor.
const yieldSource = "adm"

// normalFormula adds the bending about both axes: at the rim of a round tube as the
// root of squares; in a square tube the corner takes at most √2 of that.
func normalFormula(t *rig.Tube) string {
	if t.Section.Square {
		return "σ_n = abs(N)/A + sqrt(2)*M/W"
	}
	return "σ_n = abs(N)/A + M/W"
}

// concludeLosses tells what tumbles or falls, and the peak of what is caught.
func (w *work) concludeLosses() {
	for _, l := range w.losses {
		id := fmt.Sprintf("load.lost.%s.%s", l.what, l.name)
		subject := w.subject("line."+l.name+".rope", w.linePath(l))
		statement := fmt.Sprintf("With %s gone", l.label())
		switch {
		case l.unknown:
			w.add(finding.Unknown(id, subject, statement, "where the box comes to rest was not found: "+l.why))
		case l.outcome != Rests:
			w.add(finding.Refused(id, subject, statement+" the box "+l.outcome, l.why))
		default:
			w.concludeSudden(l, subject)
		}
	}
}

func (l loss) label() string {
	if l.what == "drop" {
		return l.name
	}
	return l.what + " " + l.name
}

func (w *work) linePath(l loss) string {
	for i := range w.rig.Lines {
		if l.what == "line" && w.rig.Lines[i].Name == l.name {
			return w.rig.Lines[i].Path
		}
	}
	return "box.join"
}

// concludeSudden sets the estimated peak of a sudden loss against what the rope of
// the hardest-hit line breaks at, less its knot. No published factor for such a peak
// was found: the margin that is printed is what is left of the strength.
func (w *work) concludeSudden(l loss, subject finding.Subject) {
	hardest := -1
	for i := range w.rig.Lines {
		if t := w.model.tension(l.state, i); t > 0 && (hardest < 0 || t > w.model.tension(l.state, hardest)) {
			hardest = i
		}
	}
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
	w.addRated(finding.Check{
		ID: "load.sudden." + l.what + "." + l.name, Subject: subject, Case: "lost",
		Statement: fmt.Sprintf("Estimated peak on line %s when %s lets go suddenly", line.Name, l.label()),
		Relation:  finding.AtMost, Unit: "N",
		Value: finding.Work{Formula: "P = c * T_rest", Name: "estimated peak", Inputs: []finding.Input{
			{Symbol: "c", Name: "peak over the largest new tension at rest", Value: suddenFactor, Origin: "it held in all reference runs, worst 1.884; an estimate, no bound"},
			{Symbol: "T_rest", Name: "largest new tension at rest", Value: w.model.tension(l.state, hardest), Unit: "N", Origin: elastic},
		}},
		Limit: strength, Source: source.Cite("design-assumption", "peak of a sudden loss"),
		Assumptions: []string{"held to the strength itself, not to a working load: no published factor for such a peak was found"},
	}, line.Rope.Demo)
}

func optional(x *float64) float64 {
	if x == nil {
		return math.NaN()
	}
	return *x
}

// hardwareFactor is the plan's factor for what is not rope.
func (w *work) hardwareFactor() *plan.Factor { return w.rig.Plan.Rules.Factor.Hardware }
