package cut

import (
	"cmp"
	"encoding/binary"
	"slices"
)

// search is a branch and bound: the longest piece that remains goes into the next bar,
// with every maximal pattern of what remains beside it. Maximal patterns are enough: a
// piece that still fits may move there from another bar at no cost.
type search struct {
	p         *problem
	remaining []int
	left      []int
	plan      []pattern
	best      []pattern
	cost      int64 // of best
	floor     int64 // nothing is below it
	nodes     int
	most      int
	skipped   bool             // patterns were left out
	seen      map[string]int64 // spent when what remains was first met
}

// mostPatterns is how many patterns of one bar are tried at most, those with the longest
// pieces.
const mostPatterns = 4096

// newSearch looks for a plan of the remaining pieces that costs less than cost.
func newSearch(p *problem, remaining, left []int, cost int64, nodes int) *search {
	return &search{p: p, remaining: slices.Clone(remaining), left: slices.Clone(left), cost: cost, most: nodes, seen: map[string]int64{}}
}

// complete reports whether the search saw everything.
func (s *search) complete() bool { return !s.skipped && !s.stopped() }

// stopped reports whether the search is out of nodes.
func (s *search) stopped() bool { return s.nodes > s.most }

func (s *search) run(spent int64) {
	if s.nodes++; s.stopped() || s.cost <= s.floor {
		return
	}
	longest := slices.IndexFunc(s.remaining, func(n int) bool { return n > 0 })
	if longest < 0 {
		if spent < s.cost {
			s.cost, s.best = spent, slices.Clone(s.plan)
		}
		return
	}
	if spent+s.p.bound(s.remaining, s.left) >= s.cost || s.known(spent) {
		return
	}
	for _, next := range s.patterns(longest) {
		if s.stopped() {
			return
		}
		s.cut(next, spent)
	}
}

func (s *search) cut(next pattern, spent int64) {
	take(next.counts, s.remaining, -1)
	limited := s.left[next.kind] > 0
	if limited {
		s.left[next.kind]--
	}
	s.plan = append(s.plan, next)
	s.run(spent + s.p.kinds[next.kind].cost)
	s.plan = s.plan[:len(s.plan)-1]
	if limited {
		s.left[next.kind]++
	}
	take(next.counts, s.remaining, 1)
}

// known reports whether the same pieces and bars remained before for no more.
func (s *search) known(spent int64) bool {
	key := make([]byte, 0, 2*(len(s.remaining)+len(s.left)))
	for _, n := range s.remaining {
		key = binary.AppendVarint(key, int64(n))
	}
	for _, n := range s.left {
		key = binary.AppendVarint(key, int64(n))
	}
	before, met := s.seen[string(key)]
	if met && before <= spent {
		return true
	}
	s.seen[string(key)] = spent
	return false
}

// patterns lists the maximal patterns that hold the longest piece, of every kind of bar,
// those with the least waste first.
func (s *search) patterns(longest int) []pattern {
	type ranked struct {
		pattern
		waste float64
	}
	var all []ranked
	for k := range s.p.kinds {
		if s.left[k] == 0 || s.p.kinds[k].cap < s.p.sizes[longest] || s.cheaperTwin(k) {
			continue
		}
		counts := make([]int, len(s.p.sizes))
		if s.p.kinds[k].whole {
			s.nodes++
			counts[longest] = 1
			all = append(all, ranked{pattern{k, counts}, float64(s.p.kinds[k].cost) / float64(s.p.sizes[longest])})
			continue
		}
		enough := len(all) + mostPatterns
		s.maximal(longest, longest, s.p.kinds[k].cap, counts, func(room int64) bool {
			if len(all) == enough {
				s.skipped = true
				return false
			}
			waste := float64(s.p.kinds[k].cost) / float64(s.p.kinds[k].cap-room)
			all = append(all, ranked{pattern{k, slices.Clone(counts)}, waste})
			return true
		})
	}
	slices.SortStableFunc(all, func(a, b ranked) int { return cmp.Compare(a.waste, b.waste) })
	list := make([]pattern, len(all))
	for i := range all {
		list[i] = all[i].pattern
	}
	return list
}

// cheaperTwin reports whether a bar of the same length that costs no more is left: then
// that one is taken first.
func (s *search) cheaperTwin(k int) bool {
	for other, twin := range s.p.kinds {
		if s.left[other] == 0 || twin.cap != s.p.kinds[k].cap || twin.whole != s.p.kinds[k].whole || other == k {
			continue
		}
		if twin.cost < s.p.kinds[k].cost || (twin.cost == s.p.kinds[k].cost && other < k) {
			return true
		}
	}
	return false
}

// maximal walks the patterns from a size on; a pattern is told where nothing that
// remains would fit beside it. The longest piece is in every one. It goes on as long as
// tell asks for more.
func (s *search) maximal(from, longest int, room int64, counts []int, tell func(room int64) bool) bool {
	if s.stopped() {
		return false
	}
	if from == len(counts) {
		s.nodes += 1 + len(counts)/32 // long lists take longer
		for i, n := range s.remaining {
			if n > counts[i] && s.p.sizes[i] <= room {
				return true
			}
		}
		return tell(room)
	}
	least := 0
	if from == longest {
		least = 1
	}
	for n := int(min(room/s.p.sizes[from], int64(s.remaining[from]))); n >= least; n-- {
		counts[from] = n
		if !s.maximal(from+1, longest, room-int64(n)*s.p.sizes[from], counts, tell) {
			counts[from] = 0
			return false
		}
	}
	counts[from] = 0
	return true
}
