// Package circuit shares loads among circuits, and circuits among the legs of a supply: the
// fewest circuits that hold the loads, and legs as even as can be. It knows amps alone,
// so that whatever places cable and whatever tells the supply share loads alike.
//
// The fewest circuits are the fewest bars of package cut; the balance is largest first
// and then exchanges, held against a bound, so that what it falls short of the best is known.
package circuit
