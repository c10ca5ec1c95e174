package sheet

import (
	"fmt"
	"io"
	"math"
	"sort"
	"strings"

	"softloft/answer"
	"softloft/finding"
	"softloft/quantity"
)

// JSON writes the answers as JSON, not rounded.
func JSON(to io.Writer, a *answer.Answers) error {
	return Encode(to, a)
}

// Check writes what a grip wants to see first: the result, what decides it, the
// questions that can be answered, what is missing, the cautions.
func Check(to io.Writer, a *answer.Answers, style Style) error {
	c := &check{printer: &printer{to: to, style: style}, a: a, units: a.Model.Plan.Sheet.Units}
	c.title()
	c.verdict()
	c.findings()
	c.questions()
	c.lines()
	c.points()
	c.light()
	c.missing()
	c.defaults()
	c.cautions()
	return c.err
}

// check is one terminal answer under way.
type check struct {
	*printer
	a     *answer.Answers
	units quantity.System
}

func fields(text string) []string { return strings.Fields(text) }

func (c *check) title() {
	title := c.a.Title
	if title == "" {
		title = "Untitled plan"
	}
	c.line("%s", c.bold(clean(title)))
	detail := "plan " + c.a.PlanDigest[:12]
	if c.a.Revision != "" {
		detail = "revision " + clean(c.a.Revision) + ", " + detail
	}
	c.line("%s", detail)
	if c.a.Demo {
		c.line("%s", c.tone("1", "DEMO: some values of this plan are invented; ratings marked so say nothing about real gear"))
	}
}

// clean keeps a user's text from steering the terminal.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || (r >= 0x80 && r < 0xa0) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(text, "?"))
}

func (c *check) verdict() {
	counts := map[finding.Result]int{}
	for _, f := range c.a.Findings {
		counts[f.Result]++
	}
	var told []string
	for _, r := range worstFirst {
		if counts[r] > 0 {
			told = append(told, fmt.Sprintf("%d %s", counts[r], r))
		}
	}
	if len(told) == 0 {
		told = []string{"nothing was checked"}
	}
	c.line("")
	c.line("%s  %s", c.result(c.a.Result), strings.Join(told, ", ")+": against the limits that are stated, and only those")
}

var worstFirst = []finding.Result{finding.Over, finding.NotKnown, finding.Tight, finding.Within}

// findings lists what is over, not known or tight, root causes before what follows
// from them; what is within only with the working, but for the nearest limit. Of
// several alike only the worst is told in full.
func (c *check) findings() {
	sorted := append([]finding.Finding(nil), c.a.Findings...)
	sort.SliceStable(sorted, func(i, j int) bool { return rank(sorted[i]) < rank(sorted[j]) })
	c.heading("What decides")
	told := map[string]bool{}
	shown := 0
	for _, f := range sorted {
		hidden := len(f.Causes) > 0 || (f.Result == finding.Within && shown > 0) || told[kindOf(f)]
		if !c.style.Working && hidden {
			continue
		}
		told[kindOf(f)] = true
		c.finding(f, alike(sorted, f))
		shown++
	}
	if hidden := len(sorted) - shown; hidden > 0 && !c.style.Working {
		c.line("  -v shows all %d findings, each with its working", len(sorted))
	}
}

// kindOf is a finding's id without the name of the part, with its result: findings
// of one kind say the same of several parts.
func kindOf(f finding.Finding) string {
	id := f.ID
	if i := strings.LastIndex(id, "."); i >= 0 {
		id = id[:i]
	}
	if words := strings.Split(f.ID, "."); len(words) > 3 && words[0] == "load" && words[1] == "line" {
		id = "load.line." + words[len(words)-1]
	}
	return id + " " + string(f.Result)
}

// alike lists the parts of the other findings of the same kind.
func alike(all []finding.Finding, f finding.Finding) []string {
	var parts []string
	for _, other := range all {
		if other.ID != f.ID && kindOf(other) == kindOf(f) && len(other.Causes) == 0 {
			parts = append(parts, nameOf(other))
		}
	}
	return parts
}

// nameOf is the part's name in a finding's id.
func nameOf(f finding.Finding) string {
	words := strings.Split(f.ID, ".")
	if len(words) > 3 && words[0] == "load" && words[1] == "line" {
		return words[2]
	}
	return words[len(words)-1]
}

// rank sorts results worst first, and within a result the smallest margin first.
func rank(f finding.Finding) float64 {
	order := map[finding.Result]float64{finding.Over: 0, finding.NotKnown: 1, finding.Tight: 2, finding.Within: 3}[f.Result]
	margin := float64(f.Margin)
	if !finding.Known(margin) {
		margin = 1
		if f.Result == finding.Within {
			margin = 1e6
		}
	}
	return order*1e9 + math.Min(math.Max(margin, 0), 1e6)
}

func (c *check) finding(f finding.Finding, others []string) {
	text := clean(f.Statement)
	if finding.Known(f.Value) {
		text += ": " + c.comparison(f)
	}
	if f.Why != "" {
		text += ": " + clean(f.Why)
	}
	if f.Case != "" {
		text += " (" + strings.ReplaceAll(f.Case, "_", " ") + ")"
	}
	if f.Subject.Place.Line > 0 {
		text += fmt.Sprintf(", plan line %d", f.Subject.Place.Line)
	}
	if len(others) > 0 && !c.style.Working && f.Result != finding.Within {
		text += "; so " + also(others)
	}
	lines := wrap(text, 84)
	c.line("  %s %s", c.result(f.Result), lines[0])
	for _, l := range lines[1:] {
		c.line("              %s", l)
	}
	if !c.style.Working {
		return
	}
	for _, l := range f.Working(finding.Sources)[1:] {
		c.line("              %s", clean(l))
	}
}

// also names a few parts, and counts the rest.
func also(parts []string) string {
	const few = 6
	if len(parts) == 1 {
		return "does " + clean(parts[0])
	}
	text := "do " + clean(strings.Join(parts[:min(few, len(parts))], ", "))
	if len(parts) > few {
		text += fmt.Sprintf(" and %d more", len(parts)-few)
	}
	return text
}

// comparison is a value beside its limit, rounded for people.
func (c *check) comparison(f finding.Finding) string {
	text := fmt.Sprintf("%s, %s %s", c.value(f.Value, f.Unit), atWords[f.Relation], c.limit(f.Limit, f.Unit))
	switch {
	case f.Unit == "stop" && finding.Known(f.Slack):
		return text + fmt.Sprintf(", %+.1f in hand", f.Slack)
	case finding.Known(f.Margin):
		return text + fmt.Sprintf(", margin %.2f", math.Floor(f.Margin*100)/100)
	}
	return text
}

var atWords = map[finding.Relation]string{finding.AtMost: "at most", finding.AtLeast: "at least"}

// value is rounded up for a load; a limit never is.
func (c *check) value(x float64, unit string) string {
	if unit == "N" {
		return quantity.LoadUp(c.units, quantity.Force(x))
	}
	return c.limit(x, unit)
}

func (c *check) limit(x float64, unit string) string {
	if !finding.Known(x) {
		return "not known"
	}
	switch unit {
	case "N":
		return c.units.Force(quantity.Force(x))
	case "m":
		return c.units.Length(quantity.Length(x))
	case "kg":
		return c.units.Mass(quantity.Mass(x))
	case "Pa":
		return c.units.Stress(quantity.Pressure(x))
	case "stop":
		return c.units.Stops(quantity.Stops(x))
	case "deg":
		return fmt.Sprintf("%.1f°", x)
	}
	return strings.TrimSpace(fmt.Sprintf("%.4g %s", x, unit))
}
