package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"softloft/answer"
	"softloft/finding"
	"softloft/power"
)

// Power writes which circuit each lamp is on, the legs, the supply and what is found.
func Power(to io.Writer, a *answer.Answers, style Style) error {
	c := &check{printer: &printer{to: to, style: style}, a: a, units: a.Model.Plan.Sheet.Units}
	c.title()
	c.circuits()
	c.legs()
	c.supply()
	c.heading("What decides")
	for _, f := range PowerFindings(a) {
		c.finding(f, nil)
	}
	c.powerNotes()
	c.cautions()
	return c.err
}

// PowerFindings are the findings of the supply, in their order.
func PowerFindings(a *answer.Answers) []finding.Finding {
	found := []finding.Finding{}
	for _, f := range a.Findings {
		if strings.HasPrefix(f.ID, "power.") {
			found = append(found, f)
		}
	}
	return found
}

// PowerJSON writes the supply and its findings as JSON.
func PowerJSON(to io.Writer, a *answer.Answers) error {
	return Encode(to, struct {
		Power    *power.Answer     `json:"power"`
		Findings []finding.Finding `json:"findings"`
		Cautions []string          `json:"cautions"`
	}{a.Power, PowerFindings(a), a.Cautions})
}

// PowerCSV writes a row for each lamp with its circuit, in SI, not rounded (RFC 4180).
func PowerCSV(to io.Writer, a *answer.Answers) error {
	w := csv.NewWriter(to)
	rows := [][]string{{"circuit", "phase", "lamp", "circuit_amps", "allowed_a", "cable_m", "drop_v", "drop_pct"}}
	for _, c := range a.Power.Circuits {
		phase := ""
		if c.Phase > 0 {
			phase = strconv.Itoa(c.Phase)
		}
		for _, lamp := range c.Lamps {
			rows = append(rows, []string{cell(c.Name), phase, cell(lamp), digits(c.Amps), digits(c.Allowed), digits(c.Length), digits(c.Drop), digits(c.DropShare)})
		}
	}
	if err := w.WriteAll(rows); err != nil {
		return err
	}
	return w.Error()
}

// cell keeps a user's text from being a formula in a spreadsheet.
func cell(text string) string {
	text = clean(text)
	if text != "" && strings.ContainsRune("=+-@", rune(text[0])) {
		return "'" + text
	}
	return text
}

// digits are a number as the JSON has it, empty where it is not known.
func digits(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return ""
	}
	text, _ := n.MarshalJSON()
	return string(text)
}

func (c *check) circuits() {
	c.heading("Circuits, at full level")
	rows := [][]string{{"circuit", "lamps", "leg", "power", "amps", "allowed", "cable", "drop"}}
	var unknown []string
	for _, k := range c.a.Power.Circuits {
		if k.Phase == 0 {
			unknown = k.Lamps
			continue
		}
		rows = append(rows, []string{k.Name, c.lampList(k.Lamps), fmt.Sprint(k.Phase), watts(k.Watts), amps(k.Amps), amps(k.Allowed), c.length(k.Length), share(k.DropShare)})
	}
	c.table(rows)
	if len(unknown) > 0 {
		c.wrapped("  ", "on a circuit that is not known, because nobody gave their power: "+c.lampList(unknown))
	}
}

// lampList names lamps; clean.
func (c *check) lampList(names []string) string {
	told := make([]string, len(names))
	for i, name := range names {
		told[i] = clean(name)
	}
	return strings.Join(told, ", ")
}

func (c *check) legs() {
	p := c.a.Power
	c.heading("Legs")
	if len(p.Phases) == 1 {
		c.line("  one leg: %s, and as much in the neutral", amps(p.Phases[0]))
		return
	}
	c.line("  %s; neutral %s for linear loads", c.legAmps(), amps(p.Neutral))
	if finding.Known(float64(p.NeutralWorst)) {
		c.wrapped("  ", fmt.Sprintf("with third harmonics the neutral carries up to %s: count it as current carrying, no smaller than a leg", amps(p.NeutralWorst)))
	}
	if b := p.Balance; finding.Known(float64(b.Largest)) {
		c.wrapped("  ", fmt.Sprintf("largest leg %s; no way to share these lamps has it under %s", amps(b.Largest), amps(b.Bound)))
	}
}

func (c *check) legAmps() string {
	var told []string
	for i, x := range c.a.Power.Phases {
		told = append(told, fmt.Sprintf("leg %d %s", i+1, amps(x)))
	}
	return strings.Join(told, ", ")
}

func (c *check) supply() {
	p := c.a.Power
	c.heading("Supply")
	c.line("  lamps: %s, %s, power factor %s", watts(p.Watts), apparent(p.VA), plain(p.Supply.PowerFactor))
	c.line("  wall: %s on %s at %s, for a continuous load; generator: %s", amps(p.Supply.PerLeg), c.eachLeg(), volts(p.Volts), apparent(p.Supply.VA))
	if in := p.Inrush; finding.Known(float64(in.All)) {
		c.wrapped("  ", fmt.Sprintf("inrush: up to %s for an instant when a lamp comes on after the others, %s with all at once: switch on one by one", amps(in.Step), amps(in.All)))
	} else if len(in.Unknown) > 0 {
		c.wrapped("  ", "inrush: not known of "+c.lampList(in.Unknown))
	}
	if g := p.Grown; g != nil {
		c.wrapped("  ", fmt.Sprintf("with what the plan provides for: %s on %s, %s on %s, generator %s", watts(g.Watts), counted(g.Circuits, "circuit"), amps(g.Supply.PerLeg), c.eachLeg(), apparent(g.Supply.VA)))
	}
}

func (c *check) eachLeg() string {
	if len(c.a.Power.Phases) == 1 {
		return "the leg"
	}
	return "each leg"
}

// counted is a count and its noun.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

func (c *check) powerNotes() {
	c.heading("What this rests on")
	c.wrapped("  ", "length of cable: "+clean(c.a.Power.Cable.Way))
	if s := c.a.Power.Cable.Source; s != "" {
		c.wrapped("  ", fmt.Sprintf("cable %s: %s, %s", clean(c.a.Power.Cable.Kit), c.a.Power.Cable.Conductor, s))
	}
	for _, text := range c.a.Power.Assumptions {
		c.wrapped("  ", "assumed: "+text)
	}
}

// circuitsInShort answers which circuit each lamp is on, and the amps of each leg.
func (c *check) circuitsInShort() string {
	p := c.a.Power
	if p == nil {
		return ""
	}
	var told []string
	for _, k := range p.Circuits {
		name := fmt.Sprintf("%s (leg %d, %s)", k.Name, k.Phase, amps(k.Amps))
		if k.Phase == 0 {
			name = "not known"
		}
		told = append(told, name+" "+c.lampList(k.Lamps))
	}
	text := strings.Join(told, "; ") + "; " + c.legAmps()
	if len(p.Phases) == 3 {
		text += ", neutral " + amps(p.Neutral)
	}
	return text
}

func watts(n finding.Number) string    { return engineering(n, "W") }
func apparent(n finding.Number) string { return engineering(n, "VA") }
func volts(n finding.Number) string    { return engineering(n, "V") }

// engineering prints three digits, in thousands from ten thousand on.
func engineering(n finding.Number, unit string) string {
	switch {
	case !finding.Known(float64(n)):
		return "not known"
	case n >= 10_000:
		return fmt.Sprintf("%.1f k%s", float64(n)/1000, unit)
	}
	return fmt.Sprintf("%.0f %s", float64(n), unit)
}

// amps are rounded to a tenth.
func amps(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "not known"
	}
	return fmt.Sprintf("%.1f A", float64(n))
}

func share(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "not known"
	}
	return fmt.Sprintf("%.1f %%", float64(n))
}

func plain(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "not known"
	}
	return fmt.Sprintf("%.2f", float64(n))
}
