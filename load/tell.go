package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
)

// tell fills the answer.
func (w *work) tell() {
	w.answer.Assumptions = w.assumptions()
	w.tellSpread()
	if w.built == nil {
		w.unsolvedLines()
		return
	}
	if center := centerOf(w.built); center != nil {
		w.answer.Center = center
	}
	w.answer.Pose = w.model.pose(w.built)
	for i := range w.rig.Lines {
		w.answer.Lines = append(w.answer.Lines, w.line(i))
	}
	w.answer.Points = w.points()
	w.tellPath()
	w.tellLift()
	w.answer.Frame = w.frame()
	w.tellCloth()
	w.tellLosses()
	force, moment := w.balance()
	w.answer.Residual = &ResidualSum{ForceN: Number(force), MomentNm: Number(moment)}
}

// unsolvedLines lists lines and points with nothing known about them.
func (w *work) unsolvedLines() {
	for i := range w.rig.Lines {
		l := &w.rig.Lines[i]
		nan := Number(math.NaN())
		w.answer.Lines = append(w.answer.Lines, Line{Name: l.Name, To: toName(l), Length: nan, HaulLength: nan, Haul: nan,
			Cases: Cases{nan, nan, nan, nan, nan, nan}})
	}
	for _, p := range w.rig.Points {
		w.answer.Points = append(w.answer.Points, Point{Name: p.Name})
	}
}

func toName(l *rig.Line) string {
	if l.Bridle != nil {
		return l.Bridle.Points[0] + " and " + l.Bridle.Points[1]
	}
	return l.Point
}

// line tells one line as built, and its cases.
func (w *work) line(i int) Line {
	l := &w.rig.Lines[i]
	nan := Number(math.NaN())
	told := Line{Name: l.Name, To: toName(l), Length: nan, HaulLength: nan, Haul: nan, Cases: Cases{nan, nan, nan, nan, nan, nan}}
	if w.model.lines[i] < 0 {
		return told
	}
	cable := w.built.Cables[w.model.lines[i]]
	at := vec(w.built.Position[w.model.problem.Cables[w.model.lines[i]].I])
	force := vec(cable.ForceOnI)
	told.At, told.ForceOnBox, told.Slack = &at, &force, cable.Slack
	if top, ok := w.rig.Top(l); ok {
		v := vec(top)
		told.Point = &v
	}
	told.Length = Number(cable.Unstretched)
	if l.Pulley != nil {
		told.HaulLength, told.Haul = Number(w.rig.HaulLength(l)), Number(cable.Tension)
		if e := l.Pulley.Efficiency; e != nil && *e > 0 {
			told.HaulRange = &[2]Number{Number(*e * cable.Tension), Number(cable.Tension / *e)}
		}
	}
	told.Bridle = w.bridle(i)
	told.Cases = w.cases(i)
	told.Governs = governs(told.Cases)
	return told
}

// cases gathers a line's tensions. Without a provision the grown case is the built
// one; without a lift, a tilt or a loss that rests there is none.
func (w *work) cases(i int) Cases {
	nan := Number(math.NaN())
	c := Cases{Lift: nan, TiltWorst: nan, LostWorst: nan, Diagonal: nan, Grown: Number(w.model.tension(w.grown, i))}
	for _, g := range w.groups() {
		most, _ := g.largest(func(s *solved) float64 { return w.model.tension(s, i) })
		switch g.symbol {
		case "built":
			c.Built = Number(most)
		case "lift":
			c.Lift = Number(most)
		case "tilt":
			c.TiltWorst = Number(most)
		case "lost":
			c.LostWorst = Number(most)
		}
	}
	if !w.rig.Plan.Rules.LoadCells {
		c.Diagonal = Number(w.heaviest() / 2)
	}
	return c
}

// heaviest is the weight of the box with what may still go up, in N.
func (w *work) heaviest() float64 {
	heavy := weightN(w.built.loads, &w.model.problem)
	if w.grown != nil {
		heavy = math.Max(heavy, weightN(w.grown.loads, &w.model.problem))
	}
	return heavy
}

// greater returns the larger of two numbers, the known one where the other is NaN.
func greater(a, b float64) float64 {
	if math.IsNaN(a) || b > a {
		return b
	}
	return a
}

// governs names the largest of a line's cases.
func governs(c Cases) string {
	name, most := "", math.Inf(-1)
	for _, k := range []struct {
		name string
		n    Number
	}{{"built", c.Built}, {"grown", c.Grown}, {"lift", c.Lift}, {"tilt_worst", c.TiltWorst}, {"lost_worst", c.LostWorst}, {"diagonal", c.Diagonal}} {
		if float64(k.n) > most*(1+1e-9)+1e-9 || (name == "" && float64(k.n) >= 0) {
			name, most = k.name, float64(k.n)
		}
	}
	return name
}

// frame tells the tubes.
func (w *work) frame() *Frame {
	built, sag := w.model.bending(w.built, "built")
	told := &Frame{Sag: Number(sag), Members: built}
	for _, m := range built {
		told.Stress = Number(greater(float64(told.Stress), float64(m.Stress)))
	}
	if w.grown != nil && w.grown != w.built {
		grown, _ := w.model.bending(w.grown, "grown")
		told.Members = worse(built, grown)
	}
	for _, m := range told.Members {
		if math.IsNaN(float64(m.Use)) {
			told.Use = m.Use
			break
		}
		told.Use = Number(greater(float64(told.Use), float64(m.Use)))
	}
	return told
}

// balance sets the reported forces on the box against the reported weight at the
// reported center: what is left, in N and N·m.
func (w *work) balance() (force, moment float64) {
	weight := down(float64(w.answer.Mass))
	center, _ := w.built.center()
	sumF, sumM := weight, r3.Cross(center, weight)
	for i := range w.rig.Lines {
		if cable := w.model.lines[i]; cable >= 0 {
			f := w.built.Cables[cable].ForceOnI
			sumF = r3.Add(sumF, f)
			sumM = r3.Add(sumM, r3.Cross(w.built.Position[w.model.problem.Cables[cable].I], f))
		}
	}
	return r3.Norm(sumF), r3.Norm(sumM)
}

// tellLosses tells every loss.
func (w *work) tellLosses() {
	for _, l := range w.losses {
		nan := Number(math.NaN())
		told := Lost{What: l.what, Name: l.name, Outcome: l.outcome, Why: l.why, Estimate: nan, Tilt: nan, Drop: nan, Stress: nan, Use: nan}
		if l.state != nil {
			told.Tension, told.ForceOnBox, told.At = w.held(l.state, l.cable)
			told.Center = centerOf(l.state)
			told.Pose = w.model.pose(l.state)
			told.Estimate, told.Drop = Number(l.estimate), Number(l.drop)
			told.Tilt = Number(w.model.tiltOf(l.state))
			told.Integrated = w.integrated(l)
			told.Stress, told.Use = w.model.stressed(l.state)
		}
		w.answer.Lost = append(w.answer.Lost, told)
	}
}

// integrated tells the peaks of a motion in time by line; nil where none was followed.
func (w *work) integrated(l loss) map[string]Number {
	if l.peaks == nil || l.peaks.why != "" {
		return nil
	}
	told := map[string]Number{}
	for i, cable := range w.model.lines {
		if cable >= 0 && cable != l.cable {
			told[w.rig.Lines[i].Name] = Number(l.peaks.of(i))
		}
	}
	return told
}

// assumptions lists what was assumed where the plan and the kit are silent.
func (w *work) assumptions() []string {
	if w.model == nil {
		return nil
	}
	told := append([]string(nil), w.model.assumed...)
	if hang := w.rig.Plan.Hang; hang != nil && len(hang.Guys) > 0 {
		told = append(told, "guys are not in the equilibrium of the box at rest: they hold against wind alone")
	}
	if text := w.clothAssumed(); text != "" {
		told = append(told, text)
	}
	for i := range w.rig.Lines {
		l := &w.rig.Lines[i]
		if l.Pulley != nil && l.TieOff == nil {
			told = append(told, fmt.Sprintf("line %s: no tie-off is given, its haul side is taken straight down to the floor", l.Name))
		}
	}
	for _, wt := range w.rig.Weights {
		p, ok := w.rig.Part(wt.Part)
		if ok && p.What == "lamp" && wt.OnTube == "" && !wt.Elsewhere {
			told = append(told, "how "+p.Name+" is carried is not given: it is taken to act on the bottom frame's four corners")
		}
	}
	return told
}
