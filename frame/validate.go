package frame

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"
)

// check refuses what cannot be computed, and names it.
func (p *Problem) check() error {
	if len(p.Nodes) == 0 {
		return fmt.Errorf("the frame has no nodes")
	}
	for k, n := range p.Nodes {
		if !finite(n.At) {
			return fmt.Errorf("node %s: place %v is not a number; give x, y and z in meters", p.nodeName(k), n.At)
		}
	}
	for k := range p.Members {
		if err := p.checkMember(k); err != nil {
			return err
		}
	}
	for k := range p.Cables {
		if err := p.checkCable(k); err != nil {
			return err
		}
	}
	for _, s := range p.Supports {
		if err := p.checkSupport(s); err != nil {
			return err
		}
	}
	return nil
}

func (p *Problem) nodeName(k int) string {
	if k < 0 || k >= len(p.Nodes) || p.Nodes[k].Name == "" {
		return fmt.Sprintf("%d", k)
	}
	return p.Nodes[k].Name
}

func (p *Problem) memberName(k int) string {
	if k < 0 || k >= len(p.Members) || p.Members[k].Name == "" {
		return fmt.Sprintf("%d", k)
	}
	return p.Members[k].Name
}

func (p *Problem) cableName(k int) string {
	if k < 0 || k >= len(p.Cables) || p.Cables[k].Name == "" {
		return fmt.Sprintf("%d", k)
	}
	return p.Cables[k].Name
}

func (p *Problem) hasNode(k int) bool { return k >= 0 && k < len(p.Nodes) }

func (p *Problem) checkMember(k int) error {
	m, name := &p.Members[k], p.memberName(k)
	if !p.hasNode(m.I) || !p.hasNode(m.J) {
		return fmt.Errorf("member %s: joins nodes %d and %d of %d; both must exist", name, m.I, m.J, len(p.Nodes))
	}
	if r3.Norm(r3.Sub(p.Nodes[m.J].At, p.Nodes[m.I].At)) < 1e-9 {
		return fmt.Errorf("member %s: its ends %s and %s stand in one place; a member needs a length",
			name, p.nodeName(m.I), p.nodeName(m.J))
	}
	if !finite(m.Up) {
		return fmt.Errorf("member %s: its up direction is not a number", name)
	}
	if !positive(m.Young * m.Area) {
		return fmt.Errorf("member %s: Young's modulus times area is %g N; it must be above zero", name, m.Young*m.Area)
	}
	return p.checkBending(m, name)
}

func (p *Problem) checkBending(m *Member, name string) error {
	stiffness := [3]float64{m.Shear * m.Torsion, m.Young * m.InertiaY, m.Young * m.InertiaZ}
	for axis, what := range []string{"shear modulus times torsion constant", "Young's modulus times inertia about y", "Young's modulus times inertia about z"} {
		free := m.EndI.Free[axis] && m.EndJ.Free[axis]
		if axis == 0 {
			free = m.EndI.Free[axis] || m.EndJ.Free[axis]
		}
		if !free && !positive(stiffness[axis]) {
			return fmt.Errorf("member %s: %s is %g N·m²; it must be above zero unless the ends are free to turn",
				name, what, stiffness[axis])
		}
		for _, e := range []End{m.EndI, m.EndJ} {
			if !(e.Spring[axis] >= 0) || !finiteNumber(e.Spring[axis]) {
				return fmt.Errorf("member %s: an end spring of %g N·m/rad; it must be zero (rigid) or more", name, e.Spring[axis])
			}
		}
	}
	if !(m.ShearAreaY >= 0 && m.ShearAreaZ >= 0) || !finiteNumber(m.ShearAreaY, m.ShearAreaZ) {
		return fmt.Errorf("member %s: a shear area below zero or not a number", name)
	}
	return nil
}

func positive(x float64) bool { return x > 0 && finiteNumber(x) }

func (p *Problem) checkCable(k int) error {
	c, name := &p.Cables[k], p.cableName(k)
	if !p.hasNode(c.I) || c.J != Anchored && !p.hasNode(c.J) {
		return fmt.Errorf("cable %s: runs between nodes %d and %d of %d; both must exist", name, c.I, c.J, len(p.Nodes))
	}
	if c.I == c.J {
		return fmt.Errorf("cable %s: begins and ends at node %s", name, p.nodeName(c.I))
	}
	if c.J == Anchored && !finite(c.Anchor) {
		return fmt.Errorf("cable %s: its anchor is not a number", name)
	}
	if !positive(c.EA) {
		return fmt.Errorf("cable %s: its stiffness EA is %g N; it must be above zero", name, c.EA)
	}
	if !positive(c.Unstretched) {
		return fmt.Errorf("cable %s: its unstretched length is %g m; it must be above zero", name, c.Unstretched)
	}
	return nil
}

func (p *Problem) checkSupport(s Support) error {
	if !p.hasNode(s.Node) {
		return fmt.Errorf("support: node %d does not exist; there are %d", s.Node, len(p.Nodes))
	}
	for k := range 6 {
		if !(s.Spring[k] >= 0) || !finiteNumber(s.Spring[k], s.Moved[k]) {
			return fmt.Errorf("support at node %s: spring %g with movement %g; a spring must be zero or more, a movement a number",
				p.nodeName(s.Node), s.Spring[k], s.Moved[k])
		}
	}
	return nil
}

// check refuses loads that name what is not there or are not numbers.
func (l *Loads) check(p *Problem) error {
	for k, n := range l.Nodal {
		if !p.hasNode(n.Node) || !finite(n.Force, n.Moment) {
			return fmt.Errorf("load %d on a node: node %d of %d, force %v, moment %v", k, n.Node, len(p.Nodes), n.Force, n.Moment)
		}
	}
	for k, o := range l.Offset {
		if !p.hasNode(o.Node) || !finite(o.Force, o.Offset) {
			return fmt.Errorf("load %d on an arm: node %d of %d, arm %v, force %v", k, o.Node, len(p.Nodes), o.Offset, o.Force)
		}
	}
	for k := range l.Rider {
		if err := l.Rider[k].check(p, k); err != nil {
			return err
		}
	}
	for k, m := range l.Member {
		if m.Member < 0 || m.Member >= len(p.Members) || !finite(m.AtI, m.AtJ) {
			return fmt.Errorf("load %d on a member: member %d of %d, from %v to %v", k, m.Member, len(p.Members), m.AtI, m.AtJ)
		}
	}
	return nil
}

func (r *RiderLoad) check(p *Problem, k int) error {
	sum := 0.0
	for _, n := range r.Nodes {
		if !p.hasNode(n) {
			return fmt.Errorf("load %d over four nodes: node %d does not exist", k, n)
		}
	}
	for _, s := range r.Share {
		sum += s
	}
	if !(sum > 1-1e-9 && sum < 1+1e-9) || !finite(r.Force) || !finiteNumber(r.Height) {
		return fmt.Errorf("load %d over four nodes: shares add up to %g instead of 1, or its height or force is not a number", k, sum)
	}
	at := func(i int) r3.Vec { return p.Nodes[r.Nodes[i]].At }
	u, v := r3.Sub(at(0), at(2)), r3.Sub(at(1), at(3))
	if !(r3.Norm(r3.Cross(u, v)) > 1e-9*r3.Norm(u)*r3.Norm(v)) {
		return fmt.Errorf("load %d over four nodes: their diagonals span no plane; name the nodes in order around", k)
	}
	return nil
}
