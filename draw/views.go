package draw

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/answer"
	"softloft/quantity"
	"softloft/rig"
)

// Space is the paper that a picture may take, in mm.
type Space struct{ Width, Height float64 }

// Plan draws the rig from above, roof left off, at the largest customary scale at which
// box, points and tie-offs fit. Every part of the rig that has a shape is in it or in one
// of the sections.
func Plan(a *answer.Answers, space Space) Picture {
	return drawing(a, space, "plan", "Plan, roof left off", FromAbove(), false)
}

// RoomPlan draws the whole room from above with the rig and the cameras in it. Of a plan
// without a room it is Plan with the cameras in reach.
func RoomPlan(a *answer.Answers, space Space) Picture {
	return drawing(a, space, "room", "Room from above", FromAbove(), true)
}

// Section draws the rig cut through the middle of its box along its own "x" or "y": what
// lies beyond the cut. Heights are over the floor.
func Section(a *answer.Answers, axis string, space Space) Picture {
	along := a.Model.Pose.X
	if axis == "y" {
		along = a.Model.Pose.Y
	}
	if math.Hypot(along.X, along.Y) < 1e-3 {
		along = r3.Vec{X: 1}
	}
	return drawing(a, space, "section-"+axis, "Section along the box's "+axis, Along(along), false)
}

// All draws every view of a rig on sheets of one size.
func All(a *answer.Answers, space Space) []Picture {
	pictures := []Picture{Plan(a, space), Section(a, "x", space), Section(a, "y", space)}
	if _, _, ok := floorPlan(a.Model.Plan); ok {
		pictures = append(pictures, RoomPlan(a, space))
	}
	return pictures
}

// The margins around a view, in mm: for dimensions, and for the title below.
const (
	marginLeft, marginRight, marginTop, marginBottom = 19.0, 13.0, 6.0, 15.0
	titleHeight                                      = 11.0
)

// drafting is one drawing under way.
type drafting struct {
	a       *answer.Answers
	r       *rig.Rig
	units   quantity.System
	scene   *scene
	window  window
	extent  Box // of what must be seen, in m: Top is the greatest v
	whole   bool
	picture Picture
	labels  labels

	beamNames []Item
}

func drawing(a *answer.Answers, space Space, name, title string, view View, whole bool) Picture {
	d := &drafting{a: a, r: a.Model, units: a.Model.Plan.Sheet.Units, whole: whole, scene: newScene(a.Model, view, view == FromAbove())}
	d.scene.whole = whole
	d.picture = Picture{Name: name, Title: title, Width: space.Width, Height: space.Height}
	if !d.scene.above {
		d.scene.cut = view.in(a.Model.Pose.Origin).Z
	}
	d.extent = d.must()
	d.fit(space)
	d.paint()
	d.measure()
	d.name()
	d.title(space)
	return d.picture
}

// must returns the rectangle of the view that has to be on the paper.
func (d *drafting) must() Box {
	b := Box{math.Inf(1), math.Inf(-1), math.Inf(-1), math.Inf(1)}
	see := func(at r3.Vec) {
		p := d.scene.view.in(at)
		b = Box{math.Min(b.Left, p.X), math.Max(b.Top, p.Y), math.Max(b.Right, p.X), math.Min(b.Bottom, p.Y)}
	}
	d.eachPlace(see)
	if !d.scene.above {
		b.Bottom = math.Min(b.Bottom, 0)
	}
	d.reach(&b)
	if b.Right-b.Left < 0.5 {
		b.Left, b.Right = b.Left-0.25, b.Right+0.25
	}
	if b.Top-b.Bottom < 0.5 {
		b.Top, b.Bottom = b.Top+0.25, b.Bottom-0.25
	}
	return b
}

// eachPlace visits the places of the rig that have to be seen.
func (d *drafting) eachPlace(see func(r3.Vec)) {
	for _, z := range []float64{-d.r.LowestBy, d.r.Optics.Depth} {
		for _, c := range rim(d.r, z) {
			see(c)
		}
	}
	for i := range d.r.Parts {
		p := &d.r.Parts[i]
		if p.What == "cable" { // it comes from far: drawn as far as the paper goes
			continue
		}
		see(d.r.CenterInRoom(p))
		if from, to, ok := d.r.EndsInRoom(p); ok {
			see(from)
			see(to)
		}
	}
	for i := range d.r.Lines {
		l := &d.r.Lines[i]
		if l.TieOff != nil {
			see(l.TieOff.InRoom)
		}
		if l.Bridle != nil {
			for _, name := range l.Bridle.Points {
				if p, ok := d.r.PointNamed(name); ok {
					see(p.InRoom)
				}
			}
		}
	}
	if action := d.r.Plan.Action; action != nil {
		for i := range action.Marks {
			m := &action.Marks[i]
			see(r3.Vec{X: float64(m.At[0]), Y: float64(m.At[1]), Z: float64(m.Eyes)})
		}
	}
	if low, high, ok := floorPlan(d.r.Plan); ok && d.whole {
		see(low)
		see(high)
	}
	if d.whole {
		for i := range d.r.Plan.Cameras {
			if at, ok := cameraAt(&d.r.Plan.Cameras[i]); ok {
				see(at)
			}
		}
	}
}

// reach widens the rectangle to cameras that are near it anyway.
func (d *drafting) reach(b *Box) {
	width, height := b.Right-b.Left, b.Top-b.Bottom
	for i := range d.r.Plan.Cameras {
		at, ok := cameraAt(&d.r.Plan.Cameras[i])
		if p := d.scene.view.in(at); ok && p.X > b.Left-0.2*width && p.X < b.Right+0.2*width && p.Y > b.Bottom-0.2*height && p.Y < b.Top+0.2*height {
			*b = Box{math.Min(b.Left, p.X), math.Max(b.Top, p.Y), math.Max(b.Right, p.X), math.Min(b.Bottom, p.Y)}
		}
	}
}

// fit chooses the scale and lays the window in the middle of the space.
func (d *drafting) fit(space Space) {
	bottom := marginBottom
	if !d.scene.above {
		bottom = 4
	}
	width, height := space.Width-marginLeft-marginRight, space.Height-marginTop-bottom-titleHeight
	e := d.extent
	scale := FitScale(d.units, e.Right-e.Left, e.Top-e.Bottom, width, height)
	spareU := (width - scale.paper(e.Right-e.Left)) / 2 * scale.Ratio / 1000
	spareV := (height - scale.paper(e.Top-e.Bottom)) / 2 * scale.Ratio / 1000
	d.picture.Scale = scale
	d.window = window{scale: scale, u: e.Left - spareU, v: e.Bottom - spareV, width: width, height: height,
		corner: Point{marginLeft, marginTop + height}}
	d.labels.frame = Box{0.5, 0.5, space.Width - 0.5, marginTop + height + bottom}
}

// paint draws everything but words and dimensions.
func (d *drafting) paint() {
	s := d.scene
	s.room()
	s.action()
	s.cameras()
	s.stands()
	s.parts()
	var items []Item
	items = append(items, s.draw(d.window)...)
	if !s.above {
		items = append(items, d.floor()...)
	}
	items = append(items, d.beams()...)
	if action := d.r.Plan.Action; action != nil {
		for i := range action.Marks {
			items = append(items, s.mark(&action.Marks[i], d.window)...)
		}
	}
	for i := range d.r.Plan.Cameras {
		items = append(items, s.camera(&d.r.Plan.Cameras[i], d.window)...)
	}
	items = append(items, s.symbols(d.window)...)
	d.picture.Add(items...)
	d.labels.avoid(items)
}

// floor draws the floor of a section with the ground's hatch.
func (d *drafting) floor() []Item {
	b := d.window.box()
	y := d.window.paper(0, 0).Y
	items := []Item{Line(Room, pen(Massive).in(Dark), Point{b.Left, y}, Point{b.Right, y})}
	for x := b.Left + 1; x < b.Right; x += 2.4 {
		items = append(items, Line(Room, pen(Hairline).in(Dark), Point{x, y}, Point{x - 1.1, y + 1.5}))
	}
	return items
}

// beams draws the center-line through the points on each beam, from above.
func (d *drafting) beams() []Item {
	if !d.scene.above {
		return nil
	}
	var items []Item
	for _, beam := range d.r.Beams {
		var places []r3.Vec
		for i := range d.r.Points {
			if d.r.Points[i].Beam == beam.Name {
				places = append(places, d.r.Points[i].InRoom)
			}
		}
		if len(places) < 2 {
			continue
		}
		along := r3.Sub(places[len(places)-1], places[0])
		if r3.Norm(along) < 0.01 {
			continue
		}
		unit := r3.Unit(along)
		sort.SliceStable(places, func(i, j int) bool { return r3.Dot(places[i], unit) < r3.Dot(places[j], unit) })
		over := d.window.scale.Ratio / 1000 * 11
		from, to := r3.Sub(places[0], r3.Scale(over, unit)), r3.Add(places[len(places)-1], r3.Scale(over, unit))
		for _, path := range clipPath([]Point{d.window.paper(from.X, from.Y), d.window.paper(to.X, to.Y)}, d.window.box()) {
			items = append(items, Line(Points, pen(Medium).with(DashDot).in(Dark), path...))
			d.beamNames = append(d.beamNames, Label(Labels, Shorten(beam.Name, 1.9, 30, false), path[len(path)-1], 1.9, Middle))
		}
	}
	return items
}

// title puts the title, the scale, the scale bar and the north arrow below the view.
func (d *drafting) title(space Space) {
	d.picture.Add(d.labels.items...)
	y := space.Height - titleHeight
	name := Label(Notes, Shorten(d.picture.Title, 2.8, space.Width-42, true), Point{0, y + 4}, 2.8, Start)
	name.Bold = true
	d.picture.Add(name, Label(Notes, "scale "+d.picture.Scale.Name, Point{0, y + 8.2}, 2.3, Start))
	d.bar(Point{space.Width - 36, y + 7})
	if d.scene.above {
		d.picture.Add(north(Point{space.Width - 42, y + 5.6})...)
	}
}

// bar draws a scale bar of at most 28 mm.
func (d *drafting) bar(at Point) {
	scale := d.picture.Scale
	length := barLength(d.units, 28*scale.Ratio/1000)
	long := scale.paper(length)
	fine := pen(Thin)
	d.picture.Add(
		Rectangle(Notes, fine, Black, at, long/2, 1.1), Rectangle(Notes, fine, Paper, Point{at.X + long/2, at.Y}, long/2, 1.1),
		Label(Notes, "0", Point{at.X, at.Y - 1.8}, 1.9, Middle),
		Label(Notes, measured(d.units, length), Point{at.X + long, at.Y - 1.8}, 1.9, Middle))
}

// north is an arrow toward +y.
func north(at Point) []Item {
	return []Item{
		Line(Notes, pen(Medium), Point{at.X, at.Y + 3.4}, Point{at.X, at.Y - 3}),
		Area(Notes, pen(Thin), Black, Point{at.X, at.Y - 3.4}, Point{at.X - 1.1, at.Y}, Point{at.X, at.Y - 0.7}),
		Area(Notes, pen(Thin), Paper, Point{at.X, at.Y - 3.4}, Point{at.X + 1.1, at.Y}, Point{at.X, at.Y - 0.7}),
		Label(Notes, "N", Point{at.X + 2.2, at.Y - 2.6}, 2.2, Middle),
	}
}
