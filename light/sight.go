package light

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// occluder is something opaque with the sphere that holds it.
type occluder struct {
	polygon shape.Polygon // or
	solid   shape.Solid
	lamp    int // whose opening or body it is, or -1
	center  r3.Vec
	radius  float64
	// low and high are the corners of an upright block that holds it.
	low, high r3.Vec
}

// occluders by where they come between.
type occluders struct {
	common []occluder // inside and outside, by their lowest level: blockers, lamps' backs and bodies
	shell  []occluder // sides and roof
	lids   []occluder // cloth planes over the whole size, and the crate's hull
	below  []occluder // skirts, and surfaces outside
}

func (e *Engine) gatherOccluders() {
	s, o := &e.scene, &e.hides
	for _, b := range s.Blockers {
		o.common = append(o.common, solidOccluder(b, -1))
	}
	for i := range e.lamps {
		l := &e.lamps[i]
		o.common = append(o.common, polygonOccluder(l.rect, i))
		if l.body != nil {
			o.common = append(o.common, solidOccluder(*l.body, i))
		}
	}
	slices.SortStableFunc(o.common, func(a, b occluder) int { return cmp.Compare(a.low.Z, b.low.Z) })
	for side, at := range s.Sides {
		if at.Present && s.Depth > 0 {
			o.shell = append(o.shell, polygonOccluder(e.strip(side, 0, s.Depth), -1))
		}
		if drop := s.Skirts[side]; drop > 0 {
			o.below = append(o.below, polygonOccluder(e.strip(side, -drop, 0), -1))
		}
	}
	if s.Depth > 0 && !s.Roof.Open {
		o.shell = append(o.shell, polygonOccluder(e.level(s.Size, s.Depth), -1))
	}
	for _, p := range e.planes {
		o.lids = append(o.lids, polygonOccluder(e.level(s.Size, p.z), -1))
	}
	if c := s.Crate; c != nil {
		hull := shape.Box{Pose: shape.At(r3.Vec{Z: -c.Depth / 2}), Half: [3]float64{s.Clear[0] / 2, s.Clear[1] / 2, c.Depth / 2}}
		o.lids = append(o.lids, solidOccluder(hull, -1))
	}
	for _, p := range s.Outside {
		for _, convex := range p.Convex() {
			o.below = append(o.below, polygonOccluder(convex, -1))
		}
	}
}

// under are the common occluders that aren't wholly above both an eye and what it
// looks at.
func (o *occluders) under(eye r3.Vec, what *subject) []occluder {
	top := math.Max(eye.Z, what.high.Z)
	n := sort.Search(len(o.common), func(i int) bool { return o.common[i].low.Z >= top })
	return o.common[:n]
}

func polygonOccluder(p shape.Polygon, lamp int) occluder {
	center, radius := p.Bound()
	low, high := p.Extent()
	return occluder{polygon: p, lamp: lamp, center: center, radius: radius, low: low, high: high}
}

func solidOccluder(s shape.Solid, lamp int) occluder {
	center, radius := s.Bound()
	low, high := s.Extent()
	return occluder{solid: s, lamp: lamp, center: center, radius: radius, low: low, high: high}
}

// level is the horizontal rectangle of a size about the origin.
func (e *Engine) level(size [2]float64, z float64) shape.Polygon {
	return shape.Rectangle(r3.Vec{Z: z}, r3.Vec{X: size[0] / 2}, r3.Vec{Y: size[1] / 2})
}

// strip is the upright rectangle of one side between two levels.
func (e *Engine) strip(side int, low, high float64) shape.Polygon {
	x, y := e.scene.Size[0]/2, e.scene.Size[1]/2
	middle, up := (low+high)/2, r3.Vec{Z: (high - low) / 2}
	switch side {
	case North:
		return shape.Rectangle(r3.Vec{Y: y, Z: middle}, r3.Vec{X: x}, up)
	case South:
		return shape.Rectangle(r3.Vec{Y: -y, Z: middle}, r3.Vec{X: x}, up)
	case East:
		return shape.Rectangle(r3.Vec{X: x, Z: middle}, r3.Vec{Y: y}, up)
	}
	return shape.Rectangle(r3.Vec{X: -x, Z: middle}, r3.Vec{Y: y}, up)
}

// sight is one goroutine's working memory.
type sight struct {
	cut    shape.Cutter
	pieces []shape.Polygon
	parts  []shape.Polygon
	faces  []shape.Polygon
	u, v   span
	mixed  []float64 // part of a sheet's row, at a span's places
	blend  []float64 // a sheet's row between its own
	spot   spotCase
	starts []start
	tiles  []tile
}

// subject is a convex polygon that is looked at, with a sphere and an upright
// block that hold it.
type subject struct {
	polygon   shape.Polygon
	center    r3.Vec
	radius    float64
	low, high r3.Vec
	lamp      int // its own opening and body do not hide it; -1 for none
}

func subjectOf(p shape.Polygon, lamp int) subject {
	s := subject{polygon: p, lamp: lamp}
	s.center, s.radius = p.Bound()
	s.low, s.high = p.Extent()
	return s
}

// hide takes from the pieces what any of the occluders hides.
func (w *sight) hide(pieces []shape.Polygon, eye r3.Vec, what *subject, by []occluder) []shape.Polygon {
	for i := range by {
		o := &by[i]
		if len(pieces) == 0 {
			return pieces
		}
		if (o.lamp >= 0 && o.lamp == what.lamp) || o.clear(eye, what) {
			continue
		}
		if o.solid == nil {
			pieces = w.cut.Hide(pieces, eye, o.polygon)
			continue
		}
		w.faces = o.solid.Faces(eye, w.faces[:0])
		for _, f := range w.faces {
			pieces = w.cut.Hide(pieces, eye, f)
		}
	}
	return pieces
}

// clear tells quickly that an occluder cannot come between: its upright block
// keeps off the one that holds the eye and the subject, or its sphere off the
// round bar about the line of sight.
func (o *occluder) clear(eye r3.Vec, what *subject) bool {
	if o.low.X >= max(eye.X, what.high.X) || o.high.X <= min(eye.X, what.low.X) ||
		o.low.Y >= max(eye.Y, what.high.Y) || o.high.Y <= min(eye.Y, what.low.Y) ||
		o.low.Z >= max(eye.Z, what.high.Z) || o.high.Z <= min(eye.Z, what.low.Z) {
		return true
	}
	line := r3.Sub(what.center, eye)
	length2 := r3.Norm2(line)
	to := r3.Sub(o.center, eye)
	t := r3.Dot(to, line)
	reach := o.radius + what.radius
	if t < 0 {
		return r3.Norm2(to) > reach*reach
	}
	if t > length2 {
		d := r3.Sub(o.center, what.center)
		return r3.Norm2(d) > reach*reach
	}
	return r3.Norm2(to)-t*t/length2 > reach*reach
}

// station is a place from which the scene is looked at.
type station struct {
	at      r3.Vec
	chamber int  // the one it is in; len(planes) for below and outside
	inside  bool // in the box, or on the inner face of its sides
}

// stationAt finds where a free point is.
func (e *Engine) stationAt(p r3.Vec) station {
	s := station{at: p, chamber: len(e.planes)}
	half := e.scene.Size
	if p.Z < 0 || e.scene.Depth == 0 || p.Z >= e.scene.Depth || math.Abs(p.X) >= half[0]/2 || math.Abs(p.Y) >= half[1]/2 {
		return s
	}
	s.inside = true
	for c, plane := range e.planes {
		if p.Z >= plane.z {
			s.chamber = c
			break
		}
	}
	return s
}

// view is a way on which light comes: straight, or through the planes.
type view struct {
	factor float64 // what the planes on the way let through unscattered
	crated bool    // through the crate
}

// through gives the pieces of a subject in a chamber that are seen through the
// planes between it and the station. Nothing is between where both are in the
// same chamber. The pieces are valid until the next call.
func (e *Engine) through(w *sight, from station, what *subject, chamber int, shelled bool) ([]shape.Polygon, view) {
	v := view{factor: 1}
	low, high := min(chamber, from.chamber), max(chamber, from.chamber)
	for k := low; k < high; k++ {
		v.factor *= e.planes[k].passes()
	}
	v.crated = high == len(e.planes) && e.scene.Crate != nil
	if v.factor == 0 {
		return nil, v
	}
	p := what.polygon
	for k := low; k < high && p != nil; k++ {
		p = w.cut.Window(p, from.at, e.windows[k])
	}
	if p == nil {
		return nil, v
	}
	w.pieces = append(w.pieces[:0], p)
	w.pieces = w.hide(w.pieces, from.at, what, e.hides.under(from.at, what))
	if shelled {
		w.pieces = w.hide(w.pieces, from.at, what, e.hides.shell)
	}
	if high == len(e.planes) {
		w.pieces = w.hide(w.pieces, from.at, what, e.hides.below)
	}
	return w.pieces, v
}

// around gives the pieces of a subject that are seen from outside without
// looking through any plane: past the box, over its sides, through a side that
// is not there.
func (e *Engine) around(w *sight, eye r3.Vec, what *subject) []shape.Polygon {
	w.pieces = append(w.pieces[:0], what.polygon)
	for _, by := range [4][]occluder{e.hides.lids, e.hides.shell, e.hides.under(eye, what), e.hides.below} {
		w.pieces = w.hide(w.pieces, eye, what, by)
	}
	return w.pieces
}
