package sight

import "sort"

// sortBy sorts indexes by their values, equal ones in their order.
func sortBy(order []int, values []float64) {
	sort.SliceStable(order, func(i, j int) bool { return values[order[i]] < values[order[j]] })
}
