package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"softloft/finding"
	"softloft/quantity"
	"softloft/vary"
)

// Vary writes a row for each value: what the light, the loads and the result are there,
// and then at which values something changes.
func Vary(to io.Writer, a *vary.Answer, style Style) error {
	v := &varied{check: &check{printer: &printer{to: to, style: style}, a: a.Base, units: a.Base.Model.Plan.Sheet.Units}, v: a}
	v.title()
	v.line("")
	v.wrapped("", v.about())
	v.line("")
	v.rows()
	v.refusals()
	v.changes()
	v.cautions()
	return v.err
}

// varied is one variation on its way to the terminal.
type varied struct {
	*check
	v *vary.Answer
}

func (v *varied) about() string {
	text := "Over " + clean(v.v.Key)
	if v.v.Planned != "" {
		text += ", which the plan has at " + clean(v.v.Planned)
	}
	if v.hangsBelow() {
		text += "; the " + v.v.Keeps + " stays where it is"
	}
	return text
}

// hangsBelow reports whether the lowest edge or the cloth moved against the other.
func (v *varied) hangsBelow() bool {
	return v.v.Keeps != "" && strings.HasPrefix(v.v.Key, "box.skirt") || v.v.Key == "box.crate" || strings.HasPrefix(v.v.Key, "kit.crate")
}

// cellOf is one column of the rows: its head and what a row shows.
type cellOf struct {
	head string
	tell func(r *vary.Row) string
}

// rows prints the table. A column in which no row has anything is left out.
func (v *varied) rows() {
	columns := v.columnsOf()
	head := []string{}
	table := make([][]string, len(v.v.Rows)+1)
	for _, c := range columns {
		cells, any := []string{}, false
		for i := range v.v.Rows {
			text := ""
			if r := &v.v.Rows[i]; r.Refused == "" {
				text = c.tell(r)
			}
			cells, any = append(cells, text), any || text != ""
		}
		if !any {
			continue
		}
		head = append(head, c.head)
		for i := range cells {
			table[i+1] = append(table[i+1], cells[i])
		}
	}
	table[0] = append(append([]string{clean(v.short())}, head...), fmt.Sprintf("%-14s", "result"))
	for i := range v.v.Rows {
		r := &v.v.Rows[i]
		table[i+1] = append(append([]string{v.at(r)}, table[i+1]...), v.verdictOf(r))
	}
	v.columns(table, 1)
}

func (v *varied) short() string {
	return strings.TrimSuffix(strings.TrimPrefix(v.v.Key, "box."), ".by")
}

func (v *varied) columnsOf() []cellOf {
	mark := ""
	for i := range v.v.Rows {
		if m := v.v.Rows[i].Mark; m != nil {
			mark = clean(m.Name)
		}
	}
	return []cellOf{
		{"stop", func(r *vary.Row) string { return tStop(r.Stop) }},
		{"even", func(r *vary.Row) string { return tenth(r.Even) }},
		{"at " + mark, func(r *vary.Row) string { return ofMark(r, func(m *vary.Mark) string { return tStop(m.Stop) }) }},
		{"brow edge", func(r *vary.Row) string { return ofMark(r, v.edge) }},
		{"worst spill", func(r *vary.Row) string { return v.spillOf(r.Spill) }},
		{"weight", func(r *vary.Row) string { return v.weight(r.Mass) }},
		{"most on a line", func(r *vary.Row) string { return v.most(r.Line) }},
		{"on a point", func(r *vary.Row) string { return v.most(r.Point) }},
		{"on a stand", func(r *vary.Row) string { return v.most(r.Stand) }},
		{"clears at", func(r *vary.Row) string { return v.clearOf(r) }},
	}
}

// at is a row's value in the reader's units.
func (v *varied) at(r *vary.Row) string {
	if !v.v.Ask.Number {
		if r.Text == "[]" {
			return "none"
		}
		return clean(strings.Trim(r.Text, "[]"))
	}
	return v.valueAt(float64(r.Value))
}

// small reports whether the lengths are told in millimeters: of lenses and sensors
// always, of others where the reader has metres and all are short.
func (v *varied) small() bool {
	if v.v.Unit != "m" || strings.HasSuffix(v.v.Key, ".lens") || strings.Contains(v.v.Key, ".sensor") {
		return v.v.Unit == "m"
	}
	for _, s := range v.v.Ask.Steps {
		if math.Abs(s.Value) > 0.3 {
			return false
		}
	}
	return v.units == quantity.InMetres
}

// valueAt prints a number of the quantity that is varied.
func (v *varied) valueAt(x float64) string {
	switch v.v.Unit {
	case "m":
		if v.small() {
			return fmt.Sprintf("%.4g mm", 1000*x)
		}
		return v.units.Length(quantity.Length(x))
	case "kg":
		return v.units.Mass(quantity.Mass(x))
	case "N":
		return v.units.Force(quantity.Force(x))
	case "deg":
		return fmt.Sprintf("%.4g°", x)
	case "T":
		return fmt.Sprintf("T%.3g", x)
	case "":
		if v.v.Ask.Share() {
			return fmt.Sprintf("%.4g%%", 100*x)
		}
	}
	return strings.TrimSpace(fmt.Sprintf("%.4g %s", x, v.v.Unit))
}

// verdictOf is a row's result as shape and word, with how many findings are over where
// several are.
func (v *varied) verdictOf(r *vary.Row) string {
	text := shapes[r.Result] + " " + string(r.Result)
	switch {
	case r.Refused != "":
		text = "- refused"
	case len(r.Over) > 1:
		text += fmt.Sprintf(" (%d)", len(r.Over))
	}
	return fmt.Sprintf("%-14s", text)
}

func ofMark(r *vary.Row, tell func(*vary.Mark) string) string {
	if r.Mark == nil {
		return ""
	}
	return tell(r.Mark)
}

// tStop is empty where the plan asks for no exposure.
func tStop(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return ""
	}
	return fmt.Sprintf("T%.1f", float64(n))
}

func tenth(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return ""
	}
	return fmt.Sprintf("%.1f", float64(n))
}

func (v *varied) edge(m *vary.Mark) string {
	if !finding.Known(float64(m.Edge)) {
		return ""
	}
	if v.units == quantity.InMetres {
		return fmt.Sprintf("%.0f mm", 1000*float64(m.Edge))
	}
	return fmt.Sprintf("%.2f in", float64(m.Edge)/float64(quantity.Inch))
}

func (v *varied) spillOf(s *vary.Spill) string {
	switch {
	case s == nil:
		return ""
	case s.None:
		return "none"
	case !finding.Known(float64(s.StopsBelow)):
		return "not known"
	}
	return fmt.Sprintf("-%.1f %s", float64(s.StopsBelow), clean(s.On))
}

func (v *varied) weight(n finding.Number) string {
	if !finding.Known(float64(n)) {
		return "not known"
	}
	return quantity.LoadUp(v.units, quantity.Mass(n))
}

func (v *varied) most(m *vary.Most) string {
	switch {
	case m == nil:
		return ""
	case !finding.Known(float64(m.Force)):
		return "not known"
	}
	return quantity.LoadUp(v.units, quantity.Force(m.Force)) + " " + clean(m.Name)
}

// clearOf is the trim that clears every camera, and whether the row's does.
func (v *varied) clearOf(r *vary.Row) string {
	if len(r.Clear) == 0 {
		return ""
	}
	most := math.Inf(-1)
	for _, c := range r.Clear {
		if !finding.Known(float64(c.Trim)) {
			return "not known"
		}
		most = math.Max(most, float64(c.Trim))
	}
	text := v.lengthUp(most)
	if float64(r.Trim) < most {
		text += ", in shot"
	}
	return text
}

// refusals tells why values were refused, once for each reason.
func (v *varied) refusals() {
	told := map[string]bool{}
	for i := range v.v.Rows {
		r := &v.v.Rows[i]
		if r.Refused != "" && !told[r.Refused] {
			told[r.Refused] = true
			v.wrapped("  ", "refused at "+v.at(r)+": "+clean(r.Refused))
		}
	}
}

// changes tells where results change.
func (v *varied) changes() {
	if !v.v.Ask.Number {
		return
	}
	v.heading("Where it changes")
	if len(v.v.Changes) == 0 {
		v.line("  nowhere between these values")
	}
	for _, c := range v.v.Changes {
		from, to := v.fine(float64(c.From)), v.fine(float64(c.To))
		if from == to {
			from, to = strings.TrimSpace(fmt.Sprintf("%.5g %s", float64(c.From), v.v.Unit)), strings.TrimSpace(fmt.Sprintf("%.5g %s", float64(c.To), v.v.Unit))
		}
		text := fmt.Sprintf("between %s and %s: ", from, to)
		switch {
		case c.Finding == "":
			text += fmt.Sprintf("the result goes from %s to %s", c.Before, c.After)
		case c.After == "over":
			text += "over from here: " + clean(c.Statement)
		case c.After == "refused":
			text += "refused from here, over before: " + clean(c.Statement)
		default:
			text += "no longer over: " + clean(c.Statement)
		}
		if !c.Narrow {
			text += " (not narrowed down further)"
		}
		v.wrapped("  ", text)
	}
}

// fine is valueAt with a digit more where that rounds.
func (v *varied) fine(x float64) string {
	switch {
	case v.v.Ask.Share():
		return fmt.Sprintf("%.1f%%", 100*x)
	case v.v.Unit == "deg":
		return fmt.Sprintf("%.2f°", x)
	}
	return v.valueAt(x)
}

// VaryCSV writes a row for each value, in SI and degrees, not rounded (RFC 4180).
func VaryCSV(to io.Writer, a *vary.Answer) error {
	w := csv.NewWriter(to)
	rows := [][]string{{"key", "value", "unit", "text", "result", "trim_m", "stop", "even_stops", "mark", "mark_stop", "edge_brow_m", "spill_on", "spill_stops_below",
		"mass_kg", "line", "line_n", "point", "point_n", "stand", "stand_n", "clear_trim_m", "over", "not_known", "refused"}}
	for i := range a.Rows {
		rows = append(rows, csvRow(a, &a.Rows[i]))
	}
	if err := w.WriteAll(rows); err != nil {
		return err
	}
	return w.Error()
}

func csvRow(a *vary.Answer, r *vary.Row) []string {
	row := []string{cell(a.Key), digits(r.Value), a.Unit, cell(r.Text), string(r.Result), digits(r.Trim), digits(r.Stop), digits(r.Even)}
	if m := r.Mark; m != nil {
		row = append(row, cell(m.Name), digits(m.Stop), digits(m.Edge))
	} else {
		row = append(row, "", "", "")
	}
	if s := r.Spill; s != nil {
		row = append(row, cell(s.On), digits(s.StopsBelow))
	} else {
		row = append(row, "", "")
	}
	row = append(row, digits(r.Mass))
	for _, m := range []*vary.Most{r.Line, r.Point, r.Stand} {
		if m != nil {
			row = append(row, cell(m.Name), digits(m.Force))
		} else {
			row = append(row, "", "")
		}
	}
	return append(row, digits(highest(r.Clear)), cell(strings.Join(r.Over, " ")), strconv.Itoa(r.Unknown), cell(r.Refused))
}

// highest is the trim that clears every camera, NaN where one is not known or there is
// none.
func highest(all []vary.Clear) finding.Number {
	most := finding.Number(math.NaN())
	for i, c := range all {
		if !finding.Known(float64(c.Trim)) {
			return finding.Number(math.NaN())
		}
		if i == 0 || c.Trim > most {
			most = c.Trim
		}
	}
	return most
}
