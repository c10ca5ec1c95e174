package fit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
	"softloft/shape"
)

// block is a body in the room for clearances: a rectangular block, whose half edges may
// be 0, so that a rope or a mast is a block as well.
type block struct {
	name string
	part string
	path string
	shape.Box
}

// segment is a block without thickness between two places.
func segment(name, part, path string, from, to r3.Vec) block {
	along := r3.Sub(to, from)
	length := r3.Norm(along)
	pose := shape.At(r3.Scale(0.5, r3.Add(from, to)))
	if length > 0 {
		pose.X = r3.Scale(1/length, along)
		pose.Y = r3.Unit(r3.Cross(least(pose.X), pose.X))
		pose.Z = r3.Cross(pose.X, pose.Y)
	}
	return block{name, part, path, shape.Box{Pose: pose, Half: [3]float64{length / 2}}}
}

// least is the axis that a direction leans least toward.
func least(v r3.Vec) r3.Vec {
	switch x, y, z := math.Abs(v.X), math.Abs(v.Y), math.Abs(v.Z); {
	case x <= y && x <= z:
		return r3.Vec{X: 1}
	case y <= z:
		return r3.Vec{Y: 1}
	}
	return r3.Vec{Z: 1}
}

// near returns the place of a block that is nearest to a place.
func (b block) near(at r3.Vec) r3.Vec {
	in := b.Pose.In(at)
	clamp := func(x, half float64) float64 { return math.Max(-half, math.Min(half, x)) }
	return b.Pose.Out(r3.Vec{X: clamp(in.X, b.Half[0]), Y: clamp(in.Y, b.Half[1]), Z: clamp(in.Z, b.Half[2])})
}

// top is the height of a block's highest corner.
func (b block) top() float64 {
	_, high := b.Extent()
	return high.Z
}

// boxBlock is the whole box: from its lowest edge up to its depth.
func boxBlock(r *rig.Rig) block {
	x, y := r.Optics.Size[0]/2, r.Optics.Size[1]/2
	low, high := -r.LowestBy, r.Optics.Depth
	pose := r.Pose
	pose.Origin = r.Pose.Out(r3.Vec{Z: (low + high) / 2})
	return block{"the box", "box", "box", shape.Box{Pose: pose, Half: [3]float64{x, y, (high - low) / 2}}}
}

// bodies are what must keep clear: the box, its lines and bridles' legs, what stands.
func bodies(r *rig.Rig) []block {
	all := []block{boxBlock(r)}
	for i := range r.Lines {
		l := &r.Lines[i]
		if top, ok := r.Top(l); ok {
			all = append(all, segment("line "+l.Name, "line."+l.Name+".rope", l.Path, r.Pose.Out(l.Attach), top))
			if l.Pulley != nil && l.TieOff != nil {
				all = append(all, segment("haul side of "+l.Name, "line."+l.Name+".rope", l.Path, top, l.TieOff.InRoom))
			}
		}
		if l.Bridle == nil {
			continue
		}
		for _, name := range l.Bridle.Points {
			if p, ok := r.PointNamed(name); ok {
				all = append(all, segment("bridle of "+l.Name, "line."+l.Name+".rope", l.Path, l.Bridle.ApexInRoom, p.InRoom))
			}
		}
	}
	for i := range r.Stands {
		all = append(all, standBlocks(&r.Stands[i])...)
	}
	return all
}

// standBlocks are a stand's mast, legs and arm.
func standBlocks(s *rig.Stand) []block {
	all := []block{segment("stand "+s.Name, s.Part, s.Path, s.Foot, s.Top())}
	for leg := 1; leg <= s.Legs; leg++ {
		all = append(all, segment("a leg of stand "+s.Name, s.Part, s.Path, s.Foot, s.LegFoot(leg)))
	}
	if s.Arm != nil {
		all = append(all, segment("the arm of stand "+s.Name, s.Arm.Part, s.Path, s.Arm.From, s.Arm.To))
	}
	return all
}

// meets reports whether a convex polygon passes through a block by more than a touch.
func meets(p shape.Polygon, b block) bool {
	var cut shape.Cutter
	const touch = 1e-3 // m: standing against a wall is not standing in it
	for axis, dir := range [3]r3.Vec{b.Pose.X, b.Pose.Y, b.Pose.Z} {
		half := math.Max(b.Half[axis]-touch, touch)
		for _, sign := range [2]float64{-1, 1} {
			through := r3.Add(b.Pose.Origin, r3.Scale(sign*half, dir))
			if p = cut.Clip(p, through, r3.Scale(-sign, dir)); p == nil {
				return false
			}
		}
	}
	return true
}
