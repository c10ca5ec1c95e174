package rig

import (
	"gonum.org/v1/gonum/spatial/r3"

	"softloft/document"
	"softloft/kit"
	"softloft/plan"
	"softloft/shape"
	"softloft/source"
)

// Rig is every placed part of one plan.
type Rig struct {
	Plan *plan.Plan
	Kit  kit.Kit
	Doc  *document.Document

	Pose      shape.Pose // box axes to room, as planned
	ClothAt   float64    // height of the cloth plane above the floor, as planned
	LowestBy  float64    // how far the lowest edge hangs below the cloth plane
	Parts     []Part
	Tubes     []Tube
	Weights   []Weight
	EdgeLoads []EdgeLoad
	Drops     []Drop
	Lines     []Line
	Stands    []Stand
	Seconds   []Second
	Loom      *Loom // nil where no cable goes to the box
	Points    []Point
	Beams     []Beam
	Provision []Weight // lamps that may still go up
	Optics    Optics
	NotPlaced []NotPlaced
	Odd       []Oddity
}

// Part is one thing that stands, hangs or lies somewhere. Mass is nil where nobody
// gave it. A part that is Weightless is derived without a mass (a face that the
// plan names only by its color) and stays off the pull list.
type Part struct {
	ID         string
	What       string // frame tube, rib, cloth, lamp, …
	Name       string // what a crew reads
	KitKind    string
	KitID      string
	Body       string // bottom frame, upper frame, rib 1, …, "lines" for what hangs above the box, stand.… for what stands
	Mass       *float64
	MassFrom   string // where the mass comes from, in words
	Demo       bool   // the mass or a property is an invented demo value
	Measured   bool
	Weightless bool
	Center     r3.Vec
	InRoom     bool // Center, From and To are in the room, not in box axes
	From, To   *r3.Vec
	Length     float64 // cut length; 0 for what isn't cut
	Joined     []string
	Why        string
	Path       string // key of the plan that it comes from
}

// Section is a tube's cross-section in m; Square tubes have Outer as their side.
type Section struct {
	Square      bool
	Outer, Wall float64
}

// Tube is a structural member of the box. PinnedFrom and PinnedTo say that the
// end holds no moment. MassPerLength leaves out fittings.
type Tube struct {
	Part                 string
	Body                 string
	Role                 Role
	From, To             r3.Vec
	PinnedFrom, PinnedTo bool
	Section              Section
	Alloy                kit.Alloy
	MassPerLength        float64
	Welded               bool
}

// Role is what a tube does in the box.
type Role string

// The roles of tubes.
const (
	BottomFrame Role = "bottom frame"
	UpperFrame  Role = "upper frame"
	Rib         Role = "rib"
	Upright     Role = "upright"
	Bar         Role = "bar"
)

// Weight is a mass that isn't a tube's own, at its center of gravity. OnTube is
// the tube's part that carries it at Station; empty means that it acts on the
// bottom frame's four corners, statically equivalent and keeping its height.
// Elsewhere is true for what the box doesn't carry; its Center is then where its
// part's is. A part may have several weights, which sum to its mass.
type Weight struct {
	Part      string
	Mass      float64
	Center    r3.Vec
	OnTube    string
	Station   r3.Vec
	Elsewhere bool
}

// EdgeLoad is a mass per length along a tube: between two stations it runs
// straight. Stations are lengths from the tube's From, kg/m beside each.
type EdgeLoad struct {
	Part     string
	Tube     string
	Stations []Station
}

// Station is a place along a tube and the mass per length there.
type Station struct{ At, PerLength float64 }

// Drop is a suspender between two bodies. EA is 0 where nobody gave it.
type Drop struct {
	Part        string
	Name        string
	Upper       r3.Vec // on UpperTube
	Lower       r3.Vec // on LowerTube
	UpperTube   string
	LowerTube   string
	Length      float64
	EA          float64
	Rated       *float64
	Breaking    bool
	Kind        source.Hardware
	Demo        bool
	RatedSource string
}

// Line carries the box. Attach is on Tube; an empty Tube means that nothing of the
// box is there. Length is the unstretched load side, nil where the height rules.
type Line struct {
	Name     string
	Path     string
	Attach   r3.Vec
	Tube     string
	Point    string // empty with a bridle
	Bridle   *Bridle
	Length   *float64
	Rope     *Rope
	Pulley   *Pulley
	TieOff   *TieOff
	Hardware []Hardware
	Parts    []string
}

// Rope is what a line is made of. Breaks is nil where nobody gave it.
type Rope struct {
	ID            string
	Kind          source.Hardware
	EA            float64 // 0 unknown
	MassPerLength *float64
	Breaks        *float64 // N; a working load limit where Working is true
	Working       bool
	Knot          *float64
	Diameter      *float64
	Demo          bool
	Source        string
}

// Pulley is a line's block.
type Pulley struct {
	ID         string
	Rated      *float64
	Breaking   bool
	Efficiency *float64
	Sheave     *float64
	Mass       *float64
	Demo       bool
	Source     string
}

// Hardware is a clamp or shackle in a line's load path.
type Hardware struct {
	What, ID, Part string
	Rated          *float64
	Breaking       bool
	Demo           bool
	Source         string
}

// TieOff is where a line's haul side ends.
type TieOff struct {
	InRoom r3.Vec
	Allows *float64
}

// Bridle is a line's two legs and its apex.
type Bridle struct {
	Points     [2]string
	ApexInRoom r3.Vec
}

// Point is a place in the building that may be loaded.
type Point struct {
	Name         string
	Path         string
	InRoom       r3.Vec
	Allows       *float64
	VerticalOnly bool
	Beam         string
	Kind         string
	StatedBy     string
	StatedOn     string
}

// Beam carries several points together.
type Beam struct {
	Name   string
	Path   string
	Allows *float64
}

// NotPlaced is something that a box of this kind needs, or that the plan asks
// for, and that no part stands for yet.
type NotPlaced struct{ What, Why string }

// Oddity is something that can be built but should not be, or that doesn't fit:
// it becomes a finding.
type Oddity struct {
	ID        string
	Part      string
	Path      string
	Statement string
	Unknown   bool // not known rather than over
}

// Part returns the part with an id.
func (r *Rig) Part(id string) (*Part, bool) {
	for i := range r.Parts {
		if r.Parts[i].ID == id {
			return &r.Parts[i], true
		}
	}
	return nil, false
}

// Tube returns the tube of a part.
func (r *Rig) Tube(part string) (*Tube, bool) {
	for i := range r.Tubes {
		if r.Tubes[i].Part == part {
			return &r.Tubes[i], true
		}
	}
	return nil, false
}

// PointNamed returns the building's point with a name.
func (r *Rig) PointNamed(name string) (*Point, bool) {
	for i := range r.Points {
		if r.Points[i].Name == name {
			return &r.Points[i], true
		}
	}
	return nil, false
}

// CenterInRoom returns a part's center in the room, in the planned pose.
func (r *Rig) CenterInRoom(p *Part) r3.Vec { return r.toRoom(p, p.Center) }

func (r *Rig) toRoom(p *Part, at r3.Vec) r3.Vec {
	if p.InRoom {
		return at
	}
	return r.Pose.Out(at)
}

// EndsInRoom returns where a long part begins and ends in the room, in the planned
// pose; ok is false for a part without ends.
func (r *Rig) EndsInRoom(p *Part) (from, to r3.Vec, ok bool) {
	if p.From == nil || p.To == nil {
		return r3.Vec{}, r3.Vec{}, false
	}
	return r.toRoom(p, *p.From), r.toRoom(p, *p.To), true
}
