package frame

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// S1 to S5: bridles of two legs (a theatre rigging mathematics primer, lessons 3 and 4: inputs of S1 and lengths of S2 read; the
// rest from its formulas T1 = W·L1·H2/(V1·H2+V2·H1), T2 = W·L2·H1/(…)). The weight hangs from the apex on a line of its own; feet
// and pounds. The legs are cut short by what they stretch, so that the stretched bridle has the given shape.
func TestBridles(t *testing.T) {
	for _, c := range []struct{ w, h1, v1, h2, v2, l1, l2, t1, t2, thrust float64 }{
		{500, 3, 4, 6, 3, 5, 6.708, 454.55, 304.92, 272.73},
		{1000, 4, 10, 3, 6, 10.770, 6.708, 598.35, 496.90, 222.22},
		{600, 6, 8, 6, 8, 10, 10, 375, 375, 225},
		{400, 2, 12, 10, 4, 12.166, 10.770, 380.17, 67.32, 62.5},
		{1000, 10, 1, 10, 1, 10.05, 10.05, 5024.9, 5024.9, 5000},
	} {
		const ea = 1e6
		cut := func(h, v, tension float64) float64 { return math.Hypot(h, v) / (1 + tension/ea) }
		p := Problem{
			Nodes: []Node{{Name: "apex"}, {Name: "load", At: r3.Vec{Z: -5}}},
			Cables: []Cable{
				{I: 0, J: Anchored, Anchor: r3.Vec{X: -c.h1, Z: c.v1}, EA: ea, Unstretched: cut(c.h1, c.v1, c.t1)},
				{I: 0, J: Anchored, Anchor: r3.Vec{X: c.h2, Z: c.v2}, EA: ea, Unstretched: cut(c.h2, c.v2, c.t2)},
				{I: 1, J: 0, EA: ea, Unstretched: 5},
			},
		}
		s := rest(t, &p, at(1, c.w), Options{})
		near(t, "leg 1", s.Cables[0].Length, c.l1, 1e-4, 0)
		near(t, "leg 2", s.Cables[1].Length, c.l2, 1e-4, 0)
		near(t, "tension 1", s.Cables[0].Tension, c.t1, 1e-4, 0)
		near(t, "tension 2", s.Cables[1].Tension, c.t2, 1e-4, 0)
		near(t, "thrust", s.Cables[1].ForceOnI.X, c.thrust, 1e-4, 0)
		near(t, "thrust", s.Cables[0].ForceOnI.X, -c.thrust, 1e-4, 0)
		near(t, "hung", s.Cables[2].Tension, c.w, 1e-9, 0)
	}
}

// A frame on two bridles finds the same rest from any nearby start: apexes misplaced, frame shifted and turned.
func TestRestDoesNotDependOnTheStart(t *testing.T) {
	section, material := pipe()
	build := func() (Problem, Loads) {
		var p Problem
		for _, c := range corners {
			p.Nodes = append(p.Nodes, Node{At: c})
		}
		p.Nodes = append(p.Nodes, Node{Name: "apex +x", At: r3.Vec{X: half, Z: 2}}, Node{Name: "apex -x", At: r3.Vec{X: -half, Z: 2}})
		for k := range 4 {
			p.Members = append(p.Members, Member{I: k, J: (k + 1) % 4, Section: section, Material: material})
			apex := 4
			if corners[k].X < 0 {
				apex = 5
			}
			p.Cables = append(p.Cables, Cable{I: k, J: apex, EA: 60e3, Unstretched: math.Hypot(half, 2)})
		}
		for k := 4; k < 6; k++ {
			p.Cables = append(p.Cables, Cable{I: k, J: Anchored, Anchor: r3.Add(p.Nodes[k].At, r3.Vec{Z: 3}), EA: 60e3, Unstretched: 3})
		}
		l := above(656.339, -0.2)
		l.Offset = []OffsetLoad{{Node: 0, Offset: r3.Vec{Z: -0.3}, Force: r3.Vec{Z: -50}}}
		return p, l
	}
	p, l := build()
	want := rest(t, &p, l, Options{})
	rapid.Check(t, func(t *rapid.T) {
		start := &State{}
		shift, turn := drawVec(t, 0.5, "shift"), drawVec(t, 0.25, "turn")
		whole := columns(turned(quatOf(want.Rotation[0]), turn))
		for k := range p.Nodes {
			at := r3.Add(whole.of(p.Nodes[k].At), r3.Add(shift, drawVec(t, 0.02, "node")))
			if k >= 4 {
				at = r3.Add(at, drawVec(t, 0.8, "apex"))
			}
			start.Position = append(start.Position, at)
			start.Rotation = append(start.Rotation, r3.Rotation(turned(quatOf(want.Rotation[0]), turn)))
		}
		s, err := p.Equilibrium(l, Options{Start: start})
		if err != nil {
			t.Fatal(err)
		}
		for k := range s.Cables {
			if d := math.Abs(s.Cables[k].Tension - want.Cables[k].Tension); d > 1e-5 {
				t.Errorf("cable %d: %g N, from the unloaded start %g N", k, s.Cables[k].Tension, want.Cables[k].Tension)
			}
		}
	})
}

// A pipe on two lines with a weight on an arm: the arm hangs down whatever way it pointed, upright too, as nothing else
// holds the pipe's roll.
func TestPipeRollsUntilTheArmHangs(t *testing.T) {
	section, material := pipe()
	for _, arm := range []r3.Vec{{Z: -0.3}, {Y: 0.3}, {Y: 0.1, Z: 0.28}, {Z: 0.3}} {
		p := chain(r3.Vec{X: -1}, r3.Vec{X: 1}, 2, section, material)
		for _, k := range []int{0, 2} {
			p.Cables = append(p.Cables, Cable{I: k, J: Anchored, Anchor: r3.Add(p.Nodes[k].At, r3.Vec{Z: 2}), EA: 60e3, Unstretched: 2})
		}
		l := Loads{Offset: []OffsetLoad{{Node: 1, Offset: arm, Force: r3.Vec{Z: -100}}}}
		s := rest(t, &p, l, Options{})
		hung := s.Rotation[1].Rotate(arm)
		near(t, "arm hangs", hung.Z, -r3.Norm(arm), 1e-6, 0)
		near(t, "line", s.Cables[0].Tension, 50, 1e-8, 0)
		if !s.Stable {
			t.Error("the hanging arm is a minimum")
		}
	}
}

// A bar hinged to a wall about one axis swings from level until it hangs straight down and carries the weight as plain
// tension; hinged about all axes as well (statics).
func TestHingedBarSwingsDown(t *testing.T) {
	section, material := pipe()
	for _, end := range []End{{Free: [3]bool{false, true, false}}, Pinned()} {
		p := chain(r3.Vec{}, r3.Vec{X: 1.5}, 1, section, material).supported(map[int][6]bool{0: clamped})
		p.Members[0].EndI = end
		s := rest(t, &p, at(1, 100), Options{})
		near(t, "down", s.Position[1].Z, -1.5*(1+100/(material.Young*section.Area)), 1e-9, 0)
		near(t, "tension", s.Along(0, 0.5).N, 100, 1e-8, 0)
		near(t, "reaction", s.Reaction[0].Force.Z, 100, 1e-8, 0)
		if !s.Stable {
			t.Error("hanging is a minimum")
		}
	}
}

// The center of the weights of the golden frame with the moved lamp: (0.0993606, 0.0993606) unloaded (statics of the
// weights); the loaded frame tilts by 0.014° and sags, which moves it by less than a tenth of a millimeter sideways.
func TestCenter(t *testing.T) {
	g := readGolden(t, "L2A_moved")
	s := rest(t, &g.Problem, g.Loads, Options{})
	c, ok := s.Center(g.Loads)
	if !ok {
		t.Fatal("there are weights")
	}
	near(t, "x", c.X, 0.0993606, 0, 1e-4)
	near(t, "y", c.Y, 0.0993606, 0, 1e-4)
	if c.Z > -0.01 || c.Z < -0.05 {
		t.Errorf("the weights hang at %g", c.Z)
	}
	if _, ok := s.Center(Loads{}); ok {
		t.Error("no weight has no center")
	}
}
