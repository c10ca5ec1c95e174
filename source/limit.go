package source

import (
	"math"
	"slices"
)

// Limit is a published or customary number that decides something, with its
// unit (SI; angles in radians; empty for a ratio) and its source.
type Limit struct {
	Name  string
	Value float64
	Unit  string
	Citation
}

const (
	degree = math.Pi / 180
	inch   = 0.0254  // m, exact since 1959
	mile   = 0.44704 // one mile per hour in m/s, exact
)

// Limits lists the single limits of all topics, in a fixed order. The tables
// (factors, knots, reflectances …) are listed by their own functions.
func Limits() []Limit {
	return slices.Concat(
		[]Limit{WorkingLoadShare(), PersonsMultiplier()},
		slingLimits(), fallLimits(), standLimits(), liftLimits(), windLimits(), exposureLimits(), powerLimits(), clearanceLimits(),
	)
}
