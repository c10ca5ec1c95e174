package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"softloft/answer"
	"softloft/finding"
	"softloft/pull"
	"softloft/quantity"
)

// Served writes the pull list against a shop's stock: where each row comes from, what is
// short, how tubes and ropes are cut, weight, volume and cost.
func Served(to io.Writer, a *answer.Answers, s pull.Served, style Style) error {
	c := &check{printer: &printer{to: to, style: style}, a: a, units: a.Model.Plan.Sheet.Units}
	c.title()
	shop := clean(s.Shop)
	if shop == "" {
		shop = "the shop"
	}
	c.heading("Pull list, from " + shop)
	c.servedRows(s.Rows)
	c.shortOnes(s.Rows)
	c.cutLists(s.Cuts)
	c.servedTotals(s)
	c.heading("What this leaves out")
	for _, n := range gathered(a.Rig.NotPlaced) {
		c.wrapped("  ", "not on the list: "+clean(n.What)+": "+clean(n.Why))
	}
	for _, odd := range s.Odd {
		c.wrapped("  ", "stock file, "+clean(odd))
	}
	for _, note := range s.Notes {
		c.wrapped("  ", note)
	}
	c.cautions()
	return c.err
}

func (c *check) servedRows(rows []pull.ServedRow) {
	table := [][]string{{"item", "shelf", "count", "length", "own", "rented", "short"}}
	for _, row := range rows {
		item, shelf, own, rented, short := clean(row.Item), "-", "-", "-", "-"
		if row.Demo {
			item += " (DEMO)"
		}
		if row.Shelf != nil {
			shelf = clean(*row.Shelf)
		}
		if row.Short != nil {
			own, rented, short = none(row.Own), none(row.Rented), none(*row.Short)
		}
		table = append(table, []string{item, shelf, fmt.Sprint(row.Count), c.length(row.Length), own, rented, short})
	}
	c.table(table)
}

// none prints a dot for nothing, so that the eye finds what there is.
func none(n int) string {
	if n == 0 {
		return "·"
	}
	return strconv.Itoa(n)
}

// shortOnes says of each row what is short, what stands in, and who rents.
func (c *check) shortOnes(rows []pull.ServedRow) {
	c.heading("Short, standing in, rented")
	nothing := true
	for _, row := range rows {
		var told []string
		if row.Short != nil && *row.Short > 0 {
			text := fmt.Sprintf("%d short", *row.Short)
			if row.Why != "" {
				text += " (" + row.Why + ")"
			}
			told = append(told, text)
		}
		if row.Longer > 0 {
			told = append(told, fmt.Sprintf("a longer piece stands in for %d", row.Longer))
		}
		for _, text := range row.StandIn {
			told = append(told, "not counted: "+clean(text))
		}
		if row.Rented > 0 {
			told = append(told, fmt.Sprintf("%d rented from %s", row.Rented, clean(strings.Join(row.From, ", "))))
		}
		if len(told) > 0 {
			nothing = false
			c.wrapped("  ", c.servedName(row)+": "+strings.Join(told, "; "))
		}
	}
	if nothing {
		c.line("  nothing")
	}
}

func (c *check) servedName(row pull.ServedRow) string {
	name := clean(row.Item)
	if finding.Known(float64(row.Length)) {
		name += ", " + c.length(row.Length)
	}
	return name
}

// cutLists tells how to cut; bars that are cut alike are one line.
func (c *check) cutLists(cuts []pull.CutList) {
	if len(cuts) == 0 {
		return
	}
	c.heading("Cut list")
	for _, cut := range cuts {
		proof := "no way takes less, proved"
		if !cut.Proved {
			proof = cut.Gap
		}
		saw := ""
		if cut.Kerf > 0 {
			saw = fmt.Sprintf(", saw cut %s", c.length(cut.Kerf))
		}
		c.wrapped("  ", fmt.Sprintf("%s %s%s: %s", cut.Kind, clean(cut.Kit), saw, proof))
		var order []string
		counts := map[string]int{}
		for _, bar := range cut.Bars {
			text := c.barWords(bar)
			if counts[text] == 0 {
				order = append(order, text)
			}
			counts[text]++
		}
		for _, text := range order {
			c.wrapped("    ", fmt.Sprintf("%d × %s", counts[text], text))
		}
	}
}

func (c *check) barWords(bar pull.CutBar) string {
	from := clean(bar.Shelf)
	switch {
	case bar.Short:
		from = "SHORT: to be found"
	case bar.From != "":
		from = "rented from " + clean(bar.From)
	}
	var pieces []string
	for i := 0; i < len(bar.Pieces); {
		n := 1
		for i+n < len(bar.Pieces) && bar.Pieces[i+n] == bar.Pieces[i] {
			n++
		}
		pieces = append(pieces, fmt.Sprintf("%d of %s", n, c.length(bar.Pieces[i])))
		i += n
	}
	text := fmt.Sprintf("%s (%s): %s", c.length(bar.Length), from, strings.Join(pieces, ", "))
	if bar.Rest > 0.0005 {
		text += ", rest " + c.length(bar.Rest)
	}
	return strings.ReplaceAll(text, " ()", "")
}

func (c *check) servedTotals(s pull.Served) {
	t := s.Totals
	c.heading("In all")
	c.wrapped("  ", c.sum("weight of the list", c.units.Mass(quantity.Mass(t.MassKnown)), t.MassUnknown))
	c.wrapped("  ", c.sum("volume off the shelves, packed", fmt.Sprintf("%.2f m3", float64(t.VolumeKnown)), t.VolumeUnknown))
	if s.Currency != "" {
		c.wrapped("  ", c.sum("rates for "+counted(s.Days, "day"), fmt.Sprintf("%.2f %s", float64(t.CostKnown), s.Currency), t.CostUnknown))
	}
	c.line("  %s short", counted(t.Short, "piece"))
}

// sum tells a sum, and how much of it is not known.
func (c *check) sum(what, known string, unknown []string) string {
	if len(unknown) == 0 {
		return what + ": " + known
	}
	few := unknown
	if len(few) > 3 {
		few = few[:3]
	}
	return fmt.Sprintf("%s: not known; %s without %s, such as %s", what, known, counted(len(unknown), "row"), clean(strings.Join(few, ", ")))
}

// PullCSV writes the list as CSV, in SI, not rounded (RFC 4180).
func PullCSV(to io.Writer, a *answer.Answers) error {
	rows := [][]string{{"id", "item", "kind", "kit", "count", "length_m", "each_kg", "demo"}}
	for _, r := range a.Pull {
		rows = append(rows, pullCells(r))
	}
	return writeCSV(to, rows)
}

func pullCells(r pull.Row) []string {
	return []string{cell(r.ID), cell(r.Item), cell(r.Kind), cell(r.Kit), strconv.Itoa(r.Count), digits(r.Length), digits(r.Each), strconv.FormatBool(r.Demo)}
}

// ServedCSV writes the list against a stock as CSV, in SI, not rounded (RFC 4180).
func ServedCSV(to io.Writer, s pull.Served) error {
	rows := [][]string{{"id", "item", "kind", "kit", "count", "length_m", "each_kg", "demo", "shelf", "own", "rented", "longer", "short", "from", "stand_in", "why"}}
	for _, r := range s.Rows {
		shelf, short := "", ""
		if r.Shelf != nil {
			shelf = *r.Shelf
		}
		if r.Short != nil {
			short = strconv.Itoa(*r.Short)
		}
		rows = append(rows, append(pullCells(r.Row), cell(shelf), strconv.Itoa(r.Own), strconv.Itoa(r.Rented), strconv.Itoa(r.Longer), short,
			cell(strings.Join(r.From, "; ")), cell(strings.Join(r.StandIn, "; ")), cell(r.Why)))
	}
	return writeCSV(to, rows)
}

func writeCSV(to io.Writer, rows [][]string) error {
	w := csv.NewWriter(to)
	if err := w.WriteAll(rows); err != nil {
		return err
	}
	return w.Error()
}
