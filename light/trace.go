package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// holdsPoint tells whether a point is in the box.
func (e *Engine) holdsPoint(p r3.Vec) bool {
	return math.Abs(p.X) < e.scene.Size[0]/2 && math.Abs(p.Y) < e.scene.Size[1]/2 && p.Z > 0 && p.Z < e.top()
}

// top is the level of the highest face.
func (e *Engine) top() float64 { return math.Max(e.scene.Depth, e.planes[0].z) }

// crosses tells whether the occluder stands on the way.
func (o *occluder) crosses(a, b r3.Vec) bool {
	what := subject{center: b, low: b, high: b}
	if o.clear(a, &what) {
		return false
	}
	if o.solid != nil {
		return o.solid.Crosses(a, b)
	}
	return o.polygon.Crosses(a, b)
}

// trace follows a direction from a place in a chamber to the box's shell and
// adds every patch whose light comes from there: the first one, and through
// planes that pass some the next ones. Only what lies beyond `from` counts, and
// openings send nothing.
func (e *Engine) trace(chamber int, at, d, from r3.Vec, share float64, out []covering) []covering {
	step := 1
	if d.Z > 0 {
		step = -1
	}
	beyond := r3.Norm2(r3.Sub(from, at)) / r3.Norm2(d) * (1 - 1e-12)
	for {
		index, t := e.rooms[chamber].exit(at, d)
		if index < 0 {
			return out
		}
		f := &e.faces[index]
		if t*t >= beyond {
			if patch := f.patchAt(r3.Add(at, r3.Scale(t, d))); !f.open[patch] {
				out = append(out, covering{f.first + patch, share})
			}
		}
		next := chamber + step
		if f.kind == wall || next < 0 || next >= len(e.planes) {
			return out
		}
		share *= e.planes[max(chamber, next)-1].passes()
		if share == 0 {
			return out
		}
		chamber = next
	}
}

// room is a chamber's extent and its faces: per axis the low and the high one.
type room struct {
	low, high [3]float64
	face      [3][2]int
}

// exit is the face through which a ray leaves, and where; -1 for none.
func (r *room) exit(at, d r3.Vec) (index int, t float64) {
	index, t = -1, math.Inf(1)
	a, v := components(at), components(d)
	for i := range a {
		if v[i] > 0 {
			if q := (r.high[i] - a[i]) / v[i]; q < t {
				index, t = r.face[i][1], q
			}
		} else if v[i] < 0 {
			if q := (r.low[i] - a[i]) / v[i]; q < t {
				index, t = r.face[i][0], q
			}
		}
	}
	return index, t
}

// measureRooms notes every chamber's extent.
func (e *Engine) measureRooms() {
	e.rooms = make([]room, len(e.planes))
	for i := range e.faces {
		f := &e.faces[i]
		r := &e.rooms[f.chamber]
		if f.toward > 0 {
			r.low[f.normal], r.face[f.normal][0] = f.level, i
		} else {
			r.high[f.normal], r.face[f.normal][1] = f.level, i
		}
	}
}

// patchAt is the patch that holds a point of the face.
func (f *face) patchAt(p r3.Vec) int {
	x := components(p)
	u, v := f.across()
	i, _ := locate(f.patchU, x[u])
	j, _ := locate(f.patchV, x[v])
	return j*(len(f.patchU)-1) + i
}
