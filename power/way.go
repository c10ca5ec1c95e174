package power

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/circuit"
)

// way is how a circuit's cable goes: Farthest is its length to the farthest lamp, and
// Lumped the length over which the circuit's whole current would lose as much voltage. m,
// NaN where not known.
type way struct {
	farthest, lumped float64
	words            string
}

// Words for how a length was found.
const (
	alongRig   = "the rig's cables: along the floor, up to the box's edge, then from lamp to lamp"
	alongAxes  = "from the tie-in along x, y and z to the farthest lamp"
	noTieIn    = "not known: the plan names no tie-in (power.tie_in)"
	toArm      = "the rig's own cable of each lamp on an arm"
	allTheWay  = "the circuit's whole current goes the whole way to its farthest lamp; separate cables and lamps on the way lose less"
	lampToLamp = "the current falls from lamp to lamp: L is the length over which the whole of it would lose as much"
)

// cable finds the conductor, by the id or the name of the kit's cable.
func (w *work) cable() {
	id := w.rig.Plan.Power.Cable
	w.conductor = unknownConductor()
	w.answer.Cable.Kit, w.answer.Cable.Way = id, noTieIn
	entry, ok := w.rig.Kit.Cable[id]
	if !ok {
		return
	}
	for _, text := range []string{id, entry.Name} {
		if c, found := Designated(text); found && !w.conductor.Known() {
			w.conductor = c
			w.answer.Cable.Conductor, w.answer.Cable.Source = c.Name, c.Source.String()
		}
	}
}

// ways finds the way of every circuit.
func (w *work) findWays() {
	for _, c := range w.plan.Circuits {
		w.ways = append(w.ways, w.wayOf(c))
	}
	if len(w.ways) > 0 {
		w.answer.Cable.Way = w.ways[0].words
	}
}

// wayOf is the way of one circuit: through the rig's loom where it has one, to arms by
// the rig's own cables, else along x, y and z.
func (w *work) wayOf(c circuit.Circuit) way {
	if w.rig.Plan.Power.TieIn == nil {
		return way{math.NaN(), math.NaN(), noTieIn}
	}
	if chain, ok := w.chain(c); ok {
		return chain
	}
	longest, own := 0.0, true
	for _, l := range w.of(c) {
		length, ok := w.toArm(l)
		if !ok {
			length, own = w.straight(l), false
		}
		longest = math.Max(longest, length)
	}
	if own {
		return way{longest, longest, toArm}
	}
	return way{longest, longest, alongAxes}
}

// chain is the way through the loom: the feed, the same for all circuits, then from lamp to
// lamp in the plan's order. The current falls on the way, so that the voltage lost is
// that of the whole current over Σ IᵢLᵢ/I.
func (w *work) chain(c circuit.Circuit) (way, bool) {
	if w.rig.Loom == nil || len(w.rig.Loom.Feeds) == 0 {
		return way{}, false
	}
	run, ok1 := w.rig.Part(w.rig.Loom.Feeds[0].Run)
	up, ok2 := w.rig.Part(w.rig.Loom.Feeds[0].Part)
	if !ok1 || !ok2 || up.To == nil {
		return way{}, false
	}
	length, moment, at := run.Length+up.Length, 0.0, *up.To
	for _, l := range w.of(c) {
		station, ok := w.station(l)
		if _, arm := w.toArm(l); !ok || arm {
			return way{}, false
		}
		d := r3.Sub(station, at)
		length += math.Abs(d.X) + math.Abs(d.Y) + math.Abs(d.Z)
		moment += l.amps * length
		at = station
	}
	if !(c.Amps > 0) {
		return way{length, length, alongRig}, true
	}
	return way{length, moment / c.Amps, alongRig}, true
}

// station is where a lamp takes its cable, in box axes.
func (w *work) station(l lamp) (r3.Vec, bool) {
	for _, weight := range w.rig.Weights {
		if weight.Part == l.part && weight.OnTube != "" {
			return weight.Station, true
		}
	}
	part, ok := w.rig.Part(l.part)
	if !ok || part.InRoom {
		return r3.Vec{}, false
	}
	return part.Center, true
}

// toArm is the length of a lamp's own cable from the tie-in, which the rig gives to
// lamps on arms: it is joined to the lamp alone.
func (w *work) toArm(l lamp) (float64, bool) {
	part, ok := w.rig.Part(l.part + ".cable")
	if !ok || part.Length <= 0 || !slices.Equal(part.Joined, []string{l.part}) {
		return 0, false
	}
	return part.Length, true
}

// straight is the way from the tie-in to a lamp along x, y and z.
func (w *work) straight(l lamp) float64 {
	part, ok := w.rig.Part(l.part)
	if !ok {
		return math.NaN()
	}
	t := w.rig.Plan.Power.TieIn
	d := r3.Sub(w.rig.CenterInRoom(part), r3.Vec{X: float64(t[0]), Y: float64(t[1]), Z: float64(t[2])})
	return math.Abs(d.X) + math.Abs(d.Y) + math.Abs(d.Z)
}
