package draw

import (
	"fmt"
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"
)

// measure puts the dimensions around the view.
func (d *drafting) measure() {
	var items []Item
	if d.scene.above {
		items = d.planMeasures()
	} else {
		items = d.sectionMeasures()
	}
	d.picture.Add(items...)
	d.labels.avoid(items)
}

// mm returns where a place of the room is on the paper.
func (d *drafting) mm(at r3.Vec) Point {
	p := d.scene.view.in(at)
	return d.window.paper(p.X, p.Y)
}

// stringStep is the distance between dimension lines, in mm.
const stringStep = 5.0

// planMeasures measures the box, the ribs and the lines' places along both of its
// axes. A room's drawing measures the room.
func (d *drafting) planMeasures() []Item {
	if d.whole {
		return d.roomMeasures()
	}
	x, y := d.r.Optics.Size[0]/2, d.r.Optics.Size[1]/2
	at := func(u, v float64) Point { return d.mm(r3.Vec(d.r.Pose.Out(r3.Vec{X: u, Y: v}))) }
	south, west := d.clear(at(-x, -y), at(x, -y)), d.clear(at(-x, y), at(-x, -y))
	var items []Item
	below, beside := d.stations()
	chain := func(places []float64, along func(float64) Point, offset float64, of string) bool {
		if len(places) < 3 {
			return false
		}
		for i := 1; i < len(places); {
			n := d.alike(places[i-1:])
			length := places[i-1+n] - places[i-1]
			text := measured(d.units, length/float64(n))
			if n > 1 {
				text = fmt.Sprintf("%d × %s", n, text)
			}
			items = append(items, dimension(along(places[i-1]), along(places[i-1+n]), offset, length, of, text)...)
			i += n
		}
		return true
	}
	if chain(below.places, func(u float64) Point { return at(u, -y) }, -south, below.of) {
		south += stringStep
	}
	if chain(beside.places, func(v float64) Point { return at(-x, v) }, west, beside.of) {
		west += stringStep
	}
	items = append(items, dimension(at(-x, -y), at(x, -y), -south, 2*x, "box.size[0]", measured(d.units, 2*x))...)
	return append(items, dimension(at(-x, -y), at(-x, y), west, 2*y, "box.size[1]", measured(d.units, 2*y))...)
}

// alike returns how many steps from the first place are measured together: one where its
// words fit on it, else all that follow and are as long.
func (d *drafting) alike(places []float64) int {
	step := places[1] - places[0]
	if d.window.scale.paper(step) > TextWidth(measured(d.units, step), dimensionType, false)+1 {
		return 1
	}
	n := 1
	for n+1 < len(places) && math.Abs(places[n+1]-places[n]-step) < 2e-3 {
		n++
	}
	return n
}

// stations are places to measure along one side of the box, and the plan's key.
type stations struct {
	places []float64
	of     string
}

// stations returns what is measured along x, below, and along y, beside: ribs across
// that axis, else the lines' attachments.
func (d *drafting) stations() (below, beside stations) {
	x, y := d.r.Optics.Size[0]/2, d.r.Optics.Size[1]/2
	below, beside = stations{[]float64{-x, x}, "hang.lines"}, stations{[]float64{-y, y}, "hang.lines"}
	for i := range d.r.Lines {
		below.places = append(below.places, d.r.Lines[i].Attach.X)
		beside.places = append(beside.places, d.r.Lines[i].Attach.Y)
	}
	if ribs := d.r.Plan.Box.Ribs; ribs != nil {
		across := &beside
		if ribs.Along == "y" {
			across = &below
		}
		half := across.places[1]
		*across = stations{[]float64{-half, half}, "box.ribs"}
		for i := range d.r.Tubes {
			t := &d.r.Tubes[i]
			if t.Role != "rib" {
				continue
			}
			if ribs.Along == "y" {
				across.places = append(across.places, t.From.X)
			} else {
				across.places = append(across.places, t.From.Y)
			}
		}
	}
	below.places, beside.places = distinct(below.places), distinct(beside.places)
	return below, beside
}

// distinct sorts places and drops those that are as good as the same.
func distinct(places []float64) []float64 {
	sort.Float64s(places)
	var kept []float64
	for _, p := range places {
		if len(kept) == 0 || p-kept[len(kept)-1] > 2e-3 {
			kept = append(kept, p)
		}
	}
	return kept
}

// clear returns how far from the way a to b, on its right side, a dimension line has to
// stay to be clear of the view: 4 mm beyond what must be seen.
func (d *drafting) clear(a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	long := math.Hypot(dx, dy)
	if long < 1e-6 {
		return 5
	}
	var most float64
	d.eachPlace(func(at r3.Vec) {
		p := d.mm(at)
		most = math.Max(most, (-dy*(p.X-a.X)+dx*(p.Y-a.Y))/long)
	})
	return math.Min(most, 25) + 4.5
}

func (d *drafting) roomMeasures() []Item {
	low, high, ok := floorPlan(d.r.Plan)
	if !ok {
		return nil
	}
	sw, se, nw := d.mm(low), d.mm(r3.Vec{X: high.X, Y: low.Y}), d.mm(r3.Vec{X: low.X, Y: high.Y})
	items := dimension(sw, se, -5, high.X-low.X, "room.size[0]", measured(d.units, high.X-low.X))
	return append(items, dimension(sw, nw, 5, high.Y-low.Y, "room.size[1]", measured(d.units, high.Y-low.Y))...)
}

// sectionMeasures measures heights over the floor on the right, the box's length below
// it, and its depth on the left.
func (d *drafting) sectionMeasures() []Item {
	e := d.extent
	var items []Item
	up := func(u, from, to, offset float64, word, of string) {
		text := word + " " + measured(d.units, to-from)
		if TextWidth(text, dimensionType, false) > d.window.scale.paper(to-from)-2 {
			text = measured(d.units, to-from)
		}
		items = append(items, dimension(d.window.paper(u, from), d.window.paper(u, to), offset, to-from, of, text)...)
	}
	offset := -4.0
	lowest := d.lowest()
	up(e.Right, 0, lowest, offset, "lowest edge", "box.trim")
	if level := d.level(); level {
		if depth := d.r.Optics.Depth; depth > 0 {
			up(e.Right, d.r.ClothAt, d.r.ClothAt+depth, offset, "depth", "box.depth")
		}
	}
	left := 4.0
	if math.Abs(d.r.ClothAt-lowest) > 1e-3 || !d.level() {
		up(e.Left, 0, d.r.ClothAt, left, "cloth", "box.cloth_at")
		left += stringStep
	}
	if high, ok := d.highest(); ok {
		up(e.Left, 0, high, left, "points", "room.points")
	}
	return append(items, d.lengthMeasure()...)
}

// level tells whether the box is planned level.
func (d *drafting) level() bool { return d.r.Pose.Z.Z > 1-1e-9 }

// lowest is the height of the lowest edge in the planned pose.
func (d *drafting) lowest() float64 {
	low := math.Inf(1)
	for _, c := range rim(d.r, -d.r.LowestBy) {
		low = math.Min(low, c.Z)
	}
	return low
}

// highest is the height of the points that lines use, where all have the same; else of
// the highest.
func (d *drafting) highest() (float64, bool) {
	high, ok := 0.0, false
	for i := range d.r.Points {
		for j := range d.r.Lines {
			l := &d.r.Lines[j]
			if l.Point == d.r.Points[i].Name || (l.Bridle != nil && (l.Bridle.Points[0] == d.r.Points[i].Name || l.Bridle.Points[1] == d.r.Points[i].Name)) {
				high, ok = math.Max(high, d.r.Points[i].InRoom.Z), true
			}
		}
	}
	return high, ok
}

// lengthMeasure measures the box along the section, below its lowest edge.
func (d *drafting) lengthMeasure() []Item {
	axis, of, half := r3.Vec{X: 1}, "box.size[0]", d.r.Optics.Size[0]/2
	if math.Abs(r3.Dot(d.r.Pose.Y, d.scene.view.U)) > math.Abs(r3.Dot(d.r.Pose.X, d.scene.view.U)) {
		axis, of, half = r3.Vec{Y: 1}, "box.size[1]", d.r.Optics.Size[1]/2
	}
	below := r3.Vec{Z: -d.r.LowestBy}
	a, b := d.mm(d.r.Pose.Out(r3.Add(r3.Scale(-half, axis), below))), d.mm(d.r.Pose.Out(r3.Add(r3.Scale(half, axis), below)))
	return dimension(a, b, -5, 2*half, of, measured(d.units, 2*half))
}
