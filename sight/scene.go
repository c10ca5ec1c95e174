package sight

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
	"softloft/rig"
	"softloft/shape"
)

// What is taken for the size of things that nobody gives a size for, in m: design
// assumptions, printed with the findings.
const (
	ropeDiameter = 0.012
	fittingSize  = 0.10 // clamps, shackles, pulleys without a sheave, tie-offs, points, added loads
	tieSize      = 0.04
	mastDiameter = 0.05
	legDiameter  = 0.03
	armDiameter  = 0.04
	bagLong      = 0.40
	bagWide      = 0.30
	bagTall      = 0.16
)

// scene is everything that can be seen or can hide.
type scene struct {
	bodies []body
	set    []solid // set walls: they hide and aren't looked for
	hiders []*solid
	walls  []shape.Polygon // large faces, for the proof that something stays hidden
	shell  *shell
}

// newScene builds the bodies of a rig whose box is raised by some height over its plan.
func newScene(r *rig.Rig, raised float64) *scene {
	moved := *r
	moved.Pose.Origin.Z += raised
	s := &scene{shell: shellOf(&moved)}
	b := &builder{rig: &moved, scene: s}
	for i := range r.Parts {
		b.part(&moved.Parts[i])
	}
	b.lines()
	b.points()
	s.set = setOf(r.Plan.Room)
	s.index()
	return s
}

// setOf are the set walls and flats.
func setOf(room *plan.Room) []solid {
	if room == nil {
		return nil
	}
	var set []solid
	for _, surface := range room.Surfaces {
		var p shape.Polygon
		for _, c := range surface.Corners {
			p = append(p, vec(c))
		}
		for _, convex := range p.Convex() {
			set = append(set, flat(convex))
		}
	}
	for _, o := range room.Obstacles {
		if o.Kind == "wall" && o.Size != nil {
			half := [3]float64{float64(o.Size[0]) / 2, float64(o.Size[1]) / 2, float64(o.Size[2]) / 2}
			set = append(set, block(shape.Box{Pose: shape.At(vec(o.At)), Half: half}))
		}
	}
	return set
}

// wallSize is the least radius (m) of a solid whose faces are tried in the proof that
// something stays hidden.
const wallSize = 0.5

// index lists what hides, once all bodies stand.
func (s *scene) index() {
	add := func(of *solid) {
		if !of.hides {
			return
		}
		s.hiders = append(s.hiders, of)
		if of.radius < wallSize {
			return
		}
		switch {
		case of.solid == nil:
			s.walls = append(s.walls, of.polygon)
		default:
			if b, ok := of.solid.(shape.Box); ok && min(b.Half[0]*b.Half[1], b.Half[1]*b.Half[2], b.Half[0]*b.Half[2]) > 0 {
				s.walls = append(s.walls, facesAll(b)...)
			}
		}
	}
	for i := range s.bodies {
		for j := range s.bodies[i].solids {
			add(&s.bodies[i].solids[j])
		}
	}
	for i := range s.set {
		add(&s.set[i])
	}
}

// facesAll are the six faces of a block.
func facesAll(b shape.Box) []shape.Polygon {
	var out []shape.Polygon
	axes := [3]r3.Vec{b.Pose.X, b.Pose.Y, b.Pose.Z}
	for axis := range axes {
		u, v := (axis+1)%3, (axis+2)%3
		for _, sign := range [2]float64{-1, 1} {
			center := r3.Add(b.Pose.Origin, r3.Scale(sign*b.Half[axis], axes[axis]))
			out = append(out, shape.Rectangle(center, r3.Scale(b.Half[u], axes[u]), r3.Scale(b.Half[v], axes[v])))
		}
	}
	return out
}

// shell is the closed space of a box with cloth and four sides: what is in it is hidden
// from every lens outside that is below its rim.
type shell struct {
	pose  shape.Pose
	half  [2]float64
	depth float64
}

func shellOf(r *rig.Rig) *shell {
	o := &r.Optics
	closed := o.Depth > 0 && len(o.Cloths) > 0
	for _, side := range o.Sides {
		closed = closed && side.Present
	}
	if !closed {
		return nil
	}
	return &shell{r.Pose, [2]float64{o.Size[0] / 2, o.Size[1] / 2}, o.Depth}
}

// flush is how near (m) to a face of the shell a corner counts as in that face, by
// rounding.
const flush = 1e-6

// holds tells whether a place is inside, or on the roof: not in the cloth's plane and not
// in a side's, which are seen from outside.
func (s *shell) holds(x r3.Vec) bool {
	at := s.pose.In(x)
	out := max(at.X-s.half[0], -at.X-s.half[0], at.Y-s.half[1], -at.Y-s.half[1])
	if at.Z >= s.depth-flush {
		return at.Z <= s.depth+flush && out <= flush
	}
	return at.Z > flush && out < -flush
}

// hides tells whether what is inside is hidden from every lens within reach of a place.
func (s *shell) hides(eye r3.Vec, reach float64) bool {
	at := s.pose.In(eye)
	if at.Z+reach < s.depth-2*flush {
		return at.Z+reach < 0 || max(at.X-s.half[0], -at.X-s.half[0], at.Y-s.half[1], -at.Y-s.half[1]) > reach
	}
	return false
}

func vec[T ~float64](v [3]T) r3.Vec {
	return r3.Vec{X: float64(v[0]), Y: float64(v[1]), Z: float64(v[2])}
}

func sideIndex(id string) int {
	_, side, _ := strings.Cut(id, ".")
	for i, name := range plan.SideNames {
		if name == side {
			return i
		}
	}
	return -1
}
