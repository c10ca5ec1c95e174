package load

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/shape"
	"softloft/source"
)

// bumpHeight is how high the lowest edge stands over the floor in the lift's first
// case, m: the bump, 6 to 12 in, at which a crew holds and looks (common practice).
const bumpHeight = 0.3

// lifting is one way in which the box hangs while it goes up.
type lifting struct {
	label string
	state *solved
	why   string
}

// lift finds the rig that goes up: only the lift's lines carry, near the floor and at
// trim, level and with each of them hauled further than the rest by the lead.
func (w *work) lift() {
	if w.rig.Plan.Lift == nil {
		return
	}
	w.lifters, w.idle = w.liftLines()
	if len(w.lifters) == 0 {
		w.notLifted = "none of the lift's lines holds the box"
		return
	}
	if outcome, why := w.model.rollsOver(w.built, w.idle...); outcome != "" {
		w.liftRolls = why
		return
	}
	trim := w.model.level()
	low := trim
	low.Origin.Z = math.Min(trim.Origin.Z, w.rig.LowestBy+bumpHeight)
	w.liftAt(low, "near the floor")
	if low.Origin.Z < trim.Origin.Z {
		w.liftAt(trim, "at trim")
	}
}

// liftLines sorts the lines: which lift, and the cables of those that don't.
func (w *work) liftLines() (lifters, idle []int) {
	names := w.rig.Plan.Lift.Lines
	for i, cable := range w.model.lines {
		switch {
		case cable < 0:
		case len(names) == 0 || slices.Contains(names, w.rig.Lines[i].Name):
			lifters = append(lifters, i)
		default:
			idle = append(idle, cable)
		}
	}
	return lifters, idle
}

func (w *work) liftAt(pose shape.Pose, where string) {
	from := w.model.poseOf(w.built)
	level, err := w.model.reach(w.built, from, wish{pose: pose, turn: between(from, pose), gone: w.idle})
	w.lifted(w.built, level, err, where+", level")
	lead := float64(w.rig.Plan.Lift.Lead)
	if level == nil || lead == 0 {
		return
	}
	for _, i := range w.lifters {
		s, err := w.model.ahead(level, i, lead, w.idle)
		w.lifted(level, s, err, fmt.Sprintf("%s, %s leads", where, w.rig.Lines[i].Name))
	}
}

// lifted keeps one way of lifting.
func (w *work) lifted(start, s *solved, err error, label string) {
	l := lifting{label: label, state: s}
	switch {
	case err != nil:
		l.why = err.Error()
	case w.model.turnedOver(start, s):
		l.state, l.why = nil, "the box turns over"
	}
	w.lifts = append(w.lifts, l)
}

// liftGroup is the lift as a case: its start factor stands on what hangs at rest.
func (w *work) liftGroup() []group {
	if w.rig.Plan.Lift == nil {
		return nil
	}
	g := group{symbol: "lift", name: "while it is lifted", factor: w.rig.Plan.Lift.StartFactor, raising: true}
	switch {
	case w.liftRolls != "":
		g.missing = "the lift, in which the box rolls over,"
	case w.notLifted != "":
		g.missing = "the lift"
	}
	for _, l := range w.lifts {
		if l.state == nil {
			g.missing = "the lift " + l.label
			continue
		}
		g.states = append(g.states, labeled{l.label, l.state})
	}
	return []group{g}
}

// Lift is how the box goes up, line by line.
type Lift struct {
	StartFactor Number     `json:"start_factor"`
	Cases       []string   `json:"cases"`
	Lines       []LiftLine `json:"lines"`
}

// LiftLine is one line that lifts: the largest tension at rest on the way, the pull
// that starts it, and that pull on each pair of hands; also with a 2:1 purchase.
type LiftLine struct {
	Name        string `json:"name"`
	Rest        Number `json:"tension_at_rest_n"`
	Haul        Number `json:"haul_n"`
	PerPerson   Number `json:"per_person_n"`
	TwoToOne    Number `json:"per_person_two_to_one_n"`
	People      int    `json:"people"`
	PurchaseDue bool   `json:"purchase_due"`
}

// tellLift tells the lift.
func (w *work) tellLift() {
	if w.rig.Plan.Lift == nil {
		return
	}
	told := &Lift{StartFactor: Number(w.rig.Plan.Lift.StartFactor)}
	for _, l := range w.lifts {
		told.Cases = append(told.Cases, l.label)
	}
	for _, i := range w.lifters {
		told.Lines = append(told.Lines, w.liftLine(i))
	}
	w.answer.Lift = told
}

func (w *work) liftLine(i int) LiftLine {
	nan := Number(math.NaN())
	people := max(1, w.rig.Plan.Lift.PeoplePerLine)
	told := LiftLine{Name: w.rig.Lines[i].Name, Rest: nan, Haul: nan, PerPerson: nan, TwoToOne: nan, People: people}
	g := w.liftGroup()[0]
	if g.missing != "" {
		return told
	}
	start, _ := g.largest(func(s *solved) float64 { return w.model.tension(s, i) })
	told.Rest = Number(start / g.factor)
	if p := w.rig.Lines[i].Pulley; p != nil && p.Efficiency != nil && *p.Efficiency > 0 {
		e := *p.Efficiency
		told.Haul = Number(start / e)
		told.PerPerson = told.Haul / Number(people)
		told.TwoToOne = Number(start / (e + e*e) / float64(people))
		told.PurchaseDue = float64(told.PerPerson) > handLimit()
	}
	return told
}

// handLimit is what one pair of hands is asked to pull at most, N: the weight of the
// lifting equation's load constant.
func handLimit() float64 { return source.LoadConstant().Value * gravity }

// concludeLift tells a lift that does not go, and holds each line's pull to what hands
// may pull.
func (w *work) concludeLift() {
	if w.rig.Plan.Lift == nil {
		return
	}
	subject := w.subject("box", "lift")
	switch {
	case w.liftRolls != "":
		w.add(finding.Refused("load.lift", subject, "Lifted by the lift's lines alone the box tumbles", w.liftRolls))
		return
	case w.notLifted != "":
		w.add(finding.Unknown("load.lift", subject, "The box on its way up", w.notLifted))
		return
	}
	for _, l := range w.lifts {
		if l.state == nil {
			w.add(finding.Unknown("load.lift", subject, "The box on its way up, "+l.label, l.why))
			return
		}
	}
	for _, i := range w.lifters {
		w.concludeHaul(i)
	}
}

// concludeHaul checks the pull on each pair of hands: over one sheave the haul side
// has T/e, with a 2:1 purchase T/(e+e²).
func (w *work) concludeHaul(i int) {
	l := &w.rig.Lines[i]
	subject := w.subject("line."+l.Name+".rope", l.Path)
	id, statement := "load.haul."+l.Name, fmt.Sprintf("Pull on each pair of hands that hauls line %s", l.Name)
	if l.Pulley == nil {
		w.add(finding.Unknown(id, subject, "How line "+l.Name+" is hauled", "it lifts the box and has no pulley; what raises it (a hoist, hands) is not given"))
		return
	}
	told := w.liftLine(i)
	p := w.rig.Plan.Lift
	constant := source.LoadConstant()
	check := finding.Check{
		ID: id, Subject: subject, Statement: statement, Case: "lift", Relation: finding.AtMost, Unit: "N",
		Value: finding.Work{Formula: "F = s * T / (e * p)", Name: "pull on each pair of hands", Inputs: []finding.Input{
			{Symbol: "s", Name: "start factor", Value: p.StartFactor, Origin: w.origin("lift.start_factor")},
			{Symbol: "T", Name: "largest tension at rest on the way up", Value: float64(told.Rest), Unit: "N", Origin: elastic},
			{Symbol: "e", Name: "efficiency of the pulley", Value: optional(l.Pulley.Efficiency), Origin: kitOrigin("pulley", l.Pulley.ID, l.Pulley.Source)},
			{Symbol: "p", Name: "pairs of hands on the line", Value: float64(told.People), Origin: w.origin("lift.people_per_line")},
		}},
		Limit: finding.Work{Formula: "F_max = m * g", Name: "what one pair of hands is asked for", Inputs: []finding.Input{
			{Symbol: "m", Name: constant.Name, Value: constant.Value, Unit: constant.Unit, Origin: constant.Citation.String()},
			{Symbol: "g", Name: "standard gravity", Value: gravity, Unit: "m/s2", Origin: "SP 811"},
		}},
		Source:      constant.Citation,
		Assumptions: []string{"the constant is one for lifting with both hands under the best conditions; for a pull on a rope it is an assumption"},
	}
	if told.PurchaseDue {
		check.Assumptions = append(check.Assumptions,
			fmt.Sprintf("a 2:1 purchase is due: with it each pair of hands pulls T·s/((e+e²)·p) = %.0f N", float64(told.TwoToOne)))
	}
	w.add(check.Conclude())
}

// haulShare is the haul side's tension over the load side's: 1 at rest, 1/e while the
// rope runs over its pulley.
func haulShare(l *rig.Line, raising bool) float64 {
	if !raising || l.Pulley == nil {
		return 1
	}
	return 1 / optional(l.Pulley.Efficiency)
}

// blockForce is the force on a line's block for a unit tension: load side plus haul
// side.
func (m *model) blockForce(s *solved, line int, raising bool) r3.Vec {
	l := &m.rig.Lines[line]
	top, _ := m.rig.Top(l)
	load := r3.Scale(-1, s.Cables[m.lines[line]].ForceOnI)
	if r3.Norm(load) == 0 {
		load = r3.Vec{Z: -1}
	}
	return r3.Add(r3.Unit(load), r3.Scale(haulShare(l, raising), m.haulDirection(l, top)))
}
