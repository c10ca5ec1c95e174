package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
)

// tipping is a stand about the edge of its base over which it goes first. Edges join
// neighboring feet; of n legs on a circle of radius r they lie at r·cos(π/n). What is
// inside an edge holds the stand, what is outside tips it, and the push at its top
// goes over each edge straight.
type tipping struct {
	from, to  int     // legs
	edge      float64 // m from the mast
	restoring float64 // N·m
	over      float64 // N·m
	margin    float64 // restoring over overturning; +Inf where nothing tips it
	levers    []float64
	pushed    float64 // N·m, the push's part of over
	bagless   float64 // N·m, restoring without bags
}

// worstEdge finds the edge with the least margin. Masses that nobody gave make it NaN.
func worstEdge(s *rig.Stand, loads []onStand, push float64) tipping {
	worst := tipping{margin: math.Inf(1), from: 1, to: 2, edge: s.Radius * math.Cos(math.Pi/float64(s.Legs))}
	for leg := 1; leg <= s.Legs; leg++ {
		t := aboutEdge(s, leg, loads, push)
		if leg == 1 || math.IsNaN(t.margin) || t.margin < worst.margin {
			worst = t
		}
		if math.IsNaN(t.margin) {
			break
		}
	}
	return worst
}

// aboutEdge works out one edge, between a leg and the next.
func aboutEdge(s *rig.Stand, leg int, loads []onStand, push float64) tipping {
	t := tipping{from: leg, to: leg%s.Legs + 1, edge: s.Radius * math.Cos(math.Pi/float64(s.Legs)), pushed: push * s.Rise}
	sin, cos := math.Sincos(s.Turn + 2*math.Pi*(float64(leg)-0.5)/float64(s.Legs))
	out := r3.Vec{X: cos, Y: sin}
	t.over = t.pushed
	for _, l := range loads {
		lever := t.edge - r3.Dot(l.away, out)
		t.levers = append(t.levers, lever)
		moment := l.mass * gravity * lever
		switch {
		case moment < 0:
			t.over -= moment
		case l.bag:
			t.restoring += moment
		default:
			t.restoring += moment
			t.bagless += moment
		}
		if math.IsNaN(moment) {
			t.over = math.NaN()
		}
	}
	t.margin = t.restoring / t.over
	if !(t.over > rounding*t.restoring) && !math.IsNaN(t.over) {
		t.margin = math.Inf(1)
	}
	return t
}

// rounding is the share of a moment under which its opposite counts as none.
const rounding = 1e-12

// needed is the mass at the base, in kg, that gives a ratio about every edge, without
// the bags that the plan names: B = (k·over − restoring)/(g·e).
func needed(s *rig.Stand, loads []onStand, push, ratio float64) float64 {
	var bagless []onStand
	for _, l := range loads {
		if !l.bag {
			bagless = append(bagless, l)
		}
	}
	var most float64
	for leg := 1; leg <= s.Legs; leg++ {
		t := aboutEdge(s, leg, bagless, push)
		b := (ratio*t.over - t.restoring) / (gravity * t.edge)
		if math.IsNaN(b) {
			return b
		}
		most = math.Max(most, b)
	}
	return most
}

// edgeName names an edge as a crew would.
func (t tipping) edgeName() string { return fmt.Sprintf("between leg %d and leg %d", t.from, t.to) }

// mostOnFoot is the load on the foot that gets most, in N: V/n + 2·M·cos(φ)/(n·r), the
// stand taken as rigid on a level floor, φ between the moment's lean and the leg.
func mostOnFoot(s *rig.Stand, loads []onStand) float64 {
	var weight float64
	var lean r3.Vec
	for _, l := range loads {
		weight += l.mass * gravity
		lean = r3.Add(lean, r3.Scale(l.mass*gravity, l.away))
	}
	most := math.Inf(-1)
	for leg := 1; leg <= s.Legs; leg++ {
		at := r3.Sub(s.LegFoot(leg), s.Foot)
		foot := weight/float64(s.Legs) + 2*r3.Dot(lean, at)/(float64(s.Legs)*s.Radius*s.Radius)
		if math.IsNaN(foot) {
			return foot
		}
		most = math.Max(most, foot)
	}
	return most
}
