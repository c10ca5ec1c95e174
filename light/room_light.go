package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// RoomLight is what a room throws back of an engine's light. It does not change and
// may be used from many goroutines.
type RoomLight struct {
	hall    *Hall
	direct  []float64 // straight from the box, mean per patch, lx
	fine    []fineLight
	uneven  []float64 // what the unevenness within patches adds, lx
	arrives []float64 // in all, lx
	leaves  []float64 // lm/m2
}

// Light solves the exchange for what an engine's box gives:
//
//	E = direct + sum of factor * B,   B = reflectance * E
func (h *Hall) Light(e *Engine) *RoomLight {
	l := &RoomLight{hall: h}
	l.direct, l.fine = h.directOn(e)
	l.spreadUneven()
	l.solve()
	return l
}

// solve goes round (Gauss and Seidel) until nothing changes; in a closed room of
// reflectance r every round leaves at most r of the error.
func (l *RoomLight) solve() {
	h := l.hall
	n := h.count
	l.arrives, l.leaves = make([]float64, n), make([]float64, n)
	if l.uneven == nil {
		l.uneven = make([]float64, n)
	}
	var lit []int
	for i, r := range h.reflect {
		if r > 0 {
			lit = append(lit, i)
			l.leaves[i] = r * l.direct[i]
		}
	}
	for range mostRounds {
		change, size := 0.0, 0.0
		for _, i := range lit {
			b := h.reflect[i] * (l.direct[i] + l.uneven[i] + l.from(i))
			change, size = math.Max(change, math.Abs(b-l.leaves[i])), math.Max(size, b)
			l.leaves[i] = b
		}
		if change <= 1e-10*size {
			break
		}
	}
	for i := range n {
		l.arrives[i] = l.direct[i] + l.uneven[i] + l.from(i)
	}
}

// from is what all other patches send to one.
func (l *RoomLight) from(i int) float64 {
	n := l.hall.count
	row := l.hall.factor[i*n:][:n]
	sum := 0.0
	for j, b := range l.leaves {
		sum += row[j] * b
	}
	return sum
}

// At is what the room throws back (lx) at a place in the room's axes, without what
// comes straight from the box. Outside of the room, and inside the box, it is 0. A
// flat receiver that lies on a face of the room gets nothing from that face.
func (l *RoomLight) At(p, facing r3.Vec, receptor Receptor) float64 {
	length := r3.Norm(facing)
	if !(length > 0) || math.IsInf(length, 0) || math.IsNaN(p.X+p.Y+p.Z) || math.IsInf(p.X+p.Y+p.Z, 0) {
		return math.NaN()
	}
	if !l.hall.room.holds(p) || l.hall.inBlock(p) {
		return 0
	}
	w := l.hall.memory.Get().(*glance)
	defer l.hall.memory.Put(w)
	p = l.hall.inside(p)
	l.hall.look(w, p)
	m := meter{receptor, r3.Scale(1/length, facing)}
	if receptor == Cylinder {
		return l.around(w, p, m.faces)
	}
	return l.at(w, p, m)
}

// at adds up what is seen from a place from which the blocks have been looked at.
func (l *RoomLight) at(w *glance, p r3.Vec, m meter) float64 {
	sum := 0.0
	l.hall.seen(w, p, m, l.hall.lit, func(patch int, share float64) { sum += share * l.leaves[patch] })
	for i := range l.fine {
		sum += l.fine[i].seen(w, l.hall, p, m)
	}
	return math.Max(0, sum)
}

// around is the mean over a cylinder's side: of flat receivers that look away from
// its axis all around.
func (l *RoomLight) around(w *glance, p, axis r3.Vec) float64 {
	first := r3.Cross(axis, r3.Vec{X: 1})
	if math.Abs(axis.X) > 0.7 {
		first = r3.Cross(axis, r3.Vec{Y: 1})
	}
	first = r3.Unit(first)
	sum := 0.0
	for k := range waysAround {
		sum += l.at(w, p, meter{Flat, shape.Turn(first, axis, 2*math.Pi*float64(k)/waysAround)})
	}
	return sum / waysAround
}

// waysAround is how many flat receivers stand for a cylinder: light from one direction
// alone would be 2 / (waysAround^2 - 1) off, at worst.
const waysAround = 24

// inside moves a place on a face of the room a hair off it.
func (h *Hall) inside(p r3.Vec) r3.Vec {
	hold := func(x, low, high float64) float64 { return math.Min(math.Max(x, low+onFace), high-onFace) }
	low, high := h.room.Low, h.room.High
	return r3.Vec{X: hold(p.X, low.X, high.X), Y: hold(p.Y, low.Y, high.Y), Z: hold(p.Z, low.Z, high.Z)}
}

// Vector is the light vector (lx) of what the room throws back.
func (l *RoomLight) Vector(p r3.Vec) r3.Vec {
	along := func(x r3.Vec) float64 { return l.At(p, x, Flat) - l.At(p, r3.Scale(-1, x), Flat) }
	return r3.Vec{X: along(r3.Vec{X: 1}), Y: along(r3.Vec{Y: 1}), Z: along(r3.Vec{Z: 1})}
}
