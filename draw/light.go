package draw

import (
	"fmt"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/answer"
	"softloft/light"
	"softloft/quantity"
)

// LightSheets draws the light's maps on sheets: the area and the floor about the asked
// level, the walls under the key, the lowest cloth about its mean. What the plan does
// not have is left out.
func LightSheets(a *answer.Answers, m *light.Maps, paper string) []Picture {
	var sheets []Picture
	for _, view := range Lights(a, m, sheetSpace(paper)) {
		sheets = append(sheets, onSheet(a, view, paper))
	}
	return sheets
}

// Lights draws them without a sheet.
func Lights(a *answer.Answers, m *light.Maps, space Space) []Picture {
	var all []Picture
	level, about := m.Asked, "stops about the asked level"
	if math.IsNaN(level) {
		level, about = m.Key, "stops about the area's mean"
	}
	if math.IsNaN(level) && m.Floor != nil {
		level, about = brightest(m.Floor.Lux), "stops under the floor's brightest place"
	}
	if maps := present(m.Area, m.Floor); len(maps) > 0 {
		all = append(all, lightPicture(a, "light-area", "Light on the area and the floor, facing up", about, level, maps, space))
	}
	if m.Cloth != nil {
		all = append(all, lightPicture(a, "light-cloth", "Light on the lowest cloth, from the lamps' side", "stops about the cloth's mean", mean(m.Cloth.Lux, m.Cloth.Nodes[0]), present(m.Cloth), space))
	}
	if key := m.Key; len(m.Walls) > 0 {
		under := "stops about the area's mean"
		if math.IsNaN(key) {
			key, under = level, about
		}
		walls := make([]*light.Map, len(m.Walls))
		for i := range m.Walls {
			walls[i] = &m.Walls[i]
		}
		all = append(all, lightPicture(a, "light-walls", "Light on the walls, seen from inside", under, key, walls, space))
	}
	return all
}

func present(maps ...*light.Map) (all []*light.Map) {
	for _, m := range maps {
		if m != nil {
			all = append(all, m)
		}
	}
	return all
}

func brightest(lux []float64) float64 {
	high := 0.0
	for _, x := range lux {
		high = math.Max(high, x)
	}
	return high
}

// mean over nodes by the trapezoidal rule.
func mean(lux []float64, across int) float64 {
	sum, weights := 0.0, 0.0
	for k, x := range lux {
		weight := 1.0
		for _, at := range [2]int{k % across, k / across} {
			if at == 0 || at == across-1 {
				weight /= 2
			}
		}
		sum, weights = sum+weight*x, weights+weight
	}
	return sum / weights
}

// lightmap is a picture of maps under way.
type lightmap struct {
	picture *Picture
	a       *answer.Answers
	units   quantity.System
	level   float64 // lx that is 0 stops
}

// lightPicture lays maps beside and above each other, each as large as a customary scale
// allows.
func lightPicture(a *answer.Answers, name, title, about string, level float64, maps []*light.Map, space Space) Picture {
	p := Picture{Name: name, Title: title, Width: space.Width, Height: space.Height}
	l := lightmap{&p, a, a.Model.Plan.Sheet.Units, level}
	columns := min(2, len(maps))
	rows := (len(maps) + columns - 1) / columns
	width, height := space.Width/float64(columns), (space.Height-titleHeight)/float64(rows)
	for i, m := range maps {
		corner := Point{float64(i%columns) * width, float64(i/columns) * height}
		l.panel(m, Box{corner.X + 4, corner.Y + 8, corner.X + width - 4, corner.Y + height - 8})
	}
	heading := Label(Notes, Shorten(title, 2.8, space.Width, true), Point{0, space.Height - titleHeight + 4}, 2.8, Start)
	heading.Bold = true
	p.Add(heading, Label(Notes, Shorten(fmt.Sprintf("%s, %.0f lx; a line's number is in stops, heavy at 0", about, level), 2.3, space.Width, false), Point{0, space.Height - titleHeight + 8.2}, 2.3, Start))
	return p
}

// panel draws one map in a box.
func (l *lightmap) panel(m *light.Map, space Box) {
	across, up := r3.Norm(m.Across), r3.Norm(m.Up)
	scale := FitScale(l.units, across, up, space.Right-space.Left, space.Bottom-space.Top)
	w, h := scale.paper(across), scale.paper(up)
	middle := Point{(space.Left + space.Right) / 2, (space.Top + space.Bottom) / 2}
	box := Box{middle.X - w/2, middle.Y - h/2, middle.X + w/2, middle.Y + h/2}
	name := Label(Notes, Shorten(m.Name+", "+measured(l.units, across)+" x "+measured(l.units, up), 2.3, space.Right-space.Left, true), Point{box.Left, box.Top - 3}, 2.3, Start)
	name.Bold = true
	l.picture.Add(Rectangle(Light, pen(Strong), None, Point{box.Left, box.Top}, w, h), name)
	l.contours(m, box)
	l.signs(m, scale, box)
	l.picture.Add(Label(Notes, Shorten(l.told(m)+"; scale "+scale.Name, 2.1, space.Right-space.Left, false), Point{box.Left, box.Bottom + 3}, 2.1, Start))
}

// told says the brightest and the darkest place.
func (l *lightmap) told(m *light.Map) string {
	low, high := math.Inf(1), math.Inf(-1)
	for _, x := range m.Lux {
		low, high = math.Min(low, x), math.Max(high, x)
	}
	if !(high > 0) {
		return "no light"
	}
	if low <= 0 {
		return fmt.Sprintf("brightest %s stops, darkest none", signed(math.Log2(high/l.level), 0.1))
	}
	return fmt.Sprintf("brightest %s, darkest %s stops", signed(math.Log2(high/l.level), 0.1), signed(math.Log2(low/l.level), 0.1))
}

// darkestLine is the lowest line that is drawn, in stops.
const darkestLine = -12.0

// contours draws lines of equal light.
func (l *lightmap) contours(m *light.Map, box Box) {
	g := Grid{NX: m.Nodes[0], NY: m.Nodes[1], Low: Point{box.Left, box.Bottom}, High: Point{box.Right, box.Top}}
	low, high := math.Inf(1), math.Inf(-1)
	for _, lux := range m.Lux {
		s := math.Max(darkestLine-2, math.Log2(math.Max(0, lux)/l.level))
		g.Values = append(g.Values, s)
		low, high = math.Min(low, s), math.Max(high, s)
	}
	if !finite(low) || !finite(high) {
		return
	}
	low = math.Max(low, darkestLine)
	step := stepOf(high - low)
	for k := math.Ceil(low/step - 1e-9); k*step <= high+1e-9; k++ {
		with := pen(Thin)
		if k == 0 {
			with = pen(Heavy)
		}
		l.picture.Add(ContourItems(Contours(g, k*step), with, func(level float64) string { return signed(level, step) })...)
	}
}

// stepOf is the largest of the customary steps that gives a range at least three lines.
func stepOf(stops float64) float64 {
	for _, step := range []float64{1, 0.5, 0.25} {
		if stops/step >= 3 {
			return step
		}
	}
	return 0.1
}

// signed prints stops with their sign and no more digits than the step has.
func signed(stops, step float64) string {
	digits := 0
	for _, at := range []float64{0.5, 0.25} {
		if step <= at {
			digits++
		}
	}
	if step == 0.1 {
		digits = 1
	}
	text := strconv.FormatFloat(stops, 'f', digits, 64)
	if zero, _ := strconv.ParseFloat(text, 64); zero == 0 {
		return strconv.FormatFloat(0, 'f', digits, 64)
	}
	if stops > 0 {
		return "+" + text
	}
	return text
}

// signs puts on a level map what stands on or over it: the area, the box, the marks;
// on the cloth the lamps.
func (l *lightmap) signs(m *light.Map, scale Scale, box Box) {
	place := func(p r3.Vec) Point {
		d := r3.Sub(p, m.Center)
		return Point{(box.Left+box.Right)/2 + scale.paper(r3.Dot(d, r3.Unit(m.Across))), (box.Top+box.Bottom)/2 - scale.paper(r3.Dot(d, r3.Unit(m.Up)))}
	}
	outline := func(layer Layer, with Pen, corners ...r3.Vec) {
		var path []Point
		for _, c := range append(corners, corners[0]) {
			path = append(path, place(c))
		}
		for _, piece := range clipPath(path, box) {
			l.picture.Add(Line(layer, with, piece...))
		}
	}
	switch m.Name {
	case "cloth":
		for _, o := range l.a.Model.Optics.Lamps {
			u, v := r3.Scale(o.Size[0]/2, o.U), r3.Scale(o.Size[1]/2, o.V)
			outline(Lamps, pen(Hairline).with(Dashed).in(Dark), r3.Sub(r3.Sub(o.Center, u), v), r3.Sub(r3.Add(o.Center, u), v), r3.Add(r3.Add(o.Center, u), v), r3.Add(r3.Sub(o.Center, u), v))
		}
		return
	case "area", "floor":
	default:
		return
	}
	edge := rim(l.a.Model, 0)
	outline(Frame, pen(Thin).with(DashDot).in(Dark), edge[:]...)
	if area := l.a.Model.Plan.Action; area != nil {
		if area.Area != nil && m.Name == "floor" {
			x, y := r3.Vec{X: float64(area.Area.Size[0]) / 2}, r3.Vec{Y: float64(area.Area.Size[1]) / 2}
			at := r3.Vec{X: float64(area.Area.At[0]), Y: float64(area.Area.At[1])}
			outline(Action, pen(Thin).with(Dashed).in(Dark), r3.Sub(r3.Sub(at, x), y), r3.Sub(r3.Add(at, x), y), r3.Add(r3.Add(at, x), y), r3.Add(r3.Sub(at, x), y))
		}
		for i := range area.Marks {
			at := place(r3.Vec{X: float64(area.Marks[i].At[0]), Y: float64(area.Marks[i].At[1])})
			if (Box{at.X, at.Y, at.X, at.Y}).inside(box) {
				l.picture.Add(cross(Action, pen(Medium), at, 1), cross2(Action, pen(Medium), at, 1))
			}
		}
	}
}
