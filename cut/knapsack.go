package cut

import (
	"cmp"
	"slices"
)

// sack is a bounded knapsack under search.
type sack struct {
	p      *problem
	prices []float64
	order  []int // sizes by price for a length, dearest first
	counts []int
	best   []int
	worth  float64
	nodes  int
}

// knapsack finds the pattern of the most worth in a bar. upper is its worth, or where
// the search was stopped an upper bound of what any pattern is worth.
func (p *problem) knapsack(prices []float64, capacity int64) (counts []int, worth, upper float64) {
	s := &sack{p: p, prices: prices, counts: make([]int, len(prices)), best: make([]int, len(prices))}
	for i := range prices {
		if prices[i] > 0 {
			s.order = append(s.order, i)
		}
	}
	slices.SortStableFunc(s.order, func(a, b int) int {
		return cmp.Compare(prices[b]/float64(p.sizes[b]), prices[a]/float64(p.sizes[a]))
	})
	s.fill(0, capacity, 0)
	if s.nodes > mostInSack {
		return s.best, s.worth, s.relaxed(0, capacity)
	}
	return s.best, s.worth, s.worth
}

// relaxed is what the sizes from one on are worth at most: the last cut in part.
func (s *sack) relaxed(from int, room int64) float64 {
	total := 0.0
	for _, i := range s.order[from:] {
		many := min(room/s.p.sizes[i], int64(s.p.demand[i]))
		total += float64(many) * s.prices[i]
		room -= many * s.p.sizes[i]
		if many < int64(s.p.demand[i]) {
			return total + float64(room)/float64(s.p.sizes[i])*s.prices[i]
		}
	}
	return total
}

func (s *sack) fill(from int, room int64, worth float64) {
	if s.nodes++; s.nodes > mostInSack {
		return
	}
	if worth > s.worth {
		s.worth = worth
		copy(s.best, s.counts)
	}
	if from == len(s.order) || worth+s.relaxed(from, room) <= s.worth*(1+1e-13) {
		return
	}
	i := s.order[from]
	for many := int(min(room/s.p.sizes[i], int64(s.p.demand[i]))); many >= 0; many-- {
		s.counts[i] = many
		s.fill(from+1, room-int64(many)*s.p.sizes[i], worth+float64(many)*s.prices[i])
	}
	s.counts[i] = 0
}

// dearest finds the one piece of the most worth that a bar holds.
func (p *problem) dearest(prices []float64, capacity int64) (counts []int, worth float64) {
	counts = make([]int, len(prices))
	best := -1
	for i := range prices {
		if p.sizes[i] <= capacity && prices[i] > worth {
			best, worth = i, prices[i]
		}
	}
	if best >= 0 {
		counts[best] = 1
	}
	return counts, worth
}
