package load

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/frame"
)

// solved is one case at rest.
type solved struct {
	*frame.State
	loads   frame.Loads
	ropes   []frame.Cable // as they are in this case; the model's where nil
	hanging []hanging
}

// hanging is a mass that swings free under a joint: a nodal load there, whose center
// lies lower.
type hanging struct {
	share float64 // of the whole weight
	below float64 // m
}

// rest finds the place of rest with every line in place. Lines whose lengths are
// not given hold their attachments at the planned heights.
func (m *model) rest(loads frame.Loads) (*solved, error) { return m.restFrom(loads, nil) }

// restFrom is rest with a state near the one that is looked for.
func (m *model) restFrom(loads frame.Loads, near *solved) (*solved, error) {
	o := frame.Options{Held: m.held()}
	if near != nil {
		o.Start = near.State
	}
	state, err := m.equilibrium(&m.problem, loads, o)
	return m.checked(state, err, loads)
}

// held asks for the lengths that put each attachment at its planned height; empty
// where the plan gives the lengths.
func (m *model) held() []frame.Held {
	var held []frame.Held
	for i := range m.rig.Lines {
		if m.lines[i] >= 0 && m.rig.Lines[i].Length == nil {
			held = append(held, frame.Held{Cable: m.lines[i], Height: m.planned[i].Z})
		}
	}
	return held
}

// fixed returns the problem with every cable at the length it has in a state, for
// what happens afterwards.
func (m *model) fixed(s *solved) frame.Problem {
	p := m.problem
	if s.ropes != nil {
		p.Cables = s.ropes
	}
	p.Cables = append([]frame.Cable(nil), p.Cables...)
	for i := range p.Cables {
		p.Cables[i].Unstretched = s.Cables[i].Unstretched
	}
	return p
}

// cut finds where the box comes to rest once some cables are gone, starting from
// where it hung before.
func (m *model) cut(before *solved, gone ...int) (*solved, error) {
	return m.settle(before, before.loads, gone...)
}

// settle finds where the box comes to rest under other loads with every rope at the
// length that it has, starting from where it hung before.
func (m *model) settle(before *solved, loads frame.Loads, gone ...int) (*solved, error) {
	p := m.fixed(before)
	state, err := m.equilibrium(&p, loads, frame.Options{Cut: gone, Start: before.State})
	return m.checked(state, err, loads)
}

func (m *model) finite(s *frame.State) bool {
	for _, p := range s.Position {
		if !known(p) {
			return false
		}
	}
	for _, c := range s.Cables {
		if math.IsNaN(c.Tension) || math.IsInf(c.Tension, 0) {
			return false
		}
	}
	return true
}

func known(v r3.Vec) bool {
	sum := v.X + v.Y + v.Z
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// center returns the center of gravity in the room, in the state's own pose.
func (s *solved) center() (r3.Vec, bool) {
	at, ok := s.Center(s.loads)
	if len(s.hanging) == 0 || !ok {
		return at, ok
	}
	for _, h := range s.hanging {
		at.Z -= h.share * h.below
	}
	return at, ok
}

// fall says that nothing holds the box, in a crew's words.
type fall struct{ node string }

func (f fall) Error() string { return "nothing carries the box: the " + f.node + " falls" }

// inWords puts a solver's complaint into a crew's words.
func (m *model) inWords(err error) error {
	var falls *frame.Falls
	if errors.As(err, &falls) {
		return fall{falls.Node}
	}
	return err
}

func isFall(err error) bool {
	var f fall
	return errors.As(err, &f)
}
