package frame

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// A rigid square tilted by 15° about x by unequal lines, its middle at −3.000 under the points: lengths, tensions and the
// middle's sideways place for a center above, in and below the plane of attachment (an independent solver; its
// residual under 1e-12).
func TestTiltByLengths(t *testing.T) {
	const w, tilt = 656.339, 15 * math.Pi / 180
	for _, c := range []struct{ h, y, cutHigh, cutLow, high, low, longHigh, longLow float64 }{
		{0.6, 0.00477, 2.52095, 3.46377, 150.620, 177.622, 2.52728, 3.47403},
		{0, 0.01017, 2.52023, 3.46471, 165.032, 163.208, 2.52716, 3.47414},
		{-0.6, 0.01542, 2.51952, 3.46565, 179.431, 148.807, 2.52706, 3.47425},
	} {
		p := rigidSquare(60e3)
		for k := range p.Cables {
			p.Cables[k].Anchor.Z = 0
		}
		for k := range p.Nodes {
			p.Nodes[k].At.Z = -3
		}
		var o Options
		for k, at := range corners {
			o.Held = append(o.Held, Held{k, -3 + at.Y*math.Sin(tilt)})
		}
		s := rest(t, &p, above(w, c.h), o)
		y := 0.0
		for k := range corners {
			y += s.Position[k].Y / 4
			near(t, "height", s.Position[k].Z, o.Held[k].Height, 0, 1e-9)
		}
		near(t, "middle", y, c.y, 0, 1e-5)
		near(t, "high line", s.Cables[0].Unstretched, c.cutHigh, 0, 1e-5)
		near(t, "low line", s.Cables[2].Unstretched, c.cutLow, 0, 1e-5)
		near(t, "high line stretched", s.Cables[1].Length, c.longHigh, 0, 1e-5)
		near(t, "low line stretched", s.Cables[3].Length, c.longLow, 0, 1e-5)
		nearAll(t, "tension", tensions(s), [4]float64{c.high, c.high, c.low, c.low}, 1e-5, 0)
	}
}

// Lengths that were found give the same place when they are put in as lengths: two routes to one state.
func TestHeldLengthsReproduceTheState(t *testing.T) {
	g := readGolden(t, "L2A_moved")
	o := Options{Held: []Held{{0, 0.02}, {1, 0}, {2, -0.01}, {3, 0.3}}}
	s := rest(t, &g.Problem, g.Loads, o)
	for k := range g.Cables {
		g.Cables[k].Unstretched = s.Cables[k].Unstretched
	}
	again := rest(t, &g.Problem, g.Loads, Options{})
	for k := range g.Nodes {
		if d := r3.Norm(r3.Sub(s.Position[k], again.Position[k])); d > 1e-8 {
			t.Errorf("node %d: %g m apart", k, d)
		}
	}
}

// A rigid beam on three lines in a row, the middle one asked to hold its node lower than the outer two let it: it would have
// to push, so it is slack and says so, and the outer two share (statics).
func TestHeldLineThatWouldPushIsSlack(t *testing.T) {
	section, material := pipe()
	p := chain(r3.Vec{X: -1}, r3.Vec{X: 1}, 2, section, material)
	for k, n := range p.Nodes {
		p.Cables = append(p.Cables, Cable{I: k, J: Anchored, Anchor: r3.Add(n.At, r3.Vec{Z: 2}), EA: 60e3, Unstretched: 2})
	}
	l := Loads{Nodal: []NodalLoad{{Node: 1, Force: r3.Vec{Z: -10}}}}
	s := rest(t, &p, l, Options{Held: []Held{{0, 0}, {1, -0.5}, {2, 0}}})
	if c := s.Cables[1]; !c.Slack || c.Tension != 0 {
		t.Errorf("the middle line must be slack, it has %g N", c.Tension)
	}
	near(t, "left", s.Cables[0].Tension, 5, 1e-9, 0)
	near(t, "right", s.Cables[2].Tension, 5, 1e-9, 0)
	near(t, "height", s.Position[0].Z, 0, 0, 1e-9)
	if s.Position[1].Z < -0.5 {
		t.Error("the middle cannot hang lower than a slack line lets it")
	}
}

func TestHeldRefusals(t *testing.T) {
	p := rigidSquare(60e3)
	for _, o := range []Options{
		{Held: []Held{{7, 0}}}, {Held: []Held{{0, math.NaN()}}}, {Held: []Held{{0, 0}, {0, 1}}},
		{Held: []Held{{0, 0}}, Cut: []int{0}},
	} {
		if _, err := p.Equilibrium(above(100, 0), o); err == nil {
			t.Errorf("%+v must be refused", o)
		}
	}
	// One node on two lines cannot stand at two heights.
	p.Cables = append(p.Cables, Cable{I: 0, J: Anchored, Anchor: r3.Vec{X: 3, Z: 3}, EA: 60e3, Unstretched: 3})
	_, err := p.Equilibrium(above(100, 0), Options{Held: []Held{{0, 0}, {4, 0.1}}})
	var not *NotHeld
	if !errors.As(err, &not) {
		t.Errorf("two heights for one node: %v", err)
	}
}
