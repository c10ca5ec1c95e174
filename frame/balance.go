package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// pull is a force at a place.
type pull struct{ at, force r3.Vec }

// Balance sums everything that acts on the frame from outside: the reported cable forces and reactions and the loads,
// each at its deformed place. Force in N; moment in N·m about the mean of the nodes' places. Both vanish at rest. It
// uses nothing of the solver but the reported state.
func (s *State) Balance(l Loads) (force, moment r3.Vec) {
	about := s.middle()
	add := func(p pull) {
		force = r3.Add(force, p.force)
		moment = r3.Add(moment, r3.Cross(r3.Sub(p.at, about), p.force))
	}
	for _, p := range s.pulls(l) {
		add(p)
	}
	for _, n := range l.Nodal {
		moment = r3.Add(moment, n.Moment)
	}
	for k, c := range s.problem.Cables {
		if c.J == Anchored { // between two nodes a cable's forces cancel
			add(pull{s.Position[c.I], s.Cables[k].ForceOnI})
		}
	}
	for _, r := range s.Reaction {
		add(pull{s.Position[r.Node], r.Force})
		moment = r3.Add(moment, r.Moment)
	}
	return force, moment
}

func (s *State) middle() (m r3.Vec) {
	for _, p := range s.Position {
		m = r3.Add(m, r3.Scale(1/float64(len(s.Position)), p))
	}
	return m
}

// Center is the center of the weights, the loads' vertical parts, in the deformed state, m. It reports false where
// they add up to nothing.
func (s *State) Center(l Loads) (r3.Vec, bool) {
	var sum r3.Vec
	total := 0.0
	for _, p := range s.pulls(l) {
		sum = r3.Add(sum, r3.Scale(p.force.Z, p.at))
		total += p.force.Z
	}
	c := r3.Scale(1/total, sum)
	return c, total != 0 && finite(c)
}

// pulls lists the loads' forces at their deformed places. A load on a member stands on the chord at the middle of its
// resultant, (w1+2w2)/(3(w1+w2)) of the length for each direction; that is, as its two end shares.
func (s *State) pulls(l Loads) []pull {
	var out []pull
	for _, n := range l.Nodal {
		out = append(out, pull{s.Position[n.Node], n.Force})
	}
	for _, o := range l.Offset {
		out = append(out, pull{r3.Add(s.Position[o.Node], s.Rotation[o.Node].Rotate(o.Offset)), o.Force})
	}
	for k := range l.Rider {
		out = append(out, pull{l.Rider[k].ride(s.Position).at, l.Rider[k].Force})
	}
	for _, f := range l.Member {
		m := &s.problem.Members[f.Member]
		length := r3.Norm(r3.Sub(s.problem.Nodes[m.J].At, s.problem.Nodes[m.I].At))
		toI, toJ := endShares(length, f.AtI, f.AtJ)
		out = append(out, pull{s.Position[m.I], toI}, pull{s.Position[m.J], toJ})
	}
	return out
}

// OutOfBalance is the size of [State.Balance], with the moment over the frame's reach, N.
func (s *State) OutOfBalance(l Loads) float64 {
	force, moment := s.Balance(l)
	reach := 0.0
	about := s.middle()
	for _, p := range s.Position {
		reach = math.Max(reach, r3.Norm(r3.Sub(p, about)))
	}
	if reach == 0 {
		reach = 1
	}
	return math.Max(r3.Norm(force), r3.Norm(moment)/reach)
}
