package frame

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// drawVec draws a vector with components up to size.
func drawVec(t *rapid.T, size float64, name string) r3.Vec {
	f := rapid.Float64Range(-size, size)
	return r3.Vec{X: f.Draw(t, name+"x"), Y: f.Draw(t, name+"y"), Z: f.Draw(t, name+"z")}
}

// drawEnd draws an end that is rigid, sprung or released in any of its three turns.
func drawEnd(t *rapid.T, name string) (e End) {
	for k := range 3 {
		switch rapid.IntRange(0, 4).Draw(t, name) {
		case 0:
			e.Free[k] = true
		case 1:
			e.Spring[k] = rapid.Float64Range(10, 1e5).Draw(t, name+"spring")
		}
	}
	return e
}

// drawSystem draws one bent member with all kinds of load, a cable and a support spring, far from equilibrium.
func drawSystem(t *rapid.T) *system {
	section := RectangularTube(0.05, 0.08, 0.003)
	if rapid.Bool().Draw(t, "shear") {
		section = section.WithShear()
	}
	p := &Problem{
		Nodes: []Node{{At: r3.Vec{X: 0.1, Y: -0.2}}, {At: drawVec(t, 1, "far")}, {At: r3.Vec{X: 3, Y: 1}}, {At: r3.Vec{Y: 2, Z: -1}}},
		Members: []Member{{
			I: 0, J: 1, Section: section, Material: Material{Young: 1e7, Shear: 4e6},
			Up: drawVec(t, 1, "up"), EndI: drawEnd(t, "I"), EndJ: drawEnd(t, "J"),
		}},
		Cables:   []Cable{{I: 1, J: Anchored, Anchor: r3.Vec{Z: 3}, EA: 100, Unstretched: 1}, {I: 0, J: 2, EA: 50, Unstretched: 0.3}},
		Supports: []Support{{Node: 2, Spring: [6]float64{1, 2, 3}}},
	}
	if r3.Norm(r3.Sub(p.Nodes[1].At, p.Nodes[0].At)) < 0.3 {
		t.Skip("short")
	}
	l := Loads{
		Nodal:  []NodalLoad{{Node: 1, Force: drawVec(t, 20, "force")}},
		Offset: []OffsetLoad{{Node: 0, Offset: drawVec(t, 1, "arm"), Force: drawVec(t, 20, "hung")}},
		Rider:  []RiderLoad{{Nodes: [4]int{0, 1, 2, 3}, Share: [4]float64{0.1, 0.2, 0.3, 0.4}, Height: 0.7, Force: drawVec(t, 20, "ridden")}},
		Member: []MemberLoad{{Member: 0, AtI: drawVec(t, 20, "wi"), AtJ: drawVec(t, 20, "wj")}},
	}
	m, err := newModel(p, &l)
	if err != nil {
		t.Fatal(err)
	}
	g := newLoading(m, &l)
	q := m.unloaded()
	common := turned(quat.Number{Real: 1}, drawVec(t, 3, "common"))
	whole := columns(common)
	for k := range q.at {
		q.at[k] = r3.Add(whole.of(q.at[k]), drawVec(t, 0.05, "move"))
		q.turn[k] = turned(common, drawVec(t, 0.3, "turn"))
		q.axes[k] = columns(q.turn[k])
	}
	s := newSystem(m, g, q)
	s.refresh()
	return s
}

// The gradient must be the energy's slope and the tangent its curvature, for any mixture of releases, springs and
// loads at any attitude: two routes to one number, one of them by differences of the energy alone.
func TestTangentIsTheEnergysCurvature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSystem(t)
		if math.IsInf(s.assemble(), 0) {
			t.Skip("bent too far")
		}
		p := make([]float64, len(s.owner))
		for i := range p {
			p[i] = rapid.Float64Range(-1, 1).Draw(t, "p")
		}
		const h = 1e-3
		to := newPose(len(s.rest))
		at := func(f float64) float64 {
			s.move(to, p, f)
			return s.energy(to)
		}
		e0, e1, e2, m1, m2 := at(0), at(h), at(2*h), at(-h), at(-2*h)
		slope := (8*(e1-m1) - (e2 - m2)) / (12 * h)
		curve := (16*(e1+m1) - (e2 + m2) - 30*e0) / (12 * h * h)
		wantSlope := dot(s.grad, p)
		wantCurve := 0.0
		for i := range s.k.n {
			for j := s.k.first[i]; j <= i; j++ {
				v := s.k.a[s.k.start[i]+j-s.k.first[i]] * p[i] * p[j]
				if j < i {
					v *= 2
				}
				wantCurve += v
			}
		}
		size := math.Abs(e0) + 10
		if math.Abs(slope-wantSlope) > 1e-8*size*10+1e-6*math.Abs(wantSlope) {
			t.Errorf("slope %g by differences, %g by the gradient", slope, wantSlope)
		}
		if math.Abs(curve-wantCurve) > 1e-5*size*10+1e-4*math.Abs(wantCurve) {
			t.Errorf("curvature %g by differences, %g by the tangent", curve, wantCurve)
		}
	})
}
