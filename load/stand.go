package load

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
)

// Stand is what one stand carries as built, and how far it is from tipping. Load is
// on its top; Moment is that of its top's load about the mast. BagsNeeded is the mass
// at its base that gives the asked ratio, the plan's own bags not counted.
type Stand struct {
	Name        string     `json:"name"`
	Holds       string     `json:"holds"` // ear, arm or nothing
	Load        Number     `json:"load_n"`
	Moment      Number     `json:"moment_nm"`
	TipMargin   Number     `json:"tip_margin"` // null where nothing tips it, or not known
	Edge        string     `json:"edge"`
	BagsNeeded  Number     `json:"bags_kg"`
	Tightens    *bool      `json:"head_tightens"`
	Sharing     string     `json:"sharing"` // statics, elastic, or empty
	Even        Number     `json:"even_n"`
	Grown       Number     `json:"grown_n"`
	Diagonal    Number     `json:"diagonal_n"`
	EdgeAt      Number     `json:"edge_m"`
	BagsForOne  Number     `json:"bags_for_one_kg"`
	BagsPlanned Number     `json:"bags_planned_kg"`
	BagCounts   []BagCount `json:"bag_counts"`
	FootMost    Number     `json:"foot_n"` // on the foot that gets most
}

// BagCount is how many bags of one real size the stand needs.
type BagCount struct {
	Kit    string `json:"kit"`
	Each   Number `json:"each_kg"`
	Needed Number `json:"for_ratio"`
	ForOne Number `json:"for_one"`
}

// floor is what stands, under way.
type floor struct {
	ears     []int // stands that hold an ear
	holdsBox bool  // whether stands are meant to carry the box
	why      string
	sharing  string
	built    []float64 // N, of each ear; NaN where not known
	grown    []float64
	total    []float64 // weight of the box as built and grown, N
	lead     leadOf
	frame    *solved // as built, on its ears
	model    *model
	standing []standing

	frameGrown *solved
	frameWhy   string // why the frame on its ears has no rest
}

// standing is one stand's case: what is on it, as built and grown.
type standing struct {
	built, grown []onStand
	tip, tipMore tipping
}

// onStand is a mass on a stand at a place as seen from its mast, in the room. A mass
// that nobody gave is NaN.
type onStand struct {
	symbol, name, origin string
	mass                 float64
	away                 r3.Vec
	top                  bool // on the top: what the stand's rating is about
	bag                  bool
}

// stand works out what the stands carry.
func (w *work) stand() {
	if len(w.rig.Stands) == 0 {
		return
	}
	w.share()
	for i := range w.rig.Stands {
		w.floor.standing = append(w.floor.standing, w.onStand(i))
		w.answer.Stands = append(w.answer.Stands, w.tellStand(i))
	}
	w.tellStanding()
}

// onStand gathers what is on a stand.
func (w *work) onStand(i int) standing {
	s := &w.rig.Stands[i]
	var c standing
	own := []onStand{{symbol: "m_s", name: "the stand's own mass", origin: "kit stand " + s.KitID, mass: optional(s.Mass)}}
	if s.Bags != nil {
		own = append(own, onStand{symbol: "m_b", name: "its bags", origin: w.origin(s.Path + ".bags"), bag: true,
			mass: s.Bags.Mass * float64(s.Bags.Count), away: bagPlace(s)})
	}
	c.built, c.grown = append(c.built, own...), append(c.grown, own...)
	if s.Arm != nil {
		c.built, c.grown = append(c.built, w.armLoads(s, false)...), append(c.grown, w.armLoads(s, true)...)
	}
	if k := w.earIndex(i); k >= 0 {
		away := r3.Sub(w.rig.EarInRoom(s.Ear), s.Top())
		away.Z = 0
		at := func(n float64) onStand {
			return onStand{symbol: "m_e", name: "its share of the box", origin: w.floor.shareOrigin(), mass: n / gravity, away: away, top: true}
		}
		c.built, c.grown = append(c.built, at(w.floor.built[k])), append(c.grown, at(w.floor.grown[k]))
	}
	push := float64(w.rig.Plan.Rules.Push)
	c.tip, c.tipMore = worstEdge(s, c.built, push), worstEdge(s, c.grown, push)
	return c
}

// bagPlace is where a stand's bags hang as seen from the mast: at it, or at the foot of
// a leg.
func bagPlace(s *rig.Stand) r3.Vec {
	if s.Bags.Leg == 0 {
		return r3.Vec{}
	}
	return r3.Sub(s.LegFoot(s.Bags.Leg), s.Foot)
}

// armLoads gathers what an arm carries, itself included: lamps times the provision's
// reserve, and lamps that may still go up, where grown.
func (w *work) armLoads(s *rig.Stand, grown bool) []onStand {
	end := r3.Sub(s.Arm.To, s.Arm.From)
	var all []onStand
	add := func(symbol, name string, on rig.OnArm, from r3.Vec) {
		away := r3.Add(from, on.Away)
		away.Z = 0
		load := onStand{symbol: symbol, name: name, origin: "part " + on.Part, mass: optional(on.Mass), away: away, top: true}
		if on.Lamp && grown {
			load.mass *= w.reserve()
		}
		all = append(all, load)
	}
	for k, piece := range s.Arm.Pieces {
		add(indexed("m_a", k), "arm or head", piece, r3.Vec{})
	}
	for k, held := range s.Arm.Holds {
		if !held.Provision || grown {
			add(indexed("m_l", k), "on the arm's end", held, end)
		}
	}
	return all
}

// reserve is by what today's lamps are multiplied in the grown case.
func (w *work) reserve() float64 {
	if p := w.rig.Plan.Provision; p != nil && p.Reserve != nil {
		return *p.Reserve
	}
	return 1
}

func (w *work) earIndex(stand int) int {
	for k, i := range w.floor.ears {
		if i == stand {
			return k
		}
	}
	return -1
}

// tightens tells whether the load turns the head tighter: an arm that leaves to the
// right, as seen by the operator behind the clamp, turns it clockwise, which closes a
// right-hand screw (common practice). Nil where nothing turns it.
func tightens(s *rig.Stand) *bool {
	if s.Arm == nil || !(s.Arm.Reach > 0) {
		return nil
	}
	right := s.Arm.Hand != "left"
	return &right
}

// topLoad sums what is on a stand's top, in N, and its moment about the mast, in N·m.
func topLoad(loads []onStand) (load, moment float64) {
	var arm r3.Vec
	for _, l := range loads {
		if l.top {
			load += l.mass * gravity
			arm = r3.Add(arm, r3.Scale(l.mass*gravity, l.away))
		}
	}
	if moment = math.Hypot(arm.X, arm.Y); moment < 1e-9*load { // the ear is over its mast
		moment = 0
	}
	return load, moment
}
