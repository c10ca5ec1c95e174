// Package vary answers one plan many times over, each time with another value of one
// key: how the light, the loads and the result go with it, and at which value a result
// changes.
//
// What is varied is any value of the plan by its key: a range (10ft..18ft, or
// 10ft..18ft/5 for five values) or a list (14ft,17ft). Each value makes a new plan that
// goes the whole way, through plan.File.Set and answer.Of; nothing of an answer is
// interpolated. A value with which the plan is refused is a row with the reason.
//
// A change between two neighbors is narrowed down by bisection, with whole answers as
// well, until it lies within 1 % of the value and 1 % of what was varied. Where a result
// changes more than once between two neighbors, one of the changes is found.
package vary
