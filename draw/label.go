package draw

import "math"

// labels places texts beside places so that they cover neither each other nor what
// must stay readable.
type labels struct {
	items []Item
	taken []Box // texts: never covered
	busy  []Box // lines and symbols: covered only where nothing else is left
	frame Box

	bodies []body // a text in one of them reads as its name
}

// body is what a filled area of a part covers.
type body struct {
	part string
	box  Box
}

// put places a text near an anchor: at the first of the places around it that is
// free, else where it covers least. A leader joins a text that had to go far.
func (l *labels) put(item Item, gap float64) {
	at := item.Points[0]
	best, bestCost := item, math.Inf(1)
	far := 0.0
	for ring := 0; ring < 4; ring++ {
		reach := gap + float64(ring)*1.1*item.Size
		for _, place := range around(at, reach, item.Size) {
			candidate := item
			candidate.Points, candidate.Anchor = []Point{place.at}, place.anchor
			if cost := l.cost(candidate.Bounds()) + l.misread(candidate) + 0.4*float64(ring); cost < bestCost-1e-9 {
				best, bestCost, far = candidate, cost, reach
			}
		}
		if bestCost < 0.5+0.4*float64(ring) {
			break
		}
	}
	if far > gap+0.5*item.Size {
		l.items = append(l.items, leader(at, best))
	}
	if l.covers(best.Bounds()) {
		l.items = append(l.items, mask(best))
	}
	l.keep(best)
}

// covers tells whether a box lies on lines, so that the paper behind a text has to be
// cleared.
func (l *labels) covers(b Box) bool {
	for _, t := range l.busy {
		if b.Overlap(t) > 0.05 {
			return true
		}
	}
	return false
}

// keep places a text where it is.
func (l *labels) keep(item Item) {
	l.items = append(l.items, item)
	l.taken = append(l.taken, item.Bounds().grown(0.25))
}

func (l *labels) cost(b Box) float64 {
	cost := 0.05 * b.outside(l.frame)
	if b.outside(l.frame) > 1e-9 {
		cost += 50
	}
	for _, t := range l.taken {
		cost += 20 * b.Overlap(t)
	}
	for _, t := range l.busy {
		cost += 4 * b.Overlap(t)
	}
	return cost
}

// misread is what it costs that a text lies in another part's body.
func (l *labels) misread(item Item) float64 {
	var cost float64
	b := item.Bounds()
	for _, other := range l.bodies {
		if other.part != item.Part {
			cost += 3 * b.Overlap(other.box)
		}
	}
	return cost
}

type anchored struct {
	at     Point
	anchor Anchor
}

func around(at Point, gap, size float64) []anchored {
	up := gap + 0.35*size
	return []anchored{
		{Point{at.X + gap, at.Y - up}, Start}, {Point{at.X + gap, at.Y + up}, Start},
		{Point{at.X - gap, at.Y - up}, End}, {Point{at.X - gap, at.Y + up}, End},
		{Point{at.X + gap, at.Y}, Start}, {Point{at.X - gap, at.Y}, End},
		{Point{at.X, at.Y - up - 0.2*size}, Middle}, {Point{at.X, at.Y + up + 0.2*size}, Middle},
	}
}

// leader is a hairline from a place to the near end of its text.
func leader(at Point, text Item) Item {
	b := text.Bounds()
	to := Point{math.Max(b.Left, math.Min(b.Right, at.X)), math.Max(b.Top, math.Min(b.Bottom, at.Y))}
	return Line(text.Layer, pen(Hairline).in(Dark), at, to)
}

// avoid marks the boxes of paths as busy, segment by segment.
func (l *labels) avoid(items []Item) {
	for _, item := range items {
		if item.Text != "" {
			l.taken = append(l.taken, item.Bounds().grown(0.25))
			continue
		}
		if item.Fill == Pale && item.Part != "" {
			l.bodies = append(l.bodies, body{item.Part, item.Bounds()})
		}
		if item.Pen.Weight == 0 || item.Pen.Ink == Faint || len(item.Points) < 2 {
			continue
		}
		points := item.Points
		if item.Closed && len(points) > 0 {
			points = append(append([]Point(nil), points...), points[0])
		}
		for i := 1; i < len(points); i++ {
			l.segment(points[i-1], points[i], item.Pen.Weight)
		}
	}
}

// segment marks a segment as short boxes, so that an oblique one doesn't take its
// whole rectangle.
func (l *labels) segment(a, b Point, weight float64) {
	pieces := 1
	if math.Abs(a.X-b.X) > 1 && math.Abs(a.Y-b.Y) > 1 {
		pieces = int(math.Ceil(math.Min(math.Max(math.Abs(a.X-b.X), math.Abs(a.Y-b.Y))/1.5, 200)))
	}
	for i := range pieces {
		f, t := float64(i)/float64(pieces), float64(i+1)/float64(pieces)
		p := Point{a.X + f*(b.X-a.X), a.Y + f*(b.Y-a.Y)}
		q := Point{a.X + t*(b.X-a.X), a.Y + t*(b.Y-a.Y)}
		box := Box{math.Min(p.X, q.X), math.Min(p.Y, q.Y), math.Max(p.X, q.X), math.Max(p.Y, q.Y)}
		l.busy = append(l.busy, box.grown(0.15+weight/2))
	}
}
