package frame

import "fmt"

// Equilibrium finds a place of rest under large rotations: a minimum of the total potential energy that is reached
// from the start by going down. It is Newton's method with the exact tangent; where the tangent is not positive the
// step is damped (Levenberg, A Method for the Solution of Certain Non-linear Problems in Least Squares, 1944), and a
// place of rest that is not a minimum is left along the motion of most negative curvature.
//
// Errors: a plain error for what cannot be computed, [*Falls] where nothing carries the frame, [*NotFound] where the
// steps ran out.
func (p *Problem) Equilibrium(l Loads, o Options) (*State, error) {
	m, err := newModel(p, &l)
	if err != nil {
		return nil, err
	}
	g := newLoading(m, &l)
	q, err := m.startPose(&o)
	if err != nil {
		return nil, err
	}
	s := newSearch(newSystem(m, g, q), &o)
	if err := m.cut(o.Cut); err != nil {
		return nil, err
	}
	if err := m.carried(); err != nil {
		return nil, err
	}
	holds, err := s.holdsOf(&o)
	if err != nil {
		return nil, err
	}
	if len(holds) > 0 {
		err = s.runHeld(holds)
	} else {
		err = s.run()
	}
	if err != nil {
		return nil, err
	}
	return s.balanced(s.state(), l)
}

func (m *model) startPose(o *Options) (*pose, error) {
	q := m.unloaded()
	if o.Start == nil {
		return q, nil
	}
	if len(o.Start.Position) != len(q.at) || len(o.Start.Rotation) != len(q.at) {
		return nil, fmt.Errorf("start: it has %d nodes, the frame has %d; start from a state of the same frame",
			len(o.Start.Position), len(q.at))
	}
	return q, m.placeAs(q, o.Start)
}

func (m *model) cut(cables []int) error {
	for _, k := range cables {
		if k < 0 || k >= len(m.cables) {
			return fmt.Errorf("cut: cable %d does not exist; there are %d", k, len(m.cables))
		}
		m.cables[k].gone = true
	}
	return nil
}

// carried refuses a part of the frame that no cable and no support reaches.
func (m *model) carried() error {
	part := make([]int, len(m.rest)) // union of connected nodes
	for k := range part {
		part[k] = k
	}
	root := func(k int) int {
		for part[k] != k {
			k = part[k]
		}
		return k
	}
	for k := range m.beams {
		part[root(m.beams[k].i)] = root(m.beams[k].j)
	}
	borne := map[int]bool{}
	for k := range m.cables {
		if c := &m.cables[k]; !c.gone && c.j != Anchored {
			part[root(c.i)] = root(c.j)
		}
	}
	for k := range m.cables {
		if c := &m.cables[k]; !c.gone && c.j == Anchored {
			borne[root(c.i)] = true
		}
	}
	for _, s := range m.p.Supports {
		borne[root(s.Node)] = true
	}
	for k := range part {
		if !borne[root(k)] {
			return &Falls{Node: m.p.nodeName(k)}
		}
	}
	return nil
}
