package draw

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
	"softloft/rig"
)

// scene is one view of a rig under way.
type scene struct {
	*sketch
	r     *rig.Rig
	whole bool // of a whole room: what is small is left out
	above bool // a plan: roof and cloth are looked through
	drawn map[string]bool
	guys  []*rig.Part
	long  []*rig.Part // drawn from end to end because draw has no picture for their kind
}

func newScene(r *rig.Rig, v View, above bool) *scene {
	return &scene{sketch: newSketch(v), r: r, above: above, drawn: map[string]bool{}}
}

// parts draws what the rig places.
func (s *scene) parts() {
	if _, ok := s.r.Tube("frame.north"); !ok { // what has no frame has a size all the same
		corners := rim(s.r, 0)
		s.add(stroke{layer: Frame, pen: pen(Strong).with(Dashed), path: s.seen(corners[:]), closed: true, behind: Dotted})
	}
	for i := range s.r.Tubes {
		t := &s.r.Tubes[i]
		s.drawn[t.Part] = true
		s.tube(s.r, t, pen(tubeWeight(t.Role)))
	}
	for i := range s.r.Optics.Lamps {
		o := &s.r.Optics.Lamps[i]
		s.drawn[o.Part] = true
		s.lamp(s.r, o)
	}
	s.covers()
	for i := range s.r.Drops {
		d := &s.r.Drops[i]
		s.drawn[d.Part] = true
		s.line(Lines, d.Part, pen(Medium).with(Dotted), s.r.Pose.Out(d.Upper), s.r.Pose.Out(d.Lower))
	}
	for i := range s.r.Lines {
		s.hauled(&s.r.Lines[i])
	}
	s.fittings()
	s.rest()
}

// fittings draws the corner fittings as cubes around the tubes that they join.
func (s *scene) fittings() {
	for i := range s.r.Parts {
		p := &s.r.Parts[i]
		if p.What != "corner fitting" || len(s.r.Tubes) == 0 {
			continue
		}
		half := 0.75 * s.r.Tubes[0].Section.Outer
		pose := s.r.Pose
		pose.Origin = s.r.CenterInRoom(p)
		s.drawn[p.ID] = true
		s.block(Frame, p.ID, pen(Medium), Gray, pose, [3]float64{half, half, half})
	}
}

func tubeWeight(role rig.Role) float64 {
	if role == rig.BottomFrame || role == rig.UpperFrame {
		return Strong
	}
	return Medium
}

// covers draws cloths, sides, skirts, roof and crate.
func (s *scene) covers() {
	for i := range s.r.Parts {
		p := &s.r.Parts[i]
		side := sideOf(p.ID)
		switch {
		case p.What == "cloth":
			s.drawn[p.ID] = true
			s.cloth(p)
		case p.What == "roof":
			s.drawn[p.ID] = true
			corners := rim(s.r, p.Center.Z)
			s.flat(p.ID, pen(Strong).with(DashDot), corners[:])
		case p.What == "side" && side >= 0:
			s.drawn[p.ID] = true
			s.sheetBetween(s.r, side, p.ID, 0, s.r.Optics.Depth, pen(Strong))
		case p.What == "skirt" && side >= 0:
			s.drawn[p.ID] = true
			s.sheetBetween(s.r, side, p.ID, -s.r.Optics.Skirts[side], 0, pen(Strong).with(Dashed))
		case p.What == "egg-crate":
			s.drawn[p.ID] = true
			s.crate(p)
		}
	}
}

// sideOf returns the index of the side that an id ends with, -1 for none.
func sideOf(id string) int {
	for i, name := range plan.SideNames {
		if strings.HasSuffix(id, "."+name) {
			return i
		}
	}
	return -1
}

// cloth draws a cloth with the hem around what passes light.
func (s *scene) cloth(p *rig.Part) {
	corners := rim(s.r, p.Center.Z)
	s.flat(p.ID, pen(Heavy), corners[:])
	x, y := s.r.Optics.Clear[0]/2, s.r.Optics.Clear[1]/2
	if !s.above || x <= 0 || y <= 0 || p.Center.Z != 0 || x > s.r.Optics.Size[0]/2-0.02 {
		return
	}
	var clear []r3.Vec
	for _, c := range [4][2]float64{{-x, -y}, {x, -y}, {x, y}, {-x, y}} {
		clear = append(clear, s.r.Pose.Out(r3.Vec{X: c[0], Y: c[1]}))
	}
	s.through(Cloth, p.ID, pen(Hairline).in(Gray), true, clear...)
}

// flat draws a level sheet: filled pale from above where it is the cloth, as the line
// that the pen draws where it is seen on edge.
func (s *scene) flat(part string, with Pen, corners []r3.Vec) {
	if !s.above {
		s.sheet(part, with, corners...)
		return
	}
	if with.Dash == Solid {
		s.area(Cloth, part, pen(Hairline).in(Gray), None, false, corners...)
		return
	}
	var inset []r3.Vec // the roof is left off: its outline, just inside of the frame
	middle := r3.Scale(0.25, r3.Add(r3.Add(corners[0], corners[1]), r3.Add(corners[2], corners[3])))
	for _, c := range corners {
		inset = append(inset, r3.Add(c, r3.Scale(0.03, r3.Sub(middle, c))))
	}
	s.add(stroke{layer: Cloth, part: part, pen: pen(Thin).with(DashDot).in(Dark), path: s.seen(inset), closed: true, drop: true})
}

// crate draws the egg-crate: a patch of its cells from above, its walls in a section.
func (s *scene) crate(p *rig.Part) {
	c := s.r.Optics.Crate
	if c == nil {
		return
	}
	top, bottom := rim(s.r, 0), rim(s.r, -c.Depth)
	if s.above {
		s.cells(p.ID, c)
		return
	}
	along, size := r3.Vec{X: 1}, s.r.Optics.Size[0]
	if math.Abs(r3.Dot(s.r.Pose.Y, s.view.U)) > math.Abs(r3.Dot(s.r.Pose.X, s.view.U)) {
		along, size = r3.Vec{Y: 1}, s.r.Optics.Size[1]
	}
	cell := c.Cell[0]
	if along.Y == 1 {
		cell = c.Cell[1]
	}
	if cell <= 0 || size/cell > 2000 {
		return
	}
	at := math.Min(s.cut, s.view.in(s.r.Pose.Origin).Z)
	count := int(math.Round(size / cell))
	for i := 0; i <= count; i++ {
		x := r3.Scale(size*(float64(i)/float64(count)-0.5), along)
		wall := s.seen([]r3.Vec{s.r.Pose.Out(x), s.r.Pose.Out(r3.Sub(x, r3.Vec{Z: c.Depth}))})
		wall[0].Z, wall[1].Z = at, at
		s.add(stroke{layer: Cloth, part: p.ID, pen: pen(Hairline).in(Gray), path: wall, drop: true})
	}
	for _, level := range [2][4]r3.Vec{top, bottom} {
		s.sheet(p.ID, pen(Thin), level[:]...)
	}
}

// cells draws a patch of the crate's cells in the south-east corner.
func (s *scene) cells(part string, c *rig.CrateCell) {
	if s.whole {
		return
	}
	x, y := s.r.Optics.Size[0]/2, s.r.Optics.Size[1]/2
	if c.Cell[0] <= 0 || c.Cell[1] <= 0 {
		return
	}
	fine := pen(Hairline).in(Gray)
	w, h := math.Min(8, math.Floor(x/c.Cell[0]))*c.Cell[0], math.Min(8, math.Floor(y/c.Cell[1]))*c.Cell[1]
	for i := 1; float64(i)*c.Cell[0] <= w+1e-9; i++ {
		at := x - float64(i)*c.Cell[0]
		s.through(Cloth, part, fine, false, s.r.Pose.Out(r3.Vec{X: at, Y: -y}), s.r.Pose.Out(r3.Vec{X: at, Y: -y + h}))
	}
	for i := 1; float64(i)*c.Cell[1] <= h+1e-9; i++ {
		at := -y + float64(i)*c.Cell[1]
		s.through(Cloth, part, fine, false, s.r.Pose.Out(r3.Vec{X: x, Y: at}), s.r.Pose.Out(r3.Vec{X: x - w, Y: at}))
	}
}

// hauled draws a line: the load side, the legs of its bridle, the haul side.
func (s *scene) hauled(l *rig.Line) {
	top, ok := s.r.Top(l)
	if !ok {
		return
	}
	part := "line." + l.Name + ".rope"
	s.drawn[part] = true
	attach := s.r.Pose.Out(l.Attach)
	s.line(Lines, part, pen(Strong), attach, top)
	if l.Bridle != nil {
		for _, name := range l.Bridle.Points {
			if p, ok := s.r.PointNamed(name); ok {
				s.line(Lines, part, pen(Strong), top, p.InRoom)
			}
		}
	}
	if l.TieOff != nil {
		s.line(Lines, part, pen(Thin).with(Dashed), top, l.TieOff.InRoom)
	}
}

// rest draws every other part that is long as a thin line, so that a kind of part
// that draw doesn't know yet still shows.
func (s *scene) rest() {
	for i := range s.r.Parts {
		p := &s.r.Parts[i]
		if s.drawn[p.ID] {
			continue
		}
		if from, to, ok := s.r.EndsInRoom(p); ok {
			s.drawn[p.ID] = true
			with := pen(Thin)
			if p.What == "cable" {
				with = with.with(Dotted).in(Dark)
			}
			s.through(Lines, p.ID, with, false, from, to)
			if p.What == "guy" {
				s.guys = append(s.guys, p)
			}
			s.long = append(s.long, p)
		}
	}
}
