package load

import (
	"math"

	"softloft/finding"
	"softloft/rig"
)

// Run analyzes a rig as its plan asks. What cannot be worked out is null in the answer
// and a finding that is not known; Run never fails.
func Run(r *rig.Rig) (Answer, []finding.Finding) { return RunWith(r, Options{}) }

// RunWith is Run with more worked out than the plan asks for.
func RunWith(r *rig.Rig, o Options) (Answer, []finding.Finding) {
	w := &work{rig: r, options: o}
	rows, total, unknown := takeOff(r)
	w.answer = Answer{Mass: Number(total), TakeOff: rows, Center: plannedCenter(r)}
	w.massUnknown(unknown)
	w.solve()
	w.tell()
	w.stand()
	w.conclude()
	w.answer.RoomToGrow = w.roomToGrow()
	w.besides()
	return w.answer, w.findings
}

// work is an analysis under way. The states are nil where they were not found.
type work struct {
	rig       *rig.Rig
	options   Options
	model     *model
	built     *solved
	grown     *solved
	losses    []loss
	ask       TiltAsk
	path      []tilted
	lifts     []lifting
	lifters   []int // lines that lift
	idle      []int // cables of the lines that don't
	notLifted string
	liftRolls string
	floor     floor // what stands, stand.go
	answer    Answer
	findings  []finding.Finding
	unsolved  string // why there is no built state
	turnsOver bool   // it is unsolved because the box turns over as it hangs
}

// massUnknown turns parts without a mass into a finding that the rest follows from.
func (w *work) massUnknown(unknown []string) {
	if len(unknown) == 0 {
		return
	}
	w.answer.Mass = Number(math.NaN())
	for _, id := range unknown {
		p, _ := w.rig.Part(id)
		why := "the kit gives no mass for it"
		if p.MassFrom != "" {
			why = p.MassFrom
		}
		w.findings = append(w.findings, finding.Unknown("load.mass."+id, w.subject(id, p.Path),
			"What "+p.Name+" weighs", why))
		w.answer.Unknown = append(w.answer.Unknown, "the mass of "+id)
	}
}

// solve builds the model and finds the built and the grown state.
func (w *work) solve() {
	model, err := build(w.rig)
	if err != nil {
		w.unsolved = err.Error()
		return
	}
	w.model = model
	if len(model.problem.Cables) == 0 {
		w.unsolved = "nothing carries the box: the plan names no line that holds it"
		return
	}
	if len(w.answer.Unknown) > 0 {
		w.unsolved = "the mass of some parts is not known"
		return
	}
	loads, err := model.built()
	if err == nil {
		w.tie(loads)
		w.built, err = model.rest(loads)
	}
	if err == nil {
		err = model.onFloor(w.built)
	}
	if err == nil {
		err = model.turnedAway(w.built)
		w.turnsOver = err != nil
	}
	if err != nil {
		w.built, w.unsolved = nil, err.Error()
		return
	}
	w.grow()
	w.tiltPath()
	w.lift()
	w.losses = model.losses(w.built)
	w.follow()
}

// grow finds the grown state; the built one where nothing may still go up.
func (w *work) grow() {
	if w.rig.Plan.Provision == nil {
		w.grown = w.built
		return
	}
	loads, err := w.model.grown()
	if err == nil {
		w.grown, err = w.model.restFrom(loads, w.built)
	}
	if err != nil {
		w.grown = nil
		w.findings = append(w.findings, finding.Unknown("load.grown", w.subject("box", "provision"),
			"The box with everything up that the plan provides for", err.Error()))
	}
}
