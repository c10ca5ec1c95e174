package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// View is a parallel view: U to the right on the paper, V up, W toward the viewer, all
// unit vectors of the room.
type View struct{ U, V, W r3.Vec }

// FromAbove is the view of a plan: x to the right, y up.
func FromAbove() View { return View{U: r3.Vec{X: 1}, V: r3.Vec{Y: 1}, W: r3.Vec{Z: 1}} }

// Along is the view of a section that runs along a level direction of the room: that
// direction to the right, z up.
func Along(direction r3.Vec) View {
	u := r3.Unit(r3.Vec{X: direction.X, Y: direction.Y})
	return View{U: u, V: r3.Vec{Z: 1}, W: r3.Cross(u, r3.Vec{Z: 1})}
}

// in takes a place of the room into the view: X is u, Y is v, Z is w.
func (v View) in(at r3.Vec) r3.Vec {
	return r3.Vec{X: r3.Dot(at, v.U), Y: r3.Dot(at, v.V), Z: r3.Dot(at, v.W)}
}

// face is a flat convex polygon in the view that hides what is behind it.
type face struct {
	corners shape.Polygon // counter-clockwise as seen
	normal  r3.Vec        // Z > 0
}

// edgeOn is how small a face's area in the view may be, against its area in the
// room, before it hides nothing.
const edgeOn = 1e-6

// faceOf prepares a polygon for hiding; ok is false for one that is seen on edge.
func faceOf(corners shape.Polygon) (face, bool) {
	n := corners.Normal()
	size := r3.Norm(n)
	if len(corners) < 3 || size == 0 || math.Abs(n.Z) < edgeOn*size {
		return face{}, false
	}
	f := face{corners: corners, normal: r3.Scale(1/size, n)}
	if n.Z < 0 {
		f.normal = r3.Scale(-1, f.normal)
		f.corners = make(shape.Polygon, len(corners))
		for i, c := range corners {
			f.corners[len(corners)-1-i] = c
		}
	}
	return f, true
}

// depth is the face's w at a place of the view.
func (f face) depth(u, v float64) float64 {
	c := f.corners[0]
	return c.Z - (f.normal.X*(u-c.X)+f.normal.Y*(v-c.Y))/f.normal.Z
}

// touching is how much, in m, a line may lie behind a face and still count as on it.
const touching = 1e-6

// hides returns the part of the way from a to b that lies behind the face, from 0 to
// 1; from ≥ to where nothing does. A line on the face's outline isn't behind it.
func (f face) hides(a, b r3.Vec) (from, to float64) {
	from, to = 0, 1
	cut := func(atA, atB float64) { // keeps where the value is positive
		switch {
		case atA <= 0 && atB <= 0:
			to = from
		case atA < 0:
			from = math.Max(from, atA/(atA-atB))
		case atB < 0:
			to = math.Min(to, atA/(atA-atB))
		}
	}
	for i, p := range f.corners {
		q := f.corners[(i+1)%len(f.corners)]
		du, dv := q.X-p.X, q.Y-p.Y
		long := math.Hypot(du, dv)
		if long == 0 {
			continue
		}
		inside := func(x r3.Vec) float64 { return (du*(x.Y-p.Y)-dv*(x.X-p.X))/long - touching }
		cut(inside(a), inside(b))
	}
	behind := func(x r3.Vec) float64 { return f.depth(x.X, x.Y) - x.Z - touching }
	cut(behind(a), behind(b))
	return from, to
}

// span is a part of a way, from 0 to 1.
type span struct{ from, to float64 }

// visible splits the way from a to b into what no face hides, and what is hidden.
func visible(a, b r3.Vec, faces []face) (seen, hidden []span) {
	seen = []span{{0, 1}}
	for _, f := range faces {
		from, to := f.hides(a, b)
		if to-from < 1e-9 {
			continue
		}
		var rest []span
		for _, s := range seen {
			low, high := math.Max(s.from, from), math.Min(s.to, to)
			if high <= low {
				rest = append(rest, s)
				continue
			}
			hidden = append(hidden, span{low, high})
			if low > s.from {
				rest = append(rest, span{s.from, low})
			}
			if high < s.to {
				rest = append(rest, span{high, s.to})
			}
		}
		seen = rest
	}
	return seen, hidden
}

func between(a, b r3.Vec, t float64) r3.Vec { return r3.Add(a, r3.Scale(t, r3.Sub(b, a))) }
