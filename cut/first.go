package cut

import (
	"cmp"
	"slices"
)

// open chooses the kind of the next bar among those that hold a size; -1 where none does.
type open func(p *problem, left []int, size int64) int

// first returns the best of several first-fit-decreasing plans: they differ in which
// length is opened next. Afterward each bar becomes the cheapest that holds its pieces.
func (p *problem) first() []pattern {
	var best []pattern
	for _, by := range []func(a, b kind) int{
		func(a, b kind) int { return cmp.Compare(b.cap, a.cap) },                                      // longest
		func(a, b kind) int { return cmp.Compare(a.cap, b.cap) },                                      // shortest that holds it
		func(a, b kind) int { return cmp.Compare(rate(a), rate(b)) },                                  // cheapest by length
		func(a, b kind) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(b.cap, a.cap)) }, // cheapest bar
	} {
		plan := p.firstFit(p.opener(by))
		p.shrink(plan)
		if best == nil || p.cost(plan) < p.cost(best) {
			best = plan
		}
	}
	return best
}

// rate is a kind's cost for a length.
func rate(k kind) float64 { return float64(k.cost) / float64(k.cap) }

// opener opens by an order; missing bars always come last.
func (p *problem) opener(by func(a, b kind) int) open {
	order := make([]int, len(p.kinds))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		lackA, lackB := p.kinds[a].stock == Missing, p.kinds[b].stock == Missing
		if lackA != lackB {
			if lackA {
				return 1
			}
			return -1
		}
		return by(p.kinds[a], p.kinds[b])
	})
	return func(p *problem, left []int, size int64) int {
		for _, k := range order {
			if left[k] != 0 && p.kinds[k].cap >= size {
				return k
			}
		}
		return -1
	}
}

// firstFit puts each piece, longest first, into the first bar that has room.
func (p *problem) firstFit(next open) []pattern {
	var plan []pattern
	var room []int64
	left := p.lefts()
	for i, size := range p.sizes {
		for range p.demand[i] {
			bar := slices.IndexFunc(room, func(r int64) bool { return r >= size })
			if bar < 0 {
				k := next(p, left, size)
				if left[k] > 0 {
					left[k]--
				}
				bar = len(plan)
				plan = append(plan, pattern{k, make([]int, len(p.sizes))})
				room = append(room, p.kinds[k].cap)
				if p.kinds[k].whole {
					room[bar] = size
				}
			}
			plan[bar].counts[i]++
			room[bar] -= size
		}
	}
	return plan
}

func (p *problem) lefts() []int {
	left := make([]int, len(p.kinds))
	for k := range p.kinds {
		left[k] = p.kinds[k].left
	}
	return left
}

// shrink gives each bar the cheapest kind that is there and holds it.
func (p *problem) shrink(plan []pattern) {
	left := p.lefts()
	for _, bar := range plan {
		if left[bar.kind] > 0 {
			left[bar.kind]--
		}
	}
	for b := range plan {
		used, best, many := p.used(plan[b].counts), plan[b].kind, 0
		for _, n := range plan[b].counts {
			many += n
		}
		for k := range p.kinds {
			if left[k] != 0 && p.kinds[k].cap >= used && (!p.kinds[k].whole || many == 1) && p.kinds[k].cost < p.kinds[best].cost {
				best = k
			}
		}
		if was := plan[b].kind; best != was {
			if left[was] >= 0 {
				left[was]++
			}
			if left[best] > 0 {
				left[best]--
			}
			plan[b].kind = best
		}
	}
}
