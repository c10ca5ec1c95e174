package draw

import (
	"math"
	"strconv"
)

// Series is one line of a chart. A value that is not finite leaves a gap.
type Series struct {
	Name string
	X, Y []float64
	Dash Dash
}

// Limit is a level that a chart marks.
type Limit struct {
	Name string
	At   float64
}

// Chart is a plot of lines over one axis.
type Chart struct {
	Title, AlongX, AlongY string // what the axes show, with their unit
	Series                []Series
	Limits                []Limit
}

// Picture draws the chart: axes with round steps, lines told apart by dash and name.
// Of a chart without a finite value it draws the axes' names and says so.
func (c Chart) Picture(space Space) Picture {
	p := Picture{Name: "chart", Title: c.Title, Width: space.Width, Height: space.Height}
	title := Label(Notes, Shorten(c.Title, 2.8, space.Width, true), Point{0, 2}, 2.8, Start)
	title.Bold = true
	box := Box{13, 9, space.Width - 22, space.Height - 9}
	p.Add(title, Label(Notes, Shorten(c.AlongX, 2.1, box.Right-box.Left, false), Point{(box.Left + box.Right) / 2, space.Height - 1.6}, 2.1, Middle),
		Label(Notes, Shorten(c.AlongY, 2.1, space.Width, false), Point{0, 6}, 2.1, Start))
	x, y, ok := c.ranges()
	if !ok || box.Right-box.Left < 10 || box.Bottom-box.Top < 10 {
		p.Add(Label(Notes, "no value is known", Point{(box.Left + box.Right) / 2, (box.Top + box.Bottom) / 2}, 2.4, Middle))
		return p
	}
	plot := plotting{&p, box, x, y}
	plot.axes()
	names := labels{frame: Box{0, 0, space.Width, space.Height}}
	for _, l := range c.Limits {
		if l.At >= y.low && l.At <= y.high {
			p.Add(Line(Notes, pen(Strong).with(DashDot), plot.at(x.low, l.At), plot.at(x.high, l.At)))
			p.Add(Label(Notes, Shorten(l.Name, 2, 20, false), Point{box.Right + 0.8, plot.at(x.high, l.At).Y}, 2, Start))
		}
	}
	for _, s := range c.Series {
		plot.series(s)
	}
	names.avoid(p.Items)
	for _, s := range c.Series {
		plot.name(s, &names)
	}
	p.Add(names.items...)
	return p
}

// scaleRange is an axis: from low to high in round steps.
type scaleRange struct{ low, high, step float64 }

// ranges returns round ranges that hold all values and limits.
func (c Chart) ranges() (x, y scaleRange, ok bool) {
	lowX, highX, lowY, highY := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, s := range c.Series {
		for i := range min(len(s.X), len(s.Y)) {
			if !finite(s.X[i]) || !finite(s.Y[i]) {
				continue
			}
			lowX, highX = math.Min(lowX, s.X[i]), math.Max(highX, s.X[i])
			lowY, highY = math.Min(lowY, s.Y[i]), math.Max(highY, s.Y[i])
		}
	}
	for _, l := range c.Limits {
		if finite(l.At) {
			lowY, highY = math.Min(lowY, l.At), math.Max(highY, l.At)
		}
	}
	if lowX > highX || lowY > highY || highX-lowX > 1e300 || highY-lowY > 1e300 {
		return x, y, false
	}
	x = rounded(lowX, highX, 6)
	if highX-lowX > x.step {
		x.low, x.high = lowX, highX // what was varied fills the width
	}
	return x, rounded(lowY, highY, 5), true
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// rounded widens a range to steps of 1, 2 or 5 times a power of ten.
func rounded(low, high float64, steps float64) scaleRange {
	if high-low < 1e-9*math.Max(1, math.Abs(high)) {
		pad := math.Max(0.5, 0.05*math.Abs(high))
		low, high = low-pad, high+pad
	}
	power := math.Pow(10, math.Floor(math.Log10((high-low)/steps)))
	step := 10 * power
	for _, s := range []float64{1, 2, 5} {
		if (high-low)/(s*power) <= steps {
			step = s * power
			break
		}
	}
	return scaleRange{math.Floor(low/step+1e-9) * step, math.Ceil(high/step-1e-9) * step, step}
}

// ticks are the multiples of the step in the range, 50 at most.
func (r scaleRange) ticks() []float64 {
	var all []float64
	first := math.Ceil(r.low/r.step - 1e-9)
	for i := 0; i < 50; i++ {
		at := (first + float64(i)) * r.step
		if at > r.high+1e-9*r.step {
			break
		}
		all = append(all, at)
	}
	return all
}

// told prints a value of an axis without more digits than its steps have.
func (r scaleRange) told(x float64) string {
	digits := max(0, int(math.Ceil(-math.Log10(r.step)-1e-9)))
	if math.Abs(x) < r.step*1e-6 {
		x = 0
	}
	return strconv.FormatFloat(x, 'f', min(digits, 12), 64)
}

type plotting struct {
	p    *Picture
	box  Box
	x, y scaleRange
}

func (p plotting) at(x, y float64) Point {
	return Point{p.box.Left + (x-p.x.low)/(p.x.high-p.x.low)*(p.box.Right-p.box.Left), p.box.Bottom - (y-p.y.low)/(p.y.high-p.y.low)*(p.box.Bottom-p.box.Top)}
}

func (p plotting) axes() {
	fine := pen(Hairline).in(Gray)
	for _, x := range p.x.ticks() {
		p.p.Add(Line(Notes, fine, p.at(x, p.y.low), p.at(x, p.y.high)), Label(Notes, p.x.told(x), Point{p.at(x, p.y.low).X, p.box.Bottom + 2.2}, 2, Middle))
	}
	for _, y := range p.y.ticks() {
		p.p.Add(Line(Notes, fine, p.at(p.x.low, y), p.at(p.x.high, y)), Label(Notes, p.y.told(y), Point{p.box.Left - 1.2, p.at(p.x.low, y).Y}, 2, End))
	}
	p.p.Add(Line(Notes, pen(Medium), Point{p.box.Left, p.box.Top}, Point{p.box.Left, p.box.Bottom}, Point{p.box.Right, p.box.Bottom}))
}

// series draws a line with gaps where nothing is known, a dot for a lone value.
func (p plotting) series(s Series) {
	var path []Point
	flush := func() {
		switch {
		case len(path) > 1:
			p.p.Add(Line(Light, pen(Heavy).with(s.Dash), path...))
		case len(path) == 1:
			p.p.Add(circle(Light, Pen{}, Black, path[0], 0.5))
		}
		path = nil
	}
	for i := range min(len(s.X), len(s.Y)) {
		if !finite(s.X[i]) || !finite(s.Y[i]) {
			flush()
			continue
		}
		at := p.at(s.X[i], s.Y[i])
		path = append(path, at)
	}
	flush()
}

// name puts a line's name at its last known value.
func (p plotting) name(s Series, names *labels) {
	for i := min(len(s.X), len(s.Y)) - 1; i >= 0 && s.Name != ""; i-- {
		if finite(s.X[i]) && finite(s.Y[i]) {
			names.put(Label(Notes, Shorten(s.Name, 2.1, 20, false), p.at(s.X[i], s.Y[i]), 2.1, Start), 0.8)
			return
		}
	}
}
