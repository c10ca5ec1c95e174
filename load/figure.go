package load

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"
)

// onFigure returns the place under or over a point on the figure that some points
// make: on their plane where the point stands inside their outline as seen from
// above, else at the nearest place of the outline.
func onFigure(points []r3.Vec, at r3.Vec) (foot r3.Vec, inside bool) {
	outline := hull(points)
	if len(outline) >= 3 {
		inside = true
		for i, p := range outline {
			q := outline[(i+1)%len(outline)]
			cross := (q.X-p.X)*(at.Y-p.Y) - (q.Y-p.Y)*(at.X-p.X)
			if cross <= insideBy*math.Hypot(q.X-p.X, q.Y-p.Y) {
				inside = false
			}
		}
	}
	if inside {
		return r3.Vec{X: at.X, Y: at.Y, Z: at.Z}, true
	}
	best := math.Inf(1)
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		place := nearestInPlan(p, q, at)
		if d := math.Hypot(place.X-at.X, place.Y-at.Y); d < best {
			best, foot = d, place
		}
	}
	return foot, false
}

// insideBy is how far inside an outline a point must stand to count as inside, in m.
const insideBy = 1e-6

// nearestInPlan returns the place between p and q that is nearest to at as seen
// from above, with its height.
func nearestInPlan(p, q, at r3.Vec) r3.Vec {
	dx, dy := q.X-p.X, q.Y-p.Y
	norm := dx*dx + dy*dy
	if norm == 0 {
		return p
	}
	t := math.Max(0, math.Min(1, ((at.X-p.X)*dx+(at.Y-p.Y)*dy)/norm))
	return r3.Add(p, r3.Scale(t, r3.Sub(q, p)))
}

// hull returns the outline of points as seen from above, counter-clockwise (the
// monotone chain of Andrew, 1979). Points on a straight edge are left out.
func hull(points []r3.Vec) []r3.Vec {
	sorted := append([]r3.Vec(nil), points...)
	sort.Slice(sorted, func(i, j int) bool {
		if sorted[i].X != sorted[j].X {
			return sorted[i].X < sorted[j].X
		}
		return sorted[i].Y < sorted[j].Y
	})
	if len(sorted) < 3 {
		return sorted
	}
	half := func(points []r3.Vec) []r3.Vec {
		var chain []r3.Vec
		for _, p := range points {
			for len(chain) >= 2 && turn(chain[len(chain)-2], chain[len(chain)-1], p) <= 1e-12 {
				chain = chain[:len(chain)-1]
			}
			chain = append(chain, p)
		}
		return chain[:len(chain)-1]
	}
	lower := half(sorted)
	for i, j := 0, len(sorted)-1; i < j; i, j = i+1, j-1 {
		sorted[i], sorted[j] = sorted[j], sorted[i]
	}
	return append(lower, half(sorted)...)
}

// turn is positive where the way p, q, r turns left as seen from above.
func turn(p, q, r r3.Vec) float64 {
	return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X)
}
