package sheet

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"softloft/answer"
	"softloft/draw"
	"softloft/finding"
	"softloft/load"
	"softloft/quantity"
)

// Page lays a rig out on one sheet of paper, letter or a4: plan and section, the result
// and what governs, the loads on points, the head of the pull list, the cautions. What
// doesn't fit is counted, never cut.
func Page(a *answer.Answers, paper string) draw.Picture {
	size := draw.PaperSize(paper)
	p := &page{check: &check{printer: &printer{}, a: a, units: a.Model.Plan.Sheet.Units}}
	p.picture = draw.Picture{Name: "rig", Title: a.Title, Width: size.Width, Height: size.Height}
	p.left, p.right = draw.PaperMargin, size.Width-draw.PaperMargin
	p.picture.Add(draw.Demo(a, draw.Box{Right: size.Width, Bottom: size.Height})...)
	top := p.head(draw.PaperMargin)
	foot := size.Height - draw.PaperMargin - 1
	p.picture.Add(draw.Imprint(a, draw.Point{X: p.left, Y: foot}, p.right-p.left)...)
	foot = p.care(foot - 4.5)
	top = p.drawings(top, 0.43*size.Height)
	p.columns(top+3, foot-3)
	return p.picture
}

// page is one sheet under way.
type page struct {
	*check
	picture     draw.Picture
	left, right float64
}

// The sizes of type on a page, in mm, and the step from line to line.
const (
	bodyType = 2.3
	bodyStep = 3.35
	headType = 2.7
	headStep = 4.6
)

func (p *page) text(at draw.Point, text string, size float64, bold bool, anchor draw.Anchor) {
	item := draw.Label(draw.Notes, text, at, size, anchor)
	item.Bold = bold
	p.picture.Add(item)
}

// head is the title with the result beside it. It returns where it ends.
func (p *page) head(top float64) float64 {
	title := p.a.Title
	if title == "" {
		title = "Untitled plan"
	}
	wide := p.right - p.left - 58
	p.text(draw.Point{X: p.left, Y: top + 3}, draw.Shorten(title, 5, wide, true), 5, true, draw.Start)
	detail := "plan " + p.a.PlanDigest[:min(12, len(p.a.PlanDigest))]
	if p.a.Revision != "" {
		detail = "revision " + p.a.Revision + "   " + detail
	}
	p.text(draw.Point{X: p.left, Y: top + 8.6}, draw.Shorten(detail, 2.6, wide, false), 2.6, false, draw.Start)
	if p.a.Demo {
		p.text(draw.Point{X: p.left, Y: top + 12.4}, "DEMO: some values are invented; ratings marked so say nothing about real gear", 2.3, true, draw.Start)
	}
	p.verdictBox(draw.Point{X: p.right - 54, Y: top})
	return top + 15.5
}

// verdictBox is the result as shape and word, with the count of each.
func (p *page) verdictBox(at draw.Point) {
	const width, height = 54.0, 13.4
	p.picture.Add(draw.Rectangle(draw.Notes, draw.Pen{Weight: draw.Heavy, Ink: draw.Black}, draw.Paper, at, width, height))
	p.text(draw.Point{X: at.X + 3, Y: at.Y + 4.6}, shapes[p.a.Result]+" "+strings.ToUpper(string(p.a.Result)), 5, true, draw.Start)
	p.text(draw.Point{X: at.X + 3, Y: at.Y + 10.2}, draw.Shorten(p.counts(), 2.2, width-5, false), 2.2, false, draw.Start)
}

func (p *page) counts() string {
	counts := map[finding.Result]int{}
	for _, f := range p.a.Findings {
		counts[f.Result]++
	}
	var told []string
	for _, r := range worstFirst {
		if counts[r] > 0 {
			told = append(told, fmt.Sprintf("%d %s", counts[r], r))
		}
	}
	if len(told) == 0 {
		return "nothing was checked"
	}
	return strings.Join(told, ", ")
}

// drawings puts plan and section side by side in frames of a height. It returns where
// they end.
func (p *page) drawings(top, height float64) float64 {
	const gap, inset = 3.0, 2.0
	width := (p.right - p.left - gap) / 2
	space := draw.Space{Width: width - 2*inset, Height: height - 2*inset}
	for i, picture := range []draw.Picture{draw.Plan(p.a, space), draw.Section(p.a, "x", space)} {
		at := draw.Point{X: p.left + float64(i)*(width+gap), Y: top}
		p.picture.Add(draw.Rectangle(draw.Notes, draw.Pen{Weight: draw.Medium, Ink: draw.Black}, draw.None, at, width, height))
		p.picture.Place(picture, draw.Point{X: at.X + inset, Y: at.Y + inset})
	}
	return top + height
}

// care prints the cautions above a foot. It returns where they begin.
func (p *page) care(foot float64) float64 {
	var lines []string
	for _, text := range p.a.Cautions {
		lines = append(lines, draw.Wrap(text, 2.1, p.right-p.left, false)...)
	}
	top := foot - 3.0*float64(len(lines))
	p.picture.Add(draw.Line(draw.Notes, draw.Pen{Weight: draw.Thin, Ink: draw.Black}, draw.Point{X: p.left, Y: top - 2.2}, draw.Point{X: p.right, Y: top - 2.2}))
	for i, line := range lines {
		p.text(draw.Point{X: p.left, Y: top + 3.0*float64(i)}, line, 2.1, false, draw.Start)
	}
	return top - 2.2
}

// columns prints what governs on the left; points and the pull list on the right.
func (p *page) columns(top, foot float64) {
	const gap = 5.0
	width := (p.right - p.left - gap) / 2
	left := column{p, p.left, width, top, foot}
	left.governs()
	right := column{p, p.left + width + gap, width, top, foot}
	room := foot - top
	points, pulls := p.pointRows(), p.pullRows()
	wants := float64(len(points.rows)+1)*bodyStep + headStep
	right.foot = top + math.Min(wants+1, math.Max(0.5*room, room-float64(len(pulls.rows)+1)*bodyStep-headStep-3))
	if len(points.rows) > 0 {
		right.table(points)
		right.top += 2.5
	}
	right.foot = foot
	right.table(pulls)
}

// pointRows tells what each point gets, the worst first.
func (p *page) pointRows() table {
	t := table{title: "Loads on points, rounded up", head: []string{"point", "built", "grown", "lift", "one lost", "side", "allows"}, more: "points more, with less on them"}
	points := append(p.a.Load.Points[:0:0], p.a.Load.Points...)
	sort.SliceStable(points, func(i, j int) bool { return largest(points[i]) > largest(points[j]) })
	for _, point := range points {
		allows := "not known"
		if stated, ok := p.a.Model.PointNamed(point.Name); ok && stated.Allows != nil {
			allows = p.allows(*stated.Allows)
		}
		t.rows = append(t.rows, []string{point.Name, p.down(point.Cases.Built), p.down(point.Cases.Grown), p.down(point.Cases.Lift), p.down(point.Cases.LostWorst), p.aside(point.Cases.Built), allows})
	}
	return t
}

// allows is what a point's owner states, in the unit of the loads beside it, and never
// rounded up.
func (p *page) allows(force float64) string {
	unit, name := float64(quantity.PoundForce), "lb"
	if p.units == quantity.InMetres {
		unit, name = quantity.StandardGravity, "kg"
	}
	return fmt.Sprintf("%.0f %s", math.Floor(force/unit+1e-9), name)
}

// largest is the largest downward pull on a point in any case; what is not known comes
// first.
func largest(point load.Point) float64 {
	most := math.Inf(-1)
	for _, v := range []*load.Vec{point.Cases.Built, point.Cases.Grown, point.Cases.Lift, point.Cases.LostWorst} {
		if pull := vertical(v); finding.Known(pull) {
			most = math.Max(most, pull)
		}
	}
	if math.IsInf(most, -1) {
		return math.Inf(1)
	}
	return most
}

// pullRows is the pull list.
func (p *page) pullRows() table {
	t := table{title: "Pull list", head: []string{"item", "count", "length", "each"}, more: "rows more: softloft pull"}
	for _, row := range p.a.Pull {
		item := row.Item
		if row.Demo {
			item += " (DEMO)"
		}
		each := "not known"
		if finding.Known(float64(row.Each)) {
			each = p.units.Mass(quantity.Mass(row.Each))
		}
		t.rows = append(t.rows, []string{item, fmt.Sprint(row.Count), p.length(row.Length), each})
	}
	return t
}
