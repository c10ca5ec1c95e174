package load

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/frame"
	"softloft/rig"
)

// tension returns a line's tension in a state, in N; NaN for a line that holds
// nothing.
func (m *model) tension(s *solved, line int) float64 {
	if s == nil || m.lines[line] < 0 {
		return math.NaN()
	}
	return s.Cables[m.lines[line]].Tension
}

// pull is a force on a building point.
type pull struct {
	point string
	force r3.Vec
}

// pulls returns what one line does to its points in a state, in N: its tension
// along the rope, the haul side's pull toward the tie-off, and the weight of rope,
// pulley and hardware. At rest the haul side is taken to hold with the load side's
// tension; while it raises the box it pulls harder, by the pulley's friction. Without
// a tie-off it runs straight down.
func (m *model) pulls(s *solved, line int, raising bool) []pull {
	l := &m.rig.Lines[line]
	if s == nil || m.lines[line] < 0 {
		return nil
	}
	if l.Bridle != nil {
		return m.bridlePulls(s, line, raising)
	}
	cable := s.Cables[m.lines[line]]
	force := r3.Scale(-1, cable.ForceOnI)
	if l.Pulley != nil {
		force = r3.Scale(cable.Tension, m.blockForce(s, line, raising))
	}
	return []pull{{l.Point, r3.Add(force, down(m.rigging(l)))}}
}

// haulDirection is where the haul side pulls the point to.
func (m *model) haulDirection(l *rig.Line, top r3.Vec) r3.Vec {
	if l.TieOff == nil {
		return r3.Vec{Z: -1}
	}
	toward := r3.Sub(l.TieOff.InRoom, top)
	if r3.Norm(toward) < touching {
		return r3.Vec{}
	}
	return r3.Unit(toward)
}

// rigging returns the mass of a line's own parts, in kg: what is known of it.
func (m *model) rigging(l *rig.Line) float64 {
	var sum float64
	for _, id := range l.Parts {
		if p, ok := m.rig.Part(id); ok && p.Mass != nil {
			sum += *p.Mass
		}
	}
	return sum
}

// pointForces sums all lines' pulls by point.
func (m *model) pointForces(s *solved, raising bool) map[string]r3.Vec {
	sums := map[string]r3.Vec{}
	if s == nil {
		return sums
	}
	for i := range m.rig.Lines {
		for _, p := range m.pulls(s, i, raising) {
			sums[p.point] = r3.Add(sums[p.point], p.force)
		}
	}
	return sums
}

// weightN returns the weight that the lines carry in a case, in N.
func weightN(loads frame.Loads, problem *frame.Problem) float64 {
	var sum float64
	for _, l := range loads.Offset {
		sum -= l.Force.Z
	}
	for _, l := range loads.Rider {
		sum -= l.Force.Z
	}
	for _, l := range loads.Nodal {
		sum -= l.Force.Z
	}
	for _, l := range loads.Member {
		t := problem.Members[l.Member]
		length := r3.Norm(r3.Sub(problem.Nodes[t.J].At, problem.Nodes[t.I].At))
		sum -= (l.AtI.Z + l.AtJ.Z) / 2 * length
	}
	return sum
}
