package light

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// roomWalk counts photons in a room: from the panel of a box, by the cosine law, from
// surface to surface until they are absorbed. It shares with the exchange nothing but
// whether a straight way is free.
type roomWalk struct {
	random  *rand.Rand
	faces   []roomWalkFace
	meters  []walkReceiver
	batch   []float64 // lx of each meter in this batch, without direct light
	landed  float64   // lm that first arrive on the room and the set walls
	swallow float64   // lm that the box takes after they were in the room
}

type roomWalkFace struct {
	polygon shape.Polygon
	normal  r3.Vec
	reflect float64 // both faces alike
	box     bool
}

func (w *roomWalk) add(p shape.Polygon, reflect float64, box bool) {
	w.faces = append(w.faces, roomWalkFace{p, r3.Unit(p.Normal()), reflect, box})
}

// hit is the first face on a ray.
func (w *roomWalk) hit(p, d r3.Vec) (*roomWalkFace, float64) {
	var found *roomWalkFace
	nearest := math.Inf(1)
	for i := range w.faces {
		f := &w.faces[i]
		fall := r3.Dot(f.normal, d)
		if fall == 0 {
			continue
		}
		t := r3.Dot(f.normal, r3.Sub(f.polygon[0], p)) / fall
		if t > 1e-9 && t < nearest && f.polygon.Covers(r3.Add(p, r3.Scale(t, d))) {
			found, nearest = f, t
		}
	}
	return found, nearest
}

// go1 walks one photon.
func (w *roomWalk) go1(p, d r3.Vec, lm float64) {
	for bounce := 0; ; bounce++ {
		f, t := w.hit(p, d)
		if f == nil {
			return
		}
		if f.box {
			if bounce > 0 {
				w.swallow += lm
			}
			return
		}
		if bounce == 0 {
			w.landed += lm
		}
		if w.random.Float64() >= f.reflect {
			return
		}
		n := f.normal
		if r3.Dot(n, d) > 0 {
			n = r3.Scale(-1, n)
		}
		p = r3.Add(r3.Add(p, r3.Scale(t, d)), r3.Scale(1e-7, n))
		w.tell(p, n, lm)
		d = w.lambert(n)
	}
}

// lambert is a direction about a normal, by the cosine law.
func (w *roomWalk) lambert(n r3.Vec) r3.Vec {
	inner := walk{random: w.random}
	return inner.lambert(n)
}

// tell sends a photon's reflection to all meters.
func (w *roomWalk) tell(p, n r3.Vec, lm float64) {
	for i, m := range w.meters {
		d := r3.Sub(m.p, p)
		r2 := r3.Norm2(d)
		d = r3.Scale(1/math.Sqrt(r2), d)
		share := r3.Dot(n, d) * -r3.Dot(m.n, d) / (math.Pi * r2)
		if r3.Dot(n, d) <= 0 || r3.Dot(m.n, d) >= 0 {
			continue
		}
		free := true
		for k := range w.faces {
			free = free && !w.faces[k].polygon.Crosses(p, m.p)
		}
		if free {
			w.batch[i] += lm * share
		}
	}
}

// walkRoom is a room of six reflectances with a box that hangs turned and tilted, one
// skirt, and two set walls: one leans, one stands on the floor.
func walkRoom() (Room, Scene, shape.Pose) {
	room := Room{Low: r3.Vec{X: -2.5, Y: -3}, High: r3.Vec{X: 3.5, Y: 2.4, Z: 3.6}, Floor: 0.4, Ceiling: 0.7, Walls: [4]float64{0.5, 0.3, 0.8, 0.6}}
	room.Surfaces = []SetWall{
		{shape.Polygon{{X: 1.6, Y: -2}, {X: 1.6, Y: 0.6}, {X: 1.6, Y: 0.6, Z: 1.8}, {X: 1.6, Y: -2, Z: 1.4}}, 0.7},
		{shape.Polygon{{X: -2, Y: 1, Z: 0.3}, {X: -0.5, Y: 1.3, Z: 0.3}, {X: -0.8, Y: 1.8, Z: 2}}, 0.5},
	}
	s := Scene{Size: [2]float64{2, 1.4}, Clear: [2]float64{2, 1.4}, Depth: 0.5, Skirts: [4]float64{East: 0.3},
		Lamps: []Lamp{downward(0, 0, 0, 2, 1.4, 2.8e3)}}
	for i := range s.Sides {
		s.Sides[i] = Side{true, 0.04, 0.04}
	}
	pose := shape.At(r3.Vec{X: 0.2, Y: -0.3, Z: 2.5}).Rotated(r3.Vec{Z: 1}, 0.4)
	pose = pose.Rotated(pose.X, 0.25)
	for _, wall := range room.Surfaces {
		var p shape.Polygon
		for _, c := range wall.Corners {
			p = append(p, pose.In(c))
		}
		s.Outside = append(s.Outside, p)
	}
	return room, s, pose
}

func TestWalkRoom(t *testing.T) {
	t.Parallel()
	room, s, pose := walkRoom()
	e := prepared(t, s)
	h := hallOf(t, room, &s, pose, patchesAlong)
	l := h.Light(e)
	meters := []walkReceiver{
		{r3.Vec{X: 0.2, Y: -0.3, Z: 1}, r3.Vec{Z: 1}}, {r3.Vec{X: -1.5, Y: -2, Z: 1}, r3.Vec{Z: 1}}, {r3.Vec{X: 0.5, Y: 0, Z: 1.2}, r3.Vec{X: -1}},
		{r3.Vec{X: 0.5, Y: 0, Z: 1.2}, r3.Vec{Z: -1}}, {r3.Vec{X: 2.6, Y: -1, Z: 0.7}, r3.Vec{X: -1}}, {r3.Vec{X: -1, Y: 2.1, Z: 1}, r3.Vec{Y: -1}},
		{r3.Vec{X: 0.2, Y: -0.3, Z: 3.3}, r3.Vec{Z: 1}}, {r3.Vec{X: -2, Y: 0, Z: 2.6}, r3.Unit(r3.Vec{X: 1, Y: 0.3, Z: 0.4})},
	}
	w := &roomWalk{random: rand.New(rand.NewPCG(3, 4)), meters: meters}
	for k := range h.sides {
		side := &h.sides[k]
		p := side.outline(side.place(side.lineU[0], side.lineV[0]), side.place(side.lineU[side.nu()], side.lineV[side.nv()]))
		w.add(p, h.reflectance(k), false)
	}
	for _, wall := range room.Surfaces {
		w.add(wall.Corners, wall.Reflectance, false)
	}
	x, y, z := r3.Scale(1, pose.X), r3.Scale(0.7, pose.Y), r3.Scale(0.25, pose.Z)
	middle := pose.Out(r3.Vec{Z: 0.25})
	for _, axes := range [3][3]r3.Vec{{x, y, z}, {y, z, x}, {z, x, y}} {
		for _, sign := range [2]float64{-1, 1} {
			w.add(shape.Rectangle(r3.Add(middle, r3.Scale(sign, axes[2])), axes[0], axes[1]), 0, true)
		}
	}
	w.add(shape.Rectangle(pose.Out(r3.Vec{X: 1, Z: -0.15}), y, r3.Scale(0.15, pose.Z)), 0, true)

	const batches, photons = 20, 20000
	sum, square := make([]float64, len(meters)), make([]float64, len(meters))
	for range batches {
		w.batch = make([]float64, len(meters))
		for range photons {
			p := pose.Out(r3.Vec{X: 2 * (w.random.Float64() - 0.5), Y: 1.4 * (w.random.Float64() - 0.5), Z: -1e-7})
			w.go1(p, w.lambert(r3.Scale(-1, pose.Z)), 2800.0/photons/batches)
		}
		for i, lux := range w.batch {
			sum[i], square[i] = sum[i]+lux, square[i]+lux*lux
		}
	}
	off := 0.0
	for i, m := range meters {
		deviation := math.Sqrt(math.Max(0, square[i]-sum[i]*sum[i]/batches) * batches / (batches - 1))
		got := l.At(m.p, m.n, Flat)
		d := math.Abs(got - sum[i])
		t.Logf("%v facing %v: %.5g lx, walk %.5g +- %.2g (%+.2f %%)", m.p, m.n, got, sum[i], deviation, 100*(got/sum[i]-1))
		if d > 0.03*sum[i]+3*deviation {
			t.Errorf("meter %d: %.5g lx, walk %.5g +- %.2g", i, got, sum[i], deviation)
		}
		off += math.Pow(math.Max(0, d-deviation)/sum[i], 2)
	}
	if off = math.Sqrt(off / float64(len(meters))); off > 0.01 {
		t.Errorf("rms %.3g %% beyond the walk's own error", 100*off)
	}
	// A tally of its own: what lands, and what the box takes of what comes back.
	landed, swallowed, absorbed := 0.0, 0.0, 0.0
	for i := range h.count {
		if i < h.first && h.void[i] {
			continue
		}
		landed += h.area[i] * l.direct[i]
		swallowed += h.area[i] * l.leaves[i] * h.box[i]
		absorbed += h.area[i] * (1 - h.reflect[i]) * l.arrives[i]
	}
	sure := func(lm float64) float64 { return 0.003 + 3/math.Sqrt(lm/2800*batches*photons) }
	t.Logf("closure %.2g; landed %.5g lm, walk %.5g lm; the box takes %.5g lm, walk %.5g lm", h.Closure(), landed, w.landed, swallowed, w.swallow)
	rel(t, "landed, lm", landed, w.landed, sure(w.landed))
	rel(t, "the box takes, lm", swallowed, w.swallow, sure(w.swallow))
	rel(t, "absorbed in all, lm", absorbed+swallowed, landed, 1e-3)
}
