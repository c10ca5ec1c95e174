package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// gatherBlocks lists what stands in the way in the room, in the room's axes: the
// box with crate and skirts, and the set walls. All of it counts as opaque; light
// that goes into the box does not come out again but by what the engine knows.
func (h *Hall) gatherBlocks(scene *Scene) {
	low := 0.0
	if s := scene.Skirts; s[0] > 0 && s[0] == s[1] && s[1] == s[2] && s[2] == s[3] {
		low = -s[0] // nothing goes straight through the hollow under the cloth
	} else {
		for side, drop := range scene.Skirts {
			if drop > 0 {
				e := &Engine{scene: *scene}
				h.block(e.strip(side, -drop, 0))
			}
		}
	}
	if scene.Depth > low {
		h.blockBox(scene.Size, low, scene.Depth)
	} else {
		h.block(shape.Rectangle(r3.Vec{}, r3.Vec{X: scene.Size[0] / 2}, r3.Vec{Y: scene.Size[1] / 2}))
	}
	if c := scene.Crate; c != nil && c.Depth > -low {
		h.blockBox(scene.Clear, -c.Depth, low)
	}
}

// gatherWalls adds the set walls, behind the box's blocks.
func (h *Hall) gatherWalls() {
	h.boxes = len(h.blocks)
	for i := range h.room.Surfaces {
		for _, part := range h.room.Surfaces[i].Corners.Convex() {
			if part.Area() > onFace { // its corners may lie in one line
				h.blocks = append(h.blocks, polygonOccluder(part, -1))
			}
		}
	}
}

// block adds a polygon that is given in box axes.
func (h *Hall) block(p shape.Polygon) {
	out := make(shape.Polygon, len(p))
	for i, corner := range p {
		out[i] = h.pose.Out(corner)
	}
	h.blocks = append(h.blocks, polygonOccluder(out, -1))
}

// blockBox adds a block about the box's axis between two levels in box axes.
func (h *Hall) blockBox(size [2]float64, low, high float64) {
	pose := h.pose
	pose.Origin = h.pose.Out(r3.Vec{Z: (low + high) / 2})
	solid := shape.Box{Pose: pose, Half: [3]float64{size[0] / 2, size[1] / 2, (high - low) / 2}}
	h.solids = append(h.solids, solid)
	h.blocks = append(h.blocks, solidOccluder(solid, -1))
}

// inBlock tells whether a place lies within a solid block.
func (h *Hall) inBlock(p r3.Vec) bool {
	for i := range h.solids {
		x := components(h.solids[i].Pose.In(p))
		inside := true
		for axis, half := range h.solids[i].Half {
			inside = inside && x[axis] > -half && x[axis] < half
		}
		if inside {
			return true
		}
	}
	return false
}
