package light

import (
	"fmt"
	"math"
	"sync"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/quantity"
	"softloft/rig"
	"softloft/shape"
)

// Room is a rectangular room by its corners, in the room's own axes (m), with the
// diffuse reflectances (0 to 1) of its six faces and of what stands in it.
type Room struct {
	Low, High r3.Vec
	Floor     float64
	Ceiling   float64
	Walls     [4]float64 // north, south, east, west
	Surfaces  []SetWall
}

// SetWall is a flat surface in the room that reflects on both faces.
type SetWall struct {
	Corners     shape.Polygon
	Reflectance float64
}

// RoomOf is the room of a rig's plan; false outdoors, and where it has no size.
func RoomOf(r *rig.Rig) (Room, bool) {
	p := r.Plan.Room
	if p == nil || p.Size == nil || p.Outdoors != nil {
		return Room{}, false
	}
	x, y, z := float64(p.Size[0]), float64(p.Size[1]), float64(p.Size[2])
	room := Room{Low: r3.Vec{X: -x / 2, Y: -y / 2}, Floor: p.Reflectance.Floor, Ceiling: p.Reflectance.Ceiling}
	if p.Origin != nil {
		room.Low = r3.Vec{X: -float64(p.Origin[0]), Y: -float64(p.Origin[1])}
	}
	room.High = r3.Add(room.Low, r3.Vec{X: x, Y: y, Z: z})
	own := [4]*float64{North: p.Reflectance.North, South: p.Reflectance.South, East: p.Reflectance.East, West: p.Reflectance.West}
	for i, value := range own {
		room.Walls[i] = p.Reflectance.Walls
		if value != nil {
			room.Walls[i] = *value
		}
	}
	for _, s := range p.Surfaces {
		room.Surfaces = append(room.Surfaces, SetWall{cornersOf(s.Corners), s.Reflectance})
	}
	return room, true
}

// check finds what the exchange cannot be computed for.
func (r *Room) check() error {
	size := components(r3.Sub(r.High, r.Low))
	for _, length := range size {
		if !(length > 0) || math.IsInf(length, 0) {
			return fmt.Errorf("room size %g x %g x %g m: each must be above 0", size[0], size[1], size[2])
		}
	}
	for _, value := range append([]float64{r.Floor, r.Ceiling}, r.Walls[:]...) {
		if !share(value) {
			return fmt.Errorf("room reflectance %g: it must be 0 to 1", value)
		}
	}
	for i, s := range r.Surfaces {
		if !share(s.Reflectance) {
			return fmt.Errorf("surface %d reflectance %g: it must be 0 to 1", i+1, s.Reflectance)
		}
	}
	return nil
}

// holds tells whether a place is in the room or on its faces.
func (r *Room) holds(p r3.Vec) bool {
	low, high, x := components(r.Low), components(r.High), components(p)
	for i := range x {
		if x[i] < low[i]-onFace || x[i] > high[i]+onFace {
			return false
		}
	}
	return true
}

// onFace is how near (m) to a face of the room a place counts as on it.
const onFace = 1e-6

// Hall is a room with a box in it, worked out as far as the lamps do not matter: its
// patches, and the form factors between them. It does not change and may be used from
// many goroutines.
type Hall struct {
	room    Room
	pose    shape.Pose // of the box
	sides   [6]roomSide
	leaves  []leaf
	first   int    // patch of the leaves
	void    []bool // room's patches that are leaves instead
	count   int    // of patches
	area    []float64
	reflect []float64
	factor  []float64   // [from*count+to]
	blocks  []occluder  // the box's, then the set walls'
	boxes   int         // how many of them are the box's
	solids  []shape.Box // of the blocks: nothing is seen from inside
	box     []float64   // form factor of every patch to the box
	lit     []bool      // what reflects at all
	closure float64
	memory  *sync.Pool
}

// PrepareRoom works out a room in which a scene's box hangs in a pose. The box's
// outside, its cloth plane, crate and skirts count as black: they block and return
// nothing.
func PrepareRoom(room Room, scene *Scene, pose shape.Pose) (*Hall, error) {
	return prepareRoom(room, scene, pose, patchesAlong)
}

// snapped puts the set walls' corners on a grid of a nanometer, so that no corner
// stands off a plane by less than can be told.
func (r Room) snapped() Room {
	surfaces := make([]SetWall, len(r.Surfaces))
	snap := func(x float64) float64 { return math.Round(x*1e9) / 1e9 }
	for i, s := range r.Surfaces {
		corners := make(shape.Polygon, len(s.Corners))
		for k, c := range s.Corners {
			corners[k] = r3.Vec{X: snap(c.X), Y: snap(c.Y), Z: snap(c.Z)}
		}
		s.Corners = corners
		surfaces[i] = s
	}
	r.Surfaces = surfaces
	return r
}

// patchesAlong is the number of patches along the room's longest edge.
const patchesAlong = 16

func prepareRoom(room Room, scene *Scene, pose shape.Pose, along int) (*Hall, error) {
	if err := room.check(); err != nil {
		return nil, err
	}
	h := &Hall{room: room.snapped(), pose: pose}
	h.memory = &sync.Pool{New: func() any { return new(glance) }}
	if scene != nil {
		h.gatherBlocks(scene)
	}
	h.gatherWalls()
	h.mesh(along)
	h.factor = make([]float64, h.count*h.count)
	h.emptyRoom()
	h.crossings()
	for _, r := range h.reflect {
		h.lit = append(h.lit, r > 0)
	}
	return h, nil
}

// Closure is how far the form factors of a patch to all that it sees, the box
// included, add up to something else than 1, at worst; nothing is made to fit.
func (h *Hall) Closure() float64 { return h.closure }

// Patches is the size of the exchange.
func (h *Hall) Patches() int { return h.count }

// cornersOf are a plan's corners as a polygon.
func cornersOf(corners [][3]quantity.Length) shape.Polygon {
	var out shape.Polygon
	for _, c := range corners {
		out = append(out, r3.Vec{X: float64(c[0]), Y: float64(c[1]), Z: float64(c[2])})
	}
	return out
}

// Missing lists what the room's light leaves out, in plain words.
func (h *Hall) Missing() []string {
	var out []string
	for _, b := range h.solids {
		for _, corner := range (occluder{solid: b}).corners() {
			if !h.room.holds(corner) {
				return append(out, "the box sticks out of the room: what the room throws back is that of what hangs inside")
			}
		}
	}
	return out
}

// corners of the upright block that holds the occluder.
func (o occluder) corners() [2]r3.Vec {
	low, high := o.solid.Extent()
	return [2]r3.Vec{low, high}
}
