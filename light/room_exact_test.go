package light

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// lit solves a hall for given direct light.
func lit(h *Hall, direct func(patch int) float64) *RoomLight {
	l := &RoomLight{hall: h, direct: make([]float64, h.count)}
	for i := range l.direct {
		l.direct[i] = direct(i)
	}
	l.solve()
	return l
}

// Furnace: where every face of a closed room emits M and reflects r, M / (1 - r)
// leaves every place, so that r M / (1 - r) arrives back everywhere, whatever the
// mesh and the meter. Holds for any closed enclosure.
func TestRoomFurnace(t *testing.T) {
	for _, r := range []float64{0.1, 0.5, 0.9} {
		h := hallOf(t, roomOf(7, 5, 3, r, r, r), nil, shape.Identity(), 12)
		l := lit(h, func(int) float64 { return 1 })
		for i, e := range l.arrives {
			rel(t, fmt.Sprint("patch ", i), e, 1/(1-r), 1e-7)
		}
		for _, p := range []r3.Vec{{X: 0.3, Y: -0.2, Z: 1}, {X: 3.49, Y: 2.4, Z: 0.01}, {X: -1, Y: 2.499, Z: 2.9}} {
			for _, n := range []r3.Vec{{Z: 1}, {X: -1}, {X: 1, Y: 2, Z: -0.5}} {
				for receptor, sees := range map[Receptor]float64{Flat: 1, Dome: 2, Scalar: 1} {
					rel(t, fmt.Sprint(p, n, receptor), l.At(p, n, receptor), sees*r/(1-r), 1e-7)
				}
				rel(t, "cylinder", l.At(p, n, Cylinder), r/(1-r), 2e-3)
			}
		}
		if v := r3.Norm(l.Vector(r3.Vec{X: 1, Y: 1, Z: 1})); v > 1e-7 {
			t.Errorf("light from everywhere has no direction, got %g", v)
		}
	}
}

// The same with set walls in the room: square ones, a triangle and one with a bay,
// leaning, standing on the floor and hanging free.
func TestRoomFurnaceSetWalls(t *testing.T) {
	t.Parallel()
	room := roomOf(7, 5, 3, 0.5, 0.5, 0.5)
	room.Surfaces = []SetWall{
		{shape.Polygon{{X: -2, Y: 1}, {X: 1.5, Y: 1}, {X: 1.5, Y: 1, Z: 2}, {X: -2, Y: 1, Z: 2}}, 0.5},
		{shape.Polygon{{X: 2, Y: -2}, {X: 2.5, Y: -0.5}, {X: 2.3, Y: -1, Z: 1.7}}, 0.5},
		{shape.Polygon{{X: -1, Y: -1, Z: 1}, {X: 0.5, Y: -1, Z: 1}, {X: 0.5, Y: -0.5, Z: 1.2}, {X: -0.3, Y: -0.5, Z: 1.2}, {X: -0.3, Y: 0, Z: 1.4}, {X: -1, Y: 0, Z: 1.4}}, 0.5},
	}
	h := hallOf(t, room, nil, shape.Identity(), 16)
	l := lit(h, func(int) float64 { return 1 })
	var all spread
	for i, e := range l.arrives {
		if i < h.first && h.void[i] {
			continue
		}
		all.add(e, 2)
	}
	t.Logf("%d patches, closure %.2g", h.count, h.Closure())
	all.check(t, "arrives", 5e-4, 3e-3)
	if h.Closure() > 2e-3 { // where set walls stand on the floor and meet
		t.Errorf("closure %g", h.Closure())
	}
	// What a receiver sees is cut exactly; only the patches' own light is as above.
	for _, p := range []r3.Vec{{X: 0.3, Y: 1.3, Z: 1}, {X: -0.5, Y: -0.7, Z: 0.8}, {X: 2.2, Y: -1, Z: 0.5}} {
		for _, n := range []r3.Vec{{Z: 1}, {Y: -1}, {X: 1, Y: 2, Z: -0.5}} {
			rel(t, fmt.Sprint(p, n), l.At(p, n, Flat), 1, 1e-3)
			rel(t, fmt.Sprint(p, n), l.At(p, n, Scalar), 1, 1e-3)
		}
	}
}

// CIE 171:2006, 5.6: reflector 4 x 4 m in z = 0 that leaves 1; reading over
// exitance in %, as printed there and by the closed form.
func TestRoomReflector(t *testing.T) {
	h := hallOf(t, roomOf(4, 4, 3, 1, 0, 0), nil, shape.Identity(), 8)
	l := &RoomLight{hall: h, leaves: make([]float64, h.count)}
	for i := range h.sides[roomFloor].patches() {
		l.leaves[i] = 1
	}
	for _, c := range []struct {
		id             string
		p, n           r3.Vec
		closed, printd float64
	}{
		{"B", r3.Vec{X: 0, Y: -2, Z: 0.75}, r3.Vec{Y: 1}, 35.900505, 35.901},
		{"C", r3.Vec{X: 0, Y: -2, Z: 1.25}, r3.Vec{Y: 1}, 27.991624, 27.992},
		{"D", r3.Vec{X: 0, Y: -2, Z: 1.75}, r3.Vec{Y: 1}, 21.638511, 21.639},
		{"E", r3.Vec{X: 0, Y: -2, Z: 2.25}, r3.Vec{Y: 1}, 16.716315, 16.716},
		{"F", r3.Vec{X: 0, Y: -2, Z: 2.75}, r3.Vec{Y: 1}, 12.967372, 12.967},
		{"G", r3.Vec{X: 0, Y: -1.75, Z: 3}, r3.Vec{Z: -1}, 26.795188, 26.80},
		{"H", r3.Vec{X: 0, Y: -1.25, Z: 3}, r3.Vec{Z: -1}, 30.938711, 30.94},
		{"I", r3.Vec{X: 0, Y: -0.75, Z: 3}, r3.Vec{Z: -1}, 33.975719, 33.98},
		{"J", r3.Vec{X: 0, Y: -0.25, Z: 3}, r3.Vec{Z: -1}, 35.566592, 35.57},
	} {
		got := 100 * l.At(c.p, c.n, Flat)
		rel(t, c.id, got, c.closed, 3e-6) // a place on a wall counts 1e-6 m off it
		rel(t, c.id+" as printed", got, c.printd, 5e-4)
	}
}

// CIE 171:2006, 5.8: 10 000 lm from the middle of a closed cube of 4 m, the same to
// all directions: mean indirect illuminance (flux / surface) r / (1 - r), as printed
// and by the formula, which is exact for the mean of any closed room.
func TestRoomInterreflection(t *testing.T) {
	for _, c := range [][3]float64{{0.05, 5.482456, 5.48}, {0.1, 11.574074, 11.6}, {0.2, 26.041667, 26.0}, {0.3, 44.642857, 44.6}, {0.4, 69.444444, 69.4},
		{0.5, 104.166667, 104}, {0.6, 156.25, 156}, {0.7, 243.055556, 243}, {0.8, 416.666667, 417}, {0.9, 937.5, 937}, {0.95, 1979.166667, 1979}} {
		h := hallOf(t, roomOf(4, 4, 4, c[0], c[0], c[0]), nil, shape.Identity(), 8)
		eye := r3.Vec{Z: 2}
		l := lit(h, func(i int) float64 {
			return 10000 / (4 * math.Pi) * solidAngle(h.outline(i), eye) / h.area[i]
		})
		sum, area := 0.0, 0.0
		for i, e := range l.arrives {
			sum, area = sum+h.area[i]*(e-l.direct[i]), area+h.area[i]
		}
		rel(t, fmt.Sprint("reflectance ", c[0]), sum/area, c[1], 1e-6)
		rel(t, fmt.Sprint("reflectance ", c[0], " as printed"), sum/area, c[2], 5e-3)
	}
}

// outline of a room's patch.
func (h *Hall) outline(patch int) shape.Polygon {
	for k := range h.sides {
		if s := &h.sides[k]; patch < s.first+s.patches() {
			return s.outline(s.cell(patch - s.first))
		}
	}
	return nil
}

// Energy in a closed room: all that the lamps give is absorbed, sum of
// area (1 - reflectance) illuminance = flux.
func TestRoomEnergy(t *testing.T) {
	room := roomOf(9, 6, 4, 0.2, 0.5, 0.8)
	room.Walls = [4]float64{0.1, 0.9, 0.4, 0}
	h := hallOf(t, room, nil, shape.Identity(), 12)
	l := lit(h, func(i int) float64 { return float64(i % 7) })
	flux, absorbed := 0.0, 0.0
	for i, e := range l.arrives {
		flux += h.area[i] * l.direct[i]
		absorbed += h.area[i] * (1 - h.reflect[i]) * e
	}
	rel(t, "absorbed, lm", absorbed, flux, 1e-7)
	if h.Closure() > 1e-9 {
		t.Errorf("closure of an empty room %g", h.Closure())
	}
}

// Three-surface room 12 x 12 x 8 ft, one patch to a face, the ceiling emits 1 lm/m2:
// reflectances of ceiling, walls and floor, then what arrives on ceiling, wall and
// floor. Zonal cavities by the closed forms of Siegel and Howell (C-11, C-14), solved
// as three equations.
func TestRoomThreeSurfaces(t *testing.T) {
	for _, c := range [][6]float64{
		{0, 0, 0, 0, 0.25497874, 0.32005669},
		{0, 0.1, 0.2, 0.04120188, 0.28632418, 0.33952511},
		{0, 0.5, 0.2, 0.15353079, 0.36779414, 0.44509627},
		{0.4, 0.5, 0.3, 0.18652828, 0.41196582, 0.48399324},
		{0.4, 0.8, 0.5, 0.47298277, 0.65304703, 0.73583718},
	} {
		h := hallOf(t, roomOf(12, 12, 8, c[2], c[1], c[0]), nil, shape.Identity(), 1)
		if h.count != 6 {
			t.Fatalf("%d patches, want one to a face", h.count)
		}
		ceiling := h.sides[roomCeiling].first
		l := lit(h, func(i int) float64 { return h.factor[i*h.count+ceiling] })
		near := func(what string, got, want float64) {
			if math.Abs(got-want) > 2e-8 {
				t.Errorf("%v %s: %.8f, want %.8f", c[:3], what, got, want)
			}
		}
		near("ceiling", l.arrives[ceiling], c[3])
		near("wall", l.arrives[h.sides[roomWalls].first], c[4])
		near("floor", l.arrives[h.sides[roomFloor].first], c[5])
	}
}

// Form factors of whole rectangles: catalog of configuration factors C-11 and C-14,
// put together from the patches of a fine mesh.
func TestRoomFactors(t *testing.T) {
	h := hallOf(t, roomOf(12, 12, 8, 0, 0, 0), nil, shape.Identity(), 12)
	whole := func(f, g int) float64 {
		sum, a, b := 0.0, &h.sides[f], &h.sides[g]
		for i := range a.patches() {
			for j := range b.patches() {
				sum += h.area[a.first+i] * h.factor[(a.first+i)*h.count+b.first+j]
			}
		}
		return sum / 144
	}
	rel(t, "C-11 12 x 12 at 8", whole(roomFloor, roomCeiling), 0.3200566885, 1e-9)
	for side := range 4 {
		rel(t, "C-14 12 x 12 to 8", whole(roomFloor, roomWalls+side), 0.1699858279, 1e-9)
		rel(t, "C-14 12 x 12 to 8", whole(roomCeiling, roomWalls+side), 0.1699858279, 1e-9)
	}
}
