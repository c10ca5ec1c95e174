package sheet

import (
	"fmt"
	"io"

	"softloft/answer"
	"softloft/finding"
	"softloft/quantity"
)

// Pull writes the pull list as a table.
func Pull(to io.Writer, a *answer.Answers, style Style) error {
	c := &check{printer: &printer{to: to, style: style}, a: a, units: a.Model.Plan.Sheet.Units}
	c.title()
	c.heading("Pull list")
	rows := [][]string{{"item", "kit", "count", "length", "each"}}
	var total float64
	for _, row := range a.Pull {
		each := "not known"
		if finding.Known(float64(row.Each)) {
			each = c.units.Mass(quantity.Mass(row.Each))
			total += float64(row.Each) * float64(row.Count)
		}
		item := clean(row.Item)
		if row.Demo {
			item += " (DEMO)"
		}
		rows = append(rows, []string{item, clean(row.Kit), fmt.Sprint(row.Count), c.length(row.Length), each})
	}
	c.table(rows)
	c.line("")
	cut := "lines have their tails and knots"
	if a.Model.Plan.Derive == "none" {
		cut = "derive: none, so lines are without tails and knots"
	}
	c.line("  %s in all that has a known weight; %s", c.units.Mass(quantity.Mass(total)), cut)
	for _, n := range gathered(a.Rig.NotPlaced) {
		c.wrapped("  ", "not on the list: "+clean(n.What)+": "+clean(n.Why))
	}
	c.cautions()
	return c.err
}
