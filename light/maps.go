package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
	"softloft/source"
)

// Map is the light (lx) on nodes of a rectangle, edges included: across fastest from
// the lower left, seen from where the light falls.
type Map struct {
	Name   string
	Nodes  [2]int // across, up
	Center r3.Vec // in the room, m; of the cloth in the box's axes
	Across r3.Vec // the rectangle's whole edges, m
	Up     r3.Vec
	Lux    []float64
}

// Maps are the light on all surfaces that the answers tell numbers of. What the plan
// does not have is nil.
type Maps struct {
	Area  *Map // the action's, at its height
	Floor *Map
	Walls []Map // north, south, east, west
	Cloth *Map  // arriving on the lowest one, on its lamp side
	// Asked is the level (lx) that the asked stop needs on a flat receptor; NaN where no
	// stop is asked.
	Asked float64
	// Key is the area's mean, lx; NaN where there is no area.
	Key float64
}

// MapsOf works out a rig's maps; an error says why there is no light.
func MapsOf(r *rig.Rig) (*Maps, error) {
	w := &work{rig: r}
	if err := w.prepare(); err != nil {
		return nil, err
	}
	m := &Maps{Asked: math.NaN(), Key: math.NaN()}
	if x := w.exposure(); x != nil {
		m.Asked = luxFor(x, source.FlatReceptor())
	}
	if r.Plan.Action != nil && r.Plan.Action.Area != nil {
		a := r.Plan.Action.Area
		center := r3.Vec{X: float64(a.At[0]), Y: float64(a.At[1]), Z: float64(a.Height)}
		area := w.mapOf("area", center, r3.Vec{X: float64(a.Size[0])}, r3.Vec{Y: float64(a.Size[1])}, r3.Vec{Z: 1})
		m.Area = &area
		m.Key, _, _ = trapezoid(area.Lux, mapNodes)
	}
	if room, ok := RoomOf(r); ok {
		size := r3.Sub(room.High, room.Low)
		middle := r3.Scale(0.5, r3.Add(room.Low, room.High))
		middle.Z = room.Low.Z
		floor := w.mapOf("floor", middle, r3.Vec{X: size.X}, r3.Vec{Y: size.Y}, r3.Vec{Z: 1})
		m.Floor = &floor
		for i, name := range wallNames {
			center, across, up, inward := w.wall(i)
			if r3.Dot(r3.Cross(up, inward), across) < 0 { // seen from inside, left to right
				across = r3.Scale(-1, across)
			}
			m.Walls = append(m.Walls, w.mapOf(name, center, across, up, inward))
		}
	}
	m.Cloth = w.clothMap()
	return m, nil
}

// mapNodes is the number of nodes along each edge; a cloth near its lamps has more.
const mapNodes, clothNodes = 33, 65

func (w *work) mapOf(name string, center, across, up, facing r3.Vec) Map {
	points := nodes(center, across, up, [2]int{mapNodes, mapNodes})
	return Map{name, [2]int{mapNodes, mapNodes}, center, across, up, w.grid(w.now, points, mapNodes, facing)}
}

// clothMap is what arrives on the lowest cloth, on nodes from edge to edge of its clear
// part; nil where there is no cloth.
func (w *work) clothMap() *Map {
	if len(w.rig.Optics.Cloths) == 0 {
		return nil
	}
	e := w.now.engine
	const hair = 1e-6
	size := e.scene.Clear
	m := Map{"cloth", [2]int{clothNodes, clothNodes}, r3.Vec{}, r3.Vec{X: size[0]}, r3.Vec{Y: size[1]}, make([]float64, clothNodes*clothNodes)}
	points := nodes(m.Center, r3.Scale(1-hair, m.Across), r3.Scale(1-hair, m.Up), m.Nodes)
	overCores(len(points), func(i int) {
		s := e.memory.Get().(*sight)
		defer e.memory.Put(s)
		m.Lux[i] = e.onCloth(s, points[i].X, points[i].Y)
	})
	return &m
}
