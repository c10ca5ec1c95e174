package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// solved is what a state keeps of the analysis, to answer questions about members.
type solved struct {
	problem *Problem
	spans   []span
}

// state reports the search's last pose. The last assembly stands at that pose.
func (x *search) state() *State {
	s := &State{
		Residual: x.left, Energy: x.cost, Stable: x.signs.negative == 0, Iterations: x.count,
		solved: solved{problem: x.p},
	}
	for k, at := range x.q.at {
		s.Position = append(s.Position, r3.Add(at, x.origin))
		s.Rotation = append(s.Rotation, r3.Rotation(x.q.turn[k]))
	}
	for k := range x.cables {
		s.Cables = append(s.Cables, x.cables[k].report(x.q.at))
	}
	for _, i := range x.signs.neutral {
		s.Neutral = append(s.Neutral, x.mechanism(i, x.k.ratio(i)))
	}
	s.Reaction = x.reactions(func(p spring) (force, moment r3.Vec) { return x.springPush(p, x.q) })
	for k := range x.beams {
		s.spans = append(s.spans, x.span(k))
	}
	return s
}

// balanced lets no state out whose reported forces, places and loads do not add up to nothing.
func (x *search) balanced(s *State, l Loads) (*State, error) {
	scale := math.Max(x.load.total, 1e-3)
	for _, c := range s.Cables {
		scale += c.Tension
	}
	for _, r := range s.Reaction {
		scale += r3.Norm(r.Force) + r3.Norm(r.Moment)/x.scale
	}
	limit := 1e-9 * scale
	if len(s.Reaction) > 0 {
		limit += x.noise() // a hung frame's rounding cancels in the sum; a stiff member on a support leaves its own
	}
	if out := s.OutOfBalance(l); !(out <= limit) {
		return nil, &NotFound{Node: "all together", Residual: out, Iterations: x.count}
	}
	return s, nil
}

func (c *cable) report(at []r3.Vec) CableState {
	p := c.pull(at)
	return CableState{
		Tension: p.tension, Length: p.length, Unstretched: c.natural, Slack: p.tension == 0, Cut: c.gone,
		ForceOnI: r3.Scale(p.tension, p.e),
	}
}

// reactions sums what each support does: it holds the imbalance of fixed directions, and its springs push.
func (x *system) reactions(push func(spring) (force, moment r3.Vec)) []Reaction {
	var out []Reaction
	for _, s := range x.p.Supports {
		r := Reaction{Node: s.Node}
		for axis := range 6 {
			switch {
			case s.Fixed[axis] && axis < 3:
				r.Force = r3.Add(r.Force, r3.Scale(component(x.force[s.Node], axis), unit(axis)))
			case s.Fixed[axis]:
				r.Moment = r3.Add(r.Moment, r3.Scale(component(x.moment[s.Node], axis-3), unit(axis-3)))
			case s.Spring[axis] > 0:
				force, moment := push(spring{s.Node, axis, s.Spring[axis]})
				r.Force, r.Moment = r3.Add(r.Force, force), r3.Add(r.Moment, moment)
			}
		}
		out = append(out, r)
	}
	return out
}

func (m *model) mechanism(i int, ratio float64) Mechanism {
	u := m.owner[i]
	words := [6]string{"moves along x", "moves along y", "moves along z", "turns about x", "turns about y", "turns about z"}
	return Mechanism{Node: m.p.nodeName(u.node), Direction: words[u.axis], Ratio: ratio}
}
