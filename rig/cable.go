package rig

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/circuit"
	"softloft/kit"
	"softloft/plan"
	"softloft/source"
)

// Loom is the bundle of feeds on its way up. It has a pick of its own at the box's
// edge, which holds all that hangs below it: on no lamp's socket.
type Loom struct {
	Pick  r3.Vec // in box axes
	Tube  string // that the pick is on; empty where none is there
	Feeds []Feed
	Rise  float64 // m of each feed between its run, on the floor or overhead, and the pick
	High  bool    // the run is overhead: the tie-in is no lower than the pick
}

// Feed is one circuit's cable from the tie-in to the pick: the part that runs along the
// floor, or overhead at the tie-in's height, and the part that hangs at the pick. Lamps
// are parts.
type Feed struct {
	Run, Part string
	Lamps     []string
}

// strainRelief is the slack that each cable has at the pick, in m. Design assumption.
const strainRelief = 1.0

// cables places a feed for each circuit from the tie-in, along the floor and up to the
// pick, or overhead and down to it where the tie-in is no lower than the pick, at the box's edge beside a line or stand, and from there a cable along
// the tubes from lamp to lamp.
func (d *deriver) cables() {
	power := d.Plan.Power
	if power == nil || !d.all() || len(d.Plan.Lamps) == 0 {
		return
	}
	entry, ok := d.Kit.Cable[power.Cable]
	if power.TieIn == nil || !ok {
		d.notPlaced("cable and loom", "the plan doesn't say where the tie-in is (power.tie_in) or which cable (power.cable)")
		return
	}
	from := r3.Vec{X: float64(power.TieIn[0]), Y: float64(power.TieIn[1]), Z: float64(power.TieIn[2])}
	pick := d.pick(from)
	above := d.Pose.Out(pick).Z
	d.Loom = &Loom{Pick: pick, Tube: d.tubeAt(pick), Rise: math.Max(0, above)}
	if from.Z >= above {
		d.Loom.High, d.Loom.Rise = true, from.Z-above
	}
	for _, lamps := range d.circuits() {
		if lamps = d.onBoxOnly(lamps); len(lamps) > 0 {
			d.feed(lamps, from, entry)
		}
	}
	at := map[string]place{} // where the lamps take their cable
	for i := range d.Plan.Lamps {
		l := &d.Plan.Lamps[i]
		lamp, ok := d.Part("lamp." + lampName(l, i+1))
		if !ok {
			continue
		}
		if s, on := d.Stand(l); on {
			d.cableToArm(lamp.ID, from, s, entry)
			continue
		}
		w, _ := d.carry(l, d.Kit.Lamp[l.Kit], lamp.ID, lamp.Path, false)
		at[lamp.ID] = place{lamp.ID, w.OnTube, w.Station}
		if w.OnTube == "" {
			at[lamp.ID] = place{lamp.ID, "", w.Center}
		}
	}
	for _, feed := range d.Loom.Feeds {
		last := place{feed.Part, d.Loom.Tube, pick}
		for _, lamp := range feed.Lamps {
			d.cableOnBox(last, at[lamp], entry)
			last = at[lamp]
		}
	}
}

// place is where a cable is held: on a tube, or on none, at a station.
type place struct {
	part, tube string
	at         r3.Vec
}

// circuits shares the lamps among circuits, as package power tells them: the fewest that
// hold them, over the supply's legs. Lamps on arms take part and have cables of their own.
// A lamp whose power nobody gave has a circuit of its own.
func (d *deriver) circuits() [][]string {
	power := d.Plan.Power
	legs := power.Phases
	if legs != 3 {
		legs = 1
	}
	var amps []float64
	var held, alone []string
	for i := range d.Plan.Lamps {
		l := &d.Plan.Lamps[i]
		entry, id := d.Kit.Lamp[l.Kit], "lamp."+lampName(l, i+1)
		factor := entry.PowerFactor
		if factor == 0 {
			factor = 1
		}
		if entry.Power == nil || !(power.Volts > 0) {
			alone = append(alone, id)
			continue
		}
		amps, held = append(amps, float64(*entry.Power)/(float64(power.Volts)*factor)), append(held, id)
	}
	var all [][]string
	capacity := float64(power.Circuit) * source.ContinuousShare().Value
	if capacity > 0 {
		for _, c := range circuit.Assign(amps, capacity, legs).Circuits {
			var lamps []string
			for _, k := range c.Loads {
				lamps = append(lamps, held[k])
			}
			all = append(all, lamps)
		}
	}
	for _, id := range alone {
		all = append(all, []string{id})
	}
	return all
}

// onBoxOnly leaves out the lamps on arms.
func (d *deriver) onBoxOnly(lamps []string) []string {
	var kept []string
	for i := range d.Plan.Lamps {
		l := &d.Plan.Lamps[i]
		if _, on := d.Stand(l); !on && contains(lamps, "lamp."+lampName(l, i+1)) {
			kept = append(kept, "lamp."+lampName(l, i+1))
		}
	}
	return kept
}

// pick is where the loom meets the box: in the middle of the side that faces the tie-in,
// or at what carries the box nearest to there.
func (d *deriver) pick(from r3.Vec) r3.Vec {
	x, y := d.half()
	toward := d.Pose.In(from)
	side := 0 // north, south, east, west as in plan.SideNames
	switch overX, overY := math.Abs(toward.X)-x, math.Abs(toward.Y)-y; {
	case overX > overY && toward.X > 0:
		side = 2
	case overX > overY:
		side = 3
	case toward.Y < 0:
		side = 1
	}
	a, b := d.sideEnds(plan.SideNames[side])
	middle := r3.Scale(0.5, r3.Add(a, b))
	best, least := middle, math.Inf(1)
	for _, p := range d.heldAt() {
		if away := r3.Norm(r3.Sub(p, middle)); away < least-touching {
			best, least = p, away
		}
	}
	return best
}

// heldAt lists the places that lines and stands hold, in box axes.
func (d *deriver) heldAt() []r3.Vec {
	var places []r3.Vec
	for i := range d.Lines {
		places = append(places, d.Lines[i].Attach)
	}
	for i := range d.Stands {
		if e := d.Stands[i].Ear; e != nil {
			places = append(places, e.At)
		}
	}
	return places
}

// alongWalls is the way between two places over the floor: x, then y.
func alongWalls(a, b r3.Vec) float64 { return math.Abs(a.X-b.X) + math.Abs(a.Y-b.Y) }

// feed places one circuit's cable in two parts: its run, which the floor carries or,
// overhead, the building, and what hangs between there and the pick, which the box
// carries at the pick.
func (d *deriver) feed(lamps []string, from r3.Vec, entry kit.Hardware) {
	loom, power := d.Loom, d.Plan.Power.Cable
	number := len(loom.Feeds) + 1
	pick := loom.Pick
	run := d.run(number, from, entry)
	end := d.Pose.In(*run.To)
	length := loom.Rise + strainRelief
	p := Part{ID: fmt.Sprintf("feed.%d", number), What: "cable", Name: entry.Label(power), KitKind: "cable", KitID: power, Body: string(BottomFrame),
		Demo: entry.Source.Demo("mass"), Center: pick, From: &end, To: &pick, Length: length, Path: "power",
		Why: fmt.Sprintf("circuit %d in the loom, %.2f m between its run and the pick at the box's edge, with slack", number, loom.Rise)}
	p.Mass, p.MassFrom = pieceMass(entry, length)
	d.weigh(p, Weight{OnTube: loom.Tube, Station: pick})
	loom.Feeds = append(loom.Feeds, Feed{Run: run.ID, Part: p.ID, Lamps: lamps})
}

// run places the part of a feed between the tie-in and below or above the pick.
func (d *deriver) run(number int, from r3.Vec, entry kit.Hardware) Part {
	power, foot := d.Plan.Power.Cable, d.Pose.Out(d.Loom.Pick)
	id, way, end := fmt.Sprintf("feed.%d.floor", number), "along the floor", r3.Vec{X: foot.X, Y: foot.Y}
	length := from.Z + alongWalls(from, foot)
	body := "floor"
	if d.Loom.High {
		id, way, end, body = fmt.Sprintf("feed.%d.high", number), "overhead at its height", r3.Vec{X: foot.X, Y: foot.Y, Z: from.Z}, "building"
		length = alongWalls(from, foot)
	}
	p := Part{ID: id, What: "cable", Name: entry.Label(power), KitKind: "cable", KitID: power, Body: body, InRoom: true,
		Demo: entry.Source.Demo("mass"), Center: r3.Scale(0.5, r3.Add(from, end)), From: &from, To: &end, Length: length, Path: "power",
		Why: fmt.Sprintf("circuit %d, from the tie-in %s, %.2f m", number, way, length)}
	p.Mass, p.MassFrom = pieceMass(entry, length)
	if p.Mass == nil {
		d.add(p)
	} else {
		d.onFloor(p)
	}
	return p
}

// cableOnBox places the cable along the tubes from the pick, or from the lamp before it
// on its circuit, to a lamp. Half of it weighs at either end.
func (d *deriver) cableOnBox(from, to place, entry kit.Hardware) {
	away := r3.Sub(to.at, from.at)
	length := math.Abs(away.X) + math.Abs(away.Y) + math.Abs(away.Z)
	if length < touching {
		return
	}
	power := d.Plan.Power.Cable
	lamp, _ := d.Part(to.part)
	p := Part{ID: to.part + ".cable", What: "cable", Name: entry.Label(power), KitKind: "cable", KitID: power, Body: lamp.Body,
		Demo: entry.Source.Demo("mass"), Center: r3.Scale(0.5, r3.Add(from.at, to.at)), From: &from.at, To: &to.at, Length: length,
		Joined: []string{from.part, to.part}, Path: "power", Why: fmt.Sprintf("from %s %.2f m along the tubes to %s", from.part, length, lamp.Name)}
	p.Mass, p.MassFrom = pieceMass(entry, length)
	d.add(p)
	if p.Mass == nil {
		return
	}
	for _, end := range []place{from, to} {
		d.Weights = append(d.Weights, Weight{Part: p.ID, Mass: *p.Mass / 2, Center: end.at, OnTube: end.tube, Station: end.at})
	}
}

// cableToArm places the cable of a lamp on an arm: along the floor, up the mast, along
// the arm, which carries half of that last stretch.
func (d *deriver) cableToArm(lamp string, from r3.Vec, s *Stand, entry kit.Hardware) {
	power := d.Plan.Power.Cable
	top, end := s.Top(), s.Arm.To
	along := r3.Norm(r3.Sub(end, top))
	length := from.Z + alongWalls(from, s.Foot) + s.Rise + along + strainRelief
	start := from
	p := d.standPart(s, Part{ID: lamp + ".cable", What: "cable", Name: entry.Label(power), KitKind: "cable", KitID: power, Demo: entry.Source.Demo("mass"),
		Center: s.Foot, From: &start, To: &end, Length: length, Joined: []string{lamp},
		Why: fmt.Sprintf("from the tie-in along the floor, up %s and along its arm, %.2f m", s.Name, length)})
	p.Mass, p.MassFrom = pieceMass(entry, length)
	d.onFloor(p)
	if p.Mass != nil {
		s.Arm.Holds = append(s.Arm.Holds, OnArm{Mass: mass(*p.Mass * along / 2 / length)})
	}
}
