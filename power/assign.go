package power

import (
	"cmp"
	"math"
	"slices"

	"softloft/cut"
)

// whole is how far sums of amps may be off by rounding.
const whole = 1e-9

// circuit is one breaker under assignment: its leg, from 0, and its lamps as indices.
type circuit struct {
	leg   int
	lamps []int
	amps  float64
}

// assignment puts lamps on circuits and circuits on legs.
type assignment struct {
	amps     []float64 // of each lamp
	capacity float64   // of one circuit
	circuits []circuit
	legs     []float64
	fewest   int  // circuits that the lamps need at least, as far as it is known
	proved   bool // no fewer circuits hold them
}

// assign packs lamps into the fewest circuits that hold them, but one on each leg where
// there are as many lamps, and balances the legs: largest lamps first, then moves and
// exchanges while they help. A lamp over the capacity has a circuit of its own. The same
// lamps give the same circuits.
func assign(amps []float64, capacity float64, legs int) *assignment {
	a := &assignment{amps: amps, capacity: capacity, legs: make([]float64, legs)}
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

// order lists the lamps by amps, largest first.
func (a *assignment) order() []int {
	order := make([]int, len(a.amps))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(a.amps[y], a.amps[x]) })
	return order
}

// pack finds the fewest circuits: amps share circuits as pieces share bars.
func (a *assignment) pack() [][]int {
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
	if err != nil {
		for _, i := range held {
			packed = append(packed, []int{i})
		}
		a.fewest = alone
		return packed
	}
	for _, bar := range result.Bars {
		var lamps []int
		for _, piece := range bar.Pieces {
			lamps = append(lamps, held[piece])
		}
		packed = append(packed, lamps)
	}
	a.fewest, a.proved = alone+int(result.Bound), result.Proved
	return packed
}

// largestFirst puts each lamp, largest first, on the lightest leg's lightest circuit
// that has room. It reports false where a lamp finds none.
func (a *assignment) largestFirst(n int) bool {
	a.open(n)
	for _, i := range a.order() {
		best := -1
		for c := range a.circuits {
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

// room reports whether a circuit takes so many amps more. An empty one takes any lamp:
// what is over its rating must stand somewhere to be seen.
func (a *assignment) room(c int, amps float64) bool {
	return len(a.circuits[c].lamps) == 0 || a.circuits[c].amps+amps <= a.capacity+whole
}

func (a *assignment) lighter(c, than int) bool {
	x, y := a.circuits[c], a.circuits[than]
	if d := a.legs[x.leg] - a.legs[y.leg]; math.Abs(d) > whole {
		return d < 0
	}
	return x.amps < y.amps-whole
}

func (a *assignment) open(n int) {
	a.circuits = make([]circuit, n)
	clear(a.legs)
	for c := range a.circuits {
		a.circuits[c].leg = c % len(a.legs)
	}
}

func (a *assignment) put(lamp, c int) {
	a.circuits[c].lamps = append(a.circuits[c].lamps, lamp)
	a.add(c, a.amps[lamp])
}

func (a *assignment) add(c int, amps float64) {
	a.circuits[c].amps += amps
	a.legs[a.circuits[c].leg] += amps
}

// take uses the packed circuits, the heaviest on the lightest leg.
func (a *assignment) take(packed [][]int, n int) {
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
		for leg := range a.legs {
			if a.legs[leg] < a.legs[lightest]-whole {
				lightest = leg
			}
		}
		a.circuits[c].leg = lightest
		for _, i := range lamps {
			a.put(i, c)
		}
	}
}

// largest is the largest leg in A, and bound what no assignment is below: the mean of
// the legs, and the largest lamp.
func (a *assignment) largest() (largest, bound float64) {
	total, lamp := 0.0, 0.0
	for _, x := range a.amps {
		total, lamp = total+x, math.Max(lamp, x)
	}
	return slices.Max(a.legs), math.Max(total/float64(len(a.legs)), lamp)
}

// tidy drops empty circuits, orders circuits by leg and first lamp, lamps as they came.
func (a *assignment) tidy() {
	a.circuits = slices.DeleteFunc(a.circuits, func(c circuit) bool { return len(c.lamps) == 0 })
	for _, c := range a.circuits {
		slices.Sort(c.lamps)
	}
	slices.SortStableFunc(a.circuits, func(x, y circuit) int {
		return cmp.Or(cmp.Compare(x.leg, y.leg), cmp.Compare(x.lamps[0], y.lamps[0]))
	})
}
