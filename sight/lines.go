package sight

import (
	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
)

// lines builds ropes with their haul sides and legs, and tie-offs.
func (b *builder) lines() {
	for i := range b.rig.Lines {
		b.line(&b.rig.Lines[i])
	}
}

// line is straight from the box to its point, from there to its tie-off or straight down
// to the floor.
func (b *builder) line(l *rig.Line) {
	top, ok := b.rig.Top(l)
	if !ok {
		return
	}
	radius := ropeDiameter / 2
	if l.Rope != nil && l.Rope.Diameter != nil {
		radius = *l.Rope.Diameter / 2
	}
	solids := []solid{bar(b.rig.Pose.Out(l.Attach), top, radius)}
	if l.Bridle != nil {
		for _, name := range l.Bridle.Points {
			if p, ok := b.rig.PointNamed(name); ok {
				solids = append(solids, bar(top, p.InRoom, radius))
			}
		}
	}
	if l.Pulley != nil {
		end := r3.Vec{X: top.X, Y: top.Y}
		if l.TieOff != nil {
			end = l.TieOff.InRoom
		}
		solids = append(solids, bar(top, end, radius))
	}
	b.add("line."+l.Name+".rope", false, solids...)
	if l.TieOff != nil {
		b.add("line."+l.Name+".tie_off", false, lump(l.TieOff.InRoom, fittingSize))
	}
}

// points are the building's own: they are seen, and nobody asks them to move.
func (b *builder) points() {
	for i := range b.rig.Points {
		p := &b.rig.Points[i]
		b.scene.bodies = append(b.scene.bodies, body{part: "point." + p.Name, solids: []solid{lump(p.InRoom, fittingSize)}})
	}
}
