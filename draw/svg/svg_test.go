package svg

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"softloft/draw"
)

// A golden of layout: each kind of item once.
func TestWrite(t *testing.T) {
	p := draw.Picture{Name: "small", Title: "a & b", Width: 40, Height: 20.5, Scale: draw.Scale{Ratio: 48}}
	tube := draw.Rectangle(draw.Frame, draw.Pen{Weight: 0.35, Ink: draw.Black}, draw.Paper, draw.Point{X: 1, Y: 2}, 10, 0.5)
	tube.Part = `frame.<north>`
	size := draw.Label(draw.Dimensions, `16'-0"`, draw.Point{X: 6, Y: 5}, 2, draw.Middle)
	size.Of, size.Value = "box.size[0]", 4.8768
	p.Add(tube, draw.Line(draw.Lines, draw.Pen{Weight: 0.18, Ink: draw.Dark, Dash: draw.Dashed}, draw.Point{X: 1}, draw.Point{X: 1.23456, Y: -3}), size)
	var got bytes.Buffer
	if err := Write(&got, p); err != nil {
		t.Fatal(err)
	}
	_, items, _ := strings.Cut(got.String(), "</style>\n")
	head, _, _ := strings.Cut(got.String(), "\n")
	want := `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="20.5mm" viewBox="0 0 40 20.5" data-view="small" data-ratio="48" role="img">`
	if diff := cmp.Diff(want, head); diff != "" {
		t.Error(diff)
	}
	want = `<path d="M1 2L11 2L11 2.5L1 2.5Z" class="frame black f-paper" stroke-width="0.35" data-part="frame.&lt;north&gt;"/>
<path d="M1 0L1.235 -3" class="lines dark" stroke-width="0.18" stroke-dasharray="1.6 0.9"/>
<text x="6" y="5.73" font-size="2" text-anchor="middle" class="dimensions" data-of="box.size[0]" data-value="4.8768">16&#39;-0&#34;</text>
</svg>
`
	if diff := cmp.Diff(want, items); diff != "" {
		t.Error(diff)
	}
}
