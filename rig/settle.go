package rig

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
)

// notYet lists what a box needs and no rule places yet, so that nobody takes the
// weight for whole.
func (d *deriver) notYet() {
	if !d.all() {
		for _, what := range d.leftOut() {
			d.notPlaced(what, "derive: none; only what the plan names is placed")
		}
		return
	}
	d.notPlaced("control cable and connectors", "no rule places them yet: weigh the box and type the reading in under measured")
}

// leftOut lists what the fitting rules would place.
func (d *deriver) leftOut() []string {
	var what []string
	if len(d.Plan.Lamps) > 0 {
		what = append(what, "lamp clamps", "retainers")
	}
	if d.Plan.Power != nil {
		what = append(what, "cable and loom")
	}
	if h := d.Plan.Hang; h != nil && h.Secondary != nil {
		what = append(what, "secondary of the box")
	}
	if h := d.Plan.Hang; h != nil && len(h.Lines) > 0 {
		what = append(what, "tails and knots")
	}
	return what
}

// measured lets a weighed mass override the kit's: of every lamp of a kit entry, of
// one part by its id or name, or of the whole box. The box's reading is spread
// over the parts that nobody weighed, in proportion to their masses.
func (d *deriver) measured() {
	for i, m := range d.Plan.Measured {
		if m.Part == "box" {
			continue
		}
		found := false
		for j := range d.Parts {
			p := &d.Parts[j]
			if p.ID == m.Part || p.ID == "lamp."+m.Part || (p.What == "lamp" && p.KitID == m.Part) {
				d.reweigh(p, float64(m.Mass))
				p.Measured, p.MassFrom, p.Demo, found = true, measuredBy(m.By, m.On), false, true
			}
		}
		if !found {
			path := fmt.Sprintf("measured[%d]", i)
			d.Odd = append(d.Odd, Oddity{ID: "rig." + path, Path: path, Unknown: true,
				Statement: "A mass was measured of " + m.Part + ", and no part has that name"})
		}
	}
	for _, m := range d.Plan.Measured {
		if m.Part == "box" {
			d.measuredBox(float64(m.Mass), measuredBy(m.By, m.On))
		}
	}
}

func measuredBy(by, on string) string {
	text := "measured"
	if by != "" {
		text += " by " + by
	}
	if on != "" {
		text += " on " + on
	}
	return text
}

// measuredBox scales what nobody weighed so that the box weighs its reading.
func (d *deriver) measuredBox(reading float64, from string) {
	var weighed, rest float64
	for i := range d.Parts {
		p := &d.Parts[i]
		switch {
		case p.Mass == nil || !d.onBox(p):
		case p.Measured:
			weighed += *p.Mass
		default:
			rest += *p.Mass
		}
	}
	if rest <= 0 || reading <= weighed {
		d.Odd = append(d.Odd, Oddity{ID: "rig.measured.box", Path: "measured", Unknown: true, Statement: fmt.Sprintf(
			"The box was measured at %.2f kg and the parts that were weighed one by one come to %.2f kg already", reading, weighed)})
		return
	}
	scale := (reading - weighed) / rest
	for i := range d.Parts {
		p := &d.Parts[i]
		if p.Mass != nil && d.onBox(p) && !p.Measured && !p.Weightless {
			d.reweigh(p, *p.Mass*scale)
			p.Measured, p.MassFrom = true, "share of the box, "+from
		}
	}
}

// onBox reports whether a part hangs on the lines.
func (d *deriver) onBox(p *Part) bool {
	if p.Body == LinesBody {
		return false
	}
	for _, w := range d.Weights {
		if w.Part == p.ID && w.Elsewhere {
			return false
		}
	}
	return true
}

// reweigh gives a part another mass wherever its mass stands.
func (d *deriver) reweigh(p *Part, m float64) {
	before := p.Mass
	p.Mass = mass(m)
	for i := range d.Tubes {
		if d.Tubes[i].Part == p.ID {
			d.Tubes[i].MassPerLength = m / p.Length
		}
	}
	hasWeight := false
	for i := range d.Weights {
		if d.Weights[i].Part != p.ID {
			continue
		}
		hasWeight = true
		if before != nil && *before != 0 {
			d.Weights[i].Mass *= m / *before
		} else {
			d.Weights[i].Mass = m
		}
	}
	d.reweighOnArm(p.ID, m)
	for i := range d.EdgeLoads {
		if d.EdgeLoads[i].Part != p.ID {
			continue
		}
		hasWeight = true
		for s := range d.EdgeLoads[i].Stations {
			if before != nil && *before != 0 {
				d.EdgeLoads[i].Stations[s].PerLength *= m / *before
			}
		}
	}
	if _, isTube := d.Rig.Tube(p.ID); !isTube && !hasWeight && p.Body != LinesBody {
		d.Weights = append(d.Weights, Weight{Part: p.ID, Mass: m, Center: p.Center})
	}
}

// join settles which tubes touch, and so which parts move together: a body is a
// set of tubes that meet.
func (d *deriver) join() {
	group := make([]int, len(d.Tubes))
	for i := range group {
		group[i] = i
	}
	for i := range d.Tubes {
		for j := range i {
			if !meet(&d.Tubes[i], &d.Tubes[j]) {
				continue
			}
			d.joinParts(d.Tubes[i].Part, d.Tubes[j].Part)
			low, high := min(group[i], group[j]), max(group[i], group[j])
			for k := range group {
				if group[k] == high {
					group[k] = low
				}
			}
		}
	}
	for i := range d.Tubes {
		body := d.Tubes[group[i]].Body
		d.Tubes[i].Body = body
		p, _ := d.Part(d.Tubes[i].Part)
		p.Body = body
	}
	d.bodiesOfRiders()
}

// meet reports whether an end of one tube lies on the other's center-line.
func meet(a, b *Tube) bool {
	return distanceToAxis(b.From, b.To, a.From) < touching || distanceToAxis(b.From, b.To, a.To) < touching ||
		distanceToAxis(a.From, a.To, b.From) < touching || distanceToAxis(a.From, a.To, b.To) < touching
}

func (d *deriver) joinParts(a, b string) {
	for _, pair := range [2][2]string{{a, b}, {b, a}} {
		p, _ := d.Part(pair[0])
		if !slices.Contains(p.Joined, pair[1]) {
			p.Joined = append(p.Joined, pair[1])
		}
	}
}

// bodiesOfRiders gives what a tube carries the tube's body.
func (d *deriver) bodiesOfRiders() {
	carry := func(part, tube string) {
		p, ok := d.Part(part)
		t, okTube := d.Rig.Tube(tube)
		if ok && okTube && p.Body != "drops" {
			p.Body = t.Body
			if !slices.Contains(p.Joined, tube) {
				p.Joined = append(p.Joined, tube)
			}
		}
	}
	for _, w := range d.Weights {
		carry(w.Part, w.OnTube)
	}
	for _, e := range d.EdgeLoads {
		carry(e.Part, e.Tube)
	}
}

// optics gathers what makes, passes and stops light.
func (d *deriver) optics() {
	o := &d.Optics
	o.Size = [2]float64{float64(d.box.Size[0]), float64(d.box.Size[1])}
	o.Depth = d.depth()
	var hem float64
	for _, layer := range d.box.Cloth {
		entry := d.Kit.Cloth[layer.Kit]
		hem = max(hem, float64(entry.Hem))
		o.Cloths = append(o.Cloths, Layer{Cloth: entry, ID: layer.Kit, Gap: float64(layer.Gap)})
	}
	for i := range o.Clear {
		o.Clear[i] = o.Size[i] - 2*hem
		if d.box.Clear != nil {
			o.Clear[i] = float64(d.box.Clear[i])
		}
	}
	for i := range d.box.Sides {
		o.Skirts[i] = float64(d.box.Skirt[i])
		if o.Depth > 0 {
			o.Sides[i] = opticalFace(d.box.Sides[i])
		}
	}
	if o.Depth > 0 {
		o.Roof = opticalFace(d.box.Roof)
	}
	if d.box.Crate != "" {
		entry := d.Kit.Crate[d.box.Crate]
		o.Crate = &CrateCell{
			Cell:  [2]float64{float64(entry.Cell[0]), float64(entry.Cell[1])},
			Depth: float64(entry.Depth), Reflectance: entry.Reflectance, Wall: float64(entry.Wall),
		}
	}
	d.leaks()
	d.openings()
	d.opaque()
}

// openings places the lamps' luminous openings. A lamp on a stand's arm shines too.
// Those that may still go up take their place and give no light.
func (d *deriver) openings() {
	for i := range d.Plan.Lamps {
		name := lampName(&d.Plan.Lamps[i], i+1)
		opening := d.opening(&d.Plan.Lamps[i], "lamp."+name, name)
		if opening.Lumens == nil {
			d.Optics.Missing = append(d.Optics.Missing, "the lumens of lamp "+name+" (kit "+opening.Kit+")")
		}
		d.Optics.Lamps = append(d.Optics.Lamps, opening)
	}
	if d.Plan.Provision == nil {
		return
	}
	for i := range d.Plan.Provision.Lamps {
		name := lampName(&d.Plan.Provision.Lamps[i], i+1)
		d.Optics.Provided = append(d.Optics.Provided, d.opening(&d.Plan.Provision.Lamps[i], "provision."+name, name))
	}
}

func (d *deriver) opening(l *plan.Lamp, part, name string) Opening {
	entry := d.Kit.Lamp[l.Kit]
	aim := aimOf(l)
	opening := Opening{
		Part: part, Name: name, Kit: l.Kit,
		Center: r3.Vec{X: float64(l.At[0]), Y: float64(l.At[1]), Z: float64(l.Above)},
		Axis:   aim.axis, U: aim.u, V: aim.v,
		Size:   [2]float64{float64(entry.Size[0]), float64(entry.Size[1])},
		Lumens: float(entry.Lumens), Level: float64(l.Level), Spread: entry.Spread, Demo: entry.Source.Demo("lumens"),
	}
	if entry.Body != nil {
		opening.Body = &[3]float64{float64(entry.Body[0]), float64(entry.Body[1]), float64(entry.Body[2])}
	}
	return opening
}

// opaque lists the tubes that shade: ribs, bars, uprights and the upper frame.
// The bottom frame, and ribs that lie in the cloth plane with it, don't.
func (d *deriver) opaque() {
	for _, t := range d.Tubes {
		radius := t.Section.Outer / 2
		if t.Role == BottomFrame || (t.From.Z < radius && t.To.Z < radius) {
			continue
		}
		d.Optics.Opaque = append(d.Optics.Opaque, Cylinder{Part: t.Part, From: t.From, To: t.To, Radius: radius})
	}
}
