// Package svg writes a picture as SVG: one element an item, in millimeters, with the part
// that it shows as data-part and the length that it measures as data-of and data-value
// (m). Tones stand in a style of classes, so that a page can restyle them.
package svg

import (
	"bufio"
	"fmt"
	"html"
	"io"
	"math"
	"strconv"
	"strings"

	"softloft/draw"
)

// style gives the inks; a page that shows the drawing may set the properties anew.
const style = `
svg{--ink-black:#111;--ink-dark:#444;--ink-gray:#888;--ink-pale:#e2e2e2;--ink-faint:#eee;--ink-paper:#fff;--ink-alarm:#8c1d18;background:var(--ink-paper)}
@media screen and (prefers-color-scheme:dark){svg{--ink-black:#f2f2f2;--ink-dark:#c4c4c4;--ink-gray:#8c8c8c;--ink-pale:#3a3a3a;--ink-faint:#222;--ink-paper:#121212;--ink-alarm:#ff8a80}}
path{fill:none;stroke:none;stroke-linejoin:round}
text{font-family:"DejaVu Sans Condensed","DejaVu Sans",sans-serif;font-stretch:condensed;white-space:pre;fill:var(--ink-black)}
.bold{font-weight:bold}
.black{stroke:var(--ink-black)}.dark{stroke:var(--ink-dark)}.gray{stroke:var(--ink-gray)}.pale{stroke:var(--ink-pale)}.faint{stroke:var(--ink-faint)}.alarm{stroke:var(--ink-alarm)}
.f-black{fill:var(--ink-black)}.f-dark{fill:var(--ink-dark)}.f-gray{fill:var(--ink-gray)}.f-pale{fill:var(--ink-pale)}.f-faint{fill:var(--ink-faint)}.f-paper{fill:var(--ink-paper)}.f-alarm{fill:var(--ink-alarm)}
`

// Write writes a picture. It returns the writer's error.
func Write(to io.Writer, p draw.Picture) error {
	w := &writer{Writer: bufio.NewWriter(to)}
	w.f(`<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" data-view="%s"`, num(p.Width), num(p.Height), num(p.Width), num(p.Height), html.EscapeString(draw.Clean(p.Name)))
	if p.Scale.Ratio > 0 {
		w.f(` data-ratio="%s"`, num(p.Scale.Ratio))
	}
	w.f(` role="img">`+"\n<title>%s</title>\n<style>%s</style>\n", html.EscapeString(draw.Clean(p.Title)), style)
	for _, item := range p.Items {
		w.item(item)
	}
	w.f("</svg>\n")
	return w.Flush()
}

type writer struct{ *bufio.Writer }

// f keeps the writer's error for Flush.
func (w *writer) f(format string, values ...any) { fmt.Fprintf(w.Writer, format, values...) }

func (w *writer) item(i draw.Item) {
	switch {
	case len(i.Points) == 0:
		return
	case i.Text != "":
		w.text(i)
		return
	}
	w.f(`<path d="%s"`, path(i))
	class := []string{string(i.Layer)}
	if i.Pen.Weight > 0 {
		class = append(class, string(i.Pen.Ink))
	}
	if i.Fill != draw.None {
		class = append(class, "f-"+string(i.Fill))
	}
	w.f(` class="%s"`, strings.Join(class, " "))
	if i.Pen.Weight > 0 {
		w.f(` stroke-width="%s"`, num(i.Pen.Weight))
		if pattern := i.Pen.Dash.Pattern(); pattern != nil {
			w.f(` stroke-dasharray="%s"`, numbers(pattern))
		}
	}
	w.data(i)
	w.f("/>\n")
}

func (w *writer) data(i draw.Item) {
	if i.Part != "" {
		w.f(` data-part="%s"`, html.EscapeString(draw.Clean(i.Part)))
	}
	if i.Of != "" {
		w.f(` data-of="%s" data-value="%s"`, html.EscapeString(draw.Clean(i.Of)), strconv.FormatFloat(i.Value, 'g', 10, 64))
	}
}

// baseline is how far a text's baseline lies below its middle height, in its size: DejaVu's
// capitals are 0.73 high.
const baseline = 0.365

func (w *writer) text(i draw.Item) {
	sin, cos := math.Sincos(i.Angle)
	at := draw.Point{X: i.Points[0].X + baseline*i.Size*sin, Y: i.Points[0].Y + baseline*i.Size*cos}
	w.f(`<text x="%s" y="%s" font-size="%s"`, num(at.X), num(at.Y), num(i.Size))
	if i.Anchor != draw.Start && i.Anchor != "" {
		w.f(` text-anchor="%s"`, i.Anchor)
	}
	if i.Angle != 0 {
		w.f(` transform="rotate(%s %s %s)"`, num(-i.Angle*180/math.Pi), num(at.X), num(at.Y))
	}
	class := []string{string(i.Layer)}
	if i.Bold {
		class = append(class, "bold")
	}
	if i.Fill != draw.None {
		class = append(class, "f-"+string(i.Fill))
	}
	w.f(` class="%s"`, strings.Join(class, " "))
	w.data(i)
	w.f(">%s</text>\n", html.EscapeString(draw.Clean(i.Text)))
}

func path(i draw.Item) string {
	var b strings.Builder
	for k, p := range i.Points {
		b.WriteString(map[bool]string{true: "M", false: "L"}[k == 0])
		b.WriteString(num(p.X) + " " + num(p.Y))
	}
	if i.Closed {
		b.WriteString("Z")
	}
	return b.String()
}

func numbers(xs []float64) string {
	var told []string
	for _, x := range xs {
		told = append(told, num(x))
	}
	return strings.Join(told, " ")
}

// num prints a length in mm to the micrometer.
func num(x float64) string {
	text := strconv.FormatFloat(x, 'f', 3, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" || text == "" {
		return "0"
	}
	return text
}
