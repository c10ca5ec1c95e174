package face

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"strconv"

	"softloft/draw"
	"softloft/draw/png"
	"softloft/light"
)

// A picture is the head on a dark ground with a caption below; the stops have their
// scale beside it. Texts are set in mm at dots per mm.
const (
	dots        = 4.0
	captionHigh = 40 // picture elements
	scaleWide   = 116
	textSize    = 3.0 // mm
)

// ground is behind the head.
var ground = color.RGBA{0x2b, 0x2b, 0x2b, 0xff}

// Gray shows a portrait as a camera at the asked stop would see it.
func Gray(p *light.Portrait) *image.RGBA {
	picture := paper(p, 0, "gray: "+about(p))
	for i, lux := range p.Lux {
		tone := uint8(0)
		if p.Cover[i] > 0 {
			tone = gray(lux / p.Asked * clayReflectance)
		}
		set(picture, p, i, color.RGBA{tone, tone, tone, 255})
	}
	return picture
}

// Stops shows a portrait in half stops about the asked level.
func Stops(p *light.Portrait) *image.RGBA {
	bands := bandsOf(p)
	picture := paper(p, scaleWide, "stops about "+about(p), scale(p)...)
	for i := range p.Lux {
		if p.Cover[i] > 0 {
			set(picture, p, i, colorOf(bands[i]))
			continue
		}
		set(picture, p, i, ground)
	}
	for i, band := 0, highestBand; band >= lowestBand; i, band = i+1, band-1 {
		fill(picture, swatch(p, i), colorOf(band))
	}
	png.Over(picture, dots, numbers(p, bands)...)
	return picture
}

// bandsOf are the elements' bands.
func bandsOf(p *light.Portrait) []int {
	bands := make([]int, len(p.Lux))
	for i, lux := range p.Lux {
		bands[i] = outside
		if p.Cover[i] > 0 {
			bands[i] = bandOf(math.Log2(math.Max(0, lux) / p.Asked))
		}
	}
	return bands
}

// outside is no band: there is no head.
const outside = math.MinInt

// about says what the level is.
func about(p *light.Portrait) string {
	if p.ByDome {
		return fmt.Sprintf("%.0f lx, a dome at the eyes", p.Asked)
	}
	return fmt.Sprintf("%.0f lx, the asked stop", p.Asked)
}

// paper is the white sheet with its texts and the ground for the head.
func paper(p *light.Portrait, wide int, line string, more ...draw.Item) *image.RGBA {
	width, height := p.Width+wide, p.Height+captionHigh
	sheet := draw.Picture{Width: float64(width) / dots, Height: float64(height) / dots}
	name := p.Mark
	if p.Look != "" {
		name += ", " + p.Look
	}
	foot := float64(p.Height) / dots
	first := draw.Label(draw.Notes, draw.Shorten(name, textSize, sheet.Width-3, true), draw.Point{X: 1.5, Y: foot + 3}, textSize, draw.Start)
	first.Bold = true
	second := draw.Label(draw.Notes, draw.Shorten(line, 2.6, sheet.Width-3, false), draw.Point{X: 1.5, Y: foot + 7.2}, 2.6, draw.Start)
	sheet.Add(append([]draw.Item{first, second}, more...)...)
	return png.Paint(sheet, dots)
}

// set puts a color where the head covers an element, over the ground.
func set(to *image.RGBA, p *light.Portrait, i int, c color.RGBA) {
	share := p.Cover[i]
	over := func(a, b uint8) uint8 { return uint8(math.Round(share*float64(a) + (1-share)*float64(b))) }
	to.SetRGBA(i%p.Width, i/p.Width, color.RGBA{over(c.R, ground.R), over(c.G, ground.G), over(c.B, ground.B), 255})
}

// swatch is the place of the scale's color so far from the top.
func swatch(p *light.Portrait, i int) image.Rectangle {
	high := (p.Height - 40) / (highestBand - lowestBand + 1)
	top := 34 + i*high
	return image.Rect(p.Width+10, top, p.Width+34, top+high-1)
}

func fill(to *image.RGBA, area image.Rectangle, c color.RGBA) {
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			to.SetRGBA(x, y, c)
		}
	}
}

// scale names the scale's colors.
func scale(p *light.Portrait) []draw.Item {
	items := []draw.Item{draw.Label(draw.Notes, "stops", draw.Point{X: float64(p.Width+10) / dots, Y: 4}, 2.8, draw.Start)}
	for i, band := 0, highestBand; band >= lowestBand; i, band = i+1, band-1 {
		r := swatch(p, i)
		items = append(items, draw.Label(draw.Notes, told(band), draw.Point{X: float64(r.Max.X+6) / dots, Y: float64(r.Min.Y+r.Max.Y) / 2 / dots}, 2.6, draw.Start))
	}
	return items
}

// told prints a band: the ends take all that lies beyond.
func told(band int) string {
	text := strconv.FormatFloat(float64(band)/2, 'f', -1, 64)
	switch {
	case band == lowestBand:
		return text + orLess
	case band == highestBand:
		return "+" + text + orMore
	case band > 0:
		return "+" + text
	}
	return text
}

const orLess, orMore = " or less", " or more"
