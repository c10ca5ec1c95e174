package sheet

import (
	"fmt"
	"strings"

	"softloft/answer"
	"softloft/finding"
	"softloft/light"
	"softloft/load"
	"softloft/quantity"
)

// lines tells each line's load by case, rounded up.
func (c *check) lines() {
	if len(c.a.Load.Lines) == 0 {
		return
	}
	c.heading("Lines: tension by case, rounded up")
	rows := [][]string{{"line", "to", "built", "grown", "one lost", "half of weight", "cut length", "haul"}}
	for _, l := range c.a.Load.Lines {
		built := c.force(l.Cases.Built)
		if l.Slack {
			built = "slack"
		}
		rows = append(rows, []string{clean(l.Name), clean(l.To), built, c.force(l.Cases.Grown), c.force(l.Cases.LostWorst),
			c.force(l.Cases.Diagonal), c.length(l.Length), c.force(l.Haul)})
	}
	c.table(rows)
	if f := c.a.Load.Frame; f != nil {
		c.line("  frame as built: sags %s, stress %s, use of the worst tube %s", c.length(f.Sag),
			c.limit(float64(f.Stress), "Pa"), percent(f.Use))
	}
	c.losses()
}

// losses tells what one line gone does, where it is not rest.
func (c *check) losses() {
	var rest []string
	for _, l := range c.a.Load.Lost {
		if l.Outcome == "rests" {
			rest = append(rest, clean(l.Name))
			continue
		}
		outcome := l.Outcome
		if outcome == "" {
			outcome = "not known"
		}
		c.wrapped("  ", fmt.Sprintf("%s %s gone: %s (%s)", l.What, clean(l.Name), outcome, clean(l.Why)))
	}
	if len(rest) > 0 {
		c.wrapped("  ", "the box comes to rest with any one of these gone: "+strings.Join(rest, ", "))
	}
}

// points tells what each point gets.
func (c *check) points() {
	if len(c.a.Load.Points) == 0 {
		return
	}
	c.heading("Points: pull of all lines on each, rounded up")
	rows := [][]string{{"point", "built", "grown", "one lost", "to the side, built"}}
	for _, p := range c.a.Load.Points {
		rows = append(rows, []string{clean(p.Name), c.down(p.Cases.Built), c.down(p.Cases.Grown), c.down(p.Cases.LostWorst), c.aside(p.Cases.Built)})
	}
	c.table(rows)
}

func (c *check) down(v *load.Vec) string {
	if v == nil {
		return "-"
	}
	return c.force(-v[2])
}

func (c *check) aside(v *load.Vec) string {
	if v == nil {
		return "-"
	}
	return c.force(finding.Number(hypot(float64(v[0]), float64(v[1]))))
}

// light tells the light in stops.
func (c *check) light() {
	l := c.a.Light
	if l.Area == nil && len(l.Marks) == 0 && len(l.Probes) == 0 {
		return
	}
	c.heading("Light")
	if a := l.Area; a != nil {
		c.wrapped("  ", fmt.Sprintf("area: %s mean (flat, C = %.0f), %s, %s from brightest to darkest", c.stop(a.Stop), float64(l.Constants.Flat),
			c.lux(a.Mean), c.stops(a.Even)))
	}
	for _, m := range l.Marks {
		c.wrapped("  ", fmt.Sprintf("mark %s: %s (dome, C = %.0f), %s", clean(m.Name), c.stop(m.Stop), float64(l.Constants.Dome), c.lux(m.Dome)))
		c.face(&m)
	}
	for _, s := range l.Spill {
		c.wrapped("  ", c.spill(s))
	}
	if f := l.Flux; f != nil {
		c.wrapped("  ", fmt.Sprintf("of %.0f lm from the lamps %.0f lm leave below", float64(f.Lamps), float64(f.Out)))
	}
	for _, missing := range l.Missing {
		c.wrapped("  ", "not in it: "+clean(missing))
	}
}

// spill tells what arrives on a wall or surface.
func (c *check) spill(s light.SpillAnswer) string {
	if !finding.Known(float64(s.StopsBelow)) && float64(s.Max) == 0 {
		return fmt.Sprintf("on %s: none", clean(s.On))
	}
	return fmt.Sprintf("on %s: at most %s, %s under the area's mean", clean(s.On), c.lux(s.Max), c.stops(s.StopsBelow))
}

// missing tells what no part stands for and what no analysis uses.
func (c *check) missing() {
	if len(c.a.Rig.NotPlaced)+len(c.a.NotUsed)+len(c.a.Load.Assumptions) == 0 {
		return
	}
	c.heading("Not in these answers")
	for _, n := range gathered(c.a.Rig.NotPlaced) {
		c.wrapped("  ", "not placed: "+clean(n.What)+": "+clean(n.Why))
	}
	for _, u := range c.a.NotUsed {
		c.wrapped("  ", fmt.Sprintf("%s (line %d): %s", clean(u.Key), u.Line, u.Why))
	}
	for _, text := range c.a.Load.Assumptions {
		c.wrapped("  ", "assumed: "+clean(text))
	}
}

// gathered puts what is missing for one reason into one row.
func gathered(missing []answer.NotPlaced) []answer.NotPlaced {
	var rows []answer.NotPlaced
	index := map[string]int{}
	for _, n := range missing {
		k, ok := index[n.Why]
		if !ok {
			index[n.Why] = len(rows)
			rows = append(rows, n)
			continue
		}
		rows[k].What += ", " + n.What
	}
	return rows
}

// defaults lists what the user did not type.
func (c *check) defaults() {
	if len(c.a.Defaults) == 0 {
		return
	}
	if !c.style.Working {
		c.line("")
		c.line("%d values were not typed and have defaults: -v lists them", len(c.a.Defaults))
		return
	}
	c.heading("Defaults: not typed in the plan")
	for _, d := range c.a.Defaults {
		c.line("  %s: %s (%s)", d.Key, d.Value, d.Source)
	}
}

func (c *check) cautions() {
	c.heading("Cautions")
	for _, text := range c.a.Cautions {
		c.wrapped("  ", text)
	}
}

// table prints rows in columns, numbers to the right from the third column on; the
// first row is the head.
func (p *printer) table(rows [][]string) { p.columns(rows, 2) }

// tableLeft prints rows of words in columns.
func (p *printer) tableLeft(rows [][]string) { p.columns(rows, len(rows[0])) }

// columns prints rows; the first columns, as many as left says, are set to the left.
func (p *printer) columns(rows [][]string, left int) {
	widths := widthsOf(rows)
	for k, row := range rows {
		var cells []string
		for i, cell := range row {
			pad := strings.Repeat(" ", widths[i]-len([]rune(cell)))
			if i < left {
				cells = append(cells, cell+pad)
			} else {
				cells = append(cells, pad+cell)
			}
		}
		text := "  " + strings.TrimRight(strings.Join(cells, "  "), " ")
		if k == 0 {
			text = p.tone("2", text)
		}
		p.line("%s", text)
	}
}

func widthsOf(rows [][]string) []int {
	var widths []int
	for _, row := range rows {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], len([]rune(cell)))
		}
	}
	return widths
}

func (c *check) force(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "-"
	}
	return quantity.LoadUp(c.units, quantity.Force(n))
}

func (c *check) length(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "-"
	}
	return c.units.Length(quantity.Length(n))
}

func (c *check) lux(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "not known"
	}
	return c.units.Illuminance(quantity.Illuminance(n))
}

func (c *check) stop(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "T not asked"
	}
	return fmt.Sprintf("T%.1f", float64(n))
}

func (c *check) stops(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "not known"
	}
	return c.units.Stops(quantity.Stops(n))
}

func percent(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "not known"
	}
	return fmt.Sprintf("%.0f %%", 100*float64(n))
}
