package load

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"softloft/frame"
	"softloft/rig"
)

// The ways in which the stands' shares of the box come about.
const (
	byStatics = "statics"
	byElastic = "elastic"
)

// leadOf is where the box's center of gravity is against the line of two ears, m:
// below it, and to the side of it; valid where there are two.
type leadOf struct {
	two           bool
	below, beside float64
}

func (f *floor) shareOrigin() string {
	if f.sharing == byElastic {
		return "the box's frame on its ears, elastic, docs/method.md#equilibrium"
	}
	return "statics: weight and center of the box between its ears"
}

// share finds what each ear gets. Two and three ears share by statics alone; more share
// as the elastic frame on its ears does. A box that stands only partly hold gets no
// shares, and the reason.
func (w *work) share() {
	f := &w.floor
	for i := range w.rig.Stands {
		if w.rig.Stands[i].Ear != nil {
			f.ears = append(f.ears, i)
		}
	}
	if len(f.ears) == 0 {
		return
	}
	f.holdsBox = true
	nan := math.NaN()
	for range f.ears {
		f.built, f.grown = append(f.built, nan), append(f.grown, nan)
	}
	f.total = []float64{nan, nan}
	if f.why = w.partly(); f.why != "" {
		return
	}
	for k, grown := range []bool{false, true} {
		mass, center, err := w.boxMass(grown)
		if err != nil {
			f.why = err.Error()
			return
		}
		f.total[k] = mass * gravity
		shares := f.built
		if grown {
			shares = f.grown
		}
		copy(shares, w.statically(mass, center))
		if k == 0 {
			f.lead = w.lead(center)
		}
	}
	f.sharing = byStatics
	w.elastically()
	if len(f.ears) > 3 && f.frame == nil {
		f.sharing = ""
	}
}

// partly says why the stands don't carry the whole box; empty where they do.
func (w *work) partly() string {
	f := &w.floor
	switch {
	case len(w.rig.Lines) > 0:
		return "the box hangs on lines and stands at once: how they share is not worked out"
	case len(w.answer.Unknown) > 0:
		return "the mass of some parts is not known"
	case len(f.ears) == 1:
		return "one stand holds one ear: the rest of the box rests on nothing"
	}
	var places []r3.Vec
	for _, i := range f.ears {
		places = append(places, w.rig.EarInRoom(w.rig.Stands[i].Ear))
	}
	first := places[0]
	var apart r3.Vec
	for _, p := range places[1:] {
		if d := flat(r3.Sub(p, first)); r3.Norm(d) > r3.Norm(apart) {
			apart = d
		}
	}
	if r3.Norm(apart) < touching {
		return "the stands hold one and the same ear: the rest of the box rests on nothing"
	}
	if len(places) == 2 {
		return ""
	}
	for _, p := range places[1:] {
		if math.Abs(turnZ(apart, flat(r3.Sub(p, first)))) > touching*r3.Norm(apart) {
			return ""
		}
	}
	return "all ears are on one line: the box turns about it, and more than two on a line share as their heights happen to be"
}

func flat(v r3.Vec) r3.Vec { v.Z = 0; return v }

func turnZ(a, b r3.Vec) float64 { return a.X*b.Y - a.Y*b.X }

// boxMass sums what the stands carry of the box: mass and center in the planned pose.
func (w *work) boxMass(grown bool) (float64, r3.Vec, error) {
	var total float64
	var first r3.Vec
	add := func(mass float64, at r3.Vec) {
		total += mass
		first = r3.Add(first, r3.Scale(mass, at))
	}
	for _, t := range w.rig.Tubes {
		add(t.MassPerLength*r3.Norm(r3.Sub(t.To, t.From)), r3.Scale(0.5, r3.Add(t.From, t.To)))
	}
	for _, e := range w.rig.EdgeLoads {
		t, ok := w.rig.Tube(e.Tube)
		if !ok {
			continue
		}
		sum, about := edgeMoments(e.Stations)
		at := r3.Add(t.From, r3.Scale(about/math.Max(sum, math.SmallestNonzeroFloat64)/r3.Norm(r3.Sub(t.To, t.From)), r3.Sub(t.To, t.From)))
		add(sum, at)
	}
	weights := w.rig.Weights
	if grown {
		weights = append(weights[:len(weights):len(weights)], w.rig.Provision...)
	}
	for _, v := range weights {
		if v.Elsewhere || v.Mass == 0 {
			continue
		}
		mass := v.Mass
		if p, ok := w.rig.Part(v.Part); ok && p.What == "lamp" && grown {
			mass *= w.reserve()
		}
		if math.IsNaN(mass) {
			return 0, r3.Vec{}, fmt.Errorf("the mass of %s is not known", v.Part)
		}
		add(mass, v.Center)
	}
	if !(total > 0) {
		return 0, r3.Vec{}, fmt.Errorf("nothing of the box weighs")
	}
	return total, w.rig.Pose.Out(r3.Scale(1/total, first)), nil
}

// edgeMoments integrates a load along a tube: its mass, and its first moment about
// the tube's start.
func edgeMoments(stations []rig.Station) (sum, about float64) {
	for k := 1; k < len(stations); k++ {
		a, b := stations[k-1], stations[k]
		h := b.At - a.At
		sum += h * (a.PerLength + b.PerLength) / 2
		about += h * (a.PerLength*(2*a.At+b.At) + b.PerLength*(a.At+2*b.At)) / 6
	}
	return sum, about
}

// statically shares a weight among two ears by the lever, among three by balance; of
// more it gives NaN.
func (w *work) statically(mass float64, center r3.Vec) []float64 {
	f := &w.floor
	at := func(k int) r3.Vec { return w.rig.EarInRoom(w.rig.Stands[f.ears[k]].Ear) }
	shares := make([]float64, len(f.ears))
	weight := mass * gravity
	switch len(shares) {
	case 2:
		span := flat(r3.Sub(at(1), at(0)))
		part := r3.Dot(flat(r3.Sub(center, at(0))), span) / r3.Norm2(span)
		shares[0], shares[1] = weight*(1-part), weight*part
	case 3:
		a := mat.NewDense(3, 3, nil)
		for k := range 3 {
			p := r3.Sub(at(k), center)
			a.SetCol(k, []float64{1, p.X, p.Y})
		}
		var x mat.VecDense
		if x.SolveVec(a, mat.NewVecDense(3, []float64{weight, 0, 0})) != nil {
			return []float64{math.NaN(), math.NaN(), math.NaN()}
		}
		for k := range 3 {
			shares[k] = x.AtVec(k)
		}
	default:
		for k := range shares {
			shares[k] = math.NaN()
		}
	}
	return shares
}

// lead tells where the center of gravity is against the line of two ears.
func (w *work) lead(center r3.Vec) leadOf {
	f := &w.floor
	if len(f.ears) != 2 {
		return leadOf{}
	}
	a, b := w.rig.EarInRoom(w.rig.Stands[f.ears[0]].Ear), w.rig.EarInRoom(w.rig.Stands[f.ears[1]].Ear)
	span := r3.Sub(b, a)
	t := r3.Dot(flat(r3.Sub(center, a)), flat(span)) / r3.Norm2(flat(span))
	off := r3.Sub(center, r3.Add(a, r3.Scale(t, span)))
	return leadOf{two: true, below: -off.Z, beside: math.Hypot(off.X, off.Y)}
}

// elastically sets the frame on its ears and finds how it rests: the first ear holds it
// in place, the second keeps it from turning, all hold it up, and each lets it turn. The
// heads of two ears hold it against turning about their line.
func (w *work) elastically() {
	f := &w.floor
	if len(w.rig.Tubes) == 0 {
		f.frameWhy = "no tube is placed"
		return
	}
	m, err := build(w.rig)
	if err != nil {
		f.frameWhy = err.Error()
		return
	}
	for k, i := range f.ears {
		node, ok := m.nodeAt(w.rig.Stands[i].Ear.At)
		if !ok {
			f.frameWhy = "the ear that " + w.rig.Stands[i].Name + " holds is on no tube"
			return
		}
		support, ok := w.support(k, node)
		if !ok {
			f.frameWhy = "two ears are looked at where they lie along x or y of the room"
			return
		}
		m.problem.Supports = append(m.problem.Supports, support)
	}
	f.model = m
	if f.frame, err = onEars(m, m.built); err != nil {
		f.frameWhy = err.Error()
		return
	}
	f.frameGrown = f.frame
	if w.rig.Plan.Provision != nil {
		f.frameGrown, _ = onEars(m, m.grown)
	}
	if len(f.ears) > 3 {
		f.sharing = byElastic
		copy(f.built, reactions(f.frame, len(f.ears)))
		copy(f.grown, reactions(f.frameGrown, len(f.ears)))
	}
}

// onEars finds where the frame comes to rest; the error is in a crew's words.
func onEars(m *model, loads func() (frame.Loads, error)) (*solved, error) {
	l, err := loads()
	if err != nil {
		return nil, err
	}
	state, err := m.problem.Equilibrium(l, frame.Options{})
	if err != nil {
		return nil, m.inWords(err)
	}
	if !m.finite(state) {
		return nil, errors.New("no place of rest was found: the numbers ran away")
	}
	return &solved{State: state, loads: l}, nil
}

// support is how an ear holds its joint. The second ear holds it across its way from
// the first. Two ears hold it against turning only where they lie along x or y of the
// room, as a support's directions do.
func (w *work) support(k, node int) (frame.Support, bool) {
	f := &w.floor
	s := frame.Support{Node: node, Fixed: [6]bool{2: true}}
	way := flat(r3.Sub(w.rig.EarInRoom(w.rig.Stands[f.ears[1]].Ear), w.rig.EarInRoom(w.rig.Stands[f.ears[0]].Ear)))
	alongX := math.Abs(way.X) > math.Abs(way.Y)
	switch k {
	case 0:
		s.Fixed[0], s.Fixed[1] = true, true
		if len(f.ears) == 2 {
			if math.Min(math.Abs(way.X), math.Abs(way.Y)) > touching {
				return s, false
			}
			s.Fixed[3], s.Fixed[4] = alongX, !alongX
		}
	case 1:
		s.Fixed[0], s.Fixed[1] = !alongX, alongX
	}
	return s, true
}

// reactions are what the ears carry, in N, NaN where the state was not found.
func reactions(s *solved, n int) []float64 {
	up := make([]float64, n)
	for k := range up {
		up[k] = math.NaN()
		if s != nil && k < len(s.Reaction) {
			up[k] = s.Reaction[k].Force.Z
		}
	}
	return up
}
