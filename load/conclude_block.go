package load

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// concludeHardware checks what else is in the line's load path. A shackle at the box
// carries the line's tension; a clamp above carries what the block carries.
func (w *work) concludeHardware(i int, cases []finding.Input) {
	l := &w.rig.Lines[i]
	for _, h := range l.Hardware {
		limit, cite := w.allowed(rating{rated: h.Rated, breaking: h.Breaking, kind: hardwareKind(h.What), origin: kitOrigin(h.What, h.ID, h.Source)},
			w.rig.Plan.Rules.Factor.Hardware, "rules.factor.hardware")
		check := finding.Check{
			ID: "load." + h.Part, Subject: w.subject(h.Part, l.Path), Statement: fmt.Sprintf("Line %s, its %s", l.Name, h.What),
			Relation: finding.AtMost, Unit: "N", Limit: limit, Source: cite, Assumptions: demoOf(h.Demo),
		}
		if h.What == "clamp" && l.Bridle != nil {
			check.Assumptions = append(check.Assumptions, "held to the line's whole load, though a bridle's legs share it")
		}
		work := mostTension
		if h.What == "clamp" {
			work = w.onBlock(i)
		}
		w.addLargest(check, cases, work)
	}
}

// concludePulley checks a line's block, and its sheave against the rope's diameter.
func (w *work) concludePulley(i int, cases []finding.Input) {
	l := &w.rig.Lines[i]
	p := l.Pulley
	if p == nil {
		return
	}
	limit, cite := w.allowed(rating{rated: p.Rated, breaking: p.Breaking, kind: source.MetalPart, origin: kitOrigin("pulley", p.ID, p.Source)},
		w.rig.Plan.Rules.Factor.Hardware, "rules.factor.hardware")
	subject := w.subject("line."+l.Name+".pulley", l.Path)
	w.addLargest(finding.Check{
		ID: "load.line." + l.Name + ".pulley", Subject: subject, Statement: fmt.Sprintf("Line %s, its pulley", l.Name),
		Relation: finding.AtMost, Unit: "N", Limit: limit, Source: cite, Assumptions: demoOf(p.Demo),
	}, cases, w.onBlock(i))
	least, from := leastSheave(l.Rope.Kind)
	w.add(finding.Check{
		ID: "load.line." + l.Name + ".sheave", Subject: subject, Statement: fmt.Sprintf("Line %s, its sheave over its rope's diameter", l.Name),
		Relation: finding.AtLeast, Unit: "",
		Value: finding.Work{Formula: "r = D / d", Name: "sheave over rope", Inputs: []finding.Input{
			{Symbol: "D", Name: "diameter of the sheave", Value: optional(p.Sheave), Unit: "m", Origin: kitOrigin("pulley", p.ID, p.Source)},
			{Symbol: "d", Name: "diameter of the rope", Value: optional(l.Rope.Diameter), Unit: "m", Origin: kitOrigin("rope", l.Rope.ID, l.Rope.Source)},
		}},
		Limit:  finding.Given(finding.Input{Symbol: "r_min", Name: "least sheave over rope", Value: least, Origin: from}),
		Source: source.Cite("common-practice", "sheave to rope diameter"),
	}.Conclude())
}

// leastSheave is the least diameter of a sheave over that of its rope: 8 for fiber
// rope (of 8 to 10), 18 for 7×19 wire (of 18 to 24), both from memory. A chain or sling
// runs over no such sheave: NaN.
func leastSheave(kind source.Hardware) (float64, string) {
	switch kind {
	case source.FiberRope:
		return 8, "fiber rope, 8 to 10, from memory"
	case source.WireRope:
		return 18, "wire rope 7×19, 18 to 24, from memory"
	}
	return math.NaN(), "it is no rope"
}

func hardwareKind(what string) source.Hardware {
	if what == "shackle" {
		return source.Shackle
	}
	return source.MetalPart
}

// onBlock is the work of the largest load on a line's block, from the line's tensions
// by case: f times the tension, f the length of the sum of the two sides' unit pulls,
// 2·cos(θ/2) for an angle θ between two equal ones. While it is lifted the haul side
// pulls 1/e as hard.
func (w *work) onBlock(i int) func([]finding.Input) finding.Work {
	return func(cases []finding.Input) finding.Work {
		if w.rig.Lines[i].Pulley == nil {
			return mostTension(cases)
		}
		var rest, terms []string
		inputs := append([]finding.Input(nil), cases...)
		for _, c := range cases {
			if c.Symbol != "T_lift" {
				rest = append(rest, c.Symbol)
				continue
			}
			terms = append(terms, "f_lift*T_lift")
			inputs = append(inputs, finding.Input{Symbol: "f_lift", Name: "load on the block over the tension, while it is lifted",
				Value: w.blockShare(i, true), Origin: "directions of load side and haul side, the haul side's pull over the pulley's efficiency"})
		}
		work := finding.Work{Name: "largest load on the block"}
		if len(rest) > 0 {
			terms = append(terms, "f*T")
			inputs = append(inputs, finding.Input{Symbol: "f", Name: "load on the block over the tension, 2·cos(θ/2)",
				Value: w.blockShare(i, false), Origin: "directions of load side and haul side at rest"})
			work.Steps = []finding.Step{{Formula: tensionWork("", "T", only(cases, "T_lift")).Formula,
				Result: finding.Input{Symbol: "T", Name: "largest tension at rest", Unit: "N"}}}
		}
		work.Inputs = inputs
		work.Formula = "R = max(" + strings.Join(terms, ", ") + ")"
		return work
	}
}

// only leaves out one symbol.
func only(cases []finding.Input, without string) []finding.Input {
	var kept []finding.Input
	for _, c := range cases {
		if c.Symbol != without {
			kept = append(kept, c)
		}
	}
	return kept
}

// blockShare is the load on a line's block over its tension, the largest over the
// states at rest or while it is lifted.
func (w *work) blockShare(i int, raising bool) float64 {
	share := math.NaN()
	for _, g := range w.groups() {
		if g.raising != raising {
			continue
		}
		for _, s := range g.states {
			if f := r3.Norm(w.model.blockForce(s.state, i, raising)); math.IsNaN(share) || f > share {
				share = f
			}
		}
	}
	return share
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
	w.addLargest(finding.Check{ID: id, Subject: subject, Statement: statement, Relation: finding.AtMost, Unit: "N",
		Limit:  finding.Given(finding.Input{Symbol: "F", Name: "what the tie-off allows", Value: *l.TieOff.Allows, Unit: "N", Origin: w.origin(l.Path + ".tie_off.allows")}),
		Source: source.Cite("plan", l.Path+".tie_off")}, cases, mostTension)
}
