package sight

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
	"softloft/rig"
	"softloft/shape"
)

// lines builds ropes with their haul sides and legs, tie-offs, and guys.
func (b *builder) lines() {
	for i := range b.rig.Lines {
		b.line(&b.rig.Lines[i])
	}
	if b.rig.Plan.Hang == nil {
		return
	}
	for i := range b.rig.Plan.Hang.Guys {
		b.guy(i, &b.rig.Plan.Hang.Guys[i])
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

// guy is a rope from a corner, a stand or a place on the box to where it is made fast.
func (b *builder) guy(i int, g *plan.Guy) {
	from, ok := b.guyFrom(&g.From)
	id := fmt.Sprintf("guy.%d", i+1)
	if !ok || b.placed(id) {
		return
	}
	radius := ropeDiameter / 2
	if entry, ok := b.rig.Kit.Rope[first(g.Rope, b.rig.Plan.Hang.Rope)]; ok && entry.Diameter != nil {
		radius = float64(*entry.Diameter) / 2
	}
	b.add(id, false, bar(from, vec(g.To), radius))
}

func first(own, shared string) string {
	if own != "" {
		return own
	}
	return shared
}

func (b *builder) guyFrom(f *plan.GuyFrom) (r3.Vec, bool) {
	x, y := b.half()
	level := 0.0
	if _, ok := b.rig.Tube("upper.north"); ok {
		level = b.rig.Optics.Depth
	}
	signs := map[string][2]float64{"ne": {1, 1}, "nw": {-1, 1}, "sw": {-1, -1}, "se": {1, -1}}
	if sign, ok := signs[f.Name]; ok {
		return b.rig.Pose.Out(r3.Vec{X: sign[0] * x, Y: sign[1] * y, Z: level}), true
	}
	for i := range b.rig.Plan.Stands {
		if s := &b.rig.Plan.Stands[i]; s.Title(i+1) == f.Name {
			return topOf(s), true
		}
	}
	if f.Name != "" {
		return r3.Vec{}, false
	}
	at := vec(f.At)
	if !f.Deep {
		at.Z = level
	}
	return b.rig.Pose.Out(at), true
}

func topOf(s *plan.Stand) r3.Vec {
	return r3.Vec{X: float64(s.At[0]), Y: float64(s.At[1]), Z: float64(s.Rise)}
}

// placed tells whether the rig itself holds a part of that name, or parts under it.
func (b *builder) placed(id string) bool {
	for i := range b.rig.Parts {
		if own := b.rig.Parts[i].ID; own == id || strings.HasPrefix(own, id+".") {
			return true
		}
	}
	return false
}

// stands builds mast, legs, arm and bags of every stand.
func (b *builder) stands() {
	for i := range b.rig.Plan.Stands {
		s := &b.rig.Plan.Stands[i]
		id := "stand." + s.Title(i+1)
		b.drop(id)
		b.add(id, false, b.stand(s)...)
	}
}

// drop takes away what was built of a stand's part that the rig holds: its shape is
// built here.
func (b *builder) drop(id string) {
	kept := b.scene.bodies[:0]
	for _, each := range b.scene.bodies {
		if each.part != id {
			kept = append(kept, each)
		}
	}
	b.scene.bodies = kept
}

func (b *builder) stand(s *plan.Stand) []solid {
	foot, top := r3.Vec{X: float64(s.At[0]), Y: float64(s.At[1])}, topOf(s)
	solids := []solid{bar(foot, top, mastDiameter/2)}
	entry := b.rig.Kit.Stand[s.Kit]
	join := r3.Vec{X: foot.X, Y: foot.Y, Z: math.Min(legJoinHeight, top.Z)}
	bag := foot
	for leg := range entry.Legs {
		sin, cos := math.Sincos(float64(s.Turn) + 2*math.Pi*float64(leg)/float64(entry.Legs))
		end := r3.Add(foot, r3.Vec{X: cos * float64(entry.Base) / 2, Y: sin * float64(entry.Base) / 2})
		solids = append(solids, bar(join, end, legDiameter/2))
		if s.Bags != nil && s.Bags.At.Leg == leg+1 {
			bag = r3.Scale(0.5, r3.Add(join, end))
		}
	}
	if s.Bags != nil {
		half := [3]float64{0.2, 0.15, 0.08}
		solids = append(solids, block(shape.Box{Pose: shape.At(r3.Add(bag, r3.Vec{Z: half[2]})), Half: half}))
	}
	if s.Holds != nil && s.Holds.Arm != nil {
		a := s.Holds.Arm
		sin, cos := math.Sincos(float64(a.Bearing))
		end := r3.Add(top, r3.Vec{X: cos * float64(a.Reach), Y: sin * float64(a.Reach), Z: float64(a.Rise)})
		solids = append(solids, bar(top, end, armDiameter/2))
	}
	return solids
}

// points are the building's own: they are seen, and nobody asks them to move.
func (b *builder) points() {
	for i := range b.rig.Points {
		p := &b.rig.Points[i]
		b.scene.bodies = append(b.scene.bodies, body{part: "point." + p.Name, solids: []solid{lump(p.InRoom, fittingSize)}})
	}
}
