package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/frame"
	"softloft/rig"
	"softloft/source"
)

// tubeWind is how the tubes bear the cloth in wind, for small displacements: the box as
// built, with a pull of 1 N/m inward on the bottom frame, with 1 Pa lifting the canopy,
// and with 1 Pa on the sides.
type tubeWind struct {
	model *model
	cases [4]*frame.Result // built, pulled, lifted, blown
	cloth strip
	mass  float64 // N/m², the cloth's weight
	why   string  // why it is not known
	sag   string  // where the cloth's sag comes from, in words
}

// The cases of tubeWind.
const (
	tubesBuilt = iota
	tubesPulled
	tubesLifted
	tubesBlown
)

// slackShare is how far a cloth that is tied slack belies, as a share of its shorter side:
// 4 in on 12 ft, the lower end of 4 to 8 in (common practice); less belly pulls harder.
const slackShare = 4.0 / 144

// clothOnTubes finds the pressure at which the first tube is used up by the cloth's pull.
func (g *gale) clothOnTubes() {
	t := &g.tube
	if !g.shape.sheet || len(g.rig.Plan.Box.Cloth) == 0 {
		return
	}
	if t.why = g.readTubes(); t.why == "" {
		t.why = g.readCloth()
	}
	r := reached{kind: windTube, what: "the cloth's pull bends the tubes too much", part: "frame.north", path: "box.frame", q: math.NaN(), bearing: math.NaN(), why: t.why}
	if t.why == "" {
		r.q, r.part = g.tubesAt()
		if math.IsNaN(r.q) {
			r.why = "the alloy's yield strength is not given"
		}
	}
	g.note(r)
}

// readTubes sets the box's tubes on what holds them and solves the cases.
func (g *gale) readTubes() string {
	t := &g.tube
	m, err := build(g.rig)
	if err != nil {
		return err.Error()
	}
	if _, ok := m.sides(); !ok {
		return "the cloth is tied to no bottom frame that is placed"
	}
	t.model = m
	m.problem.Cables, m.problem.Supports = nil, g.tubeSupports(m)
	if len(m.problem.Supports) == 0 {
		return "nothing that is placed holds the box"
	}
	m.square()
	factored, err := m.problem.Linear()
	if err != nil {
		return m.inWords(err).Error()
	}
	built, err := m.built()
	if err != nil {
		return err.Error()
	}
	for k, loads := range [4]frame.Loads{built, m.inward(), m.upward(), g.onPanels(m)} {
		if t.cases[k], err = factored.Solve(loads); err != nil {
			return err.Error()
		}
	}
	return ""
}

// tubeSupports holds up the box where ears or lines do, and what hangs on drops at those:
// the first of a body in place, the second from turning.
func (g *gale) tubeSupports(m *model) []frame.Support {
	var places, below []r3.Vec
	for _, h := range g.holders {
		if h.stand != nil {
			places = append(places, h.stand.Ear.At)
		} else {
			places = append(places, g.rig.Lines[h.index].Attach)
		}
	}
	for i, cable := range m.drops {
		if cable >= 0 {
			below = append(below, g.rig.Drops[i].Lower)
		}
	}
	var all []frame.Support
	for _, set := range [2][]r3.Vec{places, below} {
		all = append(all, m.supportsAt(set)...)
	}
	for node := range m.nodeBody {
		if m.nodeBody[node] == rig.LinesBody { // a bridle's apex
			all = append(all, frame.Support{Node: node, Fixed: [6]bool{true, true, true, true, true, true}})
		}
	}
	return all
}

func (m *model) supportsAt(places []r3.Vec) []frame.Support {
	var all []frame.Support
	for k, at := range places {
		node, ok := m.nodeAt(at)
		if !ok {
			continue
		}
		s := frame.Support{Node: node, Fixed: [6]bool{2: true}}
		if way := flat(m.rig.Pose.OutDirection(r3.Sub(at, places[0]))); k == 0 {
			s.Fixed[0], s.Fixed[1] = true, true
			s.Fixed[3], s.Fixed[4] = len(places) < 3, len(places) < 3
		} else if k == 1 {
			s.Fixed[0], s.Fixed[1] = math.Abs(way.Y) > math.Abs(way.X), math.Abs(way.Y) <= math.Abs(way.X)
		}
		all = append(all, s)
	}
	return all
}

// onSide adds a load along one side's tubes: per meter at a place along it, times a
// direction in the room.
func (m *model) onSide(loads *frame.Loads, tube int, way r3.Vec, at func(s, length float64) float64) {
	t := &m.rig.Tubes[tube]
	length := r3.Norm(r3.Sub(t.To, t.From))
	for i, p := range m.pieces {
		if p.tube == tube {
			loads.Member = append(loads.Member, frame.MemberLoad{Member: i, AtI: r3.Scale(at(p.from, length), way), AtJ: r3.Scale(at(p.to, length), way)})
		}
	}
}

// inwards are the directions into the box from north, south, east, west, in the room.
func (m *model) inwards() [4]r3.Vec {
	x, y := m.rig.Pose.X, m.rig.Pose.Y
	return [4]r3.Vec{r3.Scale(-1, y), y, r3.Scale(-1, x), x}
}

func even(float64, float64) float64 { return 1 }

// inward is a pull of 1 N/m on each tube of the bottom frame.
func (m *model) inward() (loads frame.Loads) {
	sides, _ := m.sides()
	for k, way := range m.inwards() {
		m.onSide(&loads, sides[k], way, even)
	}
	return loads
}

// upward is a lift of 1 Pa of the cloth, on the tubes around it by 45° tributary.
func (m *model) upward() (loads frame.Loads) {
	sides, _ := m.sides()
	size := m.rig.Plan.Box.Size
	reach := math.Min(float64(size[0]), float64(size[1])) / 2
	for k := range sides {
		m.onSide(&loads, sides[k], m.rig.Pose.Z, func(s, length float64) float64 { return math.Min(reach, math.Min(s, length-s)) })
	}
	return loads
}

// onPanels is 1 Pa on all sides and skirts, inward, half on the tubes above where there are.
func (g *gale) onPanels(m *model) (loads frame.Loads) {
	sides, _ := m.sides()
	for k, way := range m.inwards() {
		per := source.Panel().Value * g.shape.panels[k].height()
		upper := -1
		for i := range m.rig.Tubes {
			if m.rig.Tubes[i].Part == "upper."+[4]string{"north", "south", "east", "west"}[k] {
				upper = i
			}
		}
		if upper >= 0 {
			per /= 2
			m.onSide(&loads, upper, r3.Scale(per, way), even)
		}
		m.onSide(&loads, sides[k], r3.Scale(per, way), even)
	}
	return loads
}

// readCloth makes the cloth's strip: how it is tied, how it stretches, and how the frame
// gives way to its pull.
func (g *gale) readCloth() string {
	t, box := &g.tube, g.rig.Plan.Box
	s, ok := g.strip()
	if !ok {
		return "the kit gives no mass of the cloth"
	}
	t.mass, t.cloth = s.w, s
	tie := box.ClothTie
	sag := 0.0
	switch {
	case tie.Sag != nil:
		sag, t.sag = float64(*tie.Sag), fmt.Sprintf("the cloth is as long as a sag of %.0f mm asks for", 1000*float64(*tie.Sag))
	case tie.Cut != nil:
		t.sag = "the cloth is as long as it was cut"
	default:
		sag = slackShare * s.a
		t.sag = fmt.Sprintf("the cloth is tied slack: a belly of 4 in on 12 ft is taken, %.0f mm here, the harder end of 4 to 8 in (common practice)", 1000*sag)
	}
	if sag > 0 {
		t.cloth.slack = 8 * sag * sag / (3 * s.a)
	}
	t.cloth.give = g.give()
	return ""
}

// give is by how much a pull of 1 N/m narrows the frame across its shorter way, m.
func (g *gale) give() float64 {
	m, r := g.tube.model, g.tube.cases[tubesPulled]
	sides, _ := m.sides()
	ways := m.inwards()
	closes := func(k int) float64 { return r3.Dot(m.shifted(r, sides[k]), ways[k]) }
	x, y := closes(2)+closes(3), closes(0)+closes(1)
	switch size := m.rig.Plan.Box.Size; {
	case size[0] < size[1]:
		return x
	case size[0] > size[1]:
		return y
	}
	return (x + y) / 2
}

// shifted is how the middle of a tube moves, m.
func (m *model) shifted(r *frame.Result, tube int) r3.Vec {
	t := &m.rig.Tubes[tube]
	half := r3.Norm(r3.Sub(t.To, t.From)) / 2
	for i, p := range m.pieces {
		if p.tube != tube || half < p.from || half > p.to {
			continue
		}
		xi := (half - p.from) / (p.to - p.from)
		b := m.problem.Members[i]
		between := func(x, y r3.Vec) r3.Vec { return r3.Add(r3.Scale(1-xi, x), r3.Scale(xi, y)) }
		chord := between(m.problem.Nodes[b.I].At, m.problem.Nodes[b.J].At)
		return r3.Sub(r.Along(i, xi).At, chord)
	}
	return r3.Vec{X: math.NaN()}
}

// pull is the cloth's tension in N/m and its belly in m under a load of its own in N/m².
func (t *tubeWind) pull(load float64) (tension, sag float64) {
	s := t.cloth
	s.w = math.Max(0, load)
	if s.w == 0 {
		return 0, 0
	}
	tension = s.tension()
	return tension, s.sag(tension)
}

// used is how far the tube is used that is used most at a pressure, lifted and pressed.
func (g *gale) used(q float64) (most float64, part string) {
	t, m := &g.tube, g.tube.model
	for _, c := range [2]float64{g.shape.up, -g.shape.down} {
		own := c*q - t.mass
		if c < 0 {
			own = -c*q + t.mass
		}
		tension, _ := t.pull(own)
		for i, p := range m.pieces {
			tube := &m.rig.Tubes[p.tube]
			for k := range 5 {
				use := useOf(m.problem.Members[i].Section, t.at(i, float64(k)/4, [4]float64{1, tension, c * q, q}), tube)
				if math.IsNaN(use) {
					return use, tube.Part
				}
				if use > most {
					most, part = use, tube.Part
				}
			}
		}
	}
	return most, part
}

// at adds the cases up, each so many times, at a place on a member.
func (t *tubeWind) at(member int, xi float64, times [4]float64) (sum frame.Station) {
	for k, r := range t.cases {
		s := r.Along(member, xi)
		sum.N += times[k] * s.N
		sum.Vy += times[k] * s.Vy
		sum.Vz += times[k] * s.Vz
		sum.T += times[k] * s.T
		sum.My += times[k] * s.My
		sum.Mz += times[k] * s.Mz
	}
	return sum
}

// tubesAt is the pressure at which the first tube is used up, and which; NaN where that is
// not known.
func (g *gale) tubesAt() (q float64, part string) {
	low, high := 0.0, pressure(mostWind, g.density)
	use, part := g.used(high)
	switch {
	case math.IsNaN(use):
		return use, part
	case use <= 1:
		return math.Inf(1), part
	}
	for range 40 {
		middle := (low + high) / 2
		if use, which := g.used(middle); use > 1 {
			high, part = middle, which
		} else {
			low = middle
		}
	}
	return low, part
}

// mostWind is the greatest speed that is looked at, m/s: beyond any at which a cloth is up.
const mostWind = 60
