package draw

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
	"softloft/quantity"
	"softloft/rig"
)

// circle is a closed path of radius mm.
func circle(layer Layer, with Pen, ink Ink, at Point, radius float64) Item {
	const corners = 24
	points := make([]Point, corners)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		points[i] = Point{at.X + radius*cos, at.Y + radius*sin}
	}
	return Area(layer, with, ink, points...)
}

func square(layer Layer, with Pen, ink Ink, at Point, half float64) Item {
	return Rectangle(layer, with, ink, Point{at.X - half, at.Y - half}, 2*half, 2*half)
}

func diamond(layer Layer, with Pen, ink Ink, at Point, half float64) Item {
	return Area(layer, with, ink, Point{at.X - half, at.Y}, Point{at.X, at.Y - half}, Point{at.X + half, at.Y}, Point{at.X, at.Y + half})
}

// of names the part that an item shows.
func (i Item) of(part string) Item { i.Part = part; return i }

// symbols draws what is too small for its scale as a sign of a fixed size.
func (s *scene) symbols(w window) []Item {
	var items []Item
	show := func(at r3.Vec, draw func(Point) []Item) {
		p := s.view.in(at)
		place := w.paper(p.X, p.Y)
		if p.Z <= s.cut+touching && (Box{place.X, place.Y, place.X, place.Y}).inside(w.box()) {
			items = append(items, w.signed(place, draw(place))...)
		}
	}
	for i := range s.r.Points {
		p := &s.r.Points[i]
		show(p.InRoom, func(at Point) []Item { return s.point(at) })
	}
	for i := range s.r.Drops {
		d := &s.r.Drops[i]
		show(s.r.Pose.Out(d.Lower), func(at Point) []Item {
			return []Item{diamond(Lines, Pen{}, Black, at, 0.6).of(d.Part)}
		})
	}
	for i := range s.r.Parts {
		p := &s.r.Parts[i]
		show(s.place(p), func(at Point) []Item { return s.fitting(p, at) })
	}
	for _, p := range s.guys {
		_, to, _ := s.r.EndsInRoom(p)
		show(to, func(at Point) []Item {
			return []Item{cross(Lines, pen(Medium), at, 0.7).of(p.ID), cross2(Lines, pen(Medium), at, 0.7).of(p.ID)}
		})
	}
	for _, p := range s.long { // what runs toward the viewer is a dot
		from, to, _ := s.r.EndsInRoom(p)
		if a, b := s.view.in(from), s.view.in(to); w.scale.paper(math.Hypot(a.X-b.X, a.Y-b.Y)) < 0.3 {
			show(from, func(at Point) []Item { return []Item{circle(Lines, Pen{}, Dark, at, 0.4).of(p.ID)} })
		}
	}
	for i := range s.r.Lines {
		l := &s.r.Lines[i]
		part := "line." + l.Name + ".rope"
		if !s.drawn[part] {
			continue
		}
		show(s.r.Pose.Out(l.Attach), func(at Point) []Item { return []Item{circle(Lines, Pen{}, Black, at, 0.45).of(part)} })
		if l.TieOff != nil {
			show(l.TieOff.InRoom, func(at Point) []Item {
				return []Item{cross(Lines, pen(Strong), at, 0.9).of(part), cross2(Lines, pen(Strong), at, 0.9).of(part)}
			})
		}
	}
	return items
}

// signed makes signs smaller at a small scale, so that they don't cover what they stand
// for.
func (w window) signed(at Point, items []Item) []Item {
	size := math.Max(0.45, math.Min(1, 110/w.scale.Ratio))
	for i := range items {
		points := make([]Point, len(items[i].Points))
		for k, p := range items[i].Points {
			points[k] = Point{at.X + size*(p.X-at.X), at.Y + size*(p.Y-at.Y)}
		}
		items[i].Points = points
	}
	return items
}

// inside tells whether a box lies inside another.
func (b Box) inside(c Box) bool {
	return b.Left >= c.Left-1e-9 && b.Right <= c.Right+1e-9 && b.Top >= c.Top-1e-9 && b.Bottom <= c.Bottom+1e-9
}

func cross(layer Layer, with Pen, at Point, half float64) Item {
	return Line(layer, with, Point{at.X - half, at.Y - half}, Point{at.X + half, at.Y + half})
}

func cross2(layer Layer, with Pen, at Point, half float64) Item {
	return Line(layer, with, Point{at.X - half, at.Y + half}, Point{at.X + half, at.Y - half})
}

// point draws a building point: a ring from above, the underside that it hangs from in a
// section.
func (s *scene) point(at Point) []Item {
	if s.above {
		return []Item{circle(Points, pen(Medium), Paper, at, 1.0)}
	}
	items := []Item{Line(Points, pen(Heavy), Point{at.X - 1.8, at.Y}, Point{at.X + 1.8, at.Y})}
	for i := range 4 {
		x := at.X - 1.5 + float64(i)
		items = append(items, Line(Points, pen(Hairline), Point{x, at.Y}, Point{x + 0.7, at.Y - 0.9}))
	}
	return items
}

// place is where a part's symbol stands: a shackle is at its line's foot.
func (s *scene) place(p *rig.Part) r3.Vec {
	if p.What == "shackle" {
		for i := range s.r.Lines {
			if strings.HasPrefix(p.ID, "line."+s.r.Lines[i].Name+".") {
				return s.r.Pose.Out(s.r.Lines[i].Attach)
			}
		}
	}
	return s.r.CenterInRoom(p)
}

// fitting draws the sign of a small part; nil for one without a sign.
func (s *scene) fitting(p *rig.Part, at Point) []Item {
	switch p.What {
	case "pulley":
		if !s.above {
			at.Y += 1.4
		}
		return []Item{circle(Lines, pen(Medium), s.covering(), at, 1.4).of(p.ID)}
	case "clamp":
		if !s.above {
			return []Item{Rectangle(Points, Pen{}, Black, Point{at.X - 0.8, at.Y - 0.2}, 1.6, 0.8).of(p.ID)}
		}
		return []Item{square(Points, pen(Thin), None, at, 1.0).of(p.ID)}
	case "tie":
		return []Item{circle(Cloth, Pen{}, Dark, at, 0.22).of(p.ID)}
	case "tee", "ear", "head":
		return []Item{square(Frame, pen(Thin), Gray, at, 0.5).of(p.ID)}
	case "bag":
		return []Item{Rectangle(Stands, pen(Thin), Pale, Point{at.X - 1.1, at.Y - 0.7}, 2.2, 1.4).of(p.ID)}
	case "lamp clamp":
		return []Item{square(Lamps, Pen{}, Dark, at, 0.45).of(p.ID)}
	case "shackle":
		return []Item{circle(Lines, pen(Thin), Paper, at, 0.55).of(p.ID)}
	case "added load":
		return []Item{diamond(Lamps, pen(Medium), Paper, at, 1.1).of(p.ID)}
	}
	return nil
}

// covering is the ink inside a ring that would cover other signs from above.
func (s *scene) covering() Ink {
	if s.above {
		return None
	}
	return Paper
}

// Shapeless tells whether a part has no shape of its own in a drawing: it lies in or on
// another.
func Shapeless(p *rig.Part) bool {
	switch p.What {
	case "safety", "power supply":
		return true
	}
	return p.From == nil && !signs[p.What]
}

// signs are the kinds of parts without ends that draw has a picture for.
var signs = map[string]bool{"cloth": true, "roof": true, "side": true, "skirt": true, "egg-crate": true, "corner fitting": true, "pulley": true,
	"clamp": true, "lamp": true, "lamp clamp": true, "tie": true, "tee": true, "ear": true, "head": true, "bag": true, "shackle": true, "added load": true}

// mark draws a performer: from above a head with the way it faces, else a line up to
// the eyes.
func (s *scene) mark(m *plan.Mark, w window) []Item {
	eyes := s.view.in(r3.Vec{X: float64(m.At[0]), Y: float64(m.At[1]), Z: float64(m.Eyes)})
	at := w.paper(eyes.X, eyes.Y)
	if !(Box{at.X, at.Y, at.X, at.Y}).inside(w.box()) {
		return nil
	}
	if s.above {
		sin, cos := math.Sincos(float64(m.Faces))
		tip := Point{at.X + 2.9*cos, at.Y - 2.9*sin}
		left := Point{at.X + 1.4*cos - 0.9*sin, at.Y - 1.4*sin - 0.9*cos}
		right := Point{at.X + 1.4*cos + 0.9*sin, at.Y - 1.4*sin + 0.9*cos}
		return w.signed(at, []Item{Area(Action, Pen{}, Black, tip, left, right), circle(Action, pen(Medium), Paper, at, 1.6)})
	}
	foot := w.paper(eyes.X, 0)
	shoulder := Point{at.X, at.Y + math.Min(1.4, math.Max(0, foot.Y-at.Y))}
	return []Item{Line(Action, pen(Strong), foot, shoulder), circle(Action, pen(Medium), Paper, at, 0.95)}
}

// camera draws a camera and the cone of its lens, as wide as pan or tilt let it look.
func (s *scene) camera(c *plan.Camera, w window) []Item {
	place, ok := cameraAt(c)
	if !ok {
		return nil
	}
	from := s.view.in(place)
	at := w.paper(from.X, from.Y)
	inside := (Box{at.X, at.Y, at.X, at.Y}).inside(w.box())
	if !inside || from.Z > s.cut+touching {
		return nil // a cone without its camera would only be two lines
	}
	items := s.cone(c, place, w)
	body := square(Cameras, pen(Medium), Black, at, 0.9)
	return append(items, w.signed(at, []Item{body})...)
}

// cone draws the edges of what the lens sees, as far as it looks and half again.
func (s *scene) cone(c *plan.Camera, place r3.Vec, w window) []Item {
	if c.Looks == nil || c.Lens == nil || *c.Lens <= 0 {
		return nil
	}
	look := r3.Sub(s.view.in(vec3(*c.Looks)), s.view.in(place))
	long := math.Hypot(look.X, look.Y)
	if long < 0.01 {
		return nil
	}
	half := math.Atan(float64(c.Sensor[1]) / 2 / float64(*c.Lens))
	swing := c.Tilt
	if s.above {
		half = math.Atan(float64(c.Sensor[0]) * math.Max(c.Squeeze, 1e-3) / 2 / float64(*c.Lens))
		swing = c.Pan
	} else if look.X < 0 {
		swing = [2]quantity.Angle{-c.Tilt[1], -c.Tilt[0]}
	}
	heading := math.Atan2(look.Y, look.X)
	var items []Item
	for _, angle := range []float64{heading + half + float64(swing[1]), heading - half + float64(swing[0])} {
		sin, cos := math.Sincos(angle)
		path := w.points([]r3.Vec{s.view.in(place), r3.Add(s.view.in(place), r3.Vec{X: 1.5 * long * cos, Y: 1.5 * long * sin})})
		box := w.box()
		if !s.above {
			box.Bottom = w.paper(0, 0).Y
		}
		for _, points := range clipPath(path, box) {
			items = append(items, Line(Cameras, pen(Thin).with(Dashed).in(Dark), points...))
		}
	}
	return items
}
