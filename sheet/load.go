package sheet

import (
	"fmt"
	"io"
	"math"
	"strings"

	"softloft/answer"
	"softloft/finding"
	"softloft/load"
	"softloft/quantity"
)

// LoadCase picks what Load writes: all of it where empty, the lift, or the loss of a
// line, drop or lamp by its name.
type LoadCase struct {
	Lift bool
	Lost string
}

// LoadJSON writes the load's answers with its findings and the cautions.
func LoadJSON(to io.Writer, a *answer.Answers) error {
	return Encode(to, struct {
		Result   finding.Result    `json:"result"`
		Load     load.Answer       `json:"load"`
		Findings []finding.Finding `json:"findings"`
		Cautions []string          `json:"cautions"`
	}{a.Result, a.Load, a.Findings, a.Cautions})
}

// Load writes what the box weighs, how it hangs, and what lines, points and tubes carry
// in every case, rounded up.
func Load(to io.Writer, a *answer.Answers, which LoadCase, style Style) error {
	c := &check{printer: &printer{to: to, style: style}, a: a, units: a.Model.Plan.Sheet.Units}
	c.title()
	switch {
	case which.Lift:
		c.lift()
	case which.Lost != "":
		c.lossesNamed(which.Lost)
	default:
		c.verdict()
		c.takeOff()
		c.linesByCase()
		c.pointsByCase()
		c.bridles()
		c.tubes()
		c.tiltPath()
		c.lift()
		c.lossTable()
		c.room()
		c.findings()
		c.assumed()
	}
	c.cautions()
	return c.err
}

func (c *check) takeOff() {
	l := &c.a.Load
	c.heading("What it weighs")
	rows := [][]string{{"part", "", "count", "mass"}}
	for _, t := range l.TakeOff {
		rows = append(rows, []string{clean(t.What), t.Note, fmt.Sprint(t.Count), c.mass(t.Mass)})
	}
	c.table(append(rows, []string{"all on the lines", "", "", c.mass(l.Mass)}))
	if s := l.Spread; s != nil && finding.Known(float64(s.Most)) {
		text := fmt.Sprintf("masses that nobody weighed may be off by %.0f %%: %s to %s in all", 100*float64(s.Share), c.mass(s.Least), c.mass(s.Most))
		if s.Line != "" {
			text += fmt.Sprintf(", %s on line %s as built", c.force(s.Tension), clean(s.Line))
		}
		c.wrapped("  ", text)
	}
}

func (c *check) mass(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "not known"
	}
	return c.units.Mass(quantity.Mass(n))
}

// linesByCase tells every case of each line.
func (c *check) linesByCase() {
	if len(c.a.Load.Lines) == 0 {
		return
	}
	c.heading("Lines: tension by case, rounded up")
	rows := [][]string{{"line", "to", "built", "grown", "lift", "tilt", "one lost", "half of weight", "cut length", "haul side", "most in"}}
	for _, l := range c.a.Load.Lines {
		built := c.force(l.Cases.Built)
		if l.Slack {
			built = "slack"
		}
		rows = append(rows, []string{clean(l.Name), clean(l.To), built, c.force(l.Cases.Grown), c.force(l.Cases.Lift), c.force(l.Cases.TiltWorst),
			c.force(l.Cases.LostWorst), c.force(l.Cases.Diagonal), c.length(l.Length), c.length(l.HaulLength), strings.ReplaceAll(l.Governs, "_", " ")})
	}
	c.table(rows)
	c.wrapped("  ", "a quarter, an elastic share and a half: sharing is never even on a real day; size to the half, or read it on load cells")
}

// pointsByCase tells every case of each point, down, and to the side as built.
func (c *check) pointsByCase() {
	if len(c.a.Load.Points) == 0 {
		return
	}
	c.heading("Points: pull down of all lines on each, rounded up")
	rows := [][]string{{"point", "", "built", "grown", "lift", "tilt", "one lost", "to the side, built"}}
	for _, p := range c.a.Load.Points {
		rows = append(rows, []string{clean(p.Name), "", c.down(p.Cases.Built), c.down(p.Cases.Grown), c.down(p.Cases.Lift), c.down(p.Cases.TiltWorst), c.down(p.Cases.LostWorst), c.aside(p.Cases.Built)})
	}
	c.table(rows)
}

func (c *check) bridles() {
	rows := [][]string{{"line", "leg to", "length", "tension", "to the side", "between the legs"}}
	for _, l := range c.a.Load.Lines {
		if l.Bridle == nil {
			continue
		}
		for _, leg := range l.Bridle.Legs {
			rows = append(rows, []string{clean(l.Name), clean(leg.Point), c.length(leg.Length), c.force(leg.Tension), c.force(leg.Side), fmt.Sprintf("%.0f°", float64(l.Bridle.Angle))})
		}
	}
	if len(rows) > 1 {
		c.heading("Bridles as built")
		c.table(rows)
	}
}

func (c *check) tubes() {
	f := c.a.Load.Frame
	if f == nil || len(f.Members) == 0 {
		return
	}
	c.heading("Tubes, each in its worst case and place")
	rows := [][]string{{"tube", "case", "bending", "along", "stress", "sag", "use"}}
	for _, m := range f.Members {
		rows = append(rows, []string{clean(m.Part), m.Case, c.units.Moment(quantity.Moment(m.M)), c.signed(m.N), c.limit(float64(m.Stress), "Pa"), c.length(m.Sag), percent(m.Use)})
	}
	c.table(rows)
	if t := c.a.Load.Cloth; t != nil {
		c.wrapped("  ", fmt.Sprintf("the cloth pulls %s inward on the bottom frame and sags %s", c.units.LineForce(quantity.LineForce(t.Pull)), c.length(t.Sag)))
	}
}

// signed is a force along a tube: pulled or pressed.
func (c *check) signed(n finding.Number) string {
	switch {
	case !finding.Known(float64(n)):
		return "-"
	case math.Abs(float64(n)) < 1:
		return "0"
	case n < 0:
		return c.force(-n) + " pressed"
	}
	return c.force(n) + " pulled"
}

// tiltPath tells, for each step, by how much each line is longer or shorter than level,
// and what it then carries.
func (c *check) tiltPath() {
	path := c.a.Load.TiltPath
	if len(path) == 0 {
		return
	}
	c.heading(fmt.Sprintf("Tilt about %s: each line against level, and what it then carries", path[0].About))
	head := []string{"tilt", ""}
	for _, l := range c.a.Load.Lines {
		head = append(head, clean(l.Name))
	}
	rows := [][]string{head}
	for _, step := range path {
		row := []string{fmt.Sprintf("%.1f°", float64(step.Degrees)), clean(step.Why)}
		for _, l := range c.a.Load.Lines {
			row = append(row, c.paidOut(path[0], step, l.Name))
		}
		rows = append(rows, row)
	}
	c.table(rows)
}

func (c *check) paidOut(level, step load.TiltStep, name string) string {
	tension, ok := step.Tension[name]
	if !ok {
		return "-"
	}
	by := float64(step.Lengths[name] - level.Lengths[name])
	sign := "+"
	if by < 0 {
		sign = "-"
	}
	change := fmt.Sprintf("%s%.1f in", sign, math.Abs(by)/0.0254)
	if c.units == quantity.InMetres {
		change = fmt.Sprintf("%s%.0f mm", sign, 1000*math.Abs(by))
	}
	return change + " " + c.force(tension)
}

func (c *check) lift() {
	l := c.a.Load.Lift
	if l == nil {
		return
	}
	c.heading(fmt.Sprintf("Lift: pull that starts it, %.4g times what hangs at rest", float64(l.StartFactor)))
	rows := [][]string{{"line", "", "at rest", "haul", "hands", "each", "each with 2:1"}}
	for _, line := range l.Lines {
		due := ""
		if line.PurchaseDue {
			due = "2:1 due"
		}
		rows = append(rows, []string{clean(line.Name), due, c.force(line.Rest), c.force(line.Haul), fmt.Sprint(line.People), c.force(line.PerPerson), c.force(line.TwoToOne)})
	}
	c.table(rows)
	if len(l.Cases) > 0 {
		c.wrapped("  ", "worst of: "+clean(strings.Join(l.Cases, "; ")))
	}
}

// lossTable tells each loss in a row: what comes of it, the largest tension then, and its
// peak.
func (c *check) lossTable() {
	if len(c.a.Load.Lost) == 0 {
		return
	}
	c.heading("With one gone: at rest after, and the peak when it goes suddenly")
	rows := [][]string{{"gone", "outcome", "most, on line", "peak, estimated", "peak, in time", "tilt", "drop"}}
	for _, l := range c.a.Load.Lost {
		outcome := l.Outcome
		if outcome == "" {
			outcome = "not known"
		}
		name, most := mostOf(l.Tension)
		_, peak := mostOf(l.Integrated)
		told := c.force(most)
		if name != "" {
			told += " " + clean(name)
		}
		rows = append(rows, []string{goneName(l), outcome, told, c.force(l.Estimate), c.force(peak), leaning(l.Tilt), c.length(l.Drop)})
	}
	c.table(rows)
}

// goneName is what let go, a drop by its own name.
func goneName(l load.Lost) string {
	if l.What == "drop" {
		return clean(l.Name)
	}
	return l.What + " " + clean(l.Name)
}

func leaning(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "-"
	}
	return fmt.Sprintf("%.1f°", float64(n))
}

// mostOf is the largest of some tensions and whose it is: the first by name of equals.
func mostOf(tension map[string]finding.Number) (name string, most finding.Number) {
	most = finding.Number(math.NaN())
	for n, t := range tension {
		if math.IsNaN(float64(most)) || t > most || t == most && n < name {
			name, most = n, t
		}
	}
	return name, most
}

// lossesNamed tells the losses of one name in full.
func (c *check) lossesNamed(name string) {
	for _, l := range c.a.Load.Lost {
		if l.Name != name {
			continue
		}
		outcome := l.Outcome
		if outcome == "" {
			outcome = "not known"
		}
		c.heading(fmt.Sprintf("With %s gone: %s", goneName(l), outcome))
		if l.Why != "" {
			c.wrapped("  ", clean(l.Why))
		}
		if l.Tension == nil {
			continue
		}
		rows := [][]string{{"line", "", "built", "at rest after", "peak, in time"}}
		for _, line := range c.a.Load.Lines {
			if t, ok := l.Tension[line.Name]; ok {
				peak := finding.Number(math.NaN())
				if p, ok := l.Integrated[line.Name]; ok {
					peak = p
				}
				rows = append(rows, []string{clean(line.Name), "", c.force(line.Cases.Built), c.force(t), c.force(peak)})
			}
		}
		c.table(rows)
		c.wrapped("  ", fmt.Sprintf("the box tilts by %s and drops by %s at most; peak of a sudden loss by estimate: %s", leaning(l.Tilt), c.length(l.Drop), c.force(l.Estimate)))
	}
}

func (c *check) room() {
	r := c.a.Load.RoomToGrow
	if r == nil {
		return
	}
	c.heading("Room to grow")
	c.wrapped("  ", fmt.Sprintf("%s more, spread like today's lamps, and the first limit is reached: %s", c.massDown(r.Mass), clean(r.FirstLimit)))
}

// massDown is a mass that is left, rounded down: to 5 lb or 2 kg.
func (c *check) massDown(n finding.Number) string {
	if c.units == quantity.InMetres {
		return fmt.Sprintf("%.0f kg", 2*math.Floor(float64(n)/2))
	}
	return fmt.Sprintf("%.0f lb", 5*math.Floor(float64(n)/0.45359237/5))
}

func (c *check) assumed() {
	if len(c.a.Load.Assumptions) == 0 {
		return
	}
	c.heading("Assumed")
	for _, text := range c.a.Load.Assumptions {
		c.wrapped("  ", clean(text))
	}
}
