package draw

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// stroke is one line of the room, seen in the view, before hiding.
type stroke struct {
	layer  Layer
	part   string
	pen    Pen
	path   []r3.Vec // in the view
	closed bool
	behind Dash // how what is hidden is drawn
	drop   bool // what is hidden is left out
}

// fill is one filled face.
type fill struct {
	layer  Layer
	part   string
	ink    Ink
	face   face
	nearer float64
}

// sketch gathers what a view shows, in m, and puts it on paper.
type sketch struct {
	view    View
	cut     float64 // what lies nearer to the viewer than this w is cut away; +Inf for nothing
	strokes []stroke
	fills   []fill
	faces   []face
}

func newSketch(v View) *sketch { return &sketch{view: v, cut: math.Inf(1)} }

// line draws a path of the room. What is hidden is left out.
func (s *sketch) line(layer Layer, part string, with Pen, room ...r3.Vec) {
	s.add(stroke{layer: layer, part: part, pen: with, path: s.seen(room), drop: true})
}

// through draws a path of the room that shows dashed where something hides it.
func (s *sketch) through(layer Layer, part string, with Pen, closed bool, room ...r3.Vec) {
	s.add(stroke{layer: layer, part: part, pen: with, path: s.seen(room), closed: closed, behind: Dotted})
}

func (s *sketch) seen(room []r3.Vec) []r3.Vec {
	path := make([]r3.Vec, len(room))
	for i, at := range room {
		path[i] = s.view.in(at)
	}
	return path
}

// add keeps a stroke, split where the cutting plane cuts it.
func (s *sketch) add(k stroke) {
	if math.IsInf(s.cut, 1) {
		s.strokes = append(s.strokes, k)
		return
	}
	path := k.path
	if k.closed && len(path) > 0 {
		path = append(append([]r3.Vec(nil), path...), path[0])
	}
	whole := true
	for _, p := range path {
		whole = whole && p.Z <= s.cut+touching
	}
	if whole {
		s.strokes = append(s.strokes, k)
		return
	}
	k.closed = false
	for i := 1; i < len(path); i++ {
		a, b, ok := s.behindCut(path[i-1], path[i])
		if ok {
			k.path = []r3.Vec{a, b}
			s.strokes = append(s.strokes, k)
		}
	}
}

// behindCut returns the part of a way that the cutting plane leaves.
func (s *sketch) behindCut(a, b r3.Vec) (from, to r3.Vec, ok bool) {
	nearA, nearB := a.Z > s.cut+touching, b.Z > s.cut+touching
	switch {
	case nearA && nearB:
		return a, b, false
	case nearA:
		return between(a, b, (a.Z-s.cut)/(a.Z-b.Z)), b, true
	case nearB:
		return a, between(a, b, (s.cut-a.Z)/(b.Z-a.Z)), true
	}
	return a, b, true
}

// area draws a convex face of the room with its outline; hides tells whether it hides
// what is behind it.
func (s *sketch) area(layer Layer, part string, with Pen, ink Ink, hides bool, room ...r3.Vec) {
	corners := s.clipped(s.seen(room))
	if len(corners) < 2 {
		return
	}
	f, ok := faceOf(corners)
	if ok && ink != None {
		nearer := math.Inf(-1)
		for _, c := range corners {
			nearer = math.Max(nearer, c.Z)
		}
		s.fills = append(s.fills, fill{layer: layer, part: part, ink: ink, face: f, nearer: nearer})
	}
	if ok && hides {
		s.faces = append(s.faces, f)
	}
	if with.Weight > 0 {
		s.add(stroke{layer: layer, part: part, pen: with, path: corners, closed: true, drop: true})
	}
}

// clipped cuts a face at the cutting plane.
func (s *sketch) clipped(corners []r3.Vec) []r3.Vec {
	if math.IsInf(s.cut, 1) {
		return corners
	}
	var cutter shape.Cutter
	return append([]r3.Vec(nil), cutter.Clip(corners, r3.Vec{Z: s.cut + touching}, r3.Vec{Z: -1})...)
}

// window is how the view lies on the paper: the u and v of its lower left corner, and
// where that corner is on the paper.
type window struct {
	scale  Scale
	u, v   float64
	corner Point // of the paper, mm
	width  float64
	height float64
}

func (w window) paper(u, v float64) Point {
	return Point{w.corner.X + w.scale.paper(u-w.u), w.corner.Y - w.scale.paper(v-w.v)}
}

func (w window) box() Box {
	return Box{w.corner.X, w.corner.Y - w.height, w.corner.X + w.width, w.corner.Y}
}

// draw puts the sketch on paper: filled faces from far to near, then lines without what
// is hidden, all cut off at the window.
func (s *sketch) draw(w window) []Item {
	var items []Item
	sort.SliceStable(s.fills, func(i, j int) bool { return s.fills[i].nearer < s.fills[j].nearer })
	for _, f := range s.fills {
		corners := clipPolygon(w.points(f.face.corners), w.box())
		if len(corners) >= 3 {
			items = append(items, Item{Layer: f.layer, Part: f.part, Points: corners, Closed: true, Fill: f.ink})
		}
	}
	for _, k := range s.strokes {
		items = append(items, s.stroke(k, w)...)
	}
	return items
}

func (w window) points(path []r3.Vec) []Point {
	points := make([]Point, len(path))
	for i, p := range path {
		points[i] = w.paper(p.X, p.Y)
	}
	return points
}

// stroke draws one line: whole where nothing hides it.
func (s *sketch) stroke(k stroke, w window) []Item {
	path := k.path
	if k.closed && len(path) > 2 {
		path = append(append([]r3.Vec(nil), path...), path[0])
	}
	var seen, hidden chains
	for i := 1; i < len(path); i++ {
		shown, covered := visible(path[i-1], path[i], s.faces)
		seen.extend(path[i-1], path[i], shown)
		hidden.extend(path[i-1], path[i], covered)
	}
	items := seen.items(k, k.pen, w)
	if !k.drop {
		items = append(items, hidden.items(k, k.pen.with(k.behind), w)...)
	}
	return items
}

// chains are paths that grow segment by segment where ends meet.
type chains [][]r3.Vec

func (c *chains) extend(a, b r3.Vec, spans []span) {
	sort.Slice(spans, func(i, j int) bool { return spans[i].from < spans[j].from })
	for _, s := range spans {
		from, to := between(a, b, s.from), between(a, b, s.to)
		if last := len(*c) - 1; last >= 0 {
			path := (*c)[last]
			if r3.Norm(r3.Sub(path[len(path)-1], from)) < touching {
				(*c)[last] = append(path, to)
				continue
			}
		}
		*c = append(*c, []r3.Vec{from, to})
	}
}

func (c chains) items(k stroke, with Pen, w window) []Item {
	var items []Item
	for _, path := range c {
		for _, points := range clipPath(w.points(path), w.box()) {
			item := Item{Layer: k.layer, Part: k.part, Pen: with, Points: points}
			if n := len(points); n > 3 && near(points[0], points[n-1]) {
				item.Points, item.Closed = points[:n-1], true
			}
			items = append(items, item)
		}
	}
	return items
}

func near(a, b Point) bool { return math.Hypot(a.X-b.X, a.Y-b.Y) < 1e-6 }
