package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// spillNodes is the number of nodes along each edge of a wall.
const spillNodes = 17

// spill reads every wall of the room, and every named surface.
func (w *work) spill() {
	room := w.rig.Plan.Room
	if room == nil {
		return
	}
	if w.indoors() {
		for i, name := range wallNames {
			center, a, b, inward := w.wall(i)
			w.spillOn(name, nodes(center, a, b, [2]int{spillNodes, spillNodes}), inward, spillNodes)
		}
	}
	for _, s := range room.Surfaces {
		w.surface(s.Name, cornersOf(s.Corners))
	}
}

// wallNames are in the order of the sides.
var wallNames = [4]string{North: "north", South: "south", East: "east", West: "west"}

// wall returns a wall's center, its two edges and its inward normal, in the room.
func (w *work) wall(i int) (center, a, b, inward r3.Vec) {
	room := w.rig.Plan.Room
	x, y, z := float64(room.Size[0]), float64(room.Size[1]), float64(room.Size[2])
	corner := r3.Vec{X: -x / 2, Y: -y / 2} // south-west, seen from the origin
	if room.Origin != nil {
		corner = r3.Vec{X: -float64(room.Origin[0]), Y: -float64(room.Origin[1])}
	}
	middle := r3.Add(corner, r3.Vec{X: x / 2, Y: y / 2, Z: z / 2})
	b = r3.Vec{Z: z}
	switch i {
	case North:
		return r3.Add(middle, r3.Vec{Y: y / 2}), r3.Vec{X: x}, b, r3.Vec{Y: -1}
	case South:
		return r3.Add(middle, r3.Vec{Y: -y / 2}), r3.Vec{X: x}, b, r3.Vec{Y: 1}
	case East:
		return r3.Add(middle, r3.Vec{X: x / 2}), r3.Vec{Y: y}, b, r3.Vec{X: -1}
	}
	return r3.Add(middle, r3.Vec{X: -x / 2}), r3.Vec{Y: y}, b, r3.Vec{X: 1}
}

// surface reads a set wall on its brighter face: at the middles of its triangles,
// split until there are enough.
func (w *work) surface(name string, corners shape.Polygon) {
	if len(corners) < 3 {
		return
	}
	normal := r3.Unit(r3.Cross(r3.Sub(corners[1], corners[0]), r3.Sub(corners[2], corners[0])))
	var triangles [][3]r3.Vec
	for i := 2; i < len(corners); i++ {
		triangles = append(triangles, split([3]r3.Vec{corners[0], corners[i-1], corners[i]}, 4)...)
	}
	best := SpillAnswer{On: name, Mean: -1}
	for _, facing := range []r3.Vec{normal, r3.Scale(-1, normal)} {
		told := w.triangles(triangles, facing)
		told.On = name
		if told.Mean > best.Mean {
			best = told
		}
	}
	best.StopsBelow = w.below(float64(best.Max))
	w.answer.Spill = append(w.answer.Spill, best)
}

// split halves a triangle's edges: four triangles of one, depth times over.
func split(t [3]r3.Vec, depth int) [][3]r3.Vec {
	if depth == 0 {
		return [][3]r3.Vec{t}
	}
	mid := func(p, q r3.Vec) r3.Vec { return r3.Scale(0.5, r3.Add(p, q)) }
	ab, bc, ca := mid(t[0], t[1]), mid(t[1], t[2]), mid(t[2], t[0])
	var all [][3]r3.Vec
	for _, part := range [4][3]r3.Vec{{t[0], ab, ca}, {ab, t[1], bc}, {ca, bc, t[2]}, {ab, bc, ca}} {
		all = append(all, split(part, depth-1)...)
	}
	return all
}

// triangles weighs the light at each triangle's middle by its area.
func (w *work) triangles(all [][3]r3.Vec, facing r3.Vec) SpillAnswer {
	var points []r3.Vec
	for _, t := range all {
		middle := r3.Scale(1.0/3, r3.Add(t[0], r3.Add(t[1], t[2])))
		// A hair in front, so that the surface does not shade itself.
		points = append(points, r3.Add(middle, r3.Scale(1e-6, facing)))
	}
	var sum, area, high float64
	for i, lux := range w.dark(w.each(w.now, points, facing, Flat)) {
		size := r3.Norm(r3.Cross(r3.Sub(all[i][1], all[i][0]), r3.Sub(all[i][2], all[i][0])))
		sum, area, high = sum+size*lux, area+size, math.Max(high, lux)
	}
	return SpillAnswer{Mean: Number(sum / area), Max: Number(high)}
}

func (w *work) spillOn(name string, points []r3.Vec, facing r3.Vec, n int) {
	mean, _, high := trapezoid(w.dark(w.grid(w.now, points, n, facing)), n)
	w.answer.Spill = append(w.answer.Spill, SpillAnswer{On: name, Mean: Number(mean), Max: Number(high), StopsBelow: w.below(high)})
}

// dark turns what is left of rounding, where a crate or a skirt lets nothing out,
// into no light at all: less than a millionth of a millionth of what the area gets.
func (w *work) dark(values []float64) []float64 {
	if w.answer.Area == nil {
		return values
	}
	for i, lux := range values {
		if lux < 1e-12*float64(w.answer.Area.Mean) {
			values[i] = 0
		}
	}
	return values
}

// below is how many stops a surface's brightest place lies under the area's mean.
func (w *work) below(high float64) Number {
	if w.answer.Area == nil || high <= 0 {
		return Number(math.NaN())
	}
	return Number(stops(float64(w.answer.Area.Mean), high))
}
