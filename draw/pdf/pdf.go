// Package pdf writes pictures as PDF, one a page, with the type embedded. The same
// pictures give the same bytes: dates are fixed.
package pdf

import (
	"fmt"
	"io"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"softloft/draw"
	"softloft/draw/typeface"
)

var inks = map[draw.Ink][3]int{draw.Black: {0x11, 0x11, 0x11}, draw.Dark: {0x44, 0x44, 0x44}, draw.Gray: {0x88, 0x88, 0x88}, draw.Pale: {0xe2, 0xe2, 0xe2},
	draw.Faint: {0xee, 0xee, 0xee}, draw.Paper: {0xff, 0xff, 0xff}, draw.Alarm: {0x8c, 0x1d, 0x18}}

// written stands for every document's date: the bytes say what was drawn, not when.
var written = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// Write writes a document with one page a picture.
func Write(to io.Writer, title string, pictures ...draw.Picture) error {
	if len(pictures) == 0 {
		return fmt.Errorf("there is no picture to write; one or more are due")
	}
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: size(pictures[0])})
	doc.SetCreationDate(written)
	doc.SetModificationDate(written)
	doc.SetCatalogSort(true)
	doc.SetTitle(draw.Clean(title), true)
	doc.SetCreator("softloft", true)
	doc.SetProducer("softloft", true)
	doc.AddUTF8FontFromBytes("type", "", typeface.Regular())
	doc.AddUTF8FontFromBytes("type", "B", typeface.Bold())
	doc.SetAutoPageBreak(false, 0)
	doc.SetMargins(0, 0, 0)
	doc.SetCellMargin(0)
	for _, p := range pictures {
		doc.AddPageFormat("P", size(p))
		w := writer{doc}
		for _, item := range p.Items {
			w.item(item)
		}
	}
	return doc.Output(to)
}

func size(p draw.Picture) fpdf.SizeType { return fpdf.SizeType{Wd: p.Width, Ht: p.Height} }

type writer struct{ *fpdf.Fpdf }

func (w writer) item(i draw.Item) {
	switch {
	case len(i.Points) == 0:
		return
	case i.Text != "":
		w.text(i)
		return
	}
	ways := ""
	if i.Fill != draw.None {
		c := inks[i.Fill]
		w.SetFillColor(c[0], c[1], c[2])
		ways = "F"
	}
	if i.Pen.Weight > 0 {
		c := inks[i.Pen.Ink]
		w.SetDrawColor(c[0], c[1], c[2])
		w.SetLineWidth(i.Pen.Weight)
		w.SetLineJoinStyle("round")
		w.SetDashPattern(i.Pen.Dash.Pattern(), 0)
		ways += "D"
	}
	if ways == "" {
		return
	}
	for k, p := range i.Points {
		if k == 0 {
			w.MoveTo(p.X, p.Y)
			continue
		}
		w.LineTo(p.X, p.Y)
	}
	if i.Closed {
		w.ClosePath()
	}
	w.DrawPath(ways)
}

func (w writer) text(i draw.Item) {
	text := draw.Clean(i.Text)
	ink := i.Fill
	if ink == draw.None {
		ink = draw.Black
	}
	c := inks[ink]
	w.SetTextColor(c[0], c[1], c[2])
	weight := ""
	if i.Bold {
		weight = "B"
	}
	w.SetFont("type", weight, 10)
	w.SetFontUnitSize(i.Size)
	at := i.Points[0]
	var shift float64
	switch i.Anchor {
	case draw.Middle:
		shift = -w.GetStringWidth(text) / 2
	case draw.End:
		shift = -w.GetStringWidth(text)
	}
	if i.Angle != 0 {
		w.TransformBegin()
		w.TransformRotate(i.Angle*180/math.Pi, at.X, at.Y)
		defer w.TransformEnd()
	}
	w.Text(at.X+shift, at.Y+typeface.Baseline*i.Size, text)
}
