package finding

import (
	"math"
	"strconv"
)

// Below these a value that keeps its limit is tight (the contract of the
// answers; an assumption of this program, no published rule).
const (
	TightMargin = 1.1
	TightSlack  = 0.1 // stop
)

// Stop is the unit whose findings have a slack and no margin: a stop is a
// logarithm, and a ratio of logarithms means nothing.
const Stop = "stop"

// Judge compares a value with its limit. It gives the margin (limit/value for
// AtMost, value/limit for AtLeast; NaN for stops, where the value or the
// divisor is 0, and where a side is negative), the slack (how far inside the
// limit, negative when over) and the result. Both sides are compared at the 13
// significant digits that the answers print, so that a margin printed as 1 is
// never over. A side that is NaN or infinite gives NotKnown.
func Judge(relation Relation, value, limit float64, unit string) (margin, slack float64, result Result) {
	if !Known(value) || !Known(limit) || (relation != AtMost && relation != AtLeast) {
		return unknown(), unknown(), NotKnown
	}
	value, limit = printed(value), printed(limit)
	small, large := value, limit
	if relation == AtLeast {
		small, large = limit, value
	}
	slack = finiteOrUnknown(large - small)
	margin = ratio(large, small, unit)
	switch {
	case small > large:
		return margin, slack, Over
	case unit == Stop && slack < TightSlack-1e-12, margin < TightMargin:
		return margin, slack, Tight
	default:
		return margin, slack, Within
	}
}

func ratio(large, small float64, unit string) float64 {
	if unit == Stop || small <= 0 || large < 0 {
		return unknown()
	}
	return finiteOrUnknown(printed(large / small))
}

func finiteOrUnknown(x float64) float64 {
	if !Known(x) {
		return unknown()
	}
	return x
}

// printed is x at the precision of the answers.
func printed(x float64) float64 {
	var buffer [32]byte
	rounded, err := strconv.ParseFloat(string(strconv.AppendFloat(buffer[:0], x, 'g', digitsOfAnswers, 64)), 64)
	if err != nil || math.IsInf(rounded, 0) {
		return x
	}
	return rounded
}
