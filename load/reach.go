package load

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"

	"softloft/frame"
	"softloft/rig"
	"softloft/shape"
)

// wish is where the box is to hang: each carrying line is hauled until its
// attachment stands at the height that it has in the wished pose.
type wish struct {
	pose shape.Pose
	turn r3.Vec // rotation vector from the start's pose to this one, rad
	gone []int  // cables that are not there
}

// reach hauls the lines until the wish is met, starting from a state whose pose is
// known. The rope that is let out or taken in changes how soft a hauled line is.
func (m *model) reach(start *solved, from shape.Pose, w wish) (*solved, error) {
	p := m.problem
	p.Cables = append([]frame.Cable(nil), p.Cables...)
	var held []frame.Held
	for i, cable := range m.lines {
		if cable < 0 || has(w.gone, cable) {
			continue
		}
		l := &m.rig.Lines[i]
		at := w.pose.Out(l.Attach)
		if top, ok := m.rig.Top(l); ok {
			length, haul := r3.Norm(r3.Sub(top, at)), m.rig.HaulLength(l)
			stretch := m.tension(start, i) * (length + haul) / m.stiff[i]
			p.Cables[cable].EA = m.softened(i, math.Max(length-stretch, length/2))
		}
		held = append(held, frame.Held{Cable: cable, Height: at.Z})
	}
	state, err := m.equilibrium(&p, start.loads, frame.Options{Held: held, Cut: w.gone, Start: m.moved(start, from, w)})
	s, err := m.checked(state, err, start.loads)
	if s != nil {
		s.ropes = p.Cables
	}
	return s, err
}

// ahead hauls one line further than it is, by a length, the others as they are.
func (m *model) ahead(start *solved, line int, by float64, gone []int) (*solved, error) {
	p := m.fixed(start)
	c := &p.Cables[m.lines[line]]
	c.Unstretched = math.Max(c.Unstretched-by, c.Unstretched/10)
	c.EA = m.softened(line, c.Unstretched)
	state, err := m.equilibrium(&p, start.loads, frame.Options{Cut: gone, Start: start.State})
	return m.checked(state, err, start.loads)
}

// softened is a line's EA as its load side of an unstretched length has it, N: the haul
// side, which has the same tension, stretches with it.
func (m *model) softened(line int, length float64) float64 {
	return m.stiff[line] * length / (length + m.rig.HaulLength(&m.rig.Lines[line]))
}

// moved carries a state's box to a wished pose as one rigid thing; what hangs above
// the box stays.
func (m *model) moved(s *solved, from shape.Pose, w wish) *frame.State {
	turn := quat.Number(r3.NewRotation(r3.Norm(w.turn), w.turn))
	if r3.Norm(w.turn) == 0 {
		turn = quat.Number{Real: 1}
	}
	out := &frame.State{}
	for i, at := range s.Position {
		r := quat.Number(s.Rotation[i])
		if m.nodeBody[i] != rig.LinesBody {
			at, r = w.pose.Out(from.In(at)), quat.Mul(turn, r)
		}
		out.Position, out.Rotation = append(out.Position, at), append(out.Rotation, r3.Rotation(r))
	}
	return out
}

// checked turns a solver's answer into a case, its complaint into a crew's words.
func (m *model) checked(state *frame.State, err error, loads frame.Loads) (*solved, error) {
	if err != nil {
		return nil, m.inWords(err)
	}
	if !m.finite(state) {
		return nil, errors.New("no place of rest was found: the numbers ran away")
	}
	return &solved{State: state, loads: loads}, nil
}

func has(list []int, x int) bool {
	for _, y := range list {
		if x == y {
			return true
		}
	}
	return false
}

// level is the planned pose without the plan's tilt.
func (m *model) level() shape.Pose {
	return m.rig.Pose.Rotated(m.plannedAxis(), -m.plannedTilt())
}

// plannedAxis is the axis of the plan's tilt, in the room. A tilt about an own axis
// leaves that axis where it is.
func (m *model) plannedAxis() r3.Vec {
	if t := m.rig.Plan.Box.Tilt; t != nil && t.About == "y" {
		return m.rig.Pose.Y
	}
	return m.rig.Pose.X
}

func (m *model) plannedTilt() float64 {
	if t := m.rig.Plan.Box.Tilt; t != nil {
		return float64(t.By)
	}
	return 0
}

// between is the rotation vector from one pose to another, at most π long.
func between(from, to shape.Pose) r3.Vec {
	// R takes the one triad to the other; its skew part is sin φ times the axis.
	skew := r3.Scale(0.5, r3.Add(r3.Add(r3.Cross(from.X, to.X), r3.Cross(from.Y, to.Y)), r3.Cross(from.Z, to.Z)))
	cos := (r3.Dot(from.X, to.X) + r3.Dot(from.Y, to.Y) + r3.Dot(from.Z, to.Z) - 1) / 2
	sin := r3.Norm(skew)
	if sin == 0 {
		return r3.Vec{}
	}
	return r3.Scale(math.Atan2(sin, cos)/sin, skew)
}
