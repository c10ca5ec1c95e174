package draw

import (
	"math"

	"softloft/quantity"
)

const dimensionType = 2.1 // height of a dimension's type, mm

// dimension measures from a to b on paper, its line offset to the left of that way by
// offset mm (negative: to the right). Value is what it says, in m; of names it.
func dimension(a, b Point, offset, value float64, of, text string) []Item {
	dx, dy := b.X-a.X, b.Y-a.Y
	long := math.Hypot(dx, dy)
	if long < 1e-6 {
		return nil
	}
	ux, uy := dx/long, dy/long
	nx, ny := uy, -ux // to the left of the way, y being down
	shift := func(p Point, by float64) Point { return Point{p.X + by*nx, p.Y + by*ny} }
	from, to := shift(a, offset), shift(b, offset)
	side := math.Copysign(1, offset)
	thin := pen(Thin).in(Dark)
	items := []Item{
		Line(Dimensions, pen(Hairline).in(Dark), shift(a, 0.9*side), shift(a, offset+0.9*side)),
		Line(Dimensions, pen(Hairline).in(Dark), shift(b, 0.9*side), shift(b, offset+0.9*side)),
		Line(Dimensions, thin, from, to),
	}
	for _, end := range []Point{from, to} { // ticks at 45 degrees
		t := Point{(ux + nx) * 0.7, (uy + ny) * 0.7}
		items = append(items, Line(Dimensions, pen(Strong), Point{end.X - t.X, end.Y - t.Y}, Point{end.X + t.X, end.Y + t.Y}))
	}
	label := dimensionText(from, to, ux, uy, long, Item{Of: of, Value: value, Text: Clean(text)})
	return append(items, mask(label), label)
}

// dimensionText stands on the line, readable from below or from the right; beside
// the line where it doesn't fit on it.
func dimensionText(from, to Point, ux, uy, long float64, item Item) Item {
	item.Layer, item.Size, item.Anchor = Dimensions, dimensionType, Middle
	angle := math.Atan2(-uy, ux)
	if angle > math.Pi/2+1e-9 || angle <= -math.Pi/2+1e-9 {
		angle += math.Pi
	}
	sin, cos := math.Sincos(angle)
	up := 0.5*dimensionType + 0.55
	middle := Point{(from.X + to.X) / 2, (from.Y + to.Y) / 2}
	if TextWidth(item.Text, item.Size, false) > long-1 && long > 0 {
		item.Size = math.Max(1.5, dimensionType*(long-1)/TextWidth(item.Text, dimensionType, false))
	}
	item.Angle = math.Remainder(angle, 2*math.Pi)
	item.Points = []Point{{middle.X - up*sin, middle.Y - up*cos}}
	return item
}

// mask clears the paper behind a text.
func mask(label Item) Item {
	return Area(label.Layer, Pen{}, Paper, label.textCorners()...)
}

// measured writes a length in the plan's units, without needless zeros.
func measured(units quantity.System, length float64) string {
	return units.Length(quantity.Length(length))
}
