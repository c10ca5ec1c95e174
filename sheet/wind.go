package sheet

import (
	"fmt"
	"math"
	"strings"

	"softloft/finding"
	"softloft/quantity"
)

// windInShort tells the speeds at which somebody watches and at which it comes down, what
// ends it first and from where.
func (c *check) windInShort() string {
	w := c.a.Load.Wind
	if w == nil {
		return ""
	}
	if !finding.Known(float64(w.First)) {
		return "not known; see the findings"
	}
	at := c.speedDown
	told := fmt.Sprintf("watch from %s, cloth out and down at %s; the first limit is at %s", at(w.Watch), at(w.Lower), at(w.First))
	for _, l := range w.Limits {
		if l.ID != w.Governs {
			continue
		}
		told += ": " + l.What
		if finding.Known(float64(l.Bearing)) {
			told += fmt.Sprintf(", wind from %.0f°", float64(l.Bearing))
		}
	}
	return told
}

// speedDown tells a speed to act at, rounded down to a whole mile per hour or half a meter
// per second: sooner is the careful side.
func (c *check) speedDown(n finding.Number) string {
	step := 0.5
	if strings.HasSuffix(c.units.Speed(1), "mph") {
		step = 0.44704
	}
	return c.units.Speed(quantity.Speed(step * math.Floor(float64(n)/step)))
}
