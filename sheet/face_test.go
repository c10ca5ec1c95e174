package sheet

import (
	"math"
	"testing"

	"softloft/finding"
	"softloft/quantity"
)

// A stop is twice the light (ISO 2720's equation: N squared over t goes with E), so a
// quotient q is log2 q stops; what is not known and what is dark is said so.
func TestRatio(t *testing.T) {
	c := &check{}
	c.units = quantity.InMetres
	for _, row := range []struct {
		of, to float64
		want   string
	}{{100, 100, "alike"}, {200, 100, "+1.0 stop"}, {100, 400, "-2.0 stop"}, {0, 0, "no light"}, {0, 5, "nothing"}, {5, 0, "all of it"}, {math.NaN(), 5, "not known"}} {
		if got := c.ratio(finding.Number(row.of), finding.Number(row.to)); got != row.want {
			t.Errorf("%g against %g: %q, want %q", row.of, row.to, got, row.want)
		}
	}
	if got := c.edge(0.0197); got != "20 mm" {
		t.Errorf("edge %q", got)
	}
	c.units = quantity.InFeet
	if got := c.edge(0.0254); got != "1.0 in" {
		t.Errorf("edge %q", got)
	}
}
