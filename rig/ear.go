package rig

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/plan"
)

// ear places the ear by which a stand holds the box: on a side of the upper frame
// where there is one, else of the bottom frame. One stand on a side holds its
// middle; several hold the places of the side that are nearest to them.
func (d *deriver) ear(s *Stand, side string) {
	e := &Ear{Side: side, Part: "ear." + s.Name}
	s.Ear = e
	from, to := d.sideEnds(side)
	e.At = r3.Scale(0.5, r3.Add(from, to))
	if d.holdersOf(side) > 1 {
		e.At = nearest(from, to, d.Pose.In(s.Top()))
	}
	e.Tube = d.tubeAt(e.At)
	if e.Tube == "" {
		d.Odd = append(d.Odd, Oddity{ID: "rig.ear." + s.Name, Part: s.Part, Path: s.Path + ".holds", Unknown: true,
			Statement: fmt.Sprintf("Stand %s is said to hold the ear of the %s side, and no tube is there", s.Name, side)})
	}
	p := Part{ID: e.Part, What: "ear", Name: side + " ear", Body: string(BottomFrame), Center: e.At,
		Why: fmt.Sprintf("stand %s holds the box by it: %s.holds", s.Name, s.Path), Path: s.Path + ".holds"}
	id, piece, ok := d.earFor(e.Tube, s.Receiver)
	switch {
	case !d.all():
		p.Mass, p.Weightless = mass(0), true
		p.Why += "; derive: none places no ear for it, it weighs nothing"
		d.notPlaced("ear held by "+s.Name, "derive: none; the plan names no ear")
	case !ok:
		p.Mass, p.Weightless = mass(0), true
		d.notPlaced("ear held by "+s.Name, "the kit has no ear that fits the tube")
		if e.Tube != "" {
			d.Odd = append(d.Odd, Oddity{ID: "rig.ear." + s.Name, Part: s.Part, Path: s.Path + ".holds", Unknown: true,
				Statement: fmt.Sprintf("Stand %s holds an ear on %s, and the kit has no ear that fits that tube", s.Name, e.Tube)})
		}
	default:
		p.KitKind, p.KitID, p.Demo = "ear", id, piece.Source.Demo("mass")
		p.Name = piece.Label(id)
		p.Mass, p.MassFrom = pieceMass(piece, 0)
	}
	if p.Mass == nil {
		d.add(p)
		return
	}
	d.weigh(p, Weight{OnTube: e.Tube, Station: e.At})
	if ok && d.all() {
		d.pinned(s.Part+".pin", p, piece, s)
	}
}

// sideEnds returns the ends of a side at the level at which stands hold it.
func (d *deriver) sideEnds(side string) (from, to r3.Vec) {
	for _, prefix := range []string{"upper.", "frame."} {
		if t, ok := d.Rig.Tube(prefix + side); ok {
			return t.From, t.To
		}
	}
	x, y := d.half()
	ends := map[string][2]r3.Vec{
		"north": {{X: -x, Y: y}, {X: x, Y: y}}, "south": {{X: -x, Y: -y}, {X: x, Y: -y}},
		"east": {{X: x, Y: -y}, {X: x, Y: y}}, "west": {{X: -x, Y: -y}, {X: -x, Y: y}},
	}[side]
	return ends[0], ends[1]
}

func (d *deriver) holdersOf(side string) int {
	n := 0
	for i := range d.Plan.Stands {
		if h := d.Plan.Stands[i].Holds; h != nil && h.Ear == side {
			n++
		}
	}
	return n
}

// earFor finds an ear that fits a tube: one with the pin that the stand takes before
// any other.
func (d *deriver) earFor(tube string, receiver *float64) (string, kit.Hardware, bool) {
	part, ok := d.Part(tube)
	if !ok {
		return "", kit.Hardware{}, false
	}
	return bestFit(d.Kit.Ear, part.KitID, receiver)
}

// bestFit finds a piece that fits another: the first, by id, whose pin goes with a
// receiver of a diameter, else the first of all.
func bestFit(set map[string]kit.Hardware, other string, receiver *float64) (id string, piece kit.Hardware, ok bool) {
	for _, name := range kit.IDs(set) {
		if !contains(set[name].Fits, other) {
			continue
		}
		if !ok {
			id, piece, ok = name, set[name], true
		}
		if receiver != nil && contains(set[name].Fits, pinWord(*receiver)) {
			return name, set[name], true
		}
	}
	return id, piece, ok
}

// joinsCorner reports whether uprights stand at the corners, where three tubes meet.
func (d *deriver) joinsCorner() bool {
	_, upper := d.Rig.Tube("upper.north")
	return upper && d.box.Join.Uprights != nil && d.box.Join.Uprights.Count >= len(plan.CornerNames)
}
