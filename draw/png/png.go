// Package png paints a picture as PNG: for thumbnails and for tests that look.
package png

import (
	"image"
	"image/color"
	"image/png"
	"io"
	"math"

	"golang.org/x/image/vector"

	"softloft/draw"
	"softloft/draw/typeface"
)

var inks = map[draw.Ink]uint8{draw.Black: 0x11, draw.Dark: 0x44, draw.Gray: 0x88, draw.Pale: 0xe2, draw.Faint: 0xee, draw.Paper: 0xff}

func tone(i draw.Ink) color.Color {
	if i == draw.Alarm {
		return color.RGBA{0x8c, 0x1d, 0x18, 0xff}
	}
	return color.Gray{inks[i]}
}

// largest is how many pixels a side has at most.
const largest = 20000

// Write paints at a number of dots per mm: 8 is about 200 dpi. It returns the
// writer's error.
func Write(to io.Writer, p draw.Picture, dotsPerMM float64) error {
	return png.Encode(to, Paint(p, dotsPerMM))
}

// Paint paints at a number of dots per mm on white.
func Paint(p draw.Picture, dotsPerMM float64) *image.RGBA {
	width, height := pixels(p.Width*dotsPerMM), pixels(p.Height*dotsPerMM)
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	for i := range picture.Pix {
		picture.Pix[i] = 0xff
	}
	Over(picture, dotsPerMM, p.Items...)
	return picture
}

// Over paints items over a picture, at a number of dots per mm.
func Over(picture *image.RGBA, dotsPerMM float64, items ...draw.Item) {
	c := &canvas{image: picture, dots: dotsPerMM}
	for _, item := range items {
		c.item(item)
	}
}

func pixels(x float64) int { return int(math.Max(1, math.Min(largest, math.Ceil(x)))) }

type canvas struct {
	image *image.RGBA
	dots  float64
}

func (c *canvas) item(i draw.Item) {
	switch {
	case len(i.Points) == 0:
	case i.Text != "":
		c.text(i)
	default:
		if i.Fill != draw.None {
			c.fill(tone(i.Fill), [][]draw.Point{i.Points})
		}
		if i.Pen.Weight > 0 {
			c.stroke(i)
		}
	}
}

func (c *canvas) text(i draw.Item) {
	ink := i.Fill
	if ink == draw.None {
		ink = draw.Black
	}
	c.fill(tone(ink), typeface.Outlines(i))
}

// fill paints closed paths, given in mm; where they overlap in the same sense they
// count once.
func (c *canvas) fill(ink color.Color, paths [][]draw.Point) {
	low, high := draw.Point{X: math.Inf(1), Y: math.Inf(1)}, draw.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, path := range paths {
		for _, p := range path {
			low = draw.Point{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}
			high = draw.Point{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y)}
		}
	}
	area := image.Rect(int(math.Floor(low.X*c.dots)), int(math.Floor(low.Y*c.dots)), int(math.Ceil(high.X*c.dots))+1, int(math.Ceil(high.Y*c.dots))+1).Intersect(c.image.Bounds())
	if area.Empty() {
		return
	}
	raster := vector.NewRasterizer(area.Dx(), area.Dy())
	for _, path := range paths {
		for k, p := range path {
			x, y := float32(p.X*c.dots-float64(area.Min.X)), float32(p.Y*c.dots-float64(area.Min.Y))
			if k == 0 {
				raster.MoveTo(x, y)
				continue
			}
			raster.LineTo(x, y)
		}
		raster.ClosePath()
	}
	raster.Draw(c.image, area, image.NewUniform(ink), image.Point{})
}

// stroke paints a path piece by piece: each mark of its pattern as a rectangle, with
// round joints where the path is solid.
func (c *canvas) stroke(i draw.Item) {
	ink := tone(i.Pen.Ink)
	half := math.Max(i.Pen.Weight, 0.9/c.dots) / 2
	for _, mark := range marks(i) {
		var paths [][]draw.Point
		for k := 1; k < len(mark); k++ {
			a, b := mark[k-1], mark[k]
			long := math.Hypot(b.X-a.X, b.Y-a.Y)
			if long == 0 {
				continue
			}
			nx, ny := -(b.Y-a.Y)/long*half, (b.X-a.X)/long*half
			paths = append(paths, []draw.Point{{X: a.X + nx, Y: a.Y + ny}, {X: b.X + nx, Y: b.Y + ny}, {X: b.X - nx, Y: b.Y - ny}, {X: a.X - nx, Y: a.Y - ny}})
			if k > 1 {
				paths = append(paths, joint(a, half))
			}
		}
		c.fill(ink, paths)
	}
}

// joint is a small disk, turning the same way as the marks.
func joint(at draw.Point, radius float64) []draw.Point {
	disk := make([]draw.Point, 8)
	for i := range disk {
		sin, cos := math.Sincos(-2 * math.Pi * float64(i) / 8)
		disk[i] = draw.Point{X: at.X + radius*cos, Y: at.Y + radius*sin}
	}
	return disk
}

// marks splits a path into the marks of its pattern.
func marks(i draw.Item) [][]draw.Point {
	path := i.Points
	if i.Closed {
		path = append(append([]draw.Point(nil), path...), path[0])
	}
	pattern := i.Pen.Dash.Pattern()
	if pattern == nil {
		return [][]draw.Point{path}
	}
	var all [][]draw.Point
	current := []draw.Point{path[0]}
	k, left := 0, pattern[0]
	for n := 1; n < len(path); n++ {
		a, b := path[n-1], path[n]
		long := math.Hypot(b.X-a.X, b.Y-a.Y)
		for at := 0.0; at < long; {
			step := math.Min(left, long-at)
			at += step
			left -= step
			p := draw.Point{X: a.X + (b.X-a.X)*at/long, Y: a.Y + (b.Y-a.Y)*at/long}
			if k%2 == 0 {
				current = append(current, p)
			}
			if left > 1e-12 {
				continue
			}
			if k%2 == 0 {
				all = append(all, current)
			}
			k = (k + 1) % len(pattern)
			left, current = pattern[k], []draw.Point{p}
		}
	}
	if k%2 == 0 && len(current) > 1 {
		all = append(all, current)
	}
	return all
}
