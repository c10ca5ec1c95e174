package sheet

import (
	"fmt"
	"math"
	"strings"

	"softloft/finding"
	"softloft/light"
	"softloft/quantity"
)

// face tells what a performer's face gets: the three looks in stops against the crown
// and the back, the widths of shadow edges, what the eye sees of the source.
func (c *check) face(m *light.MarkAnswer) {
	if l := m.Looks; l != nil {
		c.wrapped("    ", "face against crown: "+c.against(l, func(a light.LookAnswer) (of, to finding.Number) { return a.Face, a.Crown }))
		c.wrapped("    ", "face against back: "+c.against(l, func(a light.LookAnswer) (of, to finding.Number) { return a.Face, a.Back }))
	}
	if e := m.Edges; e != nil {
		c.wrapped("    ", fmt.Sprintf("shadow edges, 10 to 90 %%: brow %s, nose %s, brim %s, arm %s; under its brow an eye sees %s of the source",
			c.edge(e.Brow), c.edge(e.Nose), c.edge(e.Brim), c.edge(e.Arm), percent(m.SourceSeen)))
	}
}

// against compares two readings in the three looks.
func (c *check) against(l *light.LooksAnswer, pick func(light.LookAnswer) (of, to finding.Number)) string {
	var told []string
	for _, look := range []struct {
		name string
		a    light.LookAnswer
	}{{"under the box", l.Under}, {"with it ahead", l.Ahead}, {"with it behind", l.Behind}} {
		told = append(told, c.ratio(pick(look.a))+" "+look.name)
	}
	return strings.Join(told, ", ")
}

// ratio is one reading over another, in stops.
func (c *check) ratio(of, to finding.Number) string {
	a, b := float64(of), float64(to)
	switch {
	case !finding.Known(a) || !finding.Known(b):
		return "not known"
	case a <= 0 && b <= 0:
		return "no light"
	case a <= 0:
		return "nothing"
	case b <= 0:
		return "all of it"
	}
	stops := math.Log2(a / b)
	switch {
	case math.Abs(stops) < 0.05:
		return "alike"
	case stops > 0:
		return "+" + c.units.Stops(quantity.Stops(stops))
	}
	return c.units.Stops(quantity.Stops(stops))
}

// edge is a short length: in millimeters, or in inches to the tenth.
func (c *check) edge(n finding.Number) string {
	x := float64(n)
	switch {
	case !finding.Known(x):
		return "not known"
	case c.units == quantity.InMetres:
		return fmt.Sprintf("%.0f mm", 1000*x)
	}
	return fmt.Sprintf("%.1f in", x/float64(quantity.Inch))
}
