package rig

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/plan"
	"softloft/source"
)

// LinesBody is the body of what hangs above the box: the points carry it, the box
// doesn't.
const LinesBody = "lines"

// points takes over what the building's owner states.
func (d *deriver) points() {
	room := d.Plan.Room
	if room == nil {
		return
	}
	for i, p := range room.Points {
		d.Points = append(d.Points, Point{
			Name: p.Name, Path: fmt.Sprintf("room.points[%d]", i),
			InRoom:       r3.Vec{X: float64(p.At[0]), Y: float64(p.At[1]), Z: float64(p.At[2])},
			Allows:       float(p.Allows),
			VerticalOnly: p.Direction != "any", Beam: p.On, Kind: string(p.Kind), StatedBy: p.StatedBy, StatedOn: p.StatedOn,
		})
	}
	for i, b := range room.Beams {
		d.Beams = append(d.Beams, Beam{Name: b.Name, Path: fmt.Sprintf("room.beams[%d]", i), Allows: float(b.Allows)})
	}
}

// float copies an optional quantity.
func float[T ~float64](q *T) *float64 {
	if q == nil {
		return nil
	}
	x := float64(*q)
	return &x
}

// drops hang the bottom frame on the upper frame, or on the ribs' ends.
func (d *deriver) drops() {
	join := d.box.Join.Drops
	if join == nil {
		return
	}
	piece, _ := d.Kit.Suspender(join.Kit)
	places := d.dropPlaces(join.Count)
	if len(places) < join.Count {
		d.Odd = append(d.Odd, Oddity{ID: "rig.drops", Path: "box.join", Unknown: true, Statement: fmt.Sprintf(
			"%d drops are asked for and %d find a tube above the bottom frame: the rest are not placed", join.Count, len(places))})
	}
	for i, lower := range places {
		d.drop(i+1, lower, piece, join)
	}
}

// dropPlaces returns places on the bottom frame that have a tube above them at the
// box's depth: around the upper frame, or under the ribs' ends, outer ribs first.
func (d *deriver) dropPlaces(n int) []r3.Vec {
	if _, ok := d.Rig.Tube("upper.north"); ok {
		return d.perimeter(n)
	}
	var ribs []Tube
	for _, t := range d.Tubes {
		if t.Role == Rib && math.Abs(t.From.Z-d.depth()) < touching {
			ribs = append(ribs, t)
		}
	}
	var places []r3.Vec
	for low, high := 0, len(ribs)-1; low <= high; low, high = low+1, high-1 {
		pair := []Tube{ribs[low], ribs[high]}
		if low == high {
			pair = pair[:1]
		}
		for _, t := range pair {
			places = append(places, r3.Vec{X: t.From.X, Y: t.From.Y}, r3.Vec{X: t.To.X, Y: t.To.Y})
		}
	}
	return places[:min(n, len(places))]
}

func (d *deriver) drop(number int, lower r3.Vec, piece kit.Suspender, join *plan.Drops) {
	upper := r3.Add(lower, r3.Vec{Z: d.depth()})
	drop := Drop{
		Part: fmt.Sprintf("drop.%d", number), Name: fmt.Sprintf("drop %d", number), Upper: upper, Lower: lower,
		UpperTube: d.tubeAt(upper), LowerTube: d.tubeAt(lower), Length: d.depth(),
		Kind: kindOf(piece),
		Demo: piece.Entry.Source.Demo("rated"), RatedSource: piece.Entry.Source.For("rated"),
	}
	if join.Length != nil {
		drop.Length = float64(*join.Length)
	}
	part := Part{
		ID: drop.Part, What: "drop", Name: piece.Entry.Label(piece.ID), KitKind: piece.Kind, KitID: piece.ID, Body: "drops",
		Center: r3.Scale(0.5, r3.Add(upper, lower)), From: &upper, To: &lower, Length: drop.Length,
		Why: "hangs the bottom frame: box.join", Path: "box.join", Demo: piece.Entry.Source.Demo("mass"),
	}
	switch {
	case piece.Rope != nil:
		drop.EA, drop.Rated, drop.Breaking = value(piece.Rope.Stiffness), float(piece.Rope.Breaks), true
		drop.Demo, drop.RatedSource = piece.Entry.Source.Demo("breaks"), piece.Entry.Source.For("breaks")
		if piece.Rope.Mass != nil {
			part.Mass, part.MassFrom = mass(float64(*piece.Rope.Mass)*drop.Length), "kit mass per length"
		}
	default:
		drop.EA, drop.Rated = value(piece.Hardware.Stiffness), float(piece.Hardware.Rated)
		drop.Breaking = piece.Hardware.Kind == "breaking"
		part.Mass, part.MassFrom = pieceMass(piece.Hardware, drop.Length)
	}
	for _, tube := range []string{drop.UpperTube, drop.LowerTube} {
		if tube != "" {
			part.Joined = append(part.Joined, tube)
		}
	}
	d.Drops = append(d.Drops, drop)
	d.weigh(part, Weight{OnTube: drop.UpperTube, Station: upper})
}

// value returns an optional quantity, 0 where nobody gave it.
func value[T ~float64](q *T) float64 {
	if q == nil {
		return 0
	}
	return float64(*q)
}

// pieceMass returns the mass of a piece of a length, nil where nobody gave it.
func pieceMass(piece kit.Hardware, length float64) (*float64, string) {
	if piece.Mass.PerLength != nil {
		return mass(float64(*piece.Mass.PerLength) * length), "kit mass per length"
	}
	return float(piece.Mass.Each), "kit"
}

// lines places what carries the box, with its rope, pulley and hardware.
func (d *deriver) lines() {
	if d.Plan.Hang == nil {
		return
	}
	for i := range d.Plan.Hang.Lines {
		d.line(&d.Plan.Hang.Lines[i], i)
	}
}

// attachment returns where a line holds the box. Two coordinates and corners are
// at the upper frame's level where there is one, else in the cloth plane.
func (d *deriver) attachment(f plan.From) r3.Vec {
	at := r3.Vec{X: float64(f.At[0]), Y: float64(f.At[1]), Z: float64(f.At[2])}
	x, y := d.half()
	switch f.Corner {
	case "ne":
		at = r3.Vec{X: x, Y: y}
	case "nw":
		at = r3.Vec{X: -x, Y: y}
	case "sw":
		at = r3.Vec{X: -x, Y: -y}
	case "se":
		at = r3.Vec{X: x, Y: -y}
	}
	if f.Deep {
		return at
	}
	if _, ok := d.Rig.Tube("upper.north"); ok {
		at.Z = d.depth()
	}
	return at
}

func (d *deriver) line(l *plan.Line, i int) {
	path := fmt.Sprintf("hang.lines[%d]", i)
	attach := d.attachment(l.From)
	line := Line{Name: l.Name, Path: path, Attach: attach, Tube: d.tubeAt(attach), Length: float(l.Length), Point: l.To.Point}
	if line.Tube == "" {
		d.Odd = append(d.Odd, Oddity{ID: "rig.attached." + l.Name, Part: "line." + l.Name + ".rope", Path: path + ".from", Unknown: true,
			Statement: "Line " + l.Name + " is attached where no tube of the box is"})
	}
	if l.To.Bridle != nil {
		line.Bridle = d.bridle(l.To.Bridle, attach)
	}
	hang := d.Plan.Hang
	line.Rope = d.lineRope(first(l.Rope, hang.Rope))
	line.Pulley = d.linePulley(first(l.Pulley, hang.Pulley))
	if l.TieOff != nil {
		at := l.TieOff.At
		line.TieOff = &TieOff{InRoom: r3.Vec{X: float64(at[0]), Y: float64(at[1]), Z: float64(at[2])}, Allows: float(l.TieOff.Allows)}
	}
	d.ropePart(&line, path)
	d.pulleyPart(&line, path)
	d.hardware(&line, "clamp", l.Clamp, d.Kit.Clamp, path)
	d.hardware(&line, "shackle", l.Shackle, d.Kit.Shackle, path)
	d.softeners(&line)
	d.Lines = append(d.Lines, line)
}

func first(own, shared string) string {
	if own != "" {
		return own
	}
	return shared
}

// bridle places the apex at its height in the vertical plane of the two points,
// as near as can be over the attachment.
func (d *deriver) bridle(b *plan.Bridle, attach r3.Vec) *Bridle {
	above := d.Pose.Out(attach)
	apex := r3.Vec{X: above.X, Y: above.Y, Z: float64(b.Apex)}
	one, okOne := d.PointNamed(b.Points[0])
	two, okTwo := d.PointNamed(b.Points[1])
	if okOne && okTwo {
		from := r3.Vec{X: one.InRoom.X, Y: one.InRoom.Y}
		to := r3.Vec{X: two.InRoom.X, Y: two.InRoom.Y}
		if r3.Norm(r3.Sub(to, from)) > touching {
			at := nearest(from, to, r3.Vec{X: apex.X, Y: apex.Y})
			apex.X, apex.Y = at.X, at.Y
		}
	}
	return &Bridle{Points: b.Points, ApexInRoom: apex}
}

// lineRope takes over what the kit knows of a rope, sling or webbing.
func (d *deriver) lineRope(id string) *Rope {
	piece, ok := d.Kit.Suspender(id)
	if !ok {
		return nil
	}
	return RopeOf(piece)
}

// RopeOf takes over what the kit knows of a rope, sling, webbing or safety.
func RopeOf(piece kit.Suspender) *Rope {
	if r := piece.Rope; r != nil {
		return &Rope{ID: piece.ID, Kind: kindOf(piece), EA: value(r.Stiffness), MassPerLength: float(r.Mass), Breaks: float(r.Breaks),
			Knot: r.Knot, Diameter: float(r.Diameter), Demo: r.Source.Demo("breaks"), Source: r.Source.For("breaks")}
	}
	h := piece.Hardware
	return &Rope{ID: piece.ID, Kind: kindOf(piece), EA: value(h.Stiffness), MassPerLength: float(h.Mass.PerLength),
		Breaks: float(h.Rated), Working: h.Kind != "breaking", Demo: h.Source.Demo("rated"), Source: h.Source.For("rated")}
}

// kindOf sorts a suspender into the kinds that design factors are stated for.
func kindOf(piece kit.Suspender) source.Hardware {
	material := piece.Hardware.Material
	if piece.Rope != nil {
		material = piece.Rope.Kind
	}
	switch {
	case strings.Contains(material, "chain"):
		return source.Chain
	case strings.Contains(material, "steel core"):
		return source.SteelCoreSling
	case strings.Contains(material, "wire"), strings.Contains(material, "steel"):
		return source.WireRope
	case piece.Rope != nil:
		return source.FiberRope
	}
	return source.RoundSling
}

func (d *deriver) linePulley(id string) *Pulley {
	p, ok := d.Kit.Pulley[id]
	if !ok {
		return nil
	}
	return &Pulley{ID: id, Rated: float(p.Rated), Breaking: p.Kind == "breaking", Efficiency: p.Efficiency,
		Sheave: float(p.Sheave), Mass: float(p.Mass), Demo: p.Source.Demo("rated"), Source: p.Source.For("rated")}
}

// Top returns where a line's own part ends above: its point or its apex.
func (r *Rig) Top(l *Line) (r3.Vec, bool) {
	if l.Bridle != nil {
		return l.Bridle.ApexInRoom, true
	}
	p, ok := r.PointNamed(l.Point)
	if !ok {
		return r3.Vec{}, false
	}
	return p.InRoom, true
}

// HaulLength returns the length of the haul side as planned: from the point to the
// tie-off, or straight down to the floor where the plan names none.
func (r *Rig) HaulLength(l *Line) float64 {
	top, ok := r.Top(l)
	if l.Pulley == nil || !ok {
		return 0
	}
	if l.TieOff == nil {
		return math.Max(0, top.Z)
	}
	return r3.Norm(r3.Sub(l.TieOff.InRoom, top))
}

// ropePart places the line's rope: load side, haul side and the bridle's legs.
func (d *deriver) ropePart(l *Line, path string) {
	top, ok := d.Top(l)
	if !ok || l.Rope == nil {
		return
	}
	attach := d.Pose.Out(l.Attach)
	load := r3.Norm(r3.Sub(top, attach))
	if l.Length != nil {
		load = *l.Length
	}
	length := load + d.HaulLength(l)
	spare, said := d.spare(l, top, load)
	length += spare
	if l.Bridle != nil {
		for _, name := range l.Bridle.Points {
			if p, ok := d.PointNamed(name); ok {
				length += r3.Norm(r3.Sub(p.InRoom, top))
			}
		}
	}
	piece, _ := d.Kit.Suspender(l.Rope.ID)
	part := Part{
		ID: "line." + l.Name + ".rope", What: "line", Name: piece.Entry.Label(l.Rope.ID), KitKind: piece.Kind, KitID: l.Rope.ID,
		Body: LinesBody, Demo: piece.Entry.Source.Demo("mass"), InRoom: true,
		Center: r3.Scale(0.5, r3.Add(attach, top)), From: &attach, To: &top, Length: length,
		Why: fmt.Sprintf("line %s, load side %.3f m of %.3f m %s: %s", l.Name, load, length, said, path), Path: path,
	}
	if l.Rope.MassPerLength != nil {
		part.Mass, part.MassFrom = mass(*l.Rope.MassPerLength*length), "kit mass per length"
	} else if piece.Hardware.Mass.Each != nil {
		part.Mass, part.MassFrom = float(piece.Hardware.Mass.Each), "kit"
	}
	if l.Tube != "" {
		part.Joined = []string{l.Tube}
	}
	l.Parts = append(l.Parts, d.add(part))
}

func (d *deriver) pulleyPart(l *Line, path string) {
	top, ok := d.Top(l)
	if l.Pulley == nil || !ok {
		return
	}
	entry := d.Kit.Pulley[l.Pulley.ID]
	l.Parts = append(l.Parts, d.add(Part{
		ID: "line." + l.Name + ".pulley", What: "pulley", Name: entry.Label(l.Pulley.ID), KitKind: "pulley", KitID: l.Pulley.ID,
		Body: LinesBody, Mass: float(entry.Mass), MassFrom: "kit", Demo: entry.Source.Demo("mass"), InRoom: true, Center: top,
		Joined: []string{"line." + l.Name + ".rope"}, Why: "turns line " + l.Name + " to its haul side: " + path, Path: path,
	}))
}

// hardware places a clamp at the line's top or a shackle at its foot.
func (d *deriver) hardware(l *Line, what, id string, set map[string]kit.Hardware, path string) {
	piece, ok := set[id]
	top, okTop := d.Top(l)
	if !ok || !okTop {
		return
	}
	tops := []r3.Vec{top}
	if what == "clamp" && l.Bridle != nil {
		tops = tops[:0]
		for _, name := range l.Bridle.Points {
			if p, ok := d.PointNamed(name); ok {
				tops = append(tops, p.InRoom)
			}
		}
	}
	for i, at := range tops {
		part := Part{
			ID: "line." + l.Name + "." + what, What: what, Name: piece.Label(id), KitKind: what, KitID: id,
			Body: LinesBody, Demo: piece.Source.Demo("mass"), InRoom: true, Center: at,
			Joined: []string{"line." + l.Name + ".rope"}, Why: what + " of line " + l.Name + ": " + path, Path: path + "." + what,
		}
		if i > 0 {
			part.ID += fmt.Sprint(".", i+1)
		}
		if what == "clamp" {
			part.Why += clampHabit(d.kindOfPoint(at))
		}
		part.Mass, part.MassFrom = pieceMass(piece, 0)
		l.Parts = append(l.Parts, d.add(part))
		l.Hardware = append(l.Hardware, Hardware{What: what, ID: id, Part: part.ID, Rated: float(piece.Rated),
			Breaking: piece.Kind == "breaking", Demo: piece.Source.Demo("rated"), Source: piece.Source.For("rated")})
	}
}
