package shape

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Crosses tells whether the straight way from a to b passes through a convex
// polygon. Ends that touch it do not count.
func (p Polygon) Crosses(a, b r3.Vec) bool {
	if len(p) < 3 {
		return false
	}
	n := p.Normal()
	if r3.Norm2(n) == 0 {
		return false
	}
	ha, hb := r3.Dot(n, r3.Sub(a, p[0])), r3.Dot(n, r3.Sub(b, p[0]))
	slack := touching * length(n)
	if (ha > -slack || hb < slack) && (ha < slack || hb > -slack) {
		return false
	}
	x := r3.Add(a, r3.Scale(ha/(ha-hb), r3.Sub(b, a)))
	return p.covers(x, n)
}

// Crosses tells whether the way from a to b passes through the box.
func (b Box) Crosses(from, to r3.Vec) bool {
	p, q := b.Pose.In(from), b.Pose.In(to)
	at, d := [3]float64{p.X, p.Y, p.Z}, [3]float64{q.X - p.X, q.Y - p.Y, q.Z - p.Z}
	enter, leave := 0.0, 1.0
	for i := range at {
		if d[i] == 0 {
			if math.Abs(at[i]) >= b.Half[i] {
				return false
			}
			continue
		}
		s, t := (-b.Half[i]-at[i])/d[i], (b.Half[i]-at[i])/d[i]
		enter, leave = math.Max(enter, math.Min(s, t)), math.Min(leave, math.Max(s, t))
	}
	return leave > enter
}

// Crosses tells whether the way from a to b passes through the bar.
func (c Cylinder) Crosses(from, to r3.Vec) bool {
	along := r3.Sub(c.To, c.From)
	long := length(along)
	if long == 0 {
		return false
	}
	axis := r3.Scale(1/long, along)
	o, d := r3.Sub(from, c.From), r3.Sub(to, from)
	oa, da := r3.Dot(o, axis), r3.Dot(d, axis)
	ox, dx := r3.Sub(o, r3.Scale(oa, axis)), r3.Sub(d, r3.Scale(da, axis))
	enter, leave, hit := roots(r3.Norm2(dx), r3.Dot(ox, dx), r3.Norm2(ox)-c.Radius*c.Radius)
	if !hit {
		return false
	}
	if da == 0 {
		return oa > 0 && oa < long && leave > 0 && enter < 1 && leave > enter
	}
	s, t := -oa/da, (long-oa)/da
	enter = math.Max(math.Max(enter, 0), math.Min(s, t))
	leave = math.Min(math.Min(leave, 1), math.Max(s, t))
	return leave > enter
}

// roots solves a t2 + 2 b t + c < 0 for the open range of t.
func roots(a, b, c float64) (low, high float64, found bool) {
	if a == 0 {
		return math.Inf(-1), math.Inf(1), c < 0
	}
	d := b*b - a*c
	if d <= 0 {
		return 0, 0, false
	}
	r := math.Sqrt(d)
	return (-b - r) / a, (-b + r) / a, true
}
