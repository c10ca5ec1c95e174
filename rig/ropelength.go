package rig

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
)

const (
	// perKnot is the rope that a knot takes with its tail, in m. Design assumption.
	perKnot = 0.5
	// haulTail is what must be left in hand at a tie-off, in m. Design assumption.
	haulTail = 3.0
	// waist is the height of the horses on which a box is put together, in m: a hauled
	// line reaches down to it. Design assumption.
	waist = 1.0
)

// spare is the rope that a line needs over what is taut at trim, and how it is made
// up: two knots, and on a hauled line a tail in hand and the way down to the horses.
// Nothing with derive: none, and nothing for a sling, which has its length.
func (d *deriver) spare(l *Line, top r3.Vec, load float64) (float64, string) {
	if !d.all() || !d.isRope(l) {
		return 0, "without tail and knots"
	}
	knots := 2 * perKnot
	if l.Pulley == nil {
		return knots, fmt.Sprintf("with %.1f m for two ends", knots)
	}
	down := math.Max(0, top.Z-waist-load)
	return knots + haulTail + down, fmt.Sprintf("with haul side %.3f m, tail %.1f m, knots %.1f m, and %.3f m to lower the box to %.1f m",
		d.HaulLength(l), haulTail, knots, down, waist)
}

func (d *deriver) isRope(l *Line) bool {
	piece, ok := d.Kit.Suspender(l.Rope.ID)
	return ok && piece.Rope != nil
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

// softeners places pads where a line's clamp or rope meets masonry: where its point
// lies on an obstacle that is a wall.
func (d *deriver) softeners(l *Line) {
	if !d.all() || d.Plan.Room == nil {
		return
	}
	names := []string{l.Point}
	if l.Bridle != nil {
		names = l.Bridle.Points[:]
	}
	for i, name := range names {
		p, ok := d.PointNamed(name)
		if !ok || !d.onMasonry(p.InRoom) {
			continue
		}
		id, entry, ok := fits(d.Kit.Adapter, "masonry")
		if !ok {
			d.notPlaced("softener of line "+l.Name, "its point lies on a wall, and the kit has no pads for masonry")
			continue
		}
		part := Part{ID: fmt.Sprintf("line.%s.softener.%d", l.Name, i+1), What: "softener", Name: entry.Label(id), KitKind: "adapter", KitID: id,
			Body: LinesBody, InRoom: true, Demo: entry.Source.Demo("mass"), Center: p.InRoom, Path: l.Path,
			Why: "point " + name + " lies on a wall: pads between what grips it and the masonry, common practice"}
		part.Mass, part.MassFrom = pieceMass(entry, 0)
		l.Parts = append(l.Parts, d.add(part))
	}
}

// onMasonry reports whether a place lies on an obstacle that is a wall.
func (d *deriver) onMasonry(at r3.Vec) bool {
	for _, o := range d.Plan.Room.Obstacles {
		if o.Kind != "wall" || o.Size == nil {
			continue
		}
		off := r3.Sub(at, r3.Vec{X: float64(o.At[0]), Y: float64(o.At[1]), Z: float64(o.At[2])})
		const near = 0.1 // m, a clamp's jaw
		if math.Abs(off.X) < float64(o.Size[0])/2+near && math.Abs(off.Y) < float64(o.Size[1])/2+near && math.Abs(off.Z) < float64(o.Size[2])/2+near {
			return true
		}
	}
	return false
}

// reweighOnArm lets a measured mass count on an arm too.
func (d *deriver) reweighOnArm(part string, m float64) {
	for i := range d.Stands {
		s := &d.Stands[i]
		if s.Part == part {
			s.Mass = mass(m)
		}
		if s.Arm == nil {
			continue
		}
		for _, set := range [2][]OnArm{s.Arm.Pieces, s.Arm.Holds} {
			for k := range set {
				if set[k].Part == part {
					set[k].Mass = mass(m)
				}
			}
		}
	}
}
