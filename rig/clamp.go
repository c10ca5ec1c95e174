package rig

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/plan"
)

// mount places what holds a lamp on a tube: a clamp that fits the tube and takes the
// lamp's pin, with an adapter where none takes it, and the pin's retainer.
func (d *deriver) mount(lamp Part, entry kit.Lamp, w Weight) {
	tube, ok := d.Part(w.OnTube)
	if !ok || !d.all() {
		return
	}
	pin := yokeBolt
	if entry.Pin != nil {
		pin = pinWord(float64(*entry.Pin))
	}
	id, clamp, direct := d.clampFor(tube.KitID, pin)
	if id == "" {
		d.notPlaced("clamp of "+lamp.ID, "the kit has no lamp clamp that fits %s", tube.KitID)
		d.Odd = append(d.Odd, Oddity{ID: "rig.clamp." + lamp.ID, Part: lamp.ID, Path: lamp.Path, Unknown: true,
			Statement: fmt.Sprintf("%s hangs on %s, and the kit has no lamp clamp that fits that tube", lamp.Name, tube.KitID)})
		return
	}
	place := func(p Part) {
		p.Body, p.Center = lamp.Body, w.Station
		d.weigh(p, Weight{OnTube: w.OnTube, Station: w.Station})
	}
	p := Part{ID: lamp.ID + ".clamp", What: "lamp clamp", Name: clamp.Label(id), KitKind: "clamp", KitID: id, Demo: clamp.Source.Demo("mass"),
		Joined: []string{lamp.ID, w.OnTube}, Path: lamp.Path, Why: fmt.Sprintf("holds %s on %s by its %s", lamp.Name, w.OnTube, spoken(pin))}
	p.Mass, p.MassFrom = pieceMass(clamp, 0)
	place(p)
	if direct && pin == yokeBolt {
		return
	}
	receiver := pin
	if !direct {
		receiver = pinsOf(clamp)[0]
		if !d.adapter(lamp.ID, lamp, pin, receiver, place) {
			return
		}
	}
	d.retainer(lamp.ID+".retainer", lamp, receiver, place)
}

// clampFor finds a lamp clamp that fits a tube: one that takes the pin, else one with
// another receiver.
func (d *deriver) clampFor(tube, pin string) (id string, clamp kit.Hardware, direct bool) {
	for _, name := range kit.IDs(d.Kit.Clamp) {
		entry := d.Kit.Clamp[name]
		if !contains(entry.Fits, tube) {
			continue
		}
		if contains(entry.Fits, pin) {
			return name, entry, true
		}
		if id == "" && len(pinsOf(entry)) > 0 {
			id, clamp = name, entry
		}
	}
	return id, clamp, false
}

// onArmMount places what joins a lamp to an arm's end, where the kit says what that
// takes.
func (d *deriver) onArmMount(lamp Part, entry kit.Lamp, s *Stand) {
	if !d.all() {
		return
	}
	takes := pinsOf(d.Kit.Arm[s.Arm.KitID])
	if len(takes) == 0 || entry.Pin == nil {
		d.notPlaced("mount of "+lamp.ID, "the kit doesn't say which pin the arm %s or the lamp has", s.Arm.KitID)
		return
	}
	place := func(p Part) {
		p.Center = s.Arm.To
		p = d.standPart(s, p)
		d.onFloor(p)
		s.Arm.Holds = append(s.Arm.Holds, OnArm{Part: p.ID, Mass: p.Mass})
	}
	pin, receiver := pinWord(float64(*entry.Pin)), takes[0]
	if contains(takes, pin) {
		receiver = pin
	} else if !d.adapter(lamp.ID, lamp, pin, receiver, place) {
		return
	}
	d.retainer(lamp.ID+".retainer", lamp, receiver, place)
}

// clampHabit tells a point's clamp is put on (common practice).
func clampHabit(kind plan.PointKind) string {
	switch kind {
	case "beam":
		return "; the line goes between its captured ends"
	case "pipe grid":
		return "; it hangs hinge down"
	}
	return ""
}

// kindOfPoint tells what kind of point lies at a place in the room.
func (d *deriver) kindOfPoint(at r3.Vec) plan.PointKind {
	for i := range d.Points {
		if r3.Norm(r3.Sub(d.Points[i].InRoom, at)) < touching {
			return plan.PointKind(d.Points[i].Kind)
		}
	}
	return ""
}
