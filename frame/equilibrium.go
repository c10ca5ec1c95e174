package frame

import (
	"fmt"
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

// Equilibrium finds a place of rest under large rotations: a minimum of the total potential energy that is reached
// from the start by going down. It is Newton's method with the exact tangent; where the tangent is not positive the
// step is damped (Levenberg, A Method for the Solution of Certain Non-linear Problems in Least Squares, 1944), and a
// place of rest that is not a minimum is left along the motion of most negative curvature.
//
// Errors: a plain error for what cannot be computed, [*Falls] where nothing carries the frame, [*NotFound] where the
// steps ran out.
func (p *Problem) Equilibrium(l Loads, o Options) (*State, error) {
	m, err := newModel(p, &l)
	if err != nil {
		return nil, err
	}
	g := newLoading(m, &l)
	q, err := m.startPose(&o)
	if err != nil {
		return nil, err
	}
	s := newSearch(newSystem(m, g, q), &o)
	if err := m.cut(o.Cut); err != nil {
		return nil, err
	}
	if err := m.carried(); err != nil {
		return nil, err
	}
	holds, err := s.holdsOf(&o)
	if err != nil {
		return nil, err
	}
	if len(holds) > 0 {
		err = s.runHeld(holds)
	} else {
		err = s.run()
	}
	if err != nil {
		return nil, err
	}
	return s.state(), nil
}

func (m *model) startPose(o *Options) (*pose, error) {
	q := m.unloaded()
	if o.Start == nil {
		return q, nil
	}
	if len(o.Start.Position) != len(q.at) || len(o.Start.Rotation) != len(q.at) {
		return nil, fmt.Errorf("start: it has %d nodes, the frame has %d; start from a state of the same frame",
			len(o.Start.Position), len(q.at))
	}
	return q, m.placeAs(q, o.Start)
}

func (m *model) cut(cables []int) error {
	for _, k := range cables {
		if k < 0 || k >= len(m.cables) {
			return fmt.Errorf("cut: cable %d does not exist; there are %d", k, len(m.cables))
		}
		m.cables[k].gone = true
	}
	return nil
}

// carried refuses a part of the frame that no cable and no support reaches.
func (m *model) carried() error {
	part := make([]int, len(m.rest)) // union of connected nodes
	for k := range part {
		part[k] = k
	}
	root := func(k int) int {
		for part[k] != k {
			k = part[k]
		}
		return k
	}
	for k := range m.beams {
		part[root(m.beams[k].i)] = root(m.beams[k].j)
	}
	borne := map[int]bool{}
	for k := range m.cables {
		if c := &m.cables[k]; !c.gone && c.j != Anchored {
			part[root(c.i)] = root(c.j)
		}
	}
	for k := range m.cables {
		if c := &m.cables[k]; !c.gone && c.j == Anchored {
			borne[root(c.i)] = true
		}
	}
	for _, s := range m.p.Supports {
		borne[root(s.Node)] = true
	}
	for k := range part {
		if !borne[root(k)] {
			return &Falls{Node: m.p.nodeName(k)}
		}
	}
	return nil
}

// search walks a system down to a place of rest.
type search struct {
	*system
	trial   *pose
	step    []float64
	damping float64 // N/m on moves
	least   float64 // N/m, where damping begins
	limit   int     // steps per run
	budget  int
	count   int
	cost    float64
	signs   inertia
	rest    float64
}

func newSearch(s *system, o *Options) *search {
	x := &search{system: s, trial: newPose(len(s.rest)), step: make([]float64, len(s.owner)), limit: o.Iterations}
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
	best, stalled := math.Inf(1), 0
	for ; x.count < x.budget; x.count++ {
		x.refresh()
		x.tighten()
		x.cost = x.assemble()
		var node int
		x.rest, node = x.imbalance()
		if math.IsInf(x.cost, 0) || math.IsNaN(x.cost) || math.IsInf(x.rest, 0) {
			return &NotFound{x.p.nodeName(node), x.rest, x.count}
		}
		if node, far := x.furthest(); far > farAway*x.size {
			return &Falls{Node: x.p.nodeName(node)}
		}
		if x.rest < 0.5*best {
			best, stalled = x.rest, 0
		} else {
			stalled++
		}
		if x.rest > tolerance && (x.rest > x.noise() || stalled <= 3) {
			if x.advance() {
				continue
			}
			if x.rest > x.noise() {
				return &NotFound{x.p.nodeName(node), x.rest, x.count}
			}
		}
		// A place of rest that is not a minimum and cannot be left is told by the state's Stable.
		if x.atMinimum() || x.load.turning || !x.escape() {
			return nil
		}
		best, stalled = math.Inf(1), 0
	}
	x.refresh()
	x.assemble()
	rest, node := x.imbalance()
	if x.allSlack() {
		return &Falls{Node: x.p.nodeName(node)}
	}
	return &NotFound{x.p.nodeName(node), rest, x.count}
}

// noise is the imbalance that rounding of the nodes' places alone can make in the stiffest member or cable.
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
	return 16 * 2.2e-16 * worst * reach
}

// atMinimum judges the tangent at a place of rest.
func (x *search) atMinimum() bool {
	x.signs = x.k.factor(judge{weight: x.weight, small: tinyPivot, rough: x.rest / x.scale})
	return x.signs.negative == 0
}

// advance takes one step down, with as much damping as that needs.
func (x *search) advance() bool {
	for range 60 {
		if x.damping < x.least {
			x.damping = 0
		}
		if x.load.turning && x.plain() {
			return true
		}
		in := x.k.factor(judge{shift: x.damping, weight: x.weight, small: tinyPivot, stop: true})
		if in.negative > 0 || x.driven(in) {
			x.damp()
			continue
		}
		copy(x.step, x.grad)
		x.k.solve(x.step)
		for i := range x.step {
			x.step[i] = -x.step[i]
		}
		if x.accept() {
			return true
		}
		x.damp()
	}
	return false
}

// plain tries the undamped step of a tangent that is not positive and takes it if it halves the imbalance. Only for
// moments that keep their direction: they have no potential (Ziegler, Principles of Structural Stability, 1968), so that
// the tangent's signs say little about where the frame comes to rest.
func (x *search) plain() bool {
	x.k.factor(judge{weight: x.weight, small: tinyPivot, rough: x.rest / x.scale})
	copy(x.step, x.grad)
	x.k.solve(x.step)
	if r := x.reach(x.step); !(r < longestStep) {
		return false
	}
	x.move(x.trial, x.step, -1)
	x.gradientAt(x.trial)
	after, _ := x.imbalance()
	if !(after < x.rest/2) {
		x.gradientAt(x.q)
		return false
	}
	x.take(true)
	return true
}

func (x *search) damp() { x.damping = math.Max(4*x.damping, x.least) }

// driven reports whether a motion that costs nothing is pushed all the same.
func (x *search) driven(in inertia) bool {
	for _, i := range in.neutral {
		g := math.Abs(x.grad[i])
		if x.owner[i].axis > 2 {
			g /= x.scale
		}
		if g > 1e-9*x.load.total {
			return true
		}
	}
	return false
}

// accept tries the step and a few shorter ones; the first that lowers the energy enough is taken. Where the expected
// gain drowns in rounding the full step is taken unseen.
func (x *search) accept() bool {
	slope := dot(x.grad, x.step)
	if !(slope < 0) {
		return false
	}
	fraction := 1.0
	if r := x.reach(x.step); r > longestStep {
		fraction = longestStep / r
	}
	full := fraction == 1
	if full && -slope < 1e-10*x.scaleOfEnergy() {
		x.move(x.trial, x.step, 1)
		x.take(true)
		return true
	}
	for range 6 {
		x.move(x.trial, x.step, fraction)
		if x.energy(x.trial) <= x.cost+1e-4*slope*fraction {
			x.take(full)
			return true
		}
		full = false
		fraction /= 3
	}
	return false
}

func (x *search) scaleOfEnergy() float64 { return math.Abs(x.cost) + x.load.total*x.size }

// take makes the trial the present pose and loosens the damping after a full step.
func (x *search) take(full bool) {
	x.q.copyFrom(x.trial)
	if full {
		x.damping /= 8
	}
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
