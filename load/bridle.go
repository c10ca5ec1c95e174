package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// Bridle is how a line's two legs hang as built: where the apex came to rest, each
// leg's length, tension and what it does to its point.
type Bridle struct {
	Apex  Vec    `json:"apex_m"`
	Angle Number `json:"angle_deg"` // between the legs
	Legs  []Leg  `json:"legs"`
}

// Leg is one leg of a bridle. Side is the horizontal part of its pull on the point.
type Leg struct {
	Point   string `json:"point"`
	Length  Number `json:"length_m"`
	Tension Number `json:"tension_n"`
	Side    Number `json:"side_n"`
	OnPoint Vec    `json:"force_on_point_n"`
}

// legsOf are the cables of a line's legs, in the order of its points.
func (m *model) legsOf(l *rig.Line) []int {
	var legs []int
	for _, name := range l.Bridle.Points {
		for i, c := range m.problem.Cables {
			if c.Name == legName(l.Name, name) {
				legs = append(legs, i)
			}
		}
	}
	return legs
}

// legShare is what a leg carries over what the line alone would give it. A pulley at
// the apex adds the haul side: where that pulls the same way as the load (within the
// angle that counts as vertical) the legs carry the sum in the same proportion; else
// the apex swings aside, and the legs are not known.
func (m *model) legShare(s *solved, line int, raising bool) float64 {
	if m.rig.Lines[line].Pulley == nil {
		return 1
	}
	sum := m.blockForce(s, line, raising)
	load := r3.Scale(-1, s.Cables[m.lines[line]].ForceOnI)
	lean := math.Atan2(r3.Norm(r3.Cross(load, sum)), r3.Dot(load, sum))
	if !(lean <= source.CountsAsVertical().Value) {
		return math.NaN()
	}
	return r3.Norm(sum)
}

// bridlePulls returns what the two legs do to their points.
func (m *model) bridlePulls(s *solved, line int, raising bool) []pull {
	l := &m.rig.Lines[line]
	share := m.legShare(s, line, raising)
	var pulls []pull
	for k, c := range m.legsOf(l) {
		force := r3.Scale(-share, s.Cables[c].ForceOnI)
		pulls = append(pulls, pull{l.Bridle.Points[k], r3.Add(force, down(m.rigging(l)/2))})
	}
	return pulls
}

// bridle tells a line's bridle as built.
func (w *work) bridle(line int) *Bridle {
	l := &w.rig.Lines[line]
	if l.Bridle == nil || w.model.lines[line] < 0 {
		return nil
	}
	m, s := w.model, w.built
	legs := m.legsOf(l)
	if len(legs) != 2 {
		return nil
	}
	share := m.legShare(s, line, false)
	told := &Bridle{Apex: vec(s.Position[m.problem.Cables[legs[0]].I]), Angle: Number(w.legAngle(l, s) / degree)}
	for k, c := range legs {
		force := r3.Scale(-share, s.Cables[c].ForceOnI)
		told.Legs = append(told.Legs, Leg{
			Point: l.Bridle.Points[k], Length: Number(s.Cables[c].Unstretched), Tension: Number(share * s.Cables[c].Tension),
			Side: Number(math.Hypot(force.X, force.Y)), OnPoint: vec(force),
		})
	}
	return told
}

// legAngle is the angle between the legs in a state, rad.
func (w *work) legAngle(l *rig.Line, s *solved) float64 {
	legs := w.model.legsOf(l)
	if len(legs) != 2 {
		return math.NaN()
	}
	apex := s.Position[w.model.problem.Cables[legs[0]].I]
	a := r3.Sub(w.model.problem.Cables[legs[0]].Anchor, apex)
	b := r3.Sub(w.model.problem.Cables[legs[1]].Anchor, apex)
	return math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b))
}

// concludeBridle checks the angle between a bridle's legs at rest, and each leg's rope.
func (w *work) concludeBridle(line int) {
	l := &w.rig.Lines[line]
	if l.Bridle == nil {
		return
	}
	angle := w.legAngle(l, w.built) / degree
	refused, questioned := source.BridleRefused(), source.BridleQuestioned()
	subject := w.subject("line."+l.Name+".rope", l.Path+".to")
	w.add(finding.Check{ID: "load.bridle." + l.Name, Subject: subject, Statement: fmt.Sprintf("Bridle of line %s, the angle between its legs", l.Name),
		Relation: finding.AtMost, Unit: "deg",
		Value:  finding.Given(finding.Input{Symbol: "θ", Name: "included angle at the apex", Value: angle, Unit: "deg", Origin: elastic}),
		Limit:  finding.Given(finding.Input{Symbol: "θ_max", Name: refused.Name, Value: refused.Value / degree, Unit: "deg", Origin: refused.Citation.String()}),
		Source: refused.Citation}.Conclude())
	if angle > questioned.Value/degree && angle <= refused.Value/degree {
		w.add(finding.Unknown("load.bridle_wide."+l.Name, subject, fmt.Sprintf("Bridle of line %s is wide: %.0f° between its legs", l.Name, angle),
			"over 90° a bridle is questioned (common practice): the house's rigger decides"))
	}
	for k := range w.model.legsOf(l) {
		w.concludeLeg(line, k)
	}
}

// concludeLeg checks one leg's rope. A flat leg carries more than the line itself.
// Half of the weight comes onto the line; the leg takes the share of it that it takes
// as built.
func (w *work) concludeLeg(line, k int) {
	l := &w.rig.Lines[line]
	cable := w.model.legsOf(l)[k]
	tension := func(g group, s *solved) float64 {
		return w.model.legShare(s, line, g.raising) * s.Cables[cable].Tension
	}
	cases := w.inputs("T", "tension of the leg", "N", tension)
	if c := w.cases(line); finding.Known(float64(c.Diagonal)) {
		share := tension(group{}, w.built) / w.model.tension(w.built, line)
		cases = append(cases, finding.Input{Symbol: "T_diagonal", Name: fmt.Sprintf("%.4g of half of the weight, because sharing is never even on a real day", share),
			Value: share * float64(c.Diagonal), Unit: "N", Origin: diagonalOrigin})
	}
	limit, cite := w.ropeLimit(l)
	w.addLargest(finding.Check{
		ID: "load.leg." + l.Name + "." + l.Bridle.Points[k], Subject: w.subject("line."+l.Name+".rope", l.Path+".to"),
		Statement: fmt.Sprintf("Bridle of line %s, its leg to %s", l.Name, l.Bridle.Points[k]), Relation: finding.AtMost, Unit: "N",
		Limit: limit, Source: cite, Assumptions: demoOf(l.Rope.Demo),
	}, cases, mostTension)
}
