package finding

import (
	"math"

	"softloft/source"
)

// Cited is a published limit as an input, with its source as the origin. An
// angle in radians comes in degrees, as findings carry angles.
func Cited(symbol string, limit source.Limit) Input {
	value, unit := limit.Value, limit.Unit
	if unit == "rad" {
		value, unit = printed(value*180/math.Pi), "deg"
	}
	return Input{Symbol: symbol, Name: limit.Name, Value: value, Unit: unit, Origin: limit.Citation.String()}
}
