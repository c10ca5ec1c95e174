package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/quantity"
)

const labelType = 2.2 // height of a label's type, mm

// name puts the names of points, lamps, marks, cameras and surfaces where they cover
// nothing; what is on one place shares one text.
func (d *drafting) name() {
	d.namePoints()
	for _, label := range d.beamNames {
		d.labels.put(label, 0.8)
	}
	d.callouts()
	d.nameLamps()
	d.nameRest()
	d.nameAction()
	d.nameCameras()
}

// gathered are names by place, in order.
type gathered struct {
	at    Point
	names []string
	part  string
}

func gather(all []gathered, at Point, name, part string) []gathered {
	for i := range all {
		if math.Hypot(all[i].at.X-at.X, all[i].at.Y-at.Y) < 1 {
			all[i].names = append(all[i].names, name)
			return all
		}
	}
	return append(all, gathered{at, []string{name}, part})
}

// shown tells whether a place of the room is in the window and not cut away, and where.
func (d *drafting) shown(at r3.Vec) (Point, bool) {
	p := d.scene.view.in(at)
	place := d.window.paper(p.X, p.Y)
	return place, p.Z <= d.scene.cut+touching && (Box{place.X, place.Y, place.X, place.Y}).inside(d.window.box())
}

// namePoints names points, from above with what they carry as built, rounded up.
func (d *drafting) namePoints() {
	var all []gathered
	for i := range d.r.Points {
		p := &d.r.Points[i]
		at, ok := d.shown(p.InRoom)
		if !ok {
			continue
		}
		name := p.Name
		if d.scene.above && !d.whole {
			name += d.carries(p.Name)
		}
		all = gather(all, at, name, "")
	}
	for _, g := range all {
		item := Label(Labels, Shorten(strings.Join(g.names, ", "), labelType, 34, true), g.at, labelType, Start)
		item.Bold = true
		d.labels.put(item, 1.9)
	}
}

// carries is what a point carries as built, for its name.
func (d *drafting) carries(name string) string {
	for _, p := range d.a.Load.Points {
		if p.Name != name {
			continue
		}
		if v := p.Cases.Built; v != nil && finding.Known(float64(v[2])) {
			return " " + quantity.LoadUp(d.units, quantity.Force(-v[2]))
		}
		return " not known"
	}
	return ""
}

// nameLamps names lamps from above.
func (d *drafting) nameLamps() {
	if !d.scene.above || d.whole {
		return
	}
	for i := range d.r.Optics.Lamps {
		o := &d.r.Optics.Lamps[i]
		at, ok := d.shown(d.r.Pose.Out(o.Center))
		if !ok {
			continue
		}
		item := Label(Labels, Shorten(o.Name, 1.8, 22, false), at, 1.8, Middle)
		item.Part = o.Part
		half := d.half(o.Part)
		if inside := item; half > 3.4 { // between the opening's edge and what crosses the middle
			inside.Points = []Point{{at.X, at.Y + 0.45*half}}
			if d.labels.cost(inside.Bounds()) < 0.5 {
				d.labels.keep(inside)
				continue
			}
		}
		d.labels.put(item, 0.5+half)
	}
}

// half is half the height on paper of what is drawn of a part, at most 6 mm.
func (d *drafting) half(part string) float64 {
	b := Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, item := range d.picture.Items {
		if item.Part == part && item.Text == "" {
			b = b.union(item.Bounds())
		}
	}
	if b.Bottom < b.Top {
		return 1
	}
	return math.Min(6, (b.Bottom-b.Top)/2)
}

// callouts name the sheets and tubes of a section beside its left end, where there is
// room for it.
func (d *drafting) callouts() {
	if d.scene.above || d.picture.Width < 150 {
		return
	}
	left := math.Inf(1)
	for _, c := range rim(d.r, 0) {
		left = math.Min(left, d.mm(c).X)
	}
	var told []string
	for i := range d.r.Parts {
		p := &d.r.Parts[i]
		switch p.What {
		case "cloth", "roof", "egg-crate", "rib tube", "bottom frame tube", "upper frame tube":
		default:
			continue
		}
		text := p.What + ": " + p.Name
		if strings.HasPrefix(p.Name, p.What) {
			text = p.Name
		}
		if slices.Contains(told, text) {
			continue
		}
		told = append(told, text)
		at := d.mm(d.r.CenterInRoom(p))
		at.X = left
		item := Label(Labels, Shorten(text, 1.9, 45, false), at, 1.9, End)
		item.Part = p.ID
		d.labels.put(item, 2)
	}
}

// nameRest names what was added, and surfaces and obstacles.
func (d *drafting) nameRest() {
	small := func(text string, at r3.Vec, part string) {
		if place, ok := d.shown(at); ok {
			item := Label(Labels, Shorten(text, 1.9, 30, false), place, 1.9, Start)
			item.Part = part
			d.labels.put(item, 1.4)
		}
	}
	for i := range d.r.Parts {
		if p := &d.r.Parts[i]; p.What == "added load" && !d.whole {
			small(p.Name, d.r.CenterInRoom(p), p.ID)
		}
	}
	for i := range d.r.Stands {
		stand := &d.r.Stands[i]
		small(stand.Name, r3.Add(stand.Foot, r3.Vec{Z: stand.Rise / 2}), stand.Part)
	}
	if d.r.Plan.Room == nil {
		return
	}
	for _, s := range d.r.Plan.Room.Surfaces {
		var middle r3.Vec
		for _, c := range s.Corners {
			middle = r3.Add(middle, r3.Scale(1/float64(len(s.Corners)), vec3(c)))
		}
		small(s.Name, middle, "")
	}
	for _, o := range d.r.Plan.Room.Obstacles {
		small(o.Name, vec3(o.At), "")
	}
}

// nameAction names marks and the area.
func (d *drafting) nameAction() {
	action := d.r.Plan.Action
	if action == nil {
		return
	}
	for _, m := range action.Marks {
		at, ok := d.shown(r3.Vec{X: float64(m.At[0]), Y: float64(m.At[1]), Z: float64(m.Eyes)})
		if !ok && !d.scene.above {
			p := d.scene.view.in(r3.Vec{X: float64(m.At[0]), Y: float64(m.At[1]), Z: float64(m.Eyes)})
			at, ok = d.window.paper(p.X, p.Y), true
		}
		if !ok {
			continue
		}
		text := m.Name
		if !d.scene.above && d.picture.Width > 150 {
			text += ", eyes " + measured(d.units, float64(m.Eyes))
		}
		d.labels.put(Label(Labels, Shorten(text, labelType, 40, false), at, labelType, Start), 1.6)
	}
	if a := action.Area; a != nil {
		corner := d.mm(r3.Vec{X: float64(a.At[0]) - float64(a.Size[0])/2, Y: float64(a.At[1]) - float64(a.Size[1])/2, Z: float64(a.Height)})
		text := "area"
		if d.scene.above {
			text = fmt.Sprintf("area %s × %s", measured(d.units, float64(a.Size[0])), measured(d.units, float64(a.Size[1])))
		} else {
			text += " at " + measured(d.units, float64(a.Height))
		}
		d.labels.put(Label(Labels, text, Point{corner.X + 1, corner.Y}, 1.9, Start), 0.6)
	}
}

// nameCameras names cameras; one that stands outside of the view has its name at the
// edge, with an arrow and how far it is from the middle of the box.
func (d *drafting) nameCameras() {
	for i := range d.r.Plan.Cameras {
		c := &d.r.Plan.Cameras[i]
		place, ok := cameraAt(c)
		if !ok {
			continue
		}
		text := "camera " + c.Name
		if c.Lens != nil && d.picture.Width > 150 {
			text += fmt.Sprintf(", %g mm", math.Round(float64(*c.Lens)*1e4)/10)
		}
		p := d.scene.view.in(place)
		at := d.window.paper(p.X, p.Y)
		if p.Z > d.scene.cut+touching {
			continue
		}
		if (Box{at.X, at.Y, at.X, at.Y}).inside(d.window.box()) {
			d.labels.put(Label(Labels, Shorten(text, labelType, 40, false), at, labelType, Start), 1.6)
			continue
		}
		d.away(text, place, at)
	}
}

// away points to a camera outside of the view.
func (d *drafting) away(text string, place r3.Vec, at Point) {
	middle := d.mm(d.r.Pose.Origin)
	far := r3.Sub(place, d.r.Pose.Origin)
	if !d.scene.above {
		middle.Y = math.Min(at.Y, d.window.box().Bottom)
	}
	box := d.window.box().grown(-1)
	box.Left, box.Right = d.labels.frame.Left+1, d.labels.frame.Right-1
	_, edge, ok := clipSegment(middle, at, box)
	if !ok {
		return
	}
	long := math.Hypot(at.X-middle.X, at.Y-middle.Y)
	ux, uy := (at.X-middle.X)/long, (at.Y-middle.Y)/long
	tail := Point{edge.X - 5*ux, edge.Y - 5*uy}
	arrow := []Item{
		Line(Cameras, pen(Strong), tail, Point{edge.X - 1.5*ux, edge.Y - 1.5*uy}),
		Area(Cameras, Pen{}, Black, edge, Point{edge.X - 2*ux - 0.8*uy, edge.Y - 2*uy + 0.8*ux}, Point{edge.X - 2*ux + 0.8*uy, edge.Y - 2*uy - 0.8*ux}),
	}
	d.picture.Add(arrow...)
	d.labels.avoid(arrow)
	text += ", " + measured(d.units, math.Hypot(far.X, far.Y)) + " off"
	d.labels.put(Label(Labels, Shorten(text, labelType, 46, false), edge, labelType, End), 1)
}
