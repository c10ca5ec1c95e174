package cut

import (
	"math"
	"slices"
)

// columns solves the linear program of Gilmore & Gomory: how often each pattern is
// cut, not in whole numbers, without limits of stock. It returns the patterns, how
// often each, and a cost below which no plan is. The bound holds from the first round on:
// a price for each size, divided by what a pattern gains at most, is a dual solution
// (Farley).
type columns struct {
	p       *problem
	kinds   []int // without the missing bar: the same length is there, cheaper
	basis   []pattern
	inverse [][]float64
	often   []float64
	bound   float64
}

const (
	mostRounds  = 2000
	mostSizes   = 120    // distinct sizes; more are left to the search
	mostInSack  = 20_000 // nodes of one knapsack
	negligible  = 1e-9
	smallestCut = 1e-7
)

// newColumns begins with patterns of one size each. It is nil where a size has no bar
// but a missing one, and where there are too many sizes.
func newColumns(p *problem) *columns {
	c := &columns{p: p}
	for k := range p.kinds {
		if p.kinds[k].stock != Missing {
			c.kinds = append(c.kinds, k)
		}
	}
	n := len(p.sizes)
	if n == 0 || n > mostSizes {
		return nil
	}
	for i, size := range p.sizes {
		best, bestCost := -1, math.Inf(1)
		for _, k := range c.kinds {
			if many := p.kinds[k].most(size); many > 0 {
				if each := float64(p.kinds[k].cost) / float64(many); each < bestCost {
					best, bestCost = k, each
				}
			}
		}
		if best < 0 {
			return nil
		}
		many := int(min(p.kinds[best].most(size), int64(p.demand[i])))
		counts, row := make([]int, n), make([]float64, n)
		counts[i], row[i] = many, 1/float64(many)
		c.basis = append(c.basis, pattern{best, counts})
		c.inverse = append(c.inverse, row)
		c.often = append(c.often, float64(p.demand[i])/float64(many))
	}
	return c
}

// solve enters patterns until none gains.
func (c *columns) solve() {
	for range mostRounds {
		prices := c.prices()
		enter, gain, most := c.price(prices)
		worth := 0.0
		for i, n := range c.p.demand {
			worth += prices[i] * float64(n)
		}
		c.bound = max(c.bound, worth/max(most, 1))
		if gain < negligible*float64(c.p.kinds[enter.kind].cost) || !c.pivot(enter) {
			return
		}
	}
}

// prices are the dual values: the costs of the basis times its inverse. A price that
// rounding made negative is 0, which keeps the bound a bound.
func (c *columns) prices() []float64 {
	prices := make([]float64, len(c.basis))
	for b, bar := range c.basis {
		cost := float64(c.p.kinds[bar.kind].cost)
		for i, x := range c.inverse[b] {
			prices[i] += cost * x
		}
	}
	for i := range prices {
		prices[i] = max(prices[i], 0)
	}
	return prices
}

// price finds the pattern that gains most over its cost. most is the largest ratio of
// worth to cost of any pattern, or an upper bound of it.
func (c *columns) price(prices []float64) (best pattern, gain, most float64) {
	gain = math.Inf(-1)
	for _, k := range c.kinds {
		counts, worth, upper := c.p.knapsack(prices, c.p.kinds[k].cap)
		if c.p.kinds[k].whole {
			counts, worth = c.p.dearest(prices, c.p.kinds[k].cap)
			upper = worth
		}
		cost := float64(c.p.kinds[k].cost)
		most = max(most, upper/cost)
		if worth-cost > gain {
			best, gain = pattern{k, counts}, worth-cost
		}
	}
	return best, gain, most
}

// pivot enters a pattern into the basis. It reports false where nothing leaves.
func (c *columns) pivot(enter pattern) bool {
	n := len(c.basis)
	column := make([]float64, n)
	for b := range n {
		for i, count := range enter.counts {
			column[b] += c.inverse[b][i] * float64(count)
		}
	}
	leaves, step := -1, math.Inf(1)
	for b := range n {
		if column[b] > smallestCut && c.often[b]/column[b] < step {
			leaves, step = b, c.often[b]/column[b]
		}
	}
	if leaves < 0 {
		return false
	}
	for i := range n {
		c.inverse[leaves][i] /= column[leaves]
	}
	for b := range n {
		if b == leaves {
			continue
		}
		c.often[b] = max(c.often[b]-step*column[b], 0)
		for i := range n {
			c.inverse[b][i] -= column[b] * c.inverse[leaves][i]
		}
	}
	c.basis[leaves], c.often[leaves] = enter, step
	return true
}

// rounded cuts each pattern as often as a whole number allows, and tells what of the
// demand and the stock remains.
func (c *columns) rounded() (plan []pattern, remaining, left []int) {
	remaining, left = slices.Clone(c.p.demand), c.p.lefts()
	for b, bar := range c.basis {
		for range int(c.often[b] + 1e-6) {
			if left[bar.kind] == 0 || !fits(bar.counts, remaining) {
				break
			}
			take(bar.counts, remaining, -1)
			if left[bar.kind] > 0 {
				left[bar.kind]--
			}
			plan = append(plan, pattern{bar.kind, slices.Clone(bar.counts)})
		}
	}
	return plan, remaining, left
}

func fits(counts, remaining []int) bool {
	for i, n := range counts {
		if n > remaining[i] {
			return false
		}
	}
	return true
}

func take(counts, from []int, sign int) {
	for i, n := range counts {
		from[i] += sign * n
	}
}
