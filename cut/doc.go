// Package cut cuts pieces from stock lengths: which bars to take and what to cut from
// each, at the least cost. It knows no tube and no rope; anything that has one measure
// serves, such as amps that share circuits.
//
// First fit decreasing gives a plan, bounds say what no plan can beat, and a branch and
// bound over maximal patterns closes the gap between them. Where it does not close
// within its nodes, the result says how far the plan may be from the best one.
//
// Terms: a size is a piece with its saw cut; a pattern is what comes out of one bar.
//
// Sources: Gilmore & Gomory, A Linear Programming Approach to the Cutting-Stock Problem,
// Operations Research 9 (1961) 849, for the columns; Martello & Toth, Knapsack Problems
// (1990), chapter 8, for the bounds L1 and L2; Farley, A Note on Bounding a Class of
// Linear Programming Problems, Operations Research 38 (1990) 922, for a bound before the
// columns are complete. All three from memory.
package cut
