package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/shape"
)

// tiltSteps is in how many equal steps a tilt is followed from level.
const tiltSteps = 16

// largestTilt is how far a tilt is followed, rad: short of standing on edge, where
// heights of attachments no longer say how the box hangs.
const largestTilt = 80 * degree

// tilted is one step of a tilt. state is nil where no place of rest was found.
type tilted struct {
	angle float64 // rad
	state *solved
	why   string
}

// TiltStep is one step of the way from level to a tilt: how long each line is then,
// and what it carries.
type TiltStep struct {
	About      string            `json:"about"`
	Degrees    Number            `json:"deg"`
	Lengths    map[string]Number `json:"lengths_m"`
	Tension    map[string]Number `json:"tension_n"`
	ForceOnBox map[string]Vec    `json:"force_on_box_n"`
	At         map[string]Vec    `json:"at_m"`
	Center     *Vec              `json:"centre_m"`
	Why        string            `json:"why,omitempty"`
}

// asked is the tilt whose path is wanted: the caller's, or the plan's own where it
// is not level.
func (w *work) asked() (TiltAsk, bool) {
	if w.options.Tilt != nil {
		return *w.options.Tilt, true
	}
	t := w.rig.Plan.Box.Tilt
	if t == nil || t.By == 0 {
		return TiltAsk{}, false
	}
	return TiltAsk{About: string(t.About), By: float64(t.By)}, true
}

// tiltPath hauls the box from level to the asked tilt. Each step starts from the one
// before; what lies behind a step that was not found is not known.
func (w *work) tiltPath() {
	ask, ok := w.asked()
	if !ok {
		return
	}
	w.ask = ask
	m := w.model
	level := m.level()
	axis := level.X
	if ask.About == "y" {
		axis = level.Y
	}
	start, from, why := w.built, m.poseOf(w.built), ""
	if math.Abs(ask.By) > largestTilt || math.IsNaN(ask.By) {
		why = fmt.Sprintf("a tilt of over %.0f° is not followed", largestTilt/degree)
	}
	for k := range tiltSteps + 1 {
		step := tilted{angle: ask.By * float64(k) / tiltSteps, why: why}
		if why == "" {
			to := level.Rotated(axis, step.angle)
			step.state, step.why = w.tiltTo(start, from, to)
			start, from, why = step.state, to, step.why
		}
		w.path = append(w.path, step)
	}
}

func (w *work) tiltTo(start *solved, from, to shape.Pose) (*solved, string) {
	s, err := w.model.reach(start, from, wish{pose: to, turn: between(from, to)})
	switch {
	case err != nil:
		return nil, err.Error()
	case r3.Dot(w.model.poseOf(s).Z, to.Z) < 0.5 && w.model.corners != nil:
		return nil, "the box turns over on the way"
	}
	return s, ""
}

// tellPath tells the tilt's steps.
func (w *work) tellPath() {
	for _, step := range w.path {
		told := TiltStep{About: w.ask.About, Degrees: Number(step.angle / degree), Why: step.why}
		if step.state != nil {
			told.Lengths = map[string]Number{}
			for i, cable := range w.model.lines {
				if cable >= 0 {
					told.Lengths[w.rig.Lines[i].Name] = Number(step.state.Cables[cable].Unstretched)
				}
			}
			told.Tension, told.ForceOnBox, told.At = w.held(step.state, -1)
			told.Center = centerOf(step.state)
		}
		w.answer.TiltPath = append(w.answer.TiltPath, told)
	}
}

// held tells what each line carries in a state, by name; the line gone is left out.
func (w *work) held(s *solved, gone int) (tension map[string]Number, force, at map[string]Vec) {
	tension, force, at = map[string]Number{}, map[string]Vec{}, map[string]Vec{}
	for i, cable := range w.model.lines {
		if cable < 0 || cable == gone {
			continue
		}
		name := w.rig.Lines[i].Name
		tension[name] = Number(s.Cables[cable].Tension)
		force[name] = vec(s.Cables[cable].ForceOnI)
		at[name] = vec(s.Position[w.model.problem.Cables[cable].I])
	}
	return tension, force, at
}

func centerOf(s *solved) *Vec {
	c, ok := s.center()
	if !ok {
		return nil
	}
	v := vec(c)
	return &v
}

// concludePath says where a tilt could not be followed.
func (w *work) concludePath() {
	for _, step := range w.path {
		if step.state == nil {
			w.add(finding.Unknown("load.tilt", w.subject("box", "box.tilt"),
				fmt.Sprintf("The box on its way to a tilt of %.4g° about %s", w.ask.By/degree, w.ask.About),
				fmt.Sprintf("at %.4g°: %s", step.angle/degree, step.why)))
			return
		}
	}
}
