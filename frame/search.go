package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Limits of the search.
const (
	mostIterations = 400
	longestStep    = 0.4   // radians, or of the frame's size
	farAway        = 60    // times the frame's size: what has gone that far is falling
	restTolerance  = 1e-11 // of the sum of the forces
	tinyPivot      = 1e-12 // of its diagonal: a motion that costs nothing
)

// search walks a system down to a place of rest.
type search struct {
	*system
	trial   *pose
	was     *pose // kept while a trial is mended
	step    []float64
	kept    []float64
	damping float64 // N/m on moves
	least   float64 // N/m, where damping begins
	limit   int     // steps per run
	budget  int
	count   int
	cost    float64
	signs   inertia
	left    float64 // the imbalance, N
	stride  float64 // reach of the last step if it was a full Newton step near rest
}

func newSearch(s *system, o *Options) *search {
	x := &search{system: s, trial: newPose(len(s.rest)), was: newPose(len(s.rest)), step: make([]float64, len(s.owner)), kept: make([]float64, len(s.owner)), limit: o.Iterations}
	if x.limit <= 0 {
		x.limit = mostIterations
	}
	x.net = x.newNet()
	x.least = 0.01 * math.Max(s.load.total, 1) / s.size
	return x
}

// run goes down until the forces vanish on a minimum.
func (x *search) run() error {
	x.damping, x.budget = 0, x.count+x.limit
	tolerance := restTolerance * math.Max(x.load.total, 1e-3)
	before, flat := math.Inf(1), 0
	x.stride = math.Inf(1)
	for ; x.count < x.budget; x.count++ {
		x.refresh()
		x.tighten()
		x.cost = x.assemble()
		var node int
		x.left, node = x.imbalance()
		if math.IsInf(x.cost, 0) || math.IsNaN(x.cost) || math.IsInf(x.left, 0) {
			return &NotFound{x.p.nodeName(node), x.left, x.count}
		}
		if node, far := x.furthest(); far > farAway*x.size {
			return &Falls{Node: x.p.nodeName(node)}
		}
		// Rounding of places is the floor: there the forces flicker while nothing moves any more.
		if flat++; x.left > x.noise() {
			flat = 0
		}
		still := x.stride < 1e-10 && x.left > before/4 && x.adrift() <= 1e-10*x.load.total
		flicker := flat > 0 && still || flat > 8
		before, x.stride = x.left, math.Inf(1)
		if x.left > tolerance && !flicker {
			if x.advance() {
				continue
			}
			if x.left > x.noise() {
				return &NotFound{x.p.nodeName(node), x.left, x.count}
			}
		}
		// A place of rest that is not a minimum and cannot be left is told by the state's Stable.
		if x.atMinimum() || x.load.turning || !x.escape() {
			return nil
		}
		before, flat = math.Inf(1), 0
	}
	x.refresh()
	x.assemble()
	rest, node := x.imbalance()
	if x.allSlack() {
		return &Falls{Node: x.p.nodeName(node)}
	}
	return &NotFound{x.p.nodeName(node), rest, x.count}
}

// noise is the imbalance that rounding of the nodes' places alone can make in the stiffest member or cable. Where that is
// more than a millionth of the loads, the stiffness is beyond what can be computed and no rest is found.
func (x *search) noise() float64 {
	reach, worst := 0.0, 0.0
	widen := func(v r3.Vec) { reach = math.Max(reach, math.Abs(v.X)+math.Abs(v.Y)+math.Abs(v.Z)) }
	for _, p := range x.q.at {
		widen(p)
	}
	for k := range x.beams {
		worst = math.Max(worst, x.beams[k].axial)
	}
	for k := range x.cables {
		if p := x.cables[k].pull(x.q.at); p.rate > 0 {
			worst = math.Max(worst, p.rate)
			widen(x.far(&x.cables[k]))
		}
	}
	return math.Min(16*2.2e-16*worst*reach, 1e-6*x.load.total)
}

// adrift is the imbalance of the frame as a whole, in which the rounding of stiff members cancels. Zero for a frame on
// supports, which are part of its balance.
func (x *search) adrift() float64 {
	if len(x.p.Supports) > 0 {
		return 0
	}
	var force, moment r3.Vec
	for k, f := range x.force {
		force = r3.Add(force, f)
		moment = r3.Add(moment, r3.Add(x.moment[k], r3.Cross(x.q.at[k], f)))
	}
	return math.Max(norm(force), norm(moment)/x.size)
}

// atMinimum judges the tangent at a place of rest.
func (x *search) atMinimum() bool {
	x.signs = x.k.factor(judge{weight: x.weight, small: tinyPivot, rough: x.left / x.scale})
	return x.signs.negative == 0
}

func (x *search) furthest() (node int, far float64) {
	for k, p := range x.q.at {
		d := r3.Sub(p, x.start[k])
		if r := math.Abs(d.X) + math.Abs(d.Y) + math.Abs(d.Z); r > far {
			node, far = k, r
		}
	}
	return node, far
}

func (x *search) allSlack() bool {
	for k := range x.cables {
		if p := x.cables[k].pull(x.q.at); p.tension > 0 {
			return false
		}
	}
	return len(x.p.Supports) == 0
}
