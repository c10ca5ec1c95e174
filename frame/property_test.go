package frame

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// drawHanging draws a rectangular tube frame with ribs on three to six lines at any angle, with all kinds of weights.
func drawHanging(t *rapid.T) (Problem, Loads) {
	section, material := pipe()
	if rapid.Bool().Draw(t, "square tube") {
		section = RectangularTube(0.04, 0.06, 0.003).WithShear()
	}
	a, b := rapid.Float64Range(1, 6).Draw(t, "a"), rapid.Float64Range(1, 4).Draw(t, "b")
	var p Problem
	for _, at := range []r3.Vec{{X: a, Y: b}, {X: -a, Y: b}, {X: -a, Y: -b}, {X: a, Y: -b}, {X: 0.3 * a, Y: b}, {X: 0.3 * a, Y: -b}, {X: 0.3 * a}} {
		p.Nodes = append(p.Nodes, Node{At: at})
	}
	end := End{}
	if rapid.Bool().Draw(t, "pinned rib") {
		end = End{Free: [3]bool{false, true, true}}
	}
	for _, m := range [][2]int{{0, 4}, {4, 1}, {1, 2}, {2, 5}, {5, 3}, {3, 0}, {4, 6}, {6, 5}} {
		p.Members = append(p.Members, Member{I: m[0], J: m[1], Section: section, Material: material})
	}
	p.Members[6].EndI, p.Members[7].EndJ = end, end
	for k := range rapid.IntRange(4, 6).Draw(t, "lines") {
		lean := drawVec(t, 1, "lean")
		lean.Z = 0
		anchor := r3.Add(p.Nodes[k].At, r3.Add(lean, r3.Vec{Z: rapid.Float64Range(1, 6).Draw(t, "up")}))
		length := r3.Norm(r3.Sub(anchor, p.Nodes[k].At)) * rapid.Float64Range(0.98, 1.02).Draw(t, "length")
		p.Cables = append(p.Cables, Cable{
			I: k, J: Anchored, Anchor: anchor, EA: math.Pow(10, rapid.Float64Range(4, 6.5).Draw(t, "EA")), Unstretched: length,
		})
	}
	w := rapid.Float64Range(10, 800)
	l := Loads{
		Nodal:  []NodalLoad{{Node: 6, Force: r3.Vec{X: rapid.Float64Range(-30, 30).Draw(t, "wind"), Z: -w.Draw(t, "lamp")}}},
		Offset: []OffsetLoad{{Node: 4, Offset: drawVec(t, 0.4, "arm"), Force: r3.Vec{Z: -w.Draw(t, "hung")}}},
		Rider: []RiderLoad{{
			Nodes: [4]int{0, 1, 2, 3}, Share: [4]float64{0.3, 0.2, 0.2, 0.3},
			Height: rapid.Float64Range(-1, 0.5).Draw(t, "height"), Force: r3.Vec{Z: -w.Draw(t, "ridden")},
		}},
	}
	for k := range p.Members {
		l.Member = append(l.Member, MemberLoad{k, r3.Vec{Z: -12}, r3.Vec{Z: -15}})
	}
	return p, l
}

func totalWeight(p *Problem, l Loads) float64 {
	m, _ := newModel(p, &l)
	return newLoading(m, &l).total
}

// Whatever hangs, with any line cut, balances in force and moment when it is summed from the reported forces and places
// alone, within 1e-9 of the weight; no tension is negative; the center of the weights stands over the resultant of the
// lines.
func TestEveryStateBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, l := drawHanging(t)
		total := totalWeight(&p, l)
		check := func(s *State, what string) {
			if out := s.OutOfBalance(l); !(out < 1e-9*total) {
				t.Errorf("%s: %g N out of balance of %g N", what, out, total)
			}
			for k, c := range s.Cables {
				if !(c.Tension >= 0) || c.Slack != (c.Tension == 0) {
					t.Errorf("%s: cable %d: %+v", what, k, c)
				}
			}
		}
		s, err := p.Equilibrium(l, Options{})
		if err != nil {
			t.Fatal(err)
		}
		check(s, "whole")
		cut := rapid.IntRange(0, len(p.Cables)-1).Draw(t, "cut")
		after, err := p.Equilibrium(l, Options{Start: s, Cut: []int{cut}})
		if err != nil {
			t.Fatalf("cable %d cut: %v", cut, err)
		}
		check(after, "cut")
		if !after.Stable {
			t.Errorf("the place of rest after a cut is not a minimum")
		}
	})
}

// turnedProblem turns a problem and its loads as a whole and shifts it.
func turnedProblem(p Problem, l Loads, whole triad, shift r3.Vec) (Problem, Loads) {
	q := Problem{Members: append([]Member(nil), p.Members...)}
	for _, n := range p.Nodes {
		n.At = r3.Add(whole.of(n.At), shift)
		q.Nodes = append(q.Nodes, n)
	}
	for k, m := range p.Members {
		d := r3.Sub(p.Nodes[m.J].At, p.Nodes[m.I].At)
		q.Members[k].Up = whole.of(ownAxes(r3.Unit(d), m.Up)[2])
	}
	for _, c := range p.Cables {
		c.Anchor = r3.Add(whole.of(c.Anchor), shift)
		q.Cables = append(q.Cables, c)
	}
	var f Loads
	for _, n := range l.Nodal {
		f.Nodal = append(f.Nodal, NodalLoad{n.Node, whole.of(n.Force), whole.of(n.Moment)})
	}
	for _, o := range l.Offset {
		f.Offset = append(f.Offset, OffsetLoad{o.Node, whole.of(o.Offset), whole.of(o.Force)})
	}
	for _, r := range l.Rider {
		r.Force = whole.of(r.Force)
		f.Rider = append(f.Rider, r)
	}
	for _, m := range l.Member {
		f.Member = append(f.Member, MemberLoad{m.Member, whole.of(m.AtI), whole.of(m.AtJ)})
	}
	return q, f
}

// Turning the whole problem with its loads turns the answer: the solver has no direction of its own.
func TestWholeTurned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, l := drawHanging(t)
		whole := columns(turned(quat.Number{Real: 1}, drawVec(t, 2, "turn")))
		shift := drawVec(t, 20, "shift")
		q, f := turnedProblem(p, l, whole, shift)
		s, err := p.Equilibrium(l, Options{})
		if err != nil {
			t.Fatal(err)
		}
		r, err := q.Equilibrium(f, Options{})
		if err != nil {
			t.Fatal(err)
		}
		total := totalWeight(&p, l)
		for k := range s.Cables {
			if d := math.Abs(s.Cables[k].Tension - r.Cables[k].Tension); d > 1e-6*total {
				t.Errorf("cable %d: %g N and %g N", k, s.Cables[k].Tension, r.Cables[k].Tension)
			}
		}
		for k := range s.Position {
			if d := r3.Norm(r3.Sub(r3.Add(whole.of(s.Position[k]), shift), r.Position[k])); d > 1e-6 {
				t.Errorf("node %d: %g m apart", k, d)
			}
		}
		for k := range p.Members {
			a, b := s.Along(k, 0.3), r.Along(k, 0.3)
			if math.Abs(a.N-b.N) > 1e-4*total || math.Abs(a.My-b.My)+math.Abs(a.Mz-b.Mz)+math.Abs(a.T-b.T) > 1e-5*total {
				t.Errorf("member %d: %+v and %+v", k, a, b)
			}
		}
	})
}

// drawFixed draws an L-shaped frame on clamped feet with loads on nodes and members.
func drawFixed(t *rapid.T) (Problem, Loads) {
	section := RectangularTube(0.05, 0.08, 0.004)
	if rapid.Bool().Draw(t, "shear") {
		section = section.WithShear()
	}
	_, material := pipe()
	p := Problem{Nodes: []Node{{At: r3.Vec{}}, {At: r3.Vec{X: 0.2, Y: 0.1, Z: 2}}, {At: r3.Vec{X: 2, Y: 0.5, Z: 2.2}}, {At: r3.Vec{X: 2, Y: 2}}}}
	for k := range 3 {
		p.Members = append(p.Members, Member{I: k, J: k + 1, Section: section, Material: material, EndJ: drawEnd(t, "end")})
		p.Members[k].EndJ.Free[0] = false
	}
	p.Members[2].EndJ = End{}
	p.Supports = []Support{{Node: 0, Fixed: clamped}, {Node: 3, Fixed: clamped}}
	l := Loads{Nodal: []NodalLoad{{1, drawVec(t, 100, "f"), drawVec(t, 30, "m")}, {2, drawVec(t, 100, "f"), drawVec(t, 30, "m")}}}
	for k := range 3 {
		l.Member = append(l.Member, MemberLoad{k, drawVec(t, 50, "wi"), drawVec(t, 50, "wj")})
	}
	return p, l
}

func solveOrSkip(t *rapid.T, p Problem, l Loads) *Result {
	f, err := p.Linear()
	var mech *Mechanism
	if errors.As(err, &mech) {
		t.Skip("a mechanism")
	}
	if err != nil {
		t.Fatal(err)
	}
	r, err := f.Solve(l)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Linear analysis: doubled loads double everything, reactions carry the loads in force and moment, and a member cut in two at
// any place leaves displacements and forces as they were, with releases, end springs, shear and trapezoidal loads.
func TestLinearInvariants(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, l := drawFixed(t)
		r := solveOrSkip(t, p, l)
		size := 0.0
		for _, d := range r.Displacement {
			size = math.Max(size, r3.Norm(d.Move)+r3.Norm(d.Turn))
		}
		twice := solveOrSkip(t, p, doubled(l))
		for k := range r.Displacement {
			if d := r3.Norm(r3.Sub(twice.Displacement[k].Move, r3.Scale(2, r.Displacement[k].Move))); d > 1e-9*size {
				t.Errorf("doubled loads: node %d is %g m off", k, d)
			}
		}
		if out := reactionGap(&p, l, r); out > 1e-6 {
			t.Errorf("reactions are %g N or N·m off the loads", out)
		}
		x := rapid.Float64Range(0.1, 0.9).Draw(t, "x")
		k := rapid.IntRange(0, 2).Draw(t, "member")
		q, f := cutInTwo(p, l, k, x)
		s := solveOrSkip(t, q, f)
		for n := range r.Displacement {
			a, b := r.Displacement[n], s.Displacement[n]
			if d := r3.Norm(r3.Sub(a.Move, b.Move)) + r3.Norm(r3.Sub(a.Turn, b.Turn)); d > 1e-7*size {
				t.Errorf("member %d cut in two: node %d is %g off", k, n, d)
			}
		}
		// The new node stands where the whole member bends to.
		if d := r3.Norm(r3.Sub(r.Along(k, x).At, s.Along(k, 1).At)); d > 1e-7*size {
			t.Errorf("member %d at %g: the deflection is %g m off", k, x, d)
		}
		a, b := r.Along(k, x), s.Along(k, 1)
		if d := math.Abs(a.N-b.N) + math.Abs(a.Vy-b.Vy) + math.Abs(a.Vz-b.Vz) + math.Abs(a.T-b.T) + math.Abs(a.My-b.My) + math.Abs(a.Mz-b.Mz); d > 1e-5 {
			t.Errorf("member %d at %g: %+v and %+v", k, x, a, b)
		}
	})
}

func doubled(l Loads) (d Loads) {
	for _, n := range l.Nodal {
		d.Nodal = append(d.Nodal, NodalLoad{n.Node, r3.Scale(2, n.Force), r3.Scale(2, n.Moment)})
	}
	for _, m := range l.Member {
		d.Member = append(d.Member, MemberLoad{m.Member, r3.Scale(2, m.AtI), r3.Scale(2, m.AtJ)})
	}
	return d
}

// reactionGap sums reactions and loads at the unloaded places.
func reactionGap(p *Problem, l Loads, r *Result) float64 {
	var force, moment r3.Vec
	add := func(at, f r3.Vec) {
		force, moment = r3.Add(force, f), r3.Add(moment, r3.Cross(at, f))
	}
	for _, n := range l.Nodal {
		add(p.Nodes[n.Node].At, n.Force)
		moment = r3.Add(moment, n.Moment)
	}
	for _, m := range l.Member {
		b := p.Members[m.Member]
		i, j := p.Nodes[b.I].At, p.Nodes[b.J].At
		length := r3.Norm(r3.Sub(j, i))
		// Simpson's rule is exact for the moment of a trapezoid.
		for q, w := range []float64{1, 4, 1} {
			xi := float64(q) / 2
			f := r3.Scale(w/6*length, r3.Add(r3.Scale(1-xi, m.AtI), r3.Scale(xi, m.AtJ)))
			add(r3.Add(i, r3.Scale(xi, r3.Sub(j, i))), f)
		}
	}
	for _, s := range r.Reaction {
		add(p.Nodes[s.Node].At, s.Force)
		moment = r3.Add(moment, s.Moment)
	}
	return r3.Norm(force) + r3.Norm(moment)
}

// cutInTwo puts a node into member k at the fraction x.
func cutInTwo(p Problem, l Loads, k int, x float64) (Problem, Loads) {
	q := Problem{Nodes: append([]Node(nil), p.Nodes...), Members: append([]Member(nil), p.Members...), Supports: p.Supports}
	m := p.Members[k]
	i, j := p.Nodes[m.I].At, p.Nodes[m.J].At
	q.Nodes = append(q.Nodes, Node{At: r3.Add(i, r3.Scale(x, r3.Sub(j, i)))})
	mid := len(q.Nodes) - 1
	q.Members[k].J, q.Members[k].EndJ = mid, End{}
	rest := m
	rest.I, rest.EndI = mid, End{}
	q.Members = append(q.Members, rest)
	f := Loads{Nodal: l.Nodal}
	for _, w := range l.Member {
		if w.Member != k {
			f.Member = append(f.Member, w)
			continue
		}
		at := r3.Add(r3.Scale(1-x, w.AtI), r3.Scale(x, w.AtJ))
		f.Member = append(f.Member, MemberLoad{k, w.AtI, at}, MemberLoad{len(q.Members) - 1, at, w.AtJ})
	}
	return q, f
}
