package load

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
	"softloft/rig"
	"softloft/source"
)

// shape is what of the box catches wind, in the room.
type windShape struct {
	rig            *rig.Rig
	panels         [4]panel // north, south, east, west
	sheet          bool     // a cloth or a roof: a canopy
	slope          float64  // rad
	down, up       float64  // the canopy's coefficients
	upOpen         float64  // lifted with nothing beneath
	covered        bool     // false where the table does not reach the slope
	crateX, crateY float64  // m, of the crate's depth that no skirt covers, by axis
	bodies         []windBody
	leftOut        []string
}

// panel is one side with its skirt: from low to high over the cloth plane, in m. None
// where high is not over low.
type panel struct{ low, high float64 }

func (p panel) height() float64 { return math.Max(0, p.high-p.low) }

// windBody is a lamp's body: its edges and its middle in the room.
type windBody struct {
	edges [3]r3.Vec
	at    r3.Vec
	stand string // part of the stand whose arm carries it; empty on the box
}

// windShapeOf reads off the rig what catches wind.
func windShapeOf(r *rig.Rig) *windShape {
	box := r.Plan.Box
	s := &windShape{rig: r, sheet: len(box.Cloth) > 0}
	if depth := box.Depth; depth != nil && *depth > 0 && box.Roof.Word != "open" && box.Roof.Word != "none" {
		s.sheet = true
	}
	for i := range plan.SideNames {
		s.panels[i].low = -float64(box.Skirt[i])
		if box.Depth != nil && box.Sides[i].Word != "none" {
			s.panels[i].high = float64(*box.Depth)
		}
	}
	if c := r.Optics.Crate; c != nil {
		s.crateX = math.Max(0, c.Depth+math.Min(s.panels[2].low, s.panels[3].low))
		s.crateY = math.Max(0, c.Depth+math.Min(s.panels[0].low, s.panels[1].low))
	}
	s.slope = math.Acos(math.Max(-1, math.Min(1, r.Pose.Z.Z)))
	s.coefficients()
	s.lampBodies()
	return s
}

// coefficients looks the canopy up: as blocked as the plan says, else the worse of open
// and blocked.
func (s *windShape) coefficients() {
	var open, blocked float64
	s.down, open, s.covered = canopy(s.slope, 0)
	_, blocked, _ = canopy(s.slope, 1)
	s.up, s.upOpen = math.Max(open, blocked), open
	if b := s.rig.Plan.Room.Outdoors.Blocked; b != nil {
		s.down, s.up, s.covered = canopy(s.slope, float64(*b))
	}
}

func (s *windShape) lampBodies() {
	bodiless := false
	for _, o := range s.rig.Optics.Lamps {
		if o.Body == nil {
			bodiless = true
			continue
		}
		axis := r3.Unit(o.Axis)
		pose := s.rig.Pose
		b := windBody{at: pose.Out(r3.Sub(o.Center, r3.Scale(o.Body[2]/2, axis))),
			edges: [3]r3.Vec{pose.OutDirection(r3.Scale(o.Body[0], o.U)), pose.OutDirection(r3.Scale(o.Body[1], o.V)), pose.OutDirection(r3.Scale(o.Body[2], axis))}}
		if p, ok := s.rig.Part(o.Part); ok && strings.HasPrefix(p.Body, "stand.") {
			b.stand = p.Body
		}
		s.bodies = append(s.bodies, b)
	}
	if bodiless {
		s.leftOut = append(s.leftOut, "wind on lamps whose kit entry gives no body")
	}
	if len(s.rig.Stands) > 0 {
		s.leftOut = append(s.leftOut, "wind on the stands themselves: the kit gives no mast's diameter")
	}
}

// force is a force at a place, in the room, for a velocity pressure of 1 Pa.
type force struct{ force, at r3.Vec }

// blowOf is the direction in which wind from a bearing blows, a unit vector. Bearings are
// world angles: 0 is +x, counter-clockwise.
func blowOf(bearing float64) r3.Vec {
	sin, cos := math.Sincos(bearing)
	return r3.Vec{X: -cos, Y: -sin}
}

// drags are the forces on all that stands across the wind.
func (s *windShape) drags(blow r3.Vec) []force {
	all := append(s.panelForces(blow), s.tubeForces(blow)...)
	all = append(all, s.crateForces(blow)...)
	if s.sheet {
		size := s.rig.Plan.Box.Size
		all = append(all, force{r3.Scale(2*source.SurfaceFriction().Value*float64(size[0])*float64(size[1]), blow), s.rig.Pose.Origin})
	}
	for _, b := range s.bodies {
		if b.stand == "" {
			all = append(all, b.force(blow))
		}
	}
	return all
}

// force on a sharp-edged body, on the area that it shows to the wind.
func (b windBody) force(blow r3.Vec) force {
	var area float64
	for i := range b.edges {
		area += math.Abs(r3.Dot(blow, r3.Cross(b.edges[i], b.edges[(i+1)%3])))
	}
	return force{r3.Scale(source.SquareMember().Value*area, blow), b.at}
}

// panelForces are square to the sides: 1.8·A·|cos| of the angle at which the wind meets
// each, the lee one of a pair sheltered.
func (s *windShape) panelForces(blow r3.Vec) []force {
	size := s.rig.Plan.Box.Size
	outward := [4]r3.Vec{{Y: 1}, {Y: -1}, {X: 1}, {X: -1}}
	var all []force
	for i, p := range s.panels {
		if p.height() == 0 {
			continue
		}
		normal := s.rig.Pose.OutDirection(outward[i])
		cos := r3.Dot(normal, blow)
		width, apart := float64(size[i/2]), float64(size[1-i/2])
		strength := source.Panel().Value * p.height() * width * cos
		if s.panels[i^1].height() > 0 && cos > 0 {
			strength *= source.Shelter(apart / p.height()).Value
		}
		middle := r3.Add(r3.Scale(apart/2, outward[i]), r3.Vec{Z: (p.low + p.high) / 2})
		all = append(all, force{r3.Scale(strength, normal), s.rig.Pose.Out(middle)})
	}
	return all
}

// tubeForces are square to each tube: what of the wind is along it does not count.
func (s *windShape) tubeForces(blow r3.Vec) []force {
	var all []force
	for i := range s.rig.Tubes {
		t := &s.rig.Tubes[i]
		from, to := s.rig.Pose.Out(t.From), s.rig.Pose.Out(t.To)
		along := r3.Sub(to, from)
		length := r3.Norm(along)
		axis := r3.Scale(1/length, along)
		square := r3.Sub(blow, r3.Scale(r3.Dot(blow, axis), axis))
		c := source.RoundMember().Value
		if t.Section.Square {
			c = source.SquareMember().Value
		}
		all = append(all, force{r3.Scale(c*length*t.Section.Outer*r3.Norm(square), square), r3.Scale(0.5, r3.Add(from, to))})
	}
	return all
}

// crateForces take the crate, where no skirt covers it, as a solid block: hardly any wind
// passes its cells sideways.
func (s *windShape) crateForces(blow r3.Vec) []force {
	c := s.rig.Optics.Crate
	if c == nil {
		return nil
	}
	size := s.rig.Plan.Box.Size
	at := s.rig.Pose.Out(r3.Vec{Z: -c.Depth / 2})
	k := source.SquareMember().Value
	x, y := s.rig.Pose.X, s.rig.Pose.Y
	return []force{{r3.Scale(k*s.crateX*float64(size[1])*r3.Dot(blow, x), x), at}, {r3.Scale(k*s.crateY*float64(size[0])*r3.Dot(blow, y), y), at}}
}

// canopyForce acts square to the cloth plane, a quarter of the depth from the windward
// edge.
func (s *windShape) canopyForce(blow r3.Vec, coefficient float64) force {
	size := s.rig.Plan.Box.Size
	a, b := float64(size[0]), float64(size[1])
	pose := s.rig.Pose
	off := 0.5 - source.CanopyCenter().Value
	at := r3.Vec{X: -off * a * r3.Dot(blow, pose.X), Y: -off * b * r3.Dot(blow, pose.Y)}
	return force{r3.Scale(coefficient*a*b, pose.Z), pose.Out(at)}
}
