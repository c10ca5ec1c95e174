package load

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
	"softloft/source"
)

// The ways in which wind ends it. Each has its own finding.
const (
	windLift  = "lift"  // a stand carries nothing of the box any more
	windSlack = "slack" // a line, or a drop, is slack
	windTip   = "tip"
	windSlide = "slide"
	windGuy   = "guy"
	windStake = "stake"
	windStand = "stand" // pressed down, a stand over its rating
	windLine  = "line"
	windTube  = "tube"
)

// reached is a limit with the velocity pressure at which the worst bearing reaches it;
// NaN where it is not known.
type reached struct {
	kind    string
	what    string // the piece, in words
	part    string
	path    string
	q       float64 // Pa
	bearing float64 // rad; NaN where the direction doesn't matter
	why     string  // why it is not known
}

// bearingStep is how far apart the bearings are that are looked at: 72 all around.
const bearingStep = 5 * degree

// bearings lists the directions that wind is taken from: all around, or what the plan
// states and as far as wind veers to either side of it.
func (w *work) bearings() []float64 {
	from := w.rig.Plan.Room.Outdoors.From
	var all []float64
	if from.Any {
		for k := range 72 {
			all = append(all, float64(k)*bearingStep)
		}
		return all
	}
	steps := int(math.Round(source.WindVeers().Value / bearingStep))
	for k := -steps; k <= steps; k++ {
		all = append(all, math.Mod(float64(from.At)+float64(k)*bearingStep+4*math.Pi, 2*math.Pi))
	}
	return all
}

// guy is a rope from the box to what it is made fast to.
type guy struct {
	part   string
	path   string
	from   r3.Vec
	toward r3.Vec  // unit
	spring float64 // N/m
	takes  float64 // N; NaN where not known
	stake  float64 // N; NaN where nobody stated it
}

// guysOf lists the guys that hold the box, or a stand that holds it.
func (w *work) guysOf() []guy {
	var all []guy
	if w.rig.Plan.Hang == nil {
		return nil
	}
	for i := range w.rig.Plan.Hang.Guys {
		g := &w.rig.Plan.Hang.Guys[i]
		p, ok := w.rig.Part(guyPart(i))
		if !ok || p.From == nil || w.holdsArm(g.From.Name) {
			continue
		}
		way := r3.Sub(*p.To, *p.From)
		if r3.Norm(way) < touching {
			continue
		}
		rope := w.ropeOf(p.KitID)
		ea := rope.EA
		if !(ea > 0) {
			ea = assumedEA
		}
		all = append(all, guy{part: p.ID, path: p.Path, from: *p.From, toward: r3.Unit(way), spring: ea / math.Max(r3.Norm(way), touching),
			takes: w.ropeTakes(rope), stake: optional((*float64)(g.Allows))})
	}
	return all
}

// holdsArm tells whether a stand's name is that of one that holds no ear.
func (w *work) holdsArm(name string) bool {
	for i := range w.rig.Stands {
		if s := &w.rig.Stands[i]; name != "" && s.Name == name {
			return s.Ear == nil
		}
	}
	return false
}

// holder is what holds the box up: a stand's ear or a line.
type holder struct {
	at    r3.Vec
	now   float64 // N, carried as built
	stand *rig.Stand
	index int
}

// blown is the box in wind of 1 Pa from one bearing, lifted or pressed down.
type blown struct {
	bearing float64
	blow    r3.Vec
	lifted  bool
	drag    []force
	canopy  force
	shared
}

// drag and canopy together.
func (b *blown) loads() []force {
	if b.canopy.force == (r3.Vec{}) {
		return b.drag
	}
	return append(b.drag[:len(b.drag):len(b.drag)], b.canopy)
}

// total is the sum of forces, N.
func total(loads []force) (sum r3.Vec) {
	for _, l := range loads {
		sum = r3.Add(sum, l.force)
	}
	return sum
}

// blows works out how the box hands on the wind from a bearing: guys taking the drag, or
// the stands alone. Of the two states of balance the one whose first limit comes later
// counts: what stays within all limits in one of them holds (the lower bound of plastic
// design; guys give way and feet stay down).
func (g *gale) blows(bearing float64, lifted bool) blown {
	alone := g.blowsOn(bearing, lifted, nil)
	if len(g.guys) == 0 {
		return alone
	}
	guyed := g.blowsOn(bearing, lifted, g.guys)
	if !g.standing() {
		return guyed
	}
	if a, b := firstOf(g.limitsOf(&alone)), firstOf(g.limitsOf(&guyed)); guyed.held && (b >= a || math.IsNaN(b)) {
		return guyed
	}
	return alone
}

// firstOf is the least pressure of some limits; NaN where one is not known.
func firstOf(all []reached) float64 {
	first := math.Inf(1)
	for _, r := range all {
		first = least(first, r.q)
	}
	return first
}

// blowsOn is one of the two states.
func (g *gale) blowsOn(bearing float64, lifted bool, guys []guy) blown {
	b := blown{bearing: bearing, blow: blowOf(bearing), lifted: lifted}
	b.drag = g.shape.drags(b.blow)
	if g.shape.sheet {
		c := -g.shape.down
		if lifted {
			c = g.shape.up
		}
		b.canopy = g.shape.canopyForce(b.blow, c)
	}
	if len(g.holders) > 0 {
		g.share(&b, guys)
	}
	return b
}

// share finds what each holder and guy gets. Guys that hold the box in this direction
// take all of the drag; without them the stands take it alike. Lines hold sideways only as
// much as what hangs does, T/L.
func (g *gale) share(b *blown, guys []guy) {
	loads := b.loads()
	b.guys, b.side = make([]float64, len(g.guys)), make([]r3.Vec, len(g.holders))
	var springs []spring
	for _, y := range guys {
		springs = append(springs, spring{y.from, y.toward, y.spring})
	}
	for i, h := range g.holders {
		if h.stand == nil && h.now > 0 {
			springs = append(springs, spring{at: h.at, strength: h.now / g.lengths[i]})
		}
	}
	moved, held := sideways(springs, loads)
	b.held = held && len(guys) > 0
	if held {
		p := plane{springs: springs, about: middleOf(springs)}
		for i, y := range guys {
			b.guys[i] = springs[i].pulls(p.shift(springs[i], moved))
			loads = append(loads, force{r3.Scale(b.guys[i], y.toward), y.from})
		}
		for _, h := range g.holders {
			b.moves = math.Max(b.moves, r3.Norm(p.shift(spring{at: h.at}, moved)))
		}
	}
	if !b.held && g.standing() {
		b.side = evenly(g.holders, loads)
	}
	places := make([]r3.Vec, len(g.holders))
	for i, h := range g.holders {
		places[i] = h.at
	}
	b.down, b.hinge = handOn(places, loads)
}

func middleOf(springs []spring) (middle r3.Vec) {
	for _, s := range springs {
		middle = r3.Add(middle, r3.Scale(1/float64(len(springs)), s.at))
	}
	return middle
}

func (g *gale) standing() bool { return len(g.holders) > 0 && g.holders[0].stand != nil }

// evenly shares the drag among stands alike: the same on each, and what turns the box in
// proportion to their distance from the middle.
func evenly(holders []holder, loads []force) []r3.Vec {
	n := float64(len(holders))
	var middle r3.Vec
	for _, h := range holders {
		middle = r3.Add(middle, r3.Scale(1/n, h.at))
	}
	var turn, spread float64
	for _, l := range loads {
		arm := r3.Sub(l.at, middle)
		turn += arm.X*l.force.Y - arm.Y*l.force.X
	}
	for _, h := range holders {
		spread += r3.Norm2(flat(r3.Sub(h.at, middle)))
	}
	each := flat(r3.Scale(1/n, total(loads)))
	side := make([]r3.Vec, len(holders))
	for i, h := range holders {
		arm := r3.Sub(h.at, middle)
		side[i] = r3.Add(each, r3.Scale(turn/math.Max(spread, touching), r3.Vec{X: -arm.Y, Y: arm.X}))
	}
	return side
}

// runsOut is the pressure at which a load that grows with it reaches its limit: now + q·by
// = most; +Inf where it never does, 0 where it has.
func runsOut(now, by, most float64) float64 {
	switch {
	case math.IsNaN(now) || math.IsNaN(by) || math.IsNaN(most):
		return math.NaN()
	case now > most:
		return 0
	case !(by > 0):
		return math.Inf(1)
	}
	return (most - now) / by
}

// tipsAt is the pressure at which a stand's restoring over overturning moment falls to a
// ratio about its worst edge: pushed by a side force at its top, and with a load on it
// that grows downward by down.
func tipsAt(s *rig.Stand, loads []onStand, side r3.Vec, down float64, ear r3.Vec, ratio float64) float64 {
	first := math.Inf(1)
	for leg := 1; leg <= s.Legs; leg++ {
		t := aboutEdge(s, leg, loads, 0)
		sin, cos := math.Sincos(s.Turn + 2*math.Pi*(float64(leg)-0.5)/float64(s.Legs))
		out := r3.Vec{X: cos, Y: sin}
		over, holds := math.Max(0, r3.Dot(side, out))*s.Rise, 0.0
		switch lever := t.edge - r3.Dot(ear, out); {
		case down*lever < 0:
			over -= down * lever
		case lever > 0:
			holds = down * lever
		}
		first = least(first, runsOut(ratio*t.over-t.restoring, ratio*over-holds, 0))
	}
	return first
}

// least is the smaller number; NaN where one is.
func least(a, b float64) float64 {
	if math.IsNaN(a) || math.IsNaN(b) {
		return math.NaN()
	}
	return math.Min(a, b)
}
