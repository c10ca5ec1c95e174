package sheet

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"softloft/draw"
	"softloft/finding"
	"softloft/load"
)

// column is a column of a page: what is printed goes below top and ends above foot.
type column struct {
	*page
	x, width  float64
	top, foot float64
}

// table is rows under a title; the first cell of a row gives way to the others.
type table struct {
	title string
	head  []string
	rows  [][]string
	more  string // what the rows are that don't fit
}

// fits returns how many of n rows are shown where there is room for some: all, or as
// many that the line that counts the rest stands for two or more.
func fits(n, room int) int {
	if n <= room {
		return n
	}
	return max(0, room-1)
}

func (c *column) heading(text string) {
	item := draw.Label(draw.Notes, draw.Shorten(text, headType, c.width, true), draw.Point{X: c.x, Y: c.top + headType/2}, headType, draw.Start)
	item.Bold = true
	c.picture.Add(item)
	c.top += headStep
}

// line prints cells at their right ends, the first at the left.
func (c *column) line(cells []string, ends []float64, bold bool) {
	y := c.top + bodyType/2
	for i, cell := range cells {
		if i == 0 {
			c.text(draw.Point{X: c.x, Y: y}, draw.Shorten(cell, bodyType, ends[0], bold), bodyType, bold, draw.Start)
			continue
		}
		c.text(draw.Point{X: c.x + ends[i], Y: y}, draw.Shorten(cell, bodyType, ends[i]-ends[i-1]-0.5, bold), bodyType, bold, draw.End)
	}
	c.top += bodyStep
}

// table prints as many rows as fit and counts the rest.
func (c *column) table(t table) {
	room := int(math.Floor((c.foot-c.top-headStep)/bodyStep)) - 1
	if room < 1 {
		return
	}
	c.heading(t.title)
	if len(t.rows) == 0 {
		c.line([]string{"none"}, []float64{c.width}, false)
		return
	}
	ends := c.ends(t)
	c.line(t.head, ends, true)
	shown := fits(len(t.rows), room)
	for _, row := range t.rows[:shown] {
		c.line(row, ends, false)
	}
	if rest := len(t.rows) - shown; rest > 0 {
		c.line([]string{fmt.Sprintf("%d %s", rest, t.more)}, []float64{c.width}, false)
	}
}

// ends returns where each column of a table ends: as wide as its widest cell, the
// first as wide as what is left.
func (c *column) ends(t table) []float64 {
	widths := make([]float64, len(t.head))
	for _, row := range append([][]string{t.head}, t.rows...) {
		for i, cell := range row {
			widths[i] = math.Max(widths[i], draw.TextWidth(draw.Clean(cell), bodyType, len(t.rows) == 0)+2.5)
		}
	}
	for i, cell := range t.head {
		widths[i] = math.Max(widths[i], draw.TextWidth(cell, bodyType, true)+2.5)
	}
	ends := make([]float64, len(widths))
	at := c.width
	for i := len(widths) - 1; i > 0; i-- {
		ends[i] = at
		at -= math.Min(widths[i], 0.25*c.width)
	}
	ends[0] = at
	return ends
}

// governs lists findings, worst first, root causes only; what is within shows with its
// margin where there is room.
func (c *column) governs() {
	sorted := append([]finding.Finding(nil), c.a.Findings...)
	sort.SliceStable(sorted, func(i, j int) bool { return rank(sorted[i]) < rank(sorted[j]) })
	c.heading("What governs, worst first")
	rest := len(sorted)
	groups := c.groups(sorted)
	for k, g := range groups {
		lines := c.told(g)
		need := float64(len(lines)) * bodyStep
		if k < len(groups)-1 || rest > len(g.names) {
			need += bodyStep
		}
		if c.top+need > c.foot {
			break
		}
		c.one(g.Finding, lines)
		rest -= len(g.names)
	}
	c.rest(rest)
}

// group is findings of one kind with the same result and the same numbers.
type group struct {
	finding.Finding
	names []string
}

// groups puts root causes that say the same of several parts together, in order.
func (c *column) groups(sorted []finding.Finding) []group {
	var groups []group
	index := map[string]int{}
	for _, f := range sorted {
		if len(f.Causes) > 0 {
			continue
		}
		key := kindOf(f) + "|" + c.comparison(f) + "|" + f.Why + "|" + f.Case
		k, ok := index[key]
		if !ok {
			index[key] = len(groups)
			groups = append(groups, group{Finding: f})
			k = len(groups) - 1
		}
		groups[k].names = append(groups[k].names, nameOf(f))
	}
	return groups
}

// rest counts what is not shown.
func (c *column) rest(count int) {
	if count > 0 {
		c.line([]string{fmt.Sprintf("%d more, none of them worse: softloft check -v", count)}, []float64{c.width}, false)
	}
}

const resultWidth = 17.0

// told is a finding's sentence in at most three lines.
func (c *column) told(f group) []string {
	text := f.Statement
	if finding.Known(f.Value) {
		text += ": " + c.comparison(f.Finding)
	} else if f.Why != "" {
		text += ": " + f.Why
	}
	if f.Case != "" {
		text += " (" + strings.ReplaceAll(f.Case, "_", " ") + ")"
	}
	if len(f.names) > 1 {
		text += "; the same: " + strings.Join(f.names[1:], ", ")
	}
	text = strings.ReplaceAll(text, " ,", ",") // a number without a unit
	lines := draw.Wrap(text, bodyType, c.width-resultWidth, false)
	if len(lines) > 3 {
		lines = append(lines[:2:2], draw.Shorten(lines[2]+" "+lines[3], bodyType, c.width-resultWidth, false))
	}
	return lines
}

// one prints a finding: shape and word, then the sentence.
func (c *column) one(f finding.Finding, lines []string) {
	c.text(draw.Point{X: c.x, Y: c.top + bodyType/2}, shapes[f.Result]+" "+string(f.Result), bodyType, f.Result != finding.Within, draw.Start)
	for i, line := range lines {
		c.text(draw.Point{X: c.x + resultWidth, Y: c.top + bodyType/2 + float64(i)*bodyStep}, line, bodyType, false, draw.Start)
	}
	c.top += float64(len(lines))*bodyStep + 0.4
}

// vertical is the downward pull of a force, NaN where it is not known.
func vertical(v *load.Vec) float64 {
	if v == nil {
		return math.NaN()
	}
	return -float64(v[2])
}
