package sight

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// window is what a lens takes in from one place at one yaw while it tilts from a least
// to a greatest pitch.
type window struct {
	eye       r3.Vec
	ahead     r3.Vec // level, along the yaw
	right     r3.Vec
	low, high float64 // pitch
	frame     frame
	edges     [3][2]r3.Vec // forward and up at the least, the greatest and the middle pitch
}

func (w *way) window(eye r3.Vec, yaw, pitch float64) window {
	sin, cos := math.Sincos(yaw)
	v := window{eye: eye, ahead: r3.Vec{X: cos, Y: sin}, right: r3.Vec{X: sin, Y: -cos},
		low: pitch + w.tilt[0], high: pitch + w.tilt[1], frame: w.frame}
	for i, pitch := range [3]float64{v.low, v.high, (v.low + v.high) / 2} {
		v.edges[i][0], v.edges[i][1] = v.axes(pitch)
	}
	return v
}

// axes are where the lens looks and what is up for it at a pitch.
func (v *window) axes(pitch float64) (forward, up r3.Vec) {
	sin, cos := math.Sincos(pitch)
	return r3.Add(r3.Scale(cos, v.ahead), r3.Vec{Z: sin}), r3.Add(r3.Scale(-sin, v.ahead), r3.Vec{Z: cos})
}

// planes are the inward normals of the frame's four sides at a pitch, not of unit
// length.
func (v *window) planes(pitch float64) [4]r3.Vec {
	f, u := v.axes(pitch)
	a, b := r3.Scale(v.frame.across, f), r3.Scale(v.frame.up, f)
	return [4]r3.Vec{r3.Sub(a, v.right), r3.Add(a, v.right), r3.Sub(b, u), r3.Add(b, u)}
}

// smallest is the area, as a share of the frame, from which on something counts as seen.
const smallest = 1e-12

// crop is what of a convex polygon lies in the frame at a pitch.
func (v *window) crop(c *shape.Cutter, p shape.Polygon, pitch float64) shape.Polygon {
	for _, normal := range v.planes(pitch) {
		if p = c.Clip(p, v.eye, normal); p == nil {
			return nil
		}
	}
	return p
}

// share is the share of the frame that a cropped polygon fills.
func (v *window) share(p shape.Polygon, pitch float64) float64 {
	f, u := v.axes(pitch)
	var twice float64
	var xs, ys [2]float64
	for i := 0; i <= len(p); i++ {
		d := r3.Sub(p[i%len(p)], v.eye)
		depth := r3.Dot(f, d)
		if depth <= 0 {
			return 0
		}
		xs[1], ys[1] = r3.Dot(v.right, d)/(depth*v.frame.across), r3.Dot(u, d)/(depth*v.frame.up)
		if i > 0 {
			twice += xs[0]*ys[1] - xs[1]*ys[0]
		}
		xs[0], ys[0] = xs[1], ys[1]
	}
	return math.Abs(twice) / 2 / 4
}

// takes tells whether something of a convex polygon comes into frame at some pitch of
// the range, and at which. Between the extremes a direction at an elevation in the range
// is best looked at with that very pitch: then it is in frame where it lies sideways by
// no more than the half angle of its distance from the tilt's axis. What lies farther to
// one side is a convex cone, so that a polygon misses only if all its corners do so on
// the same side.
func (v *window) takes(c *shape.Cutter, p shape.Polygon) (pitch float64, ok bool) {
	for _, end := range [2]float64{v.low, v.high} {
		if piece := v.crop(c, p, end); piece != nil && v.share(piece, end) > smallest {
			return end, true
		}
	}
	if v.high <= v.low {
		return 0, false
	}
	lowUp, highUp := v.edges[0][1], v.edges[1][1]
	if p = c.Clip(p, v.eye, lowUp); p == nil {
		return 0, false
	}
	if p = c.Clip(p, v.eye, r3.Scale(-1, highUp)); p == nil {
		return 0, false
	}
	return v.between(p)
}

// between is takes for what lies in the wedge of the range's pitches.
func (v *window) between(p shape.Polygon) (float64, bool) {
	var left, right r3.Vec // the corners farthest to both sides
	var most [2]float64
	for i := range p {
		d := r3.Sub(p[i], v.eye)
		side, pitch, out := v.sideways(d)
		switch {
		case !out:
			return pitch, true
		case side < most[0]:
			left, most[0] = d, side
		case side > most[1]:
			right, most[1] = d, side
		}
	}
	if most[0] == 0 || most[1] == 0 {
		return 0, false
	}
	// It passes before the lens: between two corners it crosses the plane of tilt.
	t := most[0] / (most[0] - most[1])
	_, pitch, _ := v.sideways(r3.Add(left, r3.Scale(t, r3.Sub(right, left))))
	return math.Max(v.low, math.Min(v.high, pitch)), true
}

// holds tells whether a place is in frame at some pitch of the range.
func (v *window) holds(x r3.Vec) bool {
	d := r3.Sub(x, v.eye)
	if _, pitch, out := v.sideways(d); !out && pitch >= v.low && pitch <= v.high {
		return true
	}
	for _, end := range [2]float64{v.low, v.high} {
		in := true
		for _, normal := range v.planes(end) {
			in = in && r3.Dot(normal, d) > 0
		}
		if in {
			return true
		}
	}
	return false
}

// sideways is how far to the right a direction lies, its elevation in the plane of tilt,
// and whether it is out of frame to the side at that pitch.
func (v *window) sideways(d r3.Vec) (side, pitch float64, out bool) {
	side = r3.Dot(v.right, d)
	ahead := r3.Dot(v.ahead, d)
	return side, math.Atan2(d.Z, ahead), math.Abs(side) > v.frame.across*length(ahead, d.Z)
}

// misses tells whether a convex hull stays out of frame for every pitch of the range,
// also with lens and aim anywhere in their play. A turn about the upright moves a place
// by the angle times its level distance, one up or down by the angle times its distance.
// It may say false of a hull that does stay out, never true of one that doesn't: each of
// the tests holds a convex region that is outside of all frames against all corners, with
// the most that its boundary can move.
func (v *window) misses(corners []r3.Vec, by play) bool {
	lowAhead, lowUp, highAhead, highUp := v.edges[0][0], v.edges[0][1], v.edges[1][0], v.edges[1][1]
	stretchedUp := length(1, v.frame.up)
	top := r3.Scale(1/stretchedUp, r3.Sub(r3.Scale(v.frame.up, highAhead), highUp))
	bottom := r3.Scale(1/stretchedUp, r3.Add(r3.Scale(v.frame.up, lowAhead), lowUp))
	middle := v.edges[2][0]
	half := math.Atan(v.frame.up)
	behind := (v.high-v.low)/2+half < math.Pi/2
	single := v.high-v.low+2*half < math.Pi // top and bottom bound one wedge
	above, below, back, left, right := single, single, behind, true, true
	over, overSlope := v.beyond(v.high, by.pitch)
	under, underSlope := v.beyond(-v.low, by.pitch)
	stretched := length(1, v.frame.across)
	for _, x := range corners {
		d := r3.Sub(x, v.eye)
		level := length(d.X, d.Y)
		slack := by.shift + by.yaw*level + by.pitch*math.Sqrt(r3.Norm2(d))
		over = over && d.Z-overSlope*level > by.shift*length(1, overSlope)
		under = under && -d.Z-underSlope*level > by.shift*length(1, underSlope)
		above = above && r3.Dot(top, d) < -slack
		below = below && r3.Dot(bottom, d) < -slack
		back = back && r3.Dot(middle, d) < -slack
		side := r3.Dot(v.right, d)
		most := v.frame.across*v.farthest(d) + stretched*slack
		left, right = left && -side > most, right && side > most
		if !above && !below && !back && !left && !right && !over && !under {
			return false
		}
	}
	return true
}

// beyond is the slope of the cone about the upright that no frame of any yaw reaches
// into, looking up as far as a pitch and its play: the middle of the upper edge is the
// steepest of a frame that looks up, and none of one whose upper edge is under the
// horizon looks up at all. False where a frame takes in the zenith, or the lens may tilt
// past it or past the nadir. The same with the signs changed is below.
func (v *window) beyond(pitch, play float64) (bool, float64) {
	edge := pitch + math.Atan(v.frame.up) + play
	if edge >= math.Pi/2-1e-9 || v.low-play < -math.Pi/2 || v.high+play > math.Pi/2 {
		return false, 0
	}
	return true, math.Tan(math.Max(0, edge))
}

// farthest is how far ahead a direction lies at the pitch of the range that looks most
// toward it. As the largest of linear functions it is convex, so that what lies farther
// to one side than a multiple of it is a convex region.
func (v *window) farthest(d r3.Vec) float64 {
	if r3.Dot(v.edges[0][1], d) >= 0 && r3.Dot(v.edges[1][1], d) <= 0 && r3.Dot(v.edges[2][0], d) > 0 {
		return length(r3.Dot(v.ahead, d), d.Z)
	}
	return math.Max(r3.Dot(v.edges[0][0], d), r3.Dot(v.edges[1][0], d))
}

// length is a plain one: distances here neither overflow nor vanish.
func length(a, b float64) float64 { return math.Sqrt(a*a + b*b) }
