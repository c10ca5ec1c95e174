package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"softloft/answer"
	"softloft/build"
	"softloft/finding"
)

// Build writes the work in order: numbers first, short lines, holds where work stops
// until somebody signs; then strike, knots, cards. It is read in the dark.
func Build(to io.Writer, a *answer.Answers, style Style) error {
	c := &check{printer: &printer{to: to, style: style}, a: a, units: a.Model.Plan.Sheet.Units}
	c.title()
	c.jobInShort()
	c.steps("Build", a.Build)
	c.steps("Strike, counted against what went out", a.Strike)
	c.signLines()
	c.tieLines()
	c.cardLines()
	if found := BuildFindings(a); len(found) > 0 {
		c.heading("What decides")
		for _, f := range found {
			c.finding(f, nil)
		}
	}
	c.buildNotes()
	c.cautions()
	return c.err
}

// BuildFindings are the findings of the build, in their order.
func BuildFindings(a *answer.Answers) []finding.Finding {
	found := []finding.Finding{}
	for _, f := range a.Findings {
		if strings.HasPrefix(f.ID, "build.") {
			found = append(found, f)
		}
	}
	return found
}

// BuildJSON writes build, strike and job with their findings as JSON.
func BuildJSON(to io.Writer, a *answer.Answers) error {
	return Encode(to, struct {
		Build    []build.Step      `json:"build"`
		Strike   []build.Step      `json:"strike"`
		Job      *build.Job        `json:"job"`
		Findings []finding.Finding `json:"findings"`
		Cautions []string          `json:"cautions"`
	}{a.Build, a.Strike, a.Job, BuildFindings(a), a.Cautions})
}

// BuildCSV writes a row for each step, in SI, not rounded (RFC 4180).
func BuildCSV(to io.Writer, a *answer.Answers) error {
	w := csv.NewWriter(to)
	rows := [][]string{{"list", "number", "id", "step", "people", "seconds", "start_s", "finish_s", "slack_s", "critical", "mass_kg", "hold", "signed_by", "pieces", "needs", "parts"}}
	for _, of := range []struct {
		list  string
		steps []build.Step
	}{{"build", a.Build}, {"strike", a.Strike}} {
		for _, s := range of.steps {
			rows = append(rows, []string{of.list, strconv.Itoa(s.Number), cell(s.ID), cell(s.Step), digits(s.People), digits(s.Seconds), digits(s.Start), digits(s.Finish), digits(s.Slack),
				strconv.FormatBool(s.Critical), digits(s.Mass), cell(said(s.Hold)), cell(said(s.SignedBy)), strconv.Itoa(len(s.Parts)), cell(strings.Join(s.Needs, " ")), cell(strings.Join(s.Parts, "; "))})
		}
	}
	if err := w.WriteAll(rows); err != nil {
		return err
	}
	return w.Error()
}

func said(text *string) string {
	if text == nil {
		return ""
	}
	return *text
}

// jobInShort says how many, how long, and what holds it up.
func (c *check) jobInShort() {
	j := c.a.Job
	c.heading("In short")
	if finding.Known(float64(j.People)) {
		c.line("  %s, %s to lit and signed off, %s to strike", people(j.People), clock(j.Seconds), clock(j.Strike))
	} else {
		c.line("  the plan names no crew: no times of day; crew: {people: 6} gives them")
	}
	c.line("  %s at least; %s if nobody ever waits for hands", people(j.LeastPeople), clock(j.Shortest))
	for _, s := range c.a.Build {
		if s.ID == j.LeastStep {
			c.wrapped("  ", "most hands at step "+strconv.Itoa(s.Number)+": "+clean(s.Step))
		}
	}
	if j.Demo {
		c.wrapped("  ", "DEMO: rates of work are invented; write your own under crew.rates before you promise a time")
	}
	for _, text := range j.Unknown {
		c.wrapped("  ", "not known: "+clean(text))
	}
}

// people is a count of people.
func people(n finding.Number) string {
	switch {
	case !finding.Known(float64(n)):
		return "people not known"
	case n == 1:
		return "1 person"
	}
	return fmt.Sprintf("%.0f people", float64(n))
}

// clock is a time rounded up to a minute.
func clock(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "time not known"
	}
	minutes := int(math.Ceil(float64(n)/60 - 1e-9))
	if minutes < 60 {
		return fmt.Sprintf("%d min", minutes)
	}
	return fmt.Sprintf("%d h %02d", minutes/60, minutes%60)
}

// steps are a list of steps: number, start, how long, how many, what; * where nothing
// may be late.
func (c *check) steps(title string, steps []build.Step) {
	c.heading(title)
	if len(steps) == 0 {
		c.line("  no order is known")
		return
	}
	for i := range steps {
		s := &steps[i]
		mark := " "
		if s.Critical {
			mark = "*"
		}
		c.hung(fmt.Sprintf("  %3d%s %6s %8s %4s  ", s.Number, mark, at(s.Start), clock(s.Seconds), hands(s.People)), clean(s.Step))
		const under = "                             "
		for _, r := range s.Returns {
			c.hung(under, fmt.Sprintf("[ ] %d  %s", r.Count, clean(r.Item)))
		}
		if s.Hold != nil {
			c.hung(under, c.bold("HOLD")+": "+clean(*s.Hold))
		}
		if c.style.Working {
			c.hung(under, "why: "+clean(s.Why))
			for _, k := range s.Knots {
				c.hung(under, clean(k))
			}
		}
	}
	c.line("  * nothing may be late here")
}

// hung prints a text behind a head, its further lines under its first.
func (c *check) hung(head, text string) {
	width := c.style.Width
	if width == 0 {
		width = 100
	}
	for i, l := range wrap(text, max(20, width-len(head))) {
		if i == 1 {
			head = strings.Repeat(" ", len([]rune(head)))
		}
		c.line("%s%s", head, l)
	}
}

// at is a time from the start as hours and minutes.
func at(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "-"
	}
	minutes := int(float64(n) / 60)
	return fmt.Sprintf("%d:%02d", minutes/60, minutes%60)
}

func hands(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "?"
	}
	return fmt.Sprintf("%.0f p", float64(n))
}

// signLines are the lines that are signed.
func (c *check) signLines() {
	if len(c.a.Job.Signs) == 0 {
		return
	}
	c.heading("Signed before work goes on: who, when")
	for _, s := range c.a.Job.Signs {
		name := "______________"
		if s.Name != nil {
			name = clean(*s.Name)
		}
		c.hung(fmt.Sprintf("  %-8s ", s.Role), fmt.Sprintf("%s: %s  ____:____", clean(s.What), name))
	}
}

func (c *check) tieLines() {
	if len(c.a.Job.Ties) == 0 {
		return
	}
	c.heading("Knots and ends")
	for _, t := range c.a.Job.Ties {
		c.wrapped("  ", clean(t.Where+": "+t.Knot+": "+t.Why))
	}
}

// cardLines are the changes of the day and the emergency.
func (c *check) cardLines() {
	cards := c.a.Job.Cards
	if c.a.Job.Emergency != nil {
		cards = append(append([]build.Card(nil), *c.a.Job.Emergency), cards...)
	}
	if len(cards) == 0 {
		return
	}
	c.heading("Cards")
	for _, card := range cards {
		who := "______________"
		if card.Clears != nil {
			who = clean(*card.Clears)
		}
		c.line("  %s", c.bold(clean(card.What)))
		c.line("    %s; clears the floor: %s", people(card.Hands), who)
		for _, l := range card.Lines {
			c.wrapped("    ", clean(l))
		}
	}
}

func (c *check) buildNotes() {
	c.heading("What this rests on")
	for _, text := range c.a.Job.Assumptions {
		c.wrapped("  ", "assumed: "+text)
	}
}
