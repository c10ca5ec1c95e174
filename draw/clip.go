package draw

import "math"

// clipPath cuts a path off at a box; it falls into the pieces that lie inside.
func clipPath(path []Point, box Box) [][]Point {
	var pieces [][]Point
	for i := 1; i < len(path); i++ {
		a, b, ok := clipSegment(path[i-1], path[i], box)
		if !ok {
			continue
		}
		if last := len(pieces) - 1; last >= 0 && near(pieces[last][len(pieces[last])-1], a) {
			pieces[last] = append(pieces[last], b)
			continue
		}
		pieces = append(pieces, []Point{a, b})
	}
	return pieces
}

// clipSegment is the part of a segment inside a box (Liang and Barsky 1984, from
// memory).
func clipSegment(a, b Point, box Box) (Point, Point, bool) {
	dx, dy := b.X-a.X, b.Y-a.Y
	from, to := 0.0, 1.0
	for _, side := range [4][2]float64{{-dx, a.X - box.Left}, {dx, box.Right - a.X}, {-dy, a.Y - box.Top}, {dy, box.Bottom - a.Y}} {
		p, q := side[0], side[1]
		switch {
		case p == 0 && q < 0:
			return a, b, false
		case p < 0:
			from = math.Max(from, q/p)
		case p > 0:
			to = math.Min(to, q/p)
		}
	}
	if !(from <= to) {
		return a, b, false
	}
	return Point{a.X + from*dx, a.Y + from*dy}, Point{a.X + to*dx, a.Y + to*dy}, true
}

// clipPolygon cuts a convex polygon off at a box (Sutherland and Hodgman 1974, from
// memory).
func clipPolygon(corners []Point, box Box) []Point {
	for _, inside := range [4]func(Point) float64{
		func(p Point) float64 { return p.X - box.Left }, func(p Point) float64 { return box.Right - p.X },
		func(p Point) float64 { return p.Y - box.Top }, func(p Point) float64 { return box.Bottom - p.Y },
	} {
		var kept []Point
		for i, p := range corners {
			q := corners[(i+1)%len(corners)]
			hp, hq := inside(p), inside(q)
			if hp >= 0 {
				kept = append(kept, p)
			}
			if (hp > 0 && hq < 0) || (hp < 0 && hq > 0) {
				t := hp / (hp - hq)
				kept = append(kept, Point{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y)})
			}
		}
		corners = kept
	}
	return corners
}
