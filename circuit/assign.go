package circuit

import (
	"cmp"
	"math"
	"slices"

	"softloft/cut"
)

// Negligible is how far sums of amps may be off by rounding, in A.
const Negligible = 1e-9

const whole = Negligible

// Circuit is one breaker: its leg, from 0, its loads as indices, and their amps together.
type Circuit struct {
	Leg   int
	Loads []int
	Amps  float64
}

// Assignment puts loads on circuits and circuits on legs. Circuits stand in the order of
// their legs, then of their first loads. No fewer than Fewest circuits hold the loads;
// where Proved is true, as few do.
type Assignment struct {
	Circuits []Circuit
	Legs     []float64 // amps of each
	Fewest   int
	Proved   bool

	amps     []float64 // of each load
	capacity float64   // of one circuit
}

// Assign packs loads, in A, into the fewest circuits that hold them, but one on each leg where
// there are as many loads, and balances the legs: largest loads first, then moves and
// exchanges while they help. A load over the capacity has a circuit of its own. The same
// loads give the same circuits. Amps must be finite and not negative, capacity over 0, legs from 1.
func Assign(amps []float64, capacity float64, legs int) *Assignment {
	a := &Assignment{amps: amps, capacity: capacity, Legs: make([]float64, legs)}
	if len(amps) == 0 {
		return a
	}
	packed := a.pack()
	n := max(len(packed), min(legs, len(amps)))
	if !a.largestFirst(n) {
		a.take(packed, n)
	}
	a.improve()
	a.tidy()
	return a
}

// order lists the loads by amps, largest first.
func (a *Assignment) order() []int {
	order := make([]int, len(a.amps))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(a.amps[y], a.amps[x]) })
	return order
}

// pack finds the fewest circuits: amps share circuits as pieces share bars.
func (a *Assignment) pack() [][]int {
	var packed [][]int
	job := cut.Job{Stock: []cut.Stock{{Length: a.capacity, Count: cut.Unlimited}}, Nodes: 20_000}
	var held []int
	for i, x := range a.amps {
		switch {
		case x > a.capacity+whole:
			packed = append(packed, []int{i})
		case x >= whole:
			job.Pieces, held = append(job.Pieces, math.Min(x, a.capacity)), append(held, i)
		default: // no load: beside any other
			job.Pieces, held = append(job.Pieces, whole), append(held, i)
		}
	}
	alone := len(packed)
	result, err := cut.Solve(job)
	if err != nil { // more loads than cut works out
		return append(packed, a.firstFit(held)...)
	}
	for _, bar := range result.Bars {
		var lamps []int
		for _, piece := range bar.Pieces {
			lamps = append(lamps, held[piece])
		}
		packed = append(packed, lamps)
	}
	a.Fewest, a.Proved = alone+int(result.Bound), result.Proved
	return packed
}

// firstFit packs loads, largest first, into the first circuit that has room.
func (a *Assignment) firstFit(held []int) [][]int {
	total := 0.0
	var packed [][]int
	var room []float64
	for _, i := range a.order() {
		if !slices.Contains(held, i) {
			continue
		}
		total += a.amps[i]
		c := slices.IndexFunc(room, func(left float64) bool { return left >= a.amps[i]-whole })
		if c < 0 {
			c = len(packed)
			packed, room = append(packed, nil), append(room, a.capacity)
		}
		packed[c] = append(packed[c], i)
		room[c] -= a.amps[i]
	}
	a.Fewest = len(a.amps) - len(held) + int(math.Ceil(total/a.capacity-whole))
	a.Proved = len(packed) == a.Fewest-(len(a.amps)-len(held))
	return packed
}

// largestFirst puts each load, largest first, on the lightest leg's lightest circuit
// that has room. It reports false where a load finds none.
func (a *Assignment) largestFirst(n int) bool {
	a.open(n)
	for _, i := range a.order() {
		best := -1
		for c := range a.Circuits {
			if a.room(c, a.amps[i]) && (best < 0 || a.lighter(c, best)) {
				best = c
			}
		}
		if best < 0 {
			return false
		}
		a.put(i, best)
	}
	return true
}

// room reports whether a circuit takes so many amps more. An empty one takes any load:
// what is over its rating must stand somewhere to be seen.
func (a *Assignment) room(c int, amps float64) bool {
	return len(a.Circuits[c].Loads) == 0 || a.Circuits[c].Amps+amps <= a.capacity+whole
}

func (a *Assignment) lighter(c, than int) bool {
	x, y := a.Circuits[c], a.Circuits[than]
	if d := a.Legs[x.Leg] - a.Legs[y.Leg]; math.Abs(d) > whole {
		return d < 0
	}
	return x.Amps < y.Amps-whole
}

func (a *Assignment) open(n int) {
	a.Circuits = make([]Circuit, n)
	clear(a.Legs)
	for c := range a.Circuits {
		a.Circuits[c].Leg = c % len(a.Legs)
	}
}

func (a *Assignment) put(lamp, c int) {
	a.Circuits[c].Loads = append(a.Circuits[c].Loads, lamp)
	a.add(c, a.amps[lamp])
}

func (a *Assignment) add(c int, amps float64) {
	a.Circuits[c].Amps += amps
	a.Legs[a.Circuits[c].Leg] += amps
}

// take uses the packed circuits, the heaviest on the lightest leg.
func (a *Assignment) take(packed [][]int, n int) {
	a.open(n)
	weight := func(lamps []int) float64 {
		total := 0.0
		for _, i := range lamps {
			total += a.amps[i]
		}
		return total
	}
	slices.SortStableFunc(packed, func(x, y []int) int { return cmp.Compare(weight(y), weight(x)) })
	for c, lamps := range packed {
		lightest := 0
		for leg := range a.Legs {
			if a.Legs[leg] < a.Legs[lightest]-whole {
				lightest = leg
			}
		}
		a.Circuits[c].Leg = lightest
		for _, i := range lamps {
			a.put(i, c)
		}
	}
}

// Largest returns the largest leg in A, and bound what no assignment is below: the mean of
// the legs, and the largest load.
func (a *Assignment) Largest() (largest, bound float64) {
	total, lamp := 0.0, 0.0
	for _, x := range a.amps {
		total, lamp = total+x, math.Max(lamp, x)
	}
	return slices.Max(a.Legs), math.Max(total/float64(len(a.Legs)), lamp)
}

// tidy drops empty circuits, orders circuits by leg and first load, loads as they came.
// Loads that are alike stand on circuits in their order, so that neighbors share one.
func (a *Assignment) tidy() {
	a.Circuits = slices.DeleteFunc(a.Circuits, func(c Circuit) bool { return len(c.Loads) == 0 })
	a.sort()
	a.neighbors()
	a.sort()
	clear(a.Legs)
	for k, c := range a.Circuits {
		a.Circuits[k].Amps = 0
		for _, i := range c.Loads {
			a.add(k, a.amps[i])
		}
	}
}

// neighbors deals out loads of the same amps again, in their order: no sum changes.
func (a *Assignment) neighbors() {
	alike := map[float64][]int{}
	for i, x := range a.amps {
		alike[x] = append(alike[x], i)
	}
	for _, c := range a.Circuits {
		for k, i := range c.Loads {
			x := a.amps[i]
			c.Loads[k], alike[x] = alike[x][0], alike[x][1:]
		}
	}
}

func (a *Assignment) sort() {
	for _, c := range a.Circuits {
		slices.Sort(c.Loads)
	}
	slices.SortStableFunc(a.Circuits, func(x, y Circuit) int {
		return cmp.Or(cmp.Compare(x.Leg, y.Leg), cmp.Compare(x.Loads[0], y.Loads[0]))
	})
}
