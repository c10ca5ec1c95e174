package frame

import "sort"

// bandOrder numbers the nodes of a graph by the reverse Cuthill–McKee method (George and Liu, Computer Solution of
// Large Sparse Positive Definite Systems, 1981, chapter 4), so that connected nodes get near numbers. It returns
// the nodes in their new order. Ties go to the lower index, so that the order is the same every time.
func bandOrder(neighbors [][]int) []int {
	n := len(neighbors)
	order := make([]int, 0, n)
	seen := make([]bool, n)
	for len(order) < n {
		root := farEnd(neighbors, leastDegree(neighbors, seen))
		order = append(order, root)
		seen[root] = true
		for at := len(order) - 1; at < len(order); at++ {
			next := unseen(neighbors[order[at]], seen)
			sort.SliceStable(next, func(a, b int) bool { return len(neighbors[next[a]]) < len(neighbors[next[b]]) })
			for _, k := range next {
				seen[k] = true
			}
			order = append(order, next...)
		}
	}
	for a, b := 0, n-1; a < b; a, b = a+1, b-1 {
		order[a], order[b] = order[b], order[a]
	}
	return order
}

func leastDegree(neighbors [][]int, seen []bool) int {
	best := -1
	for k := range neighbors {
		if !seen[k] && (best < 0 || len(neighbors[k]) < len(neighbors[best])) {
			best = k
		}
	}
	return best
}

func unseen(list []int, seen []bool) []int {
	var out []int
	for _, k := range list {
		if !seen[k] {
			out = append(out, k)
		}
	}
	sort.Ints(out)
	return out
}

// farEnd walks to a node at the far end of the graph, where the levels are many and narrow.
func farEnd(neighbors [][]int, root int) int {
	depth := -1
	for {
		last, d := lastLevel(neighbors, root)
		if d <= depth {
			return root
		}
		depth = d
		next := last[0]
		for _, k := range last {
			if len(neighbors[k]) < len(neighbors[next]) {
				next = k
			}
		}
		root = next
	}
}

// lastLevel gives the nodes furthest from root and how many steps away they are.
func lastLevel(neighbors [][]int, root int) ([]int, int) {
	seen := make([]bool, len(neighbors))
	seen[root] = true
	level, depth := []int{root}, 0
	for {
		var next []int
		for _, k := range level {
			for _, m := range neighbors[k] {
				if !seen[m] {
					seen[m] = true
					next = append(next, m)
				}
			}
		}
		if len(next) == 0 {
			return level, depth
		}
		sort.Ints(next)
		level, depth = next, depth+1
	}
}
