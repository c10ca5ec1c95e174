package rig

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/plan"
)

// Stand stands on the floor and holds an ear of the box or an arm. Its places are
// in the room. Mass is nil where nobody gave it.
type Stand struct {
	Name        string
	Path        string
	KitID       string
	Part        string // mast and legs
	Foot        r3.Vec // on the floor, under the mast
	Rise        float64
	Rises       [2]float64
	Turn        float64 // leg 1 from +x, counter-clockwise
	Legs        int
	Radius      float64 // of the circle through the feet
	Mass        *float64
	Rated       []kit.Rating
	RatedSource string
	Demo        bool
	Receiver    *float64 // diameter of the pin that its top takes
	Castors     plan.Castors
	HasCastors  bool
	Bags        *Bags
	Ear         *Ear
	Arm         *Arm
}

// Bags are the weights on a stand: Count of Mass each. Leg 0 is the base.
type Bags struct {
	Mass  float64
	Count int
	Leg   int
}

// Ear is where a stand holds the box, in box axes. Tube is the side that the ear is
// on; empty where no tube is there.
type Ear struct {
	Part string
	Side string
	Tube string
	At   r3.Vec
}

// Arm reaches from a stand's top. Its places are in the room. Mass is what the arm
// and the head weigh that holds it, nil where nobody gave it.
type Arm struct {
	Part     string
	KitID    string
	Number   int // in the order of the stands
	From, To r3.Vec
	Reach    float64
	Longest  *float64 // that the kit gives
	Hand     plan.Hand
	Pieces   []OnArm // the arm and its head
	Holds    []OnArm // lamps with what hangs on them
}

// OnArm is a mass on an arm. Away is from the arm's end to its center of gravity,
// in the room; of the arm and its head from the mast's top.
type OnArm struct {
	Part      string
	Lamp      bool // counts for the provision's reserve
	Provision bool // not there yet
	Mass      *float64
	Away      r3.Vec
}

// Top returns the top of the mast.
func (s *Stand) Top() r3.Vec { return r3.Vec{X: s.Foot.X, Y: s.Foot.Y, Z: s.Rise} }

// LegFoot returns where a leg meets the floor; leg 1 is the first.
func (s *Stand) LegFoot(leg int) r3.Vec {
	sin, cos := math.Sincos(s.Turn + 2*math.Pi*float64(leg-1)/float64(s.Legs))
	return r3.Vec{X: s.Foot.X + s.Radius*cos, Y: s.Foot.Y + s.Radius*sin}
}

// Holder returns the stand whose arm has a number in the order of the stands.
func (r *Rig) Holder(arm int) (*Stand, bool) {
	for i := range r.Stands {
		if a := r.Stands[i].Arm; a != nil && a.Number == arm {
			return &r.Stands[i], true
		}
	}
	return nil, false
}

// EarInRoom returns where an ear is, in the planned pose.
func (r *Rig) EarInRoom(e *Ear) r3.Vec { return r.Pose.Out(e.At) }
