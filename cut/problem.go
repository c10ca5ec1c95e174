package cut

import (
	"cmp"
	"slices"
)

// kind is one stock length inside: cap is its length and one saw cut. stock is the
// index in the job, or Missing. left is how many there are, negative without a limit.
type kind struct {
	cap, cost int64
	left      int
	stock     int
	whole     bool // takes one piece
}

// most is how many pieces of a size one bar gives.
func (k kind) most(size int64) int64 {
	if k.whole {
		return min(k.cap/size, 1)
	}
	return k.cap / size
}

// pattern is what comes out of one bar: how many of each size.
type pattern struct {
	kind   int
	counts []int
}

// problem is a job in whole numbers: sizes are distinct and fall, demand is how many of
// each. pieces lists the job's pieces of each size.
type problem struct {
	kinds  []kind
	sizes  []int64
	demand []int
	pieces [][]int
	step   int64 // every cost is a multiple of it
	lack   int64 // cost of a missing bar
}

// newProblem sorts a job, and names the pieces that no length holds.
func newProblem(j Job) (*problem, []int) {
	p := &problem{}
	kerf := whole(j.Kerf)
	longest := int64(0)
	for i, s := range j.Stock {
		if s.Count == 0 {
			continue
		}
		k := kind{cap: whole(s.Length) + kerf, cost: max(s.Cost, 1), left: s.Count, stock: i, whole: s.Whole}
		p.kinds = append(p.kinds, k)
		p.step = gcd(p.step, k.cost)
	}
	for _, s := range j.Stock {
		longest = max(longest, whole(s.Length)+kerf)
	}
	tooLong := p.sort(j, kerf, longest)
	p.lacking(longest)
	return p, tooLong
}

func (p *problem) sort(j Job, kerf, longest int64) (tooLong []int) {
	order := make([]int, 0, len(j.Pieces))
	for i := range j.Pieces {
		if whole(j.Pieces[i])+kerf > longest {
			tooLong = append(tooLong, i)
			continue
		}
		order = append(order, i)
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(j.Pieces[b], j.Pieces[a]) })
	for _, i := range order {
		size := whole(j.Pieces[i]) + kerf
		if n := len(p.sizes); n == 0 || p.sizes[n-1] != size {
			p.sizes, p.demand, p.pieces = append(p.sizes, size), append(p.demand, 0), append(p.pieces, nil)
		}
		last := len(p.sizes) - 1
		p.demand[last]++
		p.pieces[last] = append(p.pieces[last], i)
	}
	return tooLong
}

// lacking adds the bar that nobody has, dearer than any plan without it, unless every
// piece surely finds a bar.
func (p *problem) lacking(longest int64) {
	dearest, pieces := int64(1), 0
	for _, k := range p.kinds {
		if k.left < 0 && k.cap == longest {
			return
		}
		dearest = max(dearest, k.cost)
	}
	for _, n := range p.demand {
		pieces += n
	}
	p.step = max(p.step, 1)
	p.lack = p.step * (dearest/p.step + 1) * int64(pieces+1)
	p.kinds = append(p.kinds, kind{cap: longest, cost: p.lack, left: Unlimited, stock: Missing})
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// cost is what a plan counts.
func (p *problem) cost(plan []pattern) int64 {
	total := int64(0)
	for _, bar := range plan {
		total += p.kinds[bar.kind].cost
	}
	return total
}

func (p *problem) used(counts []int) int64 {
	total := int64(0)
	for i, n := range counts {
		total += int64(n) * p.sizes[i]
	}
	return total
}

// upward rounds a bound up to what a cost can be.
func (p *problem) upward(bound int64) int64 {
	if p.step <= 1 {
		return bound
	}
	return (bound + p.step - 1) / p.step * p.step
}
