package rig

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/plan"
)

// bottomFrame places the four sides of the bottom frame, in the cloth plane.
func (d *deriver) bottomFrame() {
	if d.box.Frame == "" {
		d.notPlaced("bottom frame", "the plan names no tube for it (box.frame)")
		return
	}
	d.ring("frame", BottomFrame, d.box.Frame, d.box.Corners == "pinned", false, 0, "box.frame")
}

// upperFrame places the four sides of the upper frame at the box's depth.
func (d *deriver) upperFrame() {
	upper := d.box.Upper
	if upper == nil || upper.Tube == "" {
		return
	}
	d.ring("upper", UpperFrame, upper.Tube, upper.Corners == "pinned", upper.Welded, d.depth(), "box.upper")
}

// ring places four tubes between the corners at a height.
func (d *deriver) ring(prefix string, role Role, tube string, pinned, welded bool, z float64, path string) {
	x, y := d.half()
	sides := [4][2]r3.Vec{ // north, south, east, west: toward +x and +y
		{{X: -x, Y: y, Z: z}, {X: x, Y: y, Z: z}},
		{{X: -x, Y: -y, Z: z}, {X: x, Y: -y, Z: z}},
		{{X: x, Y: -y, Z: z}, {X: x, Y: y, Z: z}},
		{{X: -x, Y: -y, Z: z}, {X: -x, Y: y, Z: z}},
	}
	for i, ends := range sides {
		d.tube(Tube{
			Part: prefix + "." + plan.SideNames[i], Body: string(role), Role: role,
			From: ends[0], To: ends[1], PinnedFrom: pinned, PinnedTo: pinned, Welded: welded,
		}, tube, fmt.Sprintf("%s, %s side: %s", role, plan.SideNames[i], path), path)
	}
}

// tube places one tube with its part. Its body is settled later, by join.
func (d *deriver) tube(t Tube, id, why, path string) {
	stock := d.Kit.Tube[id]
	t.Section = Section{Square: stock.Shape == "square", Outer: float64(stock.Outer), Wall: float64(stock.Wall)}
	t.Alloy = d.Kit.Alloy[stock.Alloy]
	var from string
	t.MassPerLength, from = massPerLength(stock, t.Alloy)
	length := r3.Norm(r3.Sub(t.To, t.From))
	ends := [2]r3.Vec{t.From, t.To}
	d.add(Part{
		ID: t.Part, What: string(t.Role) + " tube", Name: stock.Label(id), KitKind: "tube", KitID: id, Body: t.Body,
		Mass: mass(t.MassPerLength * length), MassFrom: from, Demo: stock.Source.Demo("mass"),
		Center: r3.Scale(0.5, r3.Add(t.From, t.To)), From: &ends[0], To: &ends[1], Length: length,
		Why: why, Path: path,
	})
	d.Tubes = append(d.Tubes, t)
}

// massPerLength returns what the kit states, or area times density.
func massPerLength(stock kit.Tube, alloy kit.Alloy) (perLength float64, from string) {
	if stock.Mass != nil {
		return float64(*stock.Mass), "kit, mass per length"
	}
	section := Section{Square: stock.Shape == "square", Outer: float64(stock.Outer), Wall: float64(stock.Wall)}
	return section.Area() * float64(alloy.Density), "section area × density of " + stock.Alloy
}

// Area returns the area of metal in m².
func (s Section) Area() float64 {
	inner := s.Outer - 2*s.Wall
	area := s.Outer*s.Outer - inner*inner
	if s.Square {
		return area
	}
	return math.Pi / 4 * area
}

// ribs places the tubes across the box, at the upper level or in the cloth plane.
func (d *deriver) ribs() {
	ribs := d.box.Ribs
	if ribs == nil {
		return
	}
	z := d.depth()
	if ribs.Level == "lower" {
		z = 0
	}
	x, y := d.half()
	for i, across := range ribPlaces(ribs, d.box) {
		ends := [2]r3.Vec{{X: -x, Y: across, Z: z}, {X: x, Y: across, Z: z}}
		if ribs.Along == "y" {
			ends = [2]r3.Vec{{X: across, Y: -y, Z: z}, {X: across, Y: y, Z: z}}
		}
		id := fmt.Sprintf("rib.%d", i+1)
		d.tube(Tube{
			Part: id, Body: fmt.Sprintf("rib %d", i+1), Role: Rib, From: ends[0], To: ends[1],
			PinnedFrom: ribs.Ends == "pinned", PinnedTo: ribs.Ends == "pinned",
		}, ribs.Tube, fmt.Sprintf("rib %d along %s: box.ribs", i+1, ribs.Along), "box.ribs")
	}
}

// ribPlaces returns the ribs' positions across the box: as written, or evenly at
// i/(n+1) of the width.
func ribPlaces(ribs *plan.Ribs, box *plan.Box) []float64 {
	width := float64(box.Size[1])
	if ribs.Along == "y" {
		width = float64(box.Size[0])
	}
	var places []float64
	for _, at := range ribs.At {
		places = append(places, float64(at))
	}
	if len(ribs.At) == 0 {
		for i := 1; i <= ribs.Count; i++ {
			places = append(places, width*(float64(i)/float64(ribs.Count+1)-0.5))
		}
	}
	return places
}

// uprights places tubes between the two frames: at the corners, then evenly along
// the long sides.
func (d *deriver) uprights() {
	join := d.box.Join.Uprights
	if join == nil {
		return
	}
	for i, at := range d.perimeter(join.Count) {
		top := r3.Add(at, r3.Vec{Z: d.depth()})
		d.tube(Tube{
			Part: fmt.Sprintf("upright.%d", i+1), Body: string(BottomFrame), Role: Upright, From: at, To: top,
		}, join.Tube, fmt.Sprintf("upright %d of %d: box.join", i+1, join.Count), "box.join")
	}
}

// perimeter returns n places on the bottom frame: the corners first, then pairs on
// opposite long sides, then on the short ones, evenly.
func (d *deriver) perimeter(n int) []r3.Vec {
	x, y := d.half()
	places := []r3.Vec{{X: x, Y: y}, {X: -x, Y: y}, {X: -x, Y: -y}, {X: x, Y: -y}}
	if n <= len(places) {
		return places[:max(n, 0)]
	}
	pairs := (n - len(places) + 1) / 2
	along := (pairs + 1) / 2 // pairs on the long sides; the rest on the short ones
	if x != y {
		along = pairs
	}
	for i := range pairs {
		s, count := i, along
		long := i < along
		if !long {
			s, count = i-along, pairs-along
		}
		f := 2*float64(s+1)/float64(count+1) - 1
		a, b := r3.Vec{X: f * x, Y: y}, r3.Vec{X: f * x, Y: -y}
		if long == (y > x) {
			a, b = r3.Vec{X: x, Y: f * y}, r3.Vec{X: -x, Y: f * y}
		}
		places = append(places, a, b)
	}
	return places[:n]
}

// tubeAt returns the part of the tube whose center-line passes through a place,
// within touching distance; bottom frame first where several do.
func (d *deriver) tubeAt(at r3.Vec) string {
	for i := range d.Tubes {
		if distanceToAxis(d.Tubes[i].From, d.Tubes[i].To, at) < touching {
			return d.Tubes[i].Part
		}
	}
	return ""
}

// touching is how near two center-lines count as meeting, in m: a plan's feet and
// inches rounded to a sixteenth meet.
const touching = 2e-3

func distanceToAxis(from, to, at r3.Vec) float64 {
	return r3.Norm(r3.Sub(at, nearest(from, to, at)))
}

// nearest returns the place between from and to that is nearest to at.
func nearest(from, to, at r3.Vec) r3.Vec {
	along := r3.Sub(to, from)
	t := r3.Dot(r3.Sub(at, from), along) / r3.Norm2(along)
	return r3.Add(from, r3.Scale(math.Max(0, math.Min(1, t)), along))
}
