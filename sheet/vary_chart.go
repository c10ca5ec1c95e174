package sheet

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"softloft/draw"
	"softloft/finding"
	"softloft/quantity"
	"softloft/vary"
)

// The size of one chart of a variation, in mm.
const (
	paneWidth  = 170.0
	paneHeight = 58.0
)

// VaryPicture draws charts one below the other over the quantity that is varied: trim and
// what clears the cameras, stop, evenness and spill, softness, loads. What no row has is
// left out. A dash-dotted upright is where the result changes.
func VaryPicture(a *vary.Answer) draw.Picture {
	p := plotted{varied: &varied{check: &check{printer: &printer{}, a: a.Base, units: a.Base.Model.Plan.Sheet.Units}, v: a}}
	p.rows = p.sorted()
	var charts []draw.Chart
	for _, c := range []draw.Chart{p.trims(), p.stopsOf(), p.lightOf(), p.softness(), p.loads()} {
		if p.drawn(c) {
			charts = append(charts, p.uprights(c, len(charts) == 0))
		}
	}
	if len(charts) == 0 {
		charts = []draw.Chart{p.stopsOf()}
	}
	return p.stacked(charts)
}

type plotted struct {
	*varied
	rows []*vary.Row // along the quantity
}

func (p *plotted) sorted() []*vary.Row {
	var rows []*vary.Row
	for i := range p.v.Rows {
		rows = append(rows, &p.v.Rows[i])
	}
	if p.v.Ask.Number {
		sort.SliceStable(rows, func(i, j int) bool { return rows[i].Value < rows[j].Value })
	}
	return rows
}

// axis returns what one unit of the reader's is and how it is called; words are counted.
func (p *plotted) axis() (size float64, name string) {
	feet := p.units != quantity.InMetres
	key := clean(p.v.Key)
	switch {
	case !p.v.Ask.Number:
		var told []string
		for i, r := range p.rows {
			told = append(told, fmt.Sprintf("%d: %s", i+1, p.at(r)))
		}
		return 1, key + "  " + strings.Join(told, ", ")
	case p.v.Ask.Share():
		return 0.01, key + " (%)"
	case p.small():
		return 0.001, key + " (mm)"
	case p.v.Unit == "m" && feet:
		return float64(quantity.Foot), key + " (ft)"
	case p.v.Unit == "kg" && feet:
		return float64(quantity.Pound), key + " (lb)"
	case p.v.Unit == "N" && feet:
		return float64(quantity.PoundForce), key + " (lb)"
	case p.v.Unit == "":
		return 1, key
	}
	return 1, key + " (" + p.v.Unit + ")"
}

// line is a series of what each row has: a line through numbers, a level stroke for each
// word, since there is nothing between two words. What is not known leaves a gap.
func (p *plotted) line(name string, dash draw.Dash, of func(*vary.Row) float64) draw.Series {
	const half = 0.35
	s := draw.Series{Name: name, Dash: dash}
	size, _ := p.axis()
	for i, r := range p.rows {
		y := math.NaN()
		if r.Refused == "" {
			y = of(r)
		}
		if p.v.Ask.Number {
			s.X, s.Y = append(s.X, float64(r.Value)/size), append(s.Y, y)
			continue
		}
		x := float64(i + 1)
		s.X, s.Y = append(s.X, x-half, x+half, x+half), append(s.Y, y, y, math.NaN())
	}
	return s
}

func (p *plotted) chart(title, alongY string, series ...draw.Series) draw.Chart {
	_, name := p.axis()
	return draw.Chart{Title: title, AlongX: name, AlongY: alongY, Series: series}
}

// drawn reports whether a chart has a value.
func (p *plotted) drawn(c draw.Chart) bool {
	for _, s := range c.Series {
		for _, y := range s.Y {
			if finding.Known(y) {
				return true
			}
		}
	}
	return false
}

func (p *plotted) trims() draw.Chart {
	size, unit := 1.0, "m"
	if p.units != quantity.InMetres {
		size, unit = float64(quantity.Foot), "ft"
	}
	c := p.chart("Trim, and the trim that clears each camera", unit, p.line("trim", draw.Solid, func(r *vary.Row) float64 { return float64(r.Trim) / size }))
	cameras := p.v.Plan.Clear
	if len(cameras) == 0 {
		return draw.Chart{}
	}
	for i, camera := range cameras {
		c.Series = append(c.Series, p.line("clears "+clean(camera.Camera), draw.Dashed, func(r *vary.Row) float64 {
			if i >= len(r.Clear) {
				return math.NaN()
			}
			return float64(r.Clear[i].Trim) / size
		}))
	}
	return c
}

func (p *plotted) stopsOf() draw.Chart {
	c := p.chart("Stop", "T", p.line("area", draw.Solid, func(r *vary.Row) float64 { return float64(r.Stop) }),
		p.line(p.markName(), draw.Dashed, func(r *vary.Row) float64 { return p.ofMark(r, func(m *vary.Mark) finding.Number { return m.Stop }) }))
	if want := p.a.Model.Plan.Want; want != nil && want.Exposure != nil && p.v.Key != "want.exposure.stop" {
		stop := float64(want.Exposure.Stop)
		c.Limits = append(c.Limits, draw.Limit{Name: fmt.Sprintf("want T%.3g", stop), At: stop})
	}
	return c
}

func (p *plotted) markName() string {
	if m := p.v.Plan.Mark; m != nil {
		return "at " + clean(m.Name)
	}
	return "mark"
}

func (p *plotted) ofMark(r *vary.Row, of func(*vary.Mark) finding.Number) float64 {
	if r.Mark == nil {
		return math.NaN()
	}
	return float64(of(r.Mark))
}

func (p *plotted) lightOf() draw.Chart {
	c := p.chart("Evenness of the area, and the worst spill under its mean", "stops", p.line("uneven by", draw.Solid, func(r *vary.Row) float64 { return float64(r.Even) }),
		p.line("spill under", draw.Dashed, func(r *vary.Row) float64 {
			if r.Spill == nil {
				return math.NaN()
			}
			return float64(r.Spill.StopsBelow)
		}))
	if want := p.a.Model.Plan.Want; want != nil && want.Even != nil && p.v.Key != "want.even" {
		c.Limits = append(c.Limits, draw.Limit{Name: "want even", At: float64(*want.Even)})
	}
	return c
}

func (p *plotted) softness() draw.Chart {
	size, unit := 0.001, "mm"
	if p.units != quantity.InMetres {
		size, unit = float64(quantity.Inch), "in"
	}
	return p.chart("Softness: width of the edge that the brow throws", unit, p.line(p.markName(), draw.Solid, func(r *vary.Row) float64 {
		return p.ofMark(r, func(m *vary.Mark) finding.Number { return m.Edge }) / size
	}))
}

// loads are told as the mass whose weight they are, as gear is rated.
func (p *plotted) loads() draw.Chart {
	size, unit := 1.0, "kg"
	if p.units != quantity.InMetres {
		size, unit = float64(quantity.Pound), "lb"
	}
	most := func(of func(*vary.Row) *vary.Most) func(*vary.Row) float64 {
		return func(r *vary.Row) float64 {
			m := of(r)
			if m == nil {
				return math.NaN()
			}
			return float64(quantity.Force(m.Force).Mass()) / size
		}
	}
	c := p.chart("Loads: the whole box, and the most on one line, point and stand in any case", unit,
		p.line("box", draw.Solid, func(r *vary.Row) float64 { return float64(r.Mass) / size }),
		p.line("line", draw.Dashed, most(func(r *vary.Row) *vary.Most { return r.Line })),
		p.line("point", draw.Dotted, most(func(r *vary.Row) *vary.Most { return r.Point })),
		p.line("stand", draw.DashDot, most(func(r *vary.Row) *vary.Most { return r.Stand })))
	c.Limits = []draw.Limit{{At: 0}} // so that a small change looks small
	return c
}

// uprights adds a line at every value at which the result changes, named where that is
// asked for.
func (p *plotted) uprights(c draw.Chart, named bool) draw.Chart {
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range c.Series {
		for _, y := range s.Y {
			if finding.Known(y) {
				low, high = math.Min(low, y), math.Max(high, y)
			}
		}
	}
	for _, l := range c.Limits {
		low, high = math.Min(low, l.At), math.Max(high, l.At)
	}
	size, _ := p.axis()
	for _, change := range p.v.Changes {
		if change.Finding != "" || !(high > low) {
			continue
		}
		x := float64(change.From+change.To) / 2 / size
		name := ""
		if named {
			name = turn(change)
		}
		c.Series = append(c.Series, draw.Series{Name: name, X: []float64{x, x}, Y: []float64{low, high}, Dash: draw.DashDot})
	}
	return c
}

// turn tells a change from left to right.
func turn(c vary.Change) string {
	if c.From > c.To {
		c.Before, c.After = c.After, c.Before
	}
	return c.Before + " → " + c.After
}

// stacked puts charts below a title.
func (p *plotted) stacked(charts []draw.Chart) draw.Picture {
	const margin, head = 6.0, 13.0
	picture := draw.Picture{Name: "vary", Title: p.a.Title, Width: paneWidth + 2*margin, Height: head + 2*margin + float64(len(charts))*(paneHeight+4)}
	picture.Add(draw.Rectangle(draw.Notes, draw.Pen{}, draw.Paper, draw.Point{}, picture.Width, picture.Height))
	title := p.a.Title
	if title == "" {
		title = "Untitled plan"
	}
	item := draw.Label(draw.Notes, draw.Shorten(title, 4, paneWidth, true), draw.Point{X: margin, Y: margin + 2}, 4, draw.Start)
	item.Bold = true
	detail := p.about() + "; plan " + p.a.PlanDigest[:12]
	if p.a.Demo {
		detail += "; DEMO: some values are invented"
	}
	picture.Add(item, draw.Label(draw.Notes, draw.Shorten(detail, 2.4, paneWidth, false), draw.Point{X: margin, Y: margin + 7.5}, 2.4, draw.Start))
	for i, c := range charts {
		picture.Place(c.Picture(draw.Space{Width: paneWidth, Height: paneHeight}), draw.Point{X: margin, Y: margin + head + float64(i)*(paneHeight+4)})
	}
	picture.Add(draw.Label(draw.Notes, draw.Shorten("A planning aid, not a certificate: a competent person and the venue's engineer decide.", 2.1, paneWidth, false),
		draw.Point{X: margin, Y: picture.Height - 3}, 2.1, draw.Start))
	return picture
}
