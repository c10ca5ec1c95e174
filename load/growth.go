package load

import (
	"math"
	"strings"

	"softloft/finding"
	"softloft/rig"
)

// Of the search for the room to grow: how near a limit counts as at it, how often the rig
// is worked out at most, and beyond how many times the box's mass nobody asks.
const (
	atTheLimit  = 1e-6
	mostGrowths = 10
	farTooMuch  = 1000
	mostGrown   = 60_000 // joints in all of a rig's states
)

// roomToGrow finds how much more mass, spread like today's lamps, may go up until the
// first limit is reached: everything is worked out again with heavier lamps, the
// provision as planned on top. Limits that are not known cannot be reached; one that is
// over already leaves no room. nil where there is no lamp to spread it like, or nothing
// limits it.
func (w *work) roomToGrow() *RoomToGrow {
	lamps := w.lampMass()
	if w.built == nil || !(lamps > 0) {
		return nil
	}
	if len(w.model.problem.Nodes)*(len(w.path)+len(w.lifts)+len(w.losses)+2) > mostGrown {
		w.answer.Assumptions = append(w.answer.Assumptions, "how much more could go up was not worked out: the rig is too large")
		return nil
	}
	g := growth{work: w, lamps: lamps, base: usedOf(w.findings)}
	if most := g.most(g.base); most.share > 1 {
		return &RoomToGrow{Mass: 0, FirstLimit: most.id}
	}
	return g.search()
}

// growth is the search under way.
type growth struct {
	*work
	lamps float64 // kg
	base  map[string]used
}

// used is how much of a limit is used; +Inf for what is refused, NaN for what is not known.
type used struct {
	share float64
	id    string // of the finding
}

// search steps to where the straight line through the last two points brings the first
// limit to 1, for each limit on its own: tensions are all but linear in the load.
func (g *growth) search() *RoomToGrow {
	low, at := 0.0, g.base
	high, first := math.Inf(1), ""
	mass := g.lamps
	for range mostGrowths {
		found := usedOf(g.with(mass))
		most := g.most(found)
		if math.Abs(most.share-1) < atTheLimit {
			return &RoomToGrow{Mass: Number(mass), FirstLimit: most.id}
		}
		next := g.crossing(low, at, mass, found)
		if most.share > 1 {
			high, first = mass, most.id
		} else {
			low, at = mass, found
		}
		switch {
		case next > low && next < high:
			mass = next
		case math.IsInf(high, 1):
			mass *= 4
		default:
			mass = (low + high) / 2
		}
		if mass > farTooMuch*g.heaviest()/gravity {
			return nil
		}
	}
	if first == "" {
		return nil
	}
	return &RoomToGrow{Mass: Number(low), FirstLimit: first} // the greatest that was within
}

// crossing is the least mass at which the line through two points of some limit's use
// reaches 1; NaN where none rises.
func (g *growth) crossing(a float64, atA map[string]used, b float64, atB map[string]used) float64 {
	mass := math.NaN()
	for key := range g.base {
		ya, yb := atA[key].share, atB[key].share
		if rise := (yb - ya) / (b - a); rise > 0 && !math.IsInf(rise, 1) {
			if x := a + (1-ya)/rise; math.IsNaN(mass) || x < mass {
				mass = x
			}
		}
	}
	return mass
}

// with works everything out with more mass on the lamps.
func (g *growth) with(mass float64) []finding.Finding {
	heavier := *g.rig
	heavier.Weights = append([]rig.Weight(nil), g.rig.Weights...)
	for i := range heavier.Weights {
		if isLamp(g.rig, &heavier.Weights[i]) {
			heavier.Weights[i].Mass *= 1 + mass/g.lamps
		}
	}
	inner := &work{rig: &heavier, options: Options{Tilt: g.options.Tilt}}
	inner.solve()
	if inner.built != nil {
		inner.answer.Frame = inner.frame()
	}
	inner.stand()
	inner.conclude()
	return inner.findings
}

func isLamp(r *rig.Rig, w *rig.Weight) bool {
	p, ok := r.Part(w.Part)
	return ok && p.What == "lamp" && !w.Elsewhere
}

// lampMass is what today's lamps on the box weigh, kg.
func (w *work) lampMass() float64 {
	var sum float64
	for i := range w.rig.Weights {
		if isLamp(w.rig, &w.rig.Weights[i]) {
			sum += w.rig.Weights[i].Mass
		}
	}
	return sum
}

// usedOf lists how far each limit is used. The tube that is used most stands for the
// frame, whichever it is.
func usedOf(found []finding.Finding) map[string]used {
	list := map[string]used{}
	for _, f := range found {
		key, share := f.ID, math.NaN()
		if strings.HasPrefix(key, "load.frame.") {
			key = "load.frame"
		}
		switch {
		case f.Relation == finding.AtMost && finding.Known(f.Value) && finding.Known(f.Limit) && f.Limit > 0:
			share = f.Value / f.Limit
		case f.Result == finding.Over:
			share = math.Inf(1)
		}
		list[key] = used{share, f.ID}
	}
	return list
}

// most is the limit that is used most. What was refused or not known without more mass
// does not count; what was neither and is now, counts as passed.
func (g *growth) most(now map[string]used) (most used) {
	for key, u := range now {
		before, was := g.base[key]
		switch {
		case was && (math.IsNaN(before.share) || math.IsInf(before.share, 1)):
			continue
		case math.IsNaN(u.share) && !was:
			continue
		case math.IsNaN(u.share):
			u.share = math.Inf(1)
		}
		if u.share > most.share || u.share == most.share && u.id < most.id {
			most = u
		}
	}
	return most
}
