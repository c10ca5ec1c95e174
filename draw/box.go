package draw

import "math"

// Box is a rectangle on the paper, upright, in mm.
type Box struct{ Left, Top, Right, Bottom float64 }

// Bounds returns the rectangle that an item covers: a text by its type's widths.
func (i Item) Bounds() Box {
	points := i.Points
	if i.Text != "" && len(points) > 0 {
		points = i.textCorners()
	}
	b := Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		b = b.union(Box{p.X, p.Y, p.X, p.Y})
	}
	return b
}

// textCorners are the corners of a text's rectangle, turned.
func (i Item) textCorners() []Point {
	width, height := TextWidth(i.Text, i.Size, i.Bold), i.Size
	left := map[Anchor]float64{Middle: -width / 2, End: -width}[i.Anchor]
	sin, cos := math.Sincos(i.Angle)
	var corners []Point
	for _, c := range [4]Point{{left, -height / 2}, {left + width, -height / 2}, {left + width, height / 2}, {left, height / 2}} {
		corners = append(corners, Point{i.Points[0].X + c.X*cos + c.Y*sin, i.Points[0].Y - c.X*sin + c.Y*cos})
	}
	return corners
}

func (b Box) union(c Box) Box {
	return Box{math.Min(b.Left, c.Left), math.Min(b.Top, c.Top), math.Max(b.Right, c.Right), math.Max(b.Bottom, c.Bottom)}
}

// Overlap is the area that two boxes share, in mm².
func (b Box) Overlap(c Box) float64 {
	w := math.Min(b.Right, c.Right) - math.Max(b.Left, c.Left)
	h := math.Min(b.Bottom, c.Bottom) - math.Max(b.Top, c.Top)
	if w <= 0 || h <= 0 {
		return 0
	}
	return w * h
}

func (b Box) grown(by float64) Box { return Box{b.Left - by, b.Top - by, b.Right + by, b.Bottom + by} }

// outside is the area of b that lies outside of c.
func (b Box) outside(c Box) float64 {
	return (b.Right-b.Left)*(b.Bottom-b.Top) - b.Overlap(c)
}
