package load

import (
	"math"

	"softloft/frame"
)

// peaks are the largest tensions of a motion in time, by line.
type peaks struct {
	tension []float64 // N, of each rig line; NaN for one that holds nothing
	why     string    // why it was not worked out
}

// Of the time integration: how long it follows the frame, and in what steps.
const (
	motionTime = 1.0  // s: the first swing, which has the peak in all reference runs
	motionStep = 1e-3 // s
)

// finePiece and coarsePiece are how long a member may be that stands as one, m; the
// coarse one where the fine one would make more than manyNodes joints.
const (
	finePiece   = 0.5
	coarsePiece = 0.95
	manyNodes   = 80
)

// follow integrates every loss that comes to rest, where that was asked for.
func (w *work) follow() {
	if !w.options.Integrate {
		return
	}
	for i := range w.losses {
		if l := &w.losses[i]; l.state != nil && l.cable >= 0 {
			l.peaks = w.model.integrate(w.built, l.cable)
		}
	}
}

// of is a line's peak, NaN where it was not worked out.
func (p *peaks) of(line int) float64 {
	if p == nil || p.why != "" {
		return math.NaN()
	}
	return p.tension[line]
}

// integrate follows the frame in time after a cut, from where it hung before.
func (m *model) integrate(before *solved, cable int) *peaks {
	fixed := m.fixed(before)
	fine, loads, start := fixed.Refine(before.loads, before.State, finePiece)
	if len(fine.Nodes) > manyNodes {
		fine, loads, start = fixed.Refine(before.loads, before.State, coarsePiece)
	}
	rest, err := fine.Equilibrium(loads, frame.Options{Start: start})
	if err != nil {
		return &peaks{why: err.Error()}
	}
	course, err := fine.Integrate(loads, rest, frame.Motion{Cut: []int{cable}, Duration: motionTime, Step: motionStep, Gravity: gravity})
	if err != nil {
		return &peaks{why: err.Error()}
	}
	told := &peaks{}
	for _, c := range m.lines {
		if c < 0 {
			told.tension = append(told.tension, math.NaN())
			continue
		}
		told.tension = append(told.tension, course.Peak[c])
	}
	return told
}
