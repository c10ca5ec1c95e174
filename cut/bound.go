package cut

import (
	"cmp"
	"math"
	"slices"
)

// bound is a cost below which nothing that remains can be cut: the largest of
//   - the total length, from the cheapest lengths that are left, the last in part;
//   - for each piece longer than half of the longest bar, a bar of its own;
//   - with one stock length, L2 of Martello & Toth.
func (p *problem) bound(remaining, left []int) int64 {
	best := max(p.lengthBound(remaining, left), p.halfBound(remaining, left))
	if len(p.kinds) == 1 {
		best = max(best, p.kinds[0].cost*p.l2(remaining))
	}
	return p.upward(best)
}

// lengthBound fills the total length with the cheapest lengths, a linear program whose
// solution is greedy.
func (p *problem) lengthBound(remaining, left []int) int64 {
	need := p.used(remaining)
	total := 0.0
	for _, k := range p.byRate() {
		if need <= 0 {
			break
		}
		if left[k] == 0 {
			continue
		}
		cap, cost := p.kinds[k].cap, p.kinds[k].cost
		bars := need / cap
		if left[k] > 0 && int64(left[k]) <= bars {
			total += float64(left[k]) * float64(cost)
			need -= int64(left[k]) * cap
			continue
		}
		if len(p.kinds) == 1 {
			return cost * ((need + cap - 1) / cap)
		}
		total += float64(need) / float64(cap) * float64(cost)
		need = 0
	}
	return ceiling(total)
}

// ceiling rounds a bound up, but not over what rounding may have added.
func ceiling(x float64) int64 { return int64(math.Ceil(x*(1-1e-12) - 1e-7)) }

func (p *problem) byRate() []int {
	order := make([]int, len(p.kinds))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(rate(p.kinds[a]), rate(p.kinds[b])) })
	return order
}

// halfBound counts a bar for each piece that no two of share one, at the price of the
// cheapest bar that holds it.
func (p *problem) halfBound(remaining, left []int) int64 {
	longest := int64(0)
	for k := range p.kinds {
		if left[k] != 0 {
			longest = max(longest, p.kinds[k].cap)
		}
	}
	total := int64(0)
	for i, n := range remaining {
		if 2*p.sizes[i] <= longest {
			break
		}
		if n == 0 {
			continue
		}
		cheapest := int64(math.MaxInt64)
		for k := range p.kinds {
			if left[k] != 0 && p.kinds[k].cap >= p.sizes[i] {
				cheapest = min(cheapest, p.kinds[k].cost)
			}
		}
		if cheapest < math.MaxInt64 {
			total += int64(n) * cheapest
		}
	}
	return total
}

// l2 counts bars of one length C: for every α ≤ C/2, pieces over C − α and pieces over
// C/2 stand alone, and what the latter leave takes the pieces from α to C/2
// (Martello & Toth 1990, 8.3, from memory). α = 0 is the bound by total length.
func (p *problem) l2(remaining []int) int64 {
	capacity, best := p.kinds[0].cap, int64(0)
	for a := len(p.sizes); a >= 0; a-- {
		alpha := int64(0)
		if a < len(p.sizes) {
			alpha = p.sizes[a]
			if remaining[a] == 0 || 2*alpha > capacity {
				continue
			}
		}
		best = max(best, p.l2At(remaining, alpha))
	}
	return best
}

func (p *problem) l2At(remaining []int, alpha int64) int64 {
	capacity := p.kinds[0].cap
	alone, room, small := int64(0), int64(0), int64(0)
	for i, n := range remaining {
		size, count := p.sizes[i], int64(n)
		switch {
		case size > capacity-alpha:
			alone += count
		case 2*size > capacity:
			alone += count
			room += count * (capacity - size)
		case size >= alpha:
			small += count * size
		}
	}
	if small <= room {
		return alone
	}
	return alone + (small-room+capacity-1)/capacity
}
