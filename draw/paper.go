package draw

import "softloft/answer"

// PaperSize returns a paper's size in mm, upright: letter, or a4.
func PaperSize(paper string) Space {
	if paper == "a4" {
		return Space{Width: 210, Height: 297}
	}
	return Space{Width: 215.9, Height: 279.4}
}

// PaperMargin is the margin of a sheet, in mm.
const PaperMargin = 10.0

// Drawings draws every view on a sheet of its own, on its side, with the line that says
// which plan it shows.
func Drawings(a *answer.Answers, paper string) []Picture {
	var sheets []Picture
	for _, view := range All(a, sheetSpace(paper)) {
		sheets = append(sheets, onSheet(a, view, paper))
	}
	return sheets
}

// sheetSpace is what a sheet on its side leaves for a view.
func sheetSpace(paper string) Space {
	size := PaperSize(paper)
	return Space{size.Height - 2*PaperMargin, size.Width - 2*PaperMargin - 5}
}

// onSheet puts a view on a sheet on its side.
func onSheet(a *answer.Answers, view Picture, paper string) Picture {
	size := PaperSize(paper)
	width, height := size.Height, size.Width
	sheet := view
	sheet.Width, sheet.Height, sheet.Items = width, height, nil
	sheet.Add(Demo(a, Box{0, 0, width, height})...)
	sheet.Place(view, Point{PaperMargin, PaperMargin})
	sheet.Add(Imprint(a, Point{PaperMargin, height - PaperMargin - 1}, width-2*PaperMargin)...)
	return sheet
}

// Imprint is the line at the foot of every sheet: the plan, its revision and digest, and
// what nobody checked.
func Imprint(a *answer.Answers, at Point, width float64) []Item {
	title := a.Title
	if title == "" {
		title = "Untitled plan"
	}
	left := title
	if a.Revision != "" {
		left += ", revision " + a.Revision
	}
	right := "plan " + a.PlanDigest[:min(12, len(a.PlanDigest))] + "   building: not checked"
	used := TextWidth(right, 2.2, false)
	return []Item{
		Line(Notes, pen(Thin), Point{at.X, at.Y - 2.6}, Point{at.X + width, at.Y - 2.6}),
		Label(Notes, Shorten(left, 2.2, width-used-4, false), at, 2.2, Start),
		Label(Notes, right, Point{at.X + width, at.Y}, 2.2, End),
	}
}

// Demo writes DEMO across a sheet whose answers rest on invented values.
func Demo(a *answer.Answers, sheet Box) []Item {
	if !a.Demo {
		return nil
	}
	size := (sheet.Right - sheet.Left) / 3.2
	return []Item{{Layer: Notes, Points: []Point{{(sheet.Left + sheet.Right) / 2, (sheet.Top + sheet.Bottom) / 2}}, Text: "DEMO", Size: size, Bold: true,
		Anchor: Middle, Angle: 0.6, Fill: Faint}}
}
