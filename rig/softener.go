package rig

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

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
