package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
)

// group is a case with all the states that belong to it: the losses one by one, the
// steps of a tilt, the ways of lifting.
type group struct {
	symbol string // as in T_lost
	name   string // as in "largest tension at rest after a loss"
	states []labeled
	// factor stands on what the states give, 1 but for the start of a lift.
	factor float64
	// raising says that ropes run over their pulleys while this is so.
	raising bool
	// missing says which of the case's states was not worked out, "" where none.
	missing string
}

// labeled is one state of a case; label names which, "" where there is but one.
type labeled struct {
	label string
	state *solved
}

// groups are the cases that apply, in the order in which they are told.
func (w *work) groups() []group {
	all := []group{{symbol: "built", name: "as built", factor: 1, states: []labeled{{"", w.built}}}}
	if w.rig.Plan.Provision != nil {
		g := group{symbol: "grown", name: "with the provision up", factor: 1}
		if w.grown == nil {
			g.missing = "the box with the provision up"
		} else {
			g.states = []labeled{{"", w.grown}}
		}
		all = append(all, g)
	}
	all = append(all, w.liftGroup()...)
	if len(w.path) > 0 {
		g := group{symbol: "tilt", name: "on the way to the tilt", factor: 1}
		for _, step := range w.path {
			if step.state == nil {
				g.missing = fmt.Sprintf("a tilt of %.4g°", step.angle/degree)
				break
			}
			g.states = append(g.states, labeled{fmt.Sprintf("at %.4g°", step.angle/degree), step.state})
		}
		all = append(all, g)
	}
	lost := group{symbol: "lost", name: "at rest after a loss", factor: 1}
	for _, l := range w.losses {
		if l.unknown {
			lost.missing = "the loss of " + l.label()
		} else if l.state != nil {
			lost.states = append(lost.states, labeled{"that of " + l.label(), l.state})
		}
	}
	if lost.missing != "" || len(lost.states) > 0 {
		all = append(all, lost)
	}
	return all
}

// largest is the largest of a quantity over a case's states, and which state that
// is; NaN where one of them was not worked out or does not give it.
func (g group) largest(of func(*solved) float64) (value float64, label string) {
	value = math.NaN()
	if g.missing != "" {
		return value, ""
	}
	for k, s := range g.states {
		x := g.factor * of(s.state)
		if math.IsNaN(x) {
			return x, s.label
		}
		if k == 0 || x > value*(1+1e-12) {
			value, label = x, s.label
		}
	}
	return value, label
}

// inputs lists a quantity by case. A case of which a state was not worked out is not
// known as a whole.
func (w *work) inputs(symbol, what, unit string, of func(group, *solved) float64) []finding.Input {
	var told []finding.Input
	for _, g := range w.groups() {
		value, label := g.largest(func(s *solved) float64 { return of(g, s) })
		in := finding.Input{Symbol: symbol + "_" + g.symbol, Name: join(what+" "+g.name, label), Value: value, Unit: unit, Origin: elastic}
		if g.factor != 1 {
			in.Name += fmt.Sprintf(", times the start factor %.4g", g.factor)
		}
		if g.missing != "" {
			in.Origin = g.missing + " was not worked out"
		}
		told = append(told, in)
	}
	return told
}

func join(text, label string) string {
	if label == "" {
		return text
	}
	return text + ", " + label
}

// addLargest concludes a check whose value is worked out from the largest of several
// cases. One case that is not known leaves the whole not known, unless the known ones
// alone are over: then so is the whole.
func (w *work) addLargest(c finding.Check, cases []finding.Input, work func([]finding.Input) finding.Work) finding.Finding {
	c.Value = work(cases)
	f := c.Conclude()
	if f.Result != finding.NotKnown {
		w.add(f)
		return f
	}
	var known []finding.Input
	for _, in := range cases {
		if finding.Known(in.Value) {
			known = append(known, in)
		}
	}
	if len(known) > 0 && len(known) < len(cases) {
		c.Value = work(known)
		c.Assumptions = append(c.Assumptions[:len(c.Assumptions):len(c.Assumptions)], "over already without the cases that are not known, which are left out")
		if g := c.Conclude(); g.Result == finding.Over {
			f = g
		}
	}
	w.add(f)
	return f
}

// worstDown is the force that pulls down most over a case's states; nil where one of
// them does not give it.
func (g group) worstDown(of func(*solved) r3.Vec) *Vec {
	if g.missing != "" {
		return nil
	}
	var worst *r3.Vec
	for _, s := range g.states {
		f := r3.Scale(g.factor, of(s.state))
		if !known(f) {
			return nil
		}
		if worst == nil || f.Z < worst.Z {
			worst = &f
		}
	}
	if worst == nil {
		return nil
	}
	v := vec(*worst)
	return &v
}
