package typeface

import (
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"softloft/draw"
)

// The table of widths that draw measures with is the font file's own: every sign that the
// font has, to half a thousandth of the em.
func TestWidths(t *testing.T) {
	signs := []rune("–—‘’“”•…′″≤≥≈−√←↑→↓↔■▲△●○◆□✓✔☐☑⅛⅜⅝⅞⌀∅�")
	for r := rune(' '); r < 0x530; r++ {
		signs = append(signs, r)
	}
	for i, bold := range []bool{false, true} {
		face := parsed()[i]
		var buffer sfnt.Buffer
		for _, r := range signs {
			index, err := face.GlyphIndex(&buffer, r)
			if err != nil || index == 0 {
				continue
			}
			want, err := face.GlyphAdvance(&buffer, index, fixed.I(1000), font.HintingNone)
			if err != nil || want == 0 {
				continue
			}
			if got := draw.TextWidth(string(r), 1000, bold); math.Abs(got-float64(want)/64) > 0.51 {
				t.Errorf("%q bold %v: %g, the font says %g", r, bold, got, float64(want)/64)
			}
		}
	}
}

// A text's outlines lie where its bounds say: turned by a quarter turn, a wide text is a
// high one, and it starts below its end.
func TestOutlines(t *testing.T) {
	item := draw.Label(draw.Notes, "HIH", draw.Point{X: 10, Y: 10}, 4, draw.Middle)
	for _, angle := range []float64{0, math.Pi / 2, -0.3} {
		item.Angle = angle
		bounds := item.Bounds()
		low, high := draw.Point{X: 1e9, Y: 1e9}, draw.Point{X: -1e9, Y: -1e9}
		for _, path := range Outlines(item) {
			for _, p := range path {
				low = draw.Point{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}
				high = draw.Point{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y)}
			}
		}
		if low.X < bounds.Left-0.05 || low.Y < bounds.Top-0.05 || high.X > bounds.Right+0.05 || high.Y > bounds.Bottom+0.05 {
			t.Errorf("at %g: outlines from %v to %v, bounds %v", angle, low, high, bounds)
		}
		if angle == 0 && math.Abs((low.Y+high.Y)/2-10) > 0.02 {
			t.Errorf("capitals are %g off the middle", (low.Y+high.Y)/2-10)
		}
	}
}
