package draw

import "strings"

// Point is a place on the paper, in mm, y down.
type Point struct{ X, Y float64 }

// Picture is a drawing on a sheet of Width × Height mm. Scale is empty where nothing is
// to scale.
type Picture struct {
	Name          string // plan, section-x, …
	Title         string
	Width, Height float64
	Scale         Scale
	Items         []Item // in the order in which they are drawn
}

// Item is one line, area or text. A text has Text and stands at Points[0]; everything
// else is a path through Points.
type Item struct {
	Layer Layer
	Part  string // id of the rig's part that it shows; empty for none
	// Of names what a dimension measures (a plan's key) and Value is its length in m.
	Of    string
	Value float64

	Points []Point
	Closed bool
	Pen    Pen // no weight: no outline
	Fill   Ink // None: not filled

	Text   string
	Size   float64 // height of the type in mm
	Bold   bool
	Anchor Anchor
	Angle  float64 // counter-clockwise, radians
}

// Layer sorts items by kind.
type Layer string

// The layers.
const (
	Room       Layer = "room"
	Action     Layer = "action"
	Cameras    Layer = "cameras"
	Frame      Layer = "frame"
	Cloth      Layer = "cloth"
	Lamps      Layer = "lamps"
	Lines      Layer = "lines"
	Points     Layer = "points"
	Stands     Layer = "stands"
	Dimensions Layer = "dimensions"
	Labels     Layer = "labels"
	Notes      Layer = "notes"
	Light      Layer = "light"
)

// Ink is how dark something is; a back end chooses the tone.
type Ink string

// The inks. Paper covers what is behind it. Alarm prints as a dark gray.
const (
	None  Ink = ""
	Black Ink = "black"
	Dark  Ink = "dark"
	Gray  Ink = "gray"
	Pale  Ink = "pale"
	Faint Ink = "faint"
	Paper Ink = "paper"
	Alarm Ink = "alarm"
)

// Dash is a line's pattern.
type Dash string

// The patterns.
const (
	Solid   Dash = ""
	Dashed  Dash = "dashed"
	Dotted  Dash = "dotted"
	DashDot Dash = "dashdot"
)

// Pattern returns lengths of marks and gaps in turn, in mm; nil for a solid line.
func (d Dash) Pattern() []float64 {
	switch d {
	case Dashed:
		return []float64{1.6, 0.9}
	case Dotted:
		return []float64{0.35, 0.7}
	case DashDot:
		return []float64{4, 0.9, 0.6, 0.9}
	}
	return nil
}

// Pen draws a line of Weight mm.
type Pen struct {
	Weight float64
	Dash   Dash
	Ink    Ink
}

// The weights, in mm, each √2 times the one before it.
const (
	Hairline = 0.13
	Thin     = 0.18
	Medium   = 0.25
	Strong   = 0.35
	Heavy    = 0.50
	Massive  = 0.70
)

// Anchor is the place of a text that stands at its point; the point is on the text's
// middle height.
type Anchor string

// The anchors.
const (
	Start  Anchor = "start"
	Middle Anchor = "middle"
	End    Anchor = "end"
)

func pen(weight float64) Pen { return Pen{Weight: weight, Ink: Black} }

func (p Pen) with(d Dash) Pen { p.Dash = d; return p }

func (p Pen) in(i Ink) Pen { p.Ink = i; return p }

// Add puts items into the picture.
func (p *Picture) Add(items ...Item) { p.Items = append(p.Items, items...) }

// Place copies the items of another picture, its top left corner at a place.
func (p *Picture) Place(other Picture, at Point) {
	for _, item := range other.Items {
		moved := make([]Point, len(item.Points))
		for i, q := range item.Points {
			moved[i] = Point{q.X + at.X, q.Y + at.Y}
		}
		item.Points = moved
		p.Add(item)
	}
}

// Line is an open path.
func Line(layer Layer, with Pen, points ...Point) Item {
	return Item{Layer: layer, Pen: with, Points: points}
}

// Area is a closed path.
func Area(layer Layer, with Pen, fill Ink, points ...Point) Item {
	return Item{Layer: layer, Pen: with, Fill: fill, Points: points, Closed: true}
}

// Rectangle is a closed path around a rectangle with its top left corner at a place.
func Rectangle(layer Layer, with Pen, fill Ink, at Point, width, height float64) Item {
	return Area(layer, with, fill, at, Point{at.X + width, at.Y}, Point{at.X + width, at.Y + height}, Point{at.X, at.Y + height})
}

// Label is a text of a size in mm.
func Label(layer Layer, text string, at Point, size float64, anchor Anchor) Item {
	return Item{Layer: layer, Points: []Point{at}, Text: Clean(text), Size: size, Anchor: anchor}
}

// Clean makes any text one that every back end can set: valid UTF-8 without control
// characters or signs beyond the basic plane, at most 200 signs long.
func Clean(text string) string {
	clean := strings.Map(func(r rune) rune {
		switch {
		case r < ' ' || (r >= 0x7f && r < 0xa0) || r == '\u2028' || r == '\u2029':
			return ' '
		case r >= 0x200b && r <= 0x200f || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0xfeff:
			return -1 // turns or hides what follows
		case r > 0xffff || r >= 0xe000 && r <= 0xf8ff || r == 0xfffe || r == 0xffff:
			return '\ufffd'
		}
		return r
	}, strings.ToValidUTF8(text, "\ufffd"))
	if runes := []rune(clean); len(runes) > 200 {
		return string(runes[:199]) + "…"
	}
	return clean
}
