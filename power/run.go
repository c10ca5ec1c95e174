package power

import (
	"fmt"
	"math"
	"slices"

	"softloft/circuit"
	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// Run works out the supply of a rig. Without the plan's power key there is no answer;
// with it Run never fails: what is not known is null, and a finding says why.
func Run(r *rig.Rig) (*Answer, []finding.Finding) {
	supply := r.Plan.Power
	if supply == nil {
		return nil, nil
	}
	w := &work{rig: r, volts: float64(supply.Volts), rating: float64(supply.Circuit), legs: supply.Phases}
	if w.legs != 3 {
		w.legs = 1
	}
	w.capacity = w.rating * source.ContinuousShare().Value
	w.lamps = lampsOf(r, w.volts)
	w.assign()
	w.cable()
	w.findWays()
	w.tell()
	w.conclude()
	return &w.answer, w.findings
}

// work is an analysis under way. held are the lamps on circuits, as indices into
// lamps; the assignment counts those.
type work struct {
	rig              *rig.Rig
	volts            float64
	rating, capacity float64
	legs             int
	lamps            []lamp
	held             []int
	unknown          []string
	plan             *circuit.Assignment
	conductor        Conductor
	ways             []way // of each circuit
	answer           Answer
	findings         []finding.Finding
}

func (w *work) assign() {
	w.plan, w.held, w.unknown = assigned(w.lamps, w.capacity, w.legs)
}

// assigned puts the lamps whose power is known on circuits, and names the others.
func assigned(lamps []lamp, capacity float64, legs int) (plan *circuit.Assignment, held []int, unknown []string) {
	unknown = []string{}
	var amps []float64
	for i, l := range lamps {
		if !l.known() {
			unknown = append(unknown, l.name)
			continue
		}
		amps, held = append(amps, l.amps), append(held, i)
	}
	return circuit.Assign(amps, capacity, legs), held, unknown
}

// of returns the lamps of a circuit.
func (w *work) of(c circuit.Circuit) []lamp {
	var lamps []lamp
	for _, i := range c.Loads {
		lamps = append(lamps, w.lamps[w.held[i]])
	}
	return lamps
}

// tell fills the answer.
func (w *work) tell() {
	a := &w.answer
	a.Volts, a.Rating, a.Allowed = Number(w.volts), Number(w.rating), Number(w.capacity)
	a.Unknown = w.unknown
	a.Watts, a.VA = totals(w.lamps)
	a.Circuits = []Circuit{}
	for k, c := range w.plan.Circuits {
		a.Circuits = append(a.Circuits, w.circuit(k, c))
	}
	if len(w.unknown) > 0 {
		a.Circuits = append(a.Circuits, Circuit{Name: "not known", Lamps: w.unknown, Watts: none(), Amps: none(), Allowed: Number(w.capacity),
			Length: none(), Drop: none(), DropShare: none()})
	}
	a.Phases, a.Neutral, a.NeutralWorst = legsOf(w.plan, len(w.unknown) == 0)
	w.balance()
	w.inrush()
	a.Supply = supplyOf(a.Phases, w.volts, a.Watts, a.VA)
	w.grown()
	for _, l := range w.lamps {
		a.Demo = a.Demo || l.demo
	}
	a.Assumptions = w.assumptions()
}

func none() Number { return Number(math.NaN()) }

// totals are the active and the apparent power; the latter is the sum of each lamp's.
func totals(lamps []lamp) (watts, va Number) {
	for _, l := range lamps {
		watts += Number(l.watts)
		va += Number(l.watts / l.factor)
	}
	return watts, va
}

func (w *work) circuit(k int, c circuit.Circuit) Circuit {
	told := Circuit{Name: fmt.Sprintf("C%d", k+1), Phase: c.Leg + 1, Amps: Number(c.Amps), Allowed: Number(w.capacity), Length: Number(w.ways[k].farthest)}
	for _, l := range w.of(c) {
		told.Lamps = append(told.Lamps, l.name)
		told.Watts += Number(l.watts)
	}
	told.Drop = Number(Lost(w.conductor, c.Amps, w.ways[k].lumped, 1))
	told.DropShare = 100 * told.Drop / Number(w.volts)
	return told
}

// legsOf are the amps of each leg and of the neutral; not known where a lamp's leg isn't.
func legsOf(a *circuit.Assignment, known bool) (legs []Number, neutral, worst Number) {
	legs = make([]Number, len(a.Legs))
	for i, x := range a.Legs {
		legs[i] = Number(x)
		if !known {
			legs[i] = none()
		}
	}
	switch {
	case !known:
		return legs, none(), none()
	case len(legs) == 1:
		return legs, legs[0], none()
	}
	return legs, Number(Neutral(a.Legs[0], a.Legs[1], a.Legs[2])), Number(worstNeutral * slices.Max(a.Legs))
}

func (w *work) balance() {
	b := Balance{Largest: none(), Bound: none(), Gap: none(), Fewest: w.plan.Fewest, Proved: w.plan.Proved && len(w.unknown) == 0}
	if len(w.unknown) == 0 {
		largest, bound := w.plan.Largest()
		b.Largest, b.Bound, b.Gap = Number(largest), Number(bound), Number(math.Max(largest-bound, 0))
		if b.Gap < circuit.Negligible {
			b.Gap = 0
		}
	}
	w.answer.Balance = b
}

// supplyOf sizes the supply by the largest leg: a wall and a generator are rated for
// each leg alike, so an uneven load needs a larger one.
func supplyOf(legs []Number, volts float64, watts, va Number) Supply {
	perLeg := slices.Max(legs) / Number(source.ContinuousShare().Value)
	s := Supply{PerLeg: perLeg, VA: perLeg * Number(volts) * Number(len(legs)), PowerFactor: none()}
	if va > 0 {
		s.PowerFactor = watts / va
	}
	return s
}

func (w *work) inrush() {
	in := Inrush{Unknown: []string{}}
	for _, l := range w.lamps {
		if math.IsNaN(l.inrush) {
			in.Unknown = append(in.Unknown, l.name)
			continue
		}
		in.Largest = max(in.Largest, Number(l.inrush))
		in.All += Number(l.inrush)
	}
	for _, c := range w.plan.Circuits {
		for _, l := range w.of(c) {
			if !math.IsNaN(l.inrush) {
				in.Step = max(in.Step, Number(w.plan.Legs[c.Leg]-l.amps+math.Max(l.inrush, l.amps)))
			}
		}
	}
	if len(in.Unknown) > 0 || len(w.unknown) > 0 {
		in.Largest, in.All, in.Step = none(), none(), none()
	}
	w.answer.Inrush = in
}

func (w *work) grown() {
	lamps := grownLamps(w.rig, w.lamps, w.volts)
	if lamps == nil {
		return
	}
	plan, _, unknown := assigned(lamps, w.capacity, w.legs)
	g := &Grown{Circuits: len(plan.Circuits), Unknown: unknown}
	var va Number
	g.Watts, va = totals(lamps)
	g.Phases, g.Neutral, _ = legsOf(plan, len(unknown) == 0)
	g.Supply = supplyOf(g.Phases, w.volts, g.Watts, va)
	w.answer.Grown = g
}
