// Package typeface holds the type of drawings and sheets, DejaVu Sans Condensed, and the
// outlines of a text set in it. Its license stands in its module,
// github.com/go-fonts/dejavu: free to embed and pass on.
package typeface

import (
	"math"
	"sync"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"softloft/draw"
)

// Regular and Bold return the font files (TrueType).
func Regular() []byte { return dejavusanscondensed.TTF }

// Bold is the bold one.
func Bold() []byte { return dejavusanscondensedbold.TTF }

var parsed = sync.OnceValue(func() [2]*sfnt.Font {
	var fonts [2]*sfnt.Font
	for i, data := range [][]byte{Regular(), Bold()} {
		fonts[i], _ = sfnt.Parse(data) // embedded: nil would show in every test
	}
	return fonts
})

// em is the size at which outlines are taken, in units of 1/64.
const em = 2048

// Baseline is how far a text's baseline lies below its middle height, in its size.
const Baseline = 0.365

// Outlines returns the closed outlines of a text item in mm on paper.
func Outlines(i draw.Item) [][]draw.Point {
	face := parsed()[0]
	if i.Bold {
		face = parsed()[1]
	}
	if face == nil || len(i.Points) == 0 {
		return nil
	}
	s := &setter{face: face, item: i}
	s.sin, s.cos = math.Sincos(i.Angle)
	runes := []rune(draw.Clean(i.Text))
	switch i.Anchor {
	case draw.Middle:
		s.x = -s.width(runes) / 2
	case draw.End:
		s.x = -s.width(runes)
	}
	for _, r := range runes {
		s.sign(r)
	}
	return s.paths
}

type setter struct {
	face     *sfnt.Font
	buffer   sfnt.Buffer
	item     draw.Item
	x        float64 // of the next sign, in mm from the anchor
	sin, cos float64
	paths    [][]draw.Point
}

func (s *setter) scale() float64 { return s.item.Size / em / 64 }

func (s *setter) advance(r rune) (sfnt.GlyphIndex, float64) {
	index, err := s.face.GlyphIndex(&s.buffer, r)
	if err != nil {
		index = 0
	}
	advance, err := s.face.GlyphAdvance(&s.buffer, index, fixed.I(em), font.HintingNone)
	if err != nil {
		return index, s.item.Size / 2
	}
	return index, float64(advance) * s.scale()
}

func (s *setter) width(runes []rune) float64 {
	var sum float64
	for _, r := range runes {
		_, w := s.advance(r)
		sum += w
	}
	return sum
}

// sign adds one sign's outlines, curves as short straight pieces.
func (s *setter) sign(r rune) {
	index, advance := s.advance(r)
	segments, err := s.face.LoadGlyph(&s.buffer, index, fixed.I(em), nil)
	if err == nil {
		var path []draw.Point
		var last fixed.Point26_6
		for _, g := range segments {
			switch g.Op {
			case sfnt.SegmentOpMoveTo:
				s.close(path)
				path = []draw.Point{s.at(float64(g.Args[0].X), float64(g.Args[0].Y))}
				last = g.Args[0]
			case sfnt.SegmentOpLineTo:
				path = append(path, s.at(float64(g.Args[0].X), float64(g.Args[0].Y)))
				last = g.Args[0]
			case sfnt.SegmentOpQuadTo:
				path = append(path, s.quad(last, g.Args[0], g.Args[1])...)
				last = g.Args[1]
			}
		}
		s.close(path)
	}
	s.x += advance
}

func (s *setter) close(path []draw.Point) {
	if len(path) > 2 {
		s.paths = append(s.paths, path)
	}
}

func (s *setter) quad(a, b, c fixed.Point26_6) []draw.Point {
	const pieces = 4
	points := make([]draw.Point, pieces)
	for i := range points {
		t := float64(i+1) / pieces
		u := 1 - t
		points[i] = s.at(u*u*float64(a.X)+2*u*t*float64(b.X)+t*t*float64(c.X), u*u*float64(a.Y)+2*u*t*float64(b.Y)+t*t*float64(c.Y))
	}
	return points
}

// at takes a place of a glyph onto the paper.
func (s *setter) at(x, y float64) draw.Point {
	px, py := s.x+x*s.scale(), y*s.scale()+Baseline*s.item.Size
	return draw.Point{X: s.item.Points[0].X + px*s.cos + py*s.sin, Y: s.item.Points[0].Y - px*s.sin + py*s.cos}
}
