package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
	"softloft/shape"
)

// tube draws a tube at its true width. An end that is seen head on, or that the cutting
// plane cuts, shows its section.
func (s *sketch) tube(r *rig.Rig, t *rig.Tube, with Pen) {
	from, to := r.Pose.Out(t.From), r.Pose.Out(t.To)
	a, b := s.view.in(from), s.view.in(to)
	radius := t.Section.Outer / 2
	flat := math.Hypot(b.X-a.X, b.Y-a.Y)
	if flat < radius {
		s.section(r, t, from, to)
		return
	}
	if a.Z <= s.cut+touching && b.Z <= s.cut+touching {
		defer s.uncut()()
	}
	side := r3.Scale(radius/flat, r3.Vec{X: -(b.Y - a.Y), Y: b.X - a.X})
	lift := r3.Vec{Z: radius}
	corners := make([]r3.Vec, 4)
	for i, c := range [4]r3.Vec{r3.Sub(a, side), r3.Sub(b, side), r3.Add(b, side), r3.Add(a, side)} {
		corners[i] = s.out(r3.Add(c, lift))
	}
	s.area(Frame, t.Part, with, Paper, true, corners...)
}

// uncut lets what lies on or beyond the cutting plane stand whole, as a drawing doesn't cut
// tubes and lamps along. It returns what puts the plane back.
func (s *sketch) uncut() func() {
	cut := s.cut
	s.cut = math.Inf(1)
	return func() { s.cut = cut }
}

// out takes a place of the view back into the room.
func (s *sketch) out(at r3.Vec) r3.Vec {
	return r3.Add(r3.Scale(at.X, s.view.U), r3.Add(r3.Scale(at.Y, s.view.V), r3.Scale(at.Z, s.view.W)))
}

// section draws a tube seen along its axis: its wall, filled where it is cut.
func (s *sketch) section(r *rig.Rig, t *rig.Tube, from, to r3.Vec) {
	near, far := s.view.in(from), s.view.in(to)
	if near.Z < far.Z {
		near, far = far, near
	}
	if far.Z > s.cut+touching {
		return
	}
	ink := Paper
	if near.Z > s.cut+touching {
		near = between(near, far, (near.Z-s.cut)/(near.Z-far.Z))
		ink = Black
	}
	sides, turn := 24, 0.0
	if t.Section.Square {
		sides, turn = 4, math.Pi/4
	}
	outline := func(radius float64) []r3.Vec {
		if t.Section.Square {
			radius *= math.Sqrt2
		}
		ring := make([]r3.Vec, sides)
		for i := range ring {
			sin, cos := math.Sincos(turn + 2*math.Pi*float64(i)/float64(sides))
			ring[i] = s.out(r3.Add(near, r3.Vec{X: radius * cos, Y: radius * sin}))
		}
		return ring
	}
	outer := t.Section.Outer / 2
	s.area(Frame, t.Part, pen(Medium), ink, true, outline(outer)...)
	if inner := outer - t.Section.Wall; inner > 0 && ink == Black {
		s.area(Frame, t.Part, Pen{}, Paper, false, outline(inner)...)
	}
}

// block draws the faces of a body that turn toward the viewer.
func (s *sketch) block(layer Layer, part string, with Pen, ink Ink, pose shape.Pose, half [3]float64) {
	axes := [3]r3.Vec{pose.X, pose.Y, pose.Z}
	for i := range axes {
		for _, sign := range [2]float64{-1, 1} {
			out := r3.Scale(sign, axes[i])
			if r3.Dot(out, s.view.W) < edgeOn {
				continue
			}
			u, v := r3.Scale(half[(i+1)%3], axes[(i+1)%3]), r3.Scale(half[(i+2)%3], axes[(i+2)%3])
			s.area(layer, part, with, ink, true, shape.Rectangle(r3.Add(pose.Origin, r3.Scale(half[i], out)), u, v)...)
		}
	}
}

// lamp draws a lamp's body and its opening: the opening through the body, heavy where it is
// seen on edge.
func (s *sketch) lamp(r *rig.Rig, o *rig.Opening) {
	center := r.Pose.Out(o.Center)
	u, v, axis := r.Pose.OutDirection(o.U), r.Pose.OutDirection(o.V), r.Pose.OutDirection(o.Axis)
	if s.view.in(center).Z > s.cut+touching {
		return
	}
	defer s.uncut()()
	if o.Body != nil {
		half := [3]float64{o.Body[0] / 2, o.Body[1] / 2, o.Body[2] / 2}
		pose := shape.Pose{Origin: r3.Sub(center, r3.Scale(half[2], axis)), X: u, Y: v, Z: axis}
		s.block(Lamps, o.Part, pen(Medium), Pale, pose, half)
	}
	opening := shape.Rectangle(center, r3.Scale(o.Size[0]/2, u), r3.Scale(o.Size[1]/2, v))
	with := pen(Thin)
	if math.Abs(r3.Dot(axis, s.view.W)) < 0.5 {
		with = pen(Heavy)
	}
	s.through(Lamps, o.Part, with, true, opening...)
}

// rim is the rectangle of the box at a height over the cloth plane, in the room,
// counter-clockwise from the south-west corner.
func rim(r *rig.Rig, z float64) [4]r3.Vec {
	x, y := r.Optics.Size[0]/2, r.Optics.Size[1]/2
	return [4]r3.Vec{
		r.Pose.Out(r3.Vec{X: -x, Y: -y, Z: z}), r.Pose.Out(r3.Vec{X: x, Y: -y, Z: z}),
		r.Pose.Out(r3.Vec{X: x, Y: y, Z: z}), r.Pose.Out(r3.Vec{X: -x, Y: y, Z: z}),
	}
}

// edges are the ends of the box's sides in a rim, in the order of plan.SideNames: north,
// south, east, west.
var edges = [4][2]int{{3, 2}, {0, 1}, {1, 2}, {0, 3}}

// sheetBetween draws a sheet between two levels of one side.
func (s *sketch) sheetBetween(r *rig.Rig, side int, part string, low, high float64, with Pen) {
	bottom, top := rim(r, low), rim(r, high)
	if s.view.W.Z == 1 && len(r.Tubes) > 0 { // wraps around the tube
		out := r3.Scale(r.Tubes[0].Section.Outer/2, r.Pose.OutDirection([4]r3.Vec{{Y: 1}, {Y: -1}, {X: 1}, {X: -1}}[side]))
		for i := range bottom {
			bottom[i], top[i] = r3.Add(bottom[i], out), r3.Add(top[i], out)
		}
	}
	e := edges[side]
	s.sheet(part, with, bottom[e[0]], bottom[e[1]], top[e[1]], top[e[0]])
}

// sheet draws a thin sheet: as one line where it is seen on edge, as that line heavy
// where it is cut, else as a pale outline.
func (s *sketch) sheet(part string, with Pen, corners ...r3.Vec) {
	if _, seen := faceOf(s.seen(corners)); !seen {
		s.line(Cloth, part, with, append(append([]r3.Vec(nil), corners...), corners[0])...)
		return
	}
	if !math.IsInf(s.cut, 1) {
		s.cutLine(part, corners)
	}
	s.through(Cloth, part, pen(Hairline).in(Gray), true, corners...)
}

// cutLine draws where the cutting plane cuts a sheet.
func (s *sketch) cutLine(part string, corners []r3.Vec) {
	var ends []r3.Vec
	path := s.seen(corners)
	for i, a := range path {
		b := path[(i+1)%len(path)]
		if (a.Z-s.cut > touching) != (b.Z-s.cut > touching) {
			ends = append(ends, s.out(between(a, b, (a.Z-s.cut)/(a.Z-b.Z))))
		}
	}
	if len(ends) == 2 {
		s.line(Cloth, part, pen(Heavy), ends...)
	}
}
