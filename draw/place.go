package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
	"softloft/quantity"
)

func vec3(at [3]quantity.Length) r3.Vec {
	return r3.Vec{X: float64(at[0]), Y: float64(at[1]), Z: float64(at[2])}
}

// floorPlan returns the room's corners on the floor and its height; ok is false where the
// plan gives no room.
func floorPlan(p *plan.Plan) (low, high r3.Vec, ok bool) {
	if p.Room == nil || p.Room.Size == nil {
		return low, high, false
	}
	size := vec3(*p.Room.Size)
	low = r3.Vec{X: -size.X / 2, Y: -size.Y / 2}
	if o := p.Room.Origin; o != nil {
		low = r3.Vec{X: -float64(o[0]), Y: -float64(o[1])}
	}
	return low, r3.Add(low, size), true
}

// room draws walls, set walls and what is in the way.
func (s *scene) room() {
	p := s.r.Plan
	if p.Room == nil {
		return
	}
	if low, high, ok := floorPlan(p); ok {
		s.walls(low, high, p.Room.Outdoors != nil)
	}
	for i := range p.Room.Surfaces {
		var corners []r3.Vec
		for _, c := range p.Room.Surfaces[i].Corners {
			corners = append(corners, vec3(c))
		}
		if len(corners) > 2 {
			with := pen(Strong).in(Dark)
			if !s.above {
				with = pen(Thin).in(Gray)
			}
			s.add(stroke{layer: Room, pen: with, path: s.seen(corners), closed: true, behind: Dotted})
		}
	}
	for i := range p.Room.Obstacles {
		s.obstacle(&p.Room.Obstacles[i])
	}
}

// walls draws the room's faces: four walls from above, floor and ceiling in a section.
func (s *scene) walls(low, high r3.Vec, outdoors bool) {
	with := pen(Massive).in(Dark)
	if outdoors {
		with = pen(Thin).with(DashDot).in(Dark)
	}
	if s.above {
		s.add(stroke{layer: Room, pen: with, closed: true, drop: true,
			path: []r3.Vec{{X: low.X, Y: low.Y}, {X: high.X, Y: low.Y}, {X: high.X, Y: high.Y}, {X: low.X, Y: high.Y}}})
		return
	}
	if outdoors {
		return
	}
	from, to := s.across(low, high)
	for _, path := range [][]r3.Vec{
		{{X: from, Y: high.Z}, {X: to, Y: high.Z}}, {{X: from}, {X: from, Y: high.Z}}, {{X: to}, {X: to, Y: high.Z}},
	} {
		s.strokes = append(s.strokes, stroke{layer: Room, pen: with, path: path, drop: true})
	}
}

// across returns the least and greatest u of the room along a section.
func (s *scene) across(low, high r3.Vec) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	for _, c := range [4]r3.Vec{{X: low.X, Y: low.Y}, {X: high.X, Y: low.Y}, {X: high.X, Y: high.Y}, {X: low.X, Y: high.Y}} {
		u := r3.Dot(c, s.view.U)
		from, to = math.Min(from, u), math.Max(to, u)
	}
	return from, to
}

// obstacle draws the faces of what is in the way, through all else.
func (s *scene) obstacle(o *plan.Obstacle) {
	at := vec3(o.At)
	half := r3.Vec{X: 0.04, Y: 0.04, Z: 0.04}
	if o.Size != nil {
		half = r3.Scale(0.5, vec3(*o.Size))
	}
	with := pen(Medium).in(Dark)
	s.outline(Room, with, at, half)
	if o.Clear != nil {
		keep := float64(*o.Clear)
		s.outline(Room, pen(Hairline).with(Dashed).in(Dark), at, r3.Add(half, r3.Vec{X: keep, Y: keep, Z: keep}))
	}
}

// outline draws the rectangle that an upright block shows.
func (s *scene) outline(layer Layer, with Pen, at, half r3.Vec) {
	middle := s.view.in(at)
	u := math.Abs(s.view.U.X)*half.X + math.Abs(s.view.U.Y)*half.Y
	v := half.Z
	if s.above {
		u, v = half.X, half.Y
	}
	low := middle.Y - v
	if !s.above {
		low = math.Max(0, low) // nothing to keep clear of under the floor
	}
	s.strokes = append(s.strokes, stroke{layer: layer, pen: with, closed: true, behind: Dotted, path: []r3.Vec{
		{X: middle.X - u, Y: low, Z: middle.Z}, {X: middle.X + u, Y: low, Z: middle.Z},
		{X: middle.X + u, Y: middle.Y + v, Z: middle.Z}, {X: middle.X - u, Y: middle.Y + v, Z: middle.Z}}})
}

// action draws the area to be lit, dashed: it lies under the box.
func (s *scene) action() {
	action := s.r.Plan.Action
	if action == nil || action.Area == nil {
		return
	}
	a := action.Area
	x, y := float64(a.Size[0])/2, float64(a.Size[1])/2
	at := r3.Vec{X: float64(a.At[0]), Y: float64(a.At[1]), Z: float64(a.Height)}
	var corners []r3.Vec
	for _, c := range [4][2]float64{{-x, -y}, {x, -y}, {x, y}, {-x, y}} {
		corners = append(corners, r3.Add(at, r3.Vec{X: c[0], Y: c[1]}))
	}
	s.strokes = append(s.strokes, stroke{layer: Action, pen: pen(Medium).with(Dashed), path: s.seen(corners), closed: true, behind: Dashed})
}

// cameras draws the cameras' paths; their places and cones are signs.
func (s *scene) cameras() {
	for i := range s.r.Plan.Cameras {
		c := &s.r.Plan.Cameras[i]
		thin := pen(Thin).with(DashDot).in(Dark)
		if o := c.Orbit; o != nil && s.above {
			s.strokes = append(s.strokes, stroke{layer: Cameras, pen: thin, path: s.seen(orbit(o)), behind: DashDot})
		}
		if len(c.Track) > 1 {
			var path []r3.Vec
			for _, at := range c.Track {
				path = append(path, vec3(at))
			}
			s.strokes = append(s.strokes, stroke{layer: Cameras, pen: thin, path: s.seen(path), behind: DashDot})
		}
	}
}

func orbit(o *plan.Orbit) []r3.Vec {
	const pieces = 96
	path := make([]r3.Vec, pieces+1)
	for i := range path {
		angle := float64(o.From) + (float64(o.To)-float64(o.From))*float64(i)/pieces
		sin, cos := math.Sincos(angle)
		path[i] = r3.Vec{X: float64(o.Around[0]) + float64(o.Radius)*cos, Y: float64(o.Around[1]) + float64(o.Radius)*sin, Z: float64(o.Height)}
	}
	return path
}

// cameraAt returns where a camera is drawn: where it stands, or its path begins.
func cameraAt(c *plan.Camera) (r3.Vec, bool) {
	switch {
	case c.At != nil:
		return vec3(*c.At), true
	case c.Orbit != nil:
		return orbit(c.Orbit)[0], true
	case len(c.Track) > 0:
		return vec3(c.Track[0]), true
	}
	return r3.Vec{}, false
}

// standing are the pens of what stands on the floor.
var standing = map[string]float64{"stand": Heavy, "stand leg": Medium, "arm": Strong}

// stands draws masts, legs and arms.
func (s *scene) stands() {
	for i := range s.r.Parts {
		p := &s.r.Parts[i]
		weight, ok := standing[p.What]
		from, to, ends := s.r.EndsInRoom(p)
		if !ok || !ends {
			continue
		}
		s.drawn[p.ID] = true
		s.through(Stands, p.ID, pen(weight), false, from, to)
		if p.What == "stand" {
			s.long = append(s.long, p)
		}
	}
}
