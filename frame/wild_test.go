package frame

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// wild draws numbers that users and bugs send: zero, tiny, huge, NaN and infinite among plain ones.
func wild(t *rapid.T) float64 {
	switch rapid.IntRange(0, 12).Draw(t, "kind") {
	case 0:
		return 0
	case 1:
		return math.NaN()
	case 2:
		return math.Inf(-1)
	case 3:
		return math.Pow(10, rapid.Float64Range(-300, 300).Draw(t, "power"))
	case 4:
		return -math.Pow(10, rapid.Float64Range(-12, 12).Draw(t, "power"))
	}
	return rapid.Float64Range(-5, 5).Draw(t, "plain")
}

// Whatever is sent in, an error or finite numbers come back: no panic, no endless search, no NaN.
func TestWildInput(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, l := drawHanging(t)
		for range rapid.IntRange(1, 3).Draw(t, "spoiled") {
			k := rapid.IntRange(0, 3).Draw(t, "which")
			v := wild(t)
			switch rapid.IntRange(0, 9).Draw(t, "field") {
			case 0:
				p.Nodes[k].At.Z = v
			case 1:
				p.Members[k].Area = v
			case 2:
				p.Members[k].InertiaY = v
			case 3:
				p.Cables[k].EA = v
			case 4:
				p.Cables[k].Unstretched = v
			case 5:
				p.Cables[k].Anchor.X = v
			case 6:
				l.Member[k].AtI.Y = v
			case 7:
				l.Offset[0].Offset.X = v
			case 8:
				l.Rider[0].Height = v
			default:
				l.Nodal[0].Force.X = v
			}
		}
		o := Options{}
		if rapid.Bool().Draw(t, "held") {
			o.Held = []Held{{0, wild(t)}, {1, 0.1}}
		}
		s, err := p.Equilibrium(l, o)
		if err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			return
		}
		for k, at := range s.Position {
			if !finite(at) || !finiteNumber(s.Rotation[k].Real) {
				t.Errorf("node %d at %v", k, at)
			}
		}
		for k, c := range s.Cables {
			if !finiteNumber(c.Tension, c.Length, c.Unstretched) || c.Tension < 0 {
				t.Errorf("cable %d: %+v", k, c)
			}
		}
		if !finiteNumber(s.Residual, s.Energy) {
			t.Errorf("residual %g, energy %g", s.Residual, s.Energy)
		}
	})
}

// A search that is given too few steps says so and how far it is.
func TestStepsRunOut(t *testing.T) {
	g := readGolden(t, "L2A_moved")
	_, err := g.Equilibrium(g.Loads, Options{Iterations: 1})
	var not *NotFound
	if !errors.As(err, &not) || !(not.Residual > 0) || not.Node == "" {
		t.Errorf("%v", err)
	}
}

// The same input gives the same bits.
func TestSameInputSameState(t *testing.T) {
	g := readGolden(t, "L2A_moved")
	a := rest(t, &g.Problem, g.Loads, Options{Cut: []int{2}})
	b := rest(t, &g.Problem, g.Loads, Options{Cut: []int{2}})
	for k := range a.Position {
		if a.Position[k] != b.Position[k] || a.Rotation[k] != b.Rotation[k] {
			t.Fatalf("node %d differs", k)
		}
	}
	if a.Energy != b.Energy || r3.Norm(a.Cables[0].ForceOnI) != r3.Norm(b.Cables[0].ForceOnI) {
		t.Error("energy or tension differs")
	}
}
