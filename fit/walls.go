package fit

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/shape"
)

// walls refuses a box or a stand that stands through a set wall, or outside of the room.
func walls(r *rig.Rig) []finding.Finding {
	room := r.Plan.Room
	if room == nil {
		return nil
	}
	var found []finding.Finding
	all := append([]block{boxBlock(r)}, allStands(r)...)
	for i, s := range room.Surfaces {
		var wall shape.Polygon
		for _, c := range s.Corners {
			wall = append(wall, r3.Vec{X: float64(c[0]), Y: float64(c[1]), Z: float64(c[2])})
		}
		told := map[string]bool{}
		for _, b := range all {
			if !told[b.part] && through(wall, b) {
				told[b.part] = true
				found = append(found, finding.Refused("fit.through."+s.Name+"."+b.part, subject(r, b.part, fmt.Sprintf("room.surfaces[%d]", i)),
					fmt.Sprintf("%s and %s", capital(b.name), s.Name), "the one passes through the other"))
			}
		}
	}
	if room.Size != nil && room.Outdoors == nil {
		found = append(found, outside(r, all)...)
	}
	return found
}

// through reports whether a wall passes through a block, taken apart into triangles:
// exact for convex walls.
func through(wall shape.Polygon, b block) bool {
	for k := 2; k < len(wall); k++ {
		if meets(shape.Polygon{wall[0], wall[k-1], wall[k]}, b) {
			return true
		}
	}
	return false
}

// outside refuses what reaches past the room's walls, floor or ceiling.
func outside(r *rig.Rig, all []block) []finding.Finding {
	low, high := roomExtent(r)
	const touch = 1e-3 // m
	var found []finding.Finding
	told := map[string]bool{}
	for _, b := range all {
		lo, hi := b.Extent()
		where := ""
		switch {
		case lo.X < low.X-touch || lo.Y < low.Y-touch || hi.X > high.X+touch || hi.Y > high.Y+touch:
			where = "it reaches through a wall of the room"
		case hi.Z > high.Z+touch:
			where = "it reaches through the ceiling"
		case lo.Z < low.Z-touch:
			where = "it reaches through the floor"
		}
		if where != "" && !told[b.part] {
			told[b.part] = true
			found = append(found, finding.Refused("fit.outside."+b.part, subject(r, b.part, b.path), capital(b.name)+" in the room", where))
		}
	}
	return found
}

// roomExtent is the room's lowest and highest corner.
func roomExtent(r *rig.Rig) (low, high r3.Vec) {
	size := r.Plan.Room.Size
	if o := r.Plan.Room.Origin; o != nil {
		low = r3.Vec{X: -float64(o[0]), Y: -float64(o[1])}
	} else {
		low = r3.Vec{X: -float64(size[0]) / 2, Y: -float64(size[1]) / 2}
	}
	return low, r3.Add(low, r3.Vec{X: float64(size[0]), Y: float64(size[1]), Z: float64(size[2])})
}

// inLight refuses a stand whose mast is under the box: it shades what the box lights.
func inLight(r *rig.Rig, s *rig.Stand) []finding.Finding {
	at := r.Pose.In(r3.Vec{X: s.Foot.X, Y: s.Foot.Y, Z: r.ClothAt})
	const edge = 0.05 // m: a stand that holds an ear stands at the tube
	if math.Abs(at.X) > r.Optics.Size[0]/2-edge || math.Abs(at.Y) > r.Optics.Size[1]/2-edge {
		return nil
	}
	return []finding.Finding{finding.Refused("fit.in_light."+s.Name, subject(r, s.Part, s.Path), "Stand "+s.Name+" stands under the box", "it stands in the light and shades it")}
}
