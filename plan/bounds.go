package plan

import (
	"math"
	"reflect"

	"softloft/document"
	"softloft/plan/key"
	"softloft/quantity"
)

// Bounds against slips of the pen, far outside of any rig: design assumptions.
const (
	smallestSize  = 1e-6 // m: sheet metal and hems are thicker by far
	largestSize   = 1000 // m
	nextToNothing = 1e-9 // in SI: what is smaller counts as 0 where 0 is no use
	largestNumber = 1e6  // of a bare number
)

// largestOf returns the largest amount of a dimension that a plan may hold, in SI.
// Places lie within 10 km.
func largestOf(d quantity.Dimension) float64 {
	switch d {
	case quantity.OfLength:
		return 10e3
	case quantity.OfMass:
		return 1e6
	case quantity.OfForce:
		return 1e9 // EA of a 50 mm steel wire is under 3e8 N
	case quantity.OfAngle:
		return 20 * math.Pi
	case quantity.OfPressure:
		return 1e13 // diamond's modulus is 1.2e12 Pa
	case quantity.OfLineMass, quantity.OfAreaMass:
		return 1e4
	case quantity.OfDensity:
		return 3e4 // osmium has 22,590 kg/m3
	case quantity.OfSpeed:
		return 200
	case quantity.OfStops:
		return 60
	case quantity.OfTStop:
		return 1000
	}
	return 1e9
}

// Bounds against plans that would take hours: design assumptions.
const (
	mostLamps     = 2000
	mostLines     = 1000
	mostPoints    = 2000 // in the building
	mostStands    = 500
	mostMarks     = 500
	mostCameras   = 200
	mostSurfaces  = 500
	mostCorners   = 200 // of one surface
	mostRibs      = 200
	mostJoints    = 200 // uprights or drops
	mostCloths    = 8
	mostLoads     = 2000 // added, measured
	mostProbes    = 2000
	mostReadings  = 100_000 // points of all probes together
	mostCells     = 2000    // of a crate, along one side
	mostPeople    = 10_000
	mostBags      = 1000
	mostNameRunes = 100
	mostObstacles = 5000
	mostGuys      = 200
	mostEntries   = 1000 // of one kind in the plan's own kit
)

// lists complains of lists that are too long to work through.
func (c *checker) lists() {
	p := c.Plan
	c.atMost("lamps", "lamps", len(p.Lamps), mostLamps)
	c.atMost("stands", "stands", len(p.Stands), mostStands)
	c.atMost("cameras", "cameras", len(p.Cameras), mostCameras)
	c.atMost("added", "added loads", len(p.Added), mostLoads)
	c.atMost("measured", "measured masses", len(p.Measured), mostLoads)
	c.atMost("probes", "probes", len(p.Probes), mostProbes)
	c.kitLists()
	if p.Provision != nil {
		c.atMost("provision.lamps", "lamps", len(p.Provision.Lamps), mostLamps)
	}
	if p.Hang != nil {
		c.atMost("hang.lines", "lines", len(p.Hang.Lines), mostLines)
		c.atMost("hang.guys", "guys", len(p.Hang.Guys), mostGuys)
	}
	if p.Action != nil {
		c.atMost("action.marks", "marks", len(p.Action.Marks), mostMarks)
	}
	if p.Room != nil {
		c.atMost("room.points", "points", len(p.Room.Points), mostPoints)
		c.atMost("room.beams", "beams", len(p.Room.Beams), mostPoints)
		c.atMost("room.surfaces", "surfaces", len(p.Room.Surfaces), mostSurfaces)
		c.atMost("room.obstacles", "obstacles", len(p.Room.Obstacles), mostObstacles)
	}
}

func (c *checker) kitLists() {
	kit := reflect.ValueOf(c.Plan.Kit)
	for _, f := range key.Fields(kit.Type()) {
		c.atMost(document.Key("kit", f.Name), "entries", kit.FieldByIndex(f.Index).Len(), mostEntries)
	}
}
