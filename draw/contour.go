package draw

import "math"

// Grid is values on nodes: x fastest, NX × NY of them, from Low to High, edges included.
type Grid struct {
	NX, NY    int
	Low, High Point // places of the first and the last node
	Values    []float64
}

// at is the value of a node.
func (g Grid) at(i, j int) float64 { return g.Values[j*g.NX+i] }

// place is where a node lies.
func (g Grid) place(i, j int) Point {
	return Point{g.Low.X + (g.High.X-g.Low.X)*float64(i)/float64(g.NX-1), g.Low.Y + (g.High.Y-g.Low.Y)*float64(j)/float64(g.NY-1)}
}

// ok tells whether a grid has all its nodes.
func (g Grid) ok() bool { return g.NX >= 2 && g.NY >= 2 && len(g.Values) == g.NX*g.NY }

// Contour are the paths on which a grid has one value, between straight runs along the
// cells' edges.
type Contour struct {
	Level float64
	Paths [][]Point
}

// Contours returns the paths of levels. A cell with a value that is not finite has none.
// Marching squares (Lorensen and Cline's method in the plane, from memory); a saddle
// is split by the mean of its four nodes.
func Contours(g Grid, levels ...float64) []Contour {
	if !g.ok() {
		return nil
	}
	var all []Contour
	for _, level := range levels {
		var pieces [][2]Point
		for j := range g.NY - 1 {
			for i := range g.NX - 1 {
				pieces = append(pieces, g.cell(i, j, level)...)
			}
		}
		all = append(all, Contour{Level: level, Paths: joined(pieces)})
	}
	return all
}

// cell returns the pieces of a level in one cell.
func (g Grid) cell(i, j int, level float64) [][2]Point {
	corners := [4][2]int{{i, j}, {i + 1, j}, {i + 1, j + 1}, {i, j + 1}}
	var above [4]bool
	var mean float64
	for k, c := range corners {
		v := g.at(c[0], c[1])
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return nil
		}
		above[k] = v >= level
		mean += v / 4
	}
	var cuts []Point
	var first bool
	for k := range corners {
		next := (k + 1) % 4
		if above[k] == above[next] {
			continue
		}
		if len(cuts) == 0 {
			first = above[k]
		}
		a, b := corners[k], corners[next]
		va, vb := g.at(a[0], a[1]), g.at(b[0], b[1])
		p, q := g.place(a[0], a[1]), g.place(b[0], b[1])
		t := (level - va) / (vb - va)
		cuts = append(cuts, Point{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y)})
	}
	switch len(cuts) {
	case 2:
		return [][2]Point{{cuts[0], cuts[1]}}
	case 4: // the mean tells which opposite corners hang together
		if (mean >= level) == first {
			return [][2]Point{{cuts[0], cuts[1]}, {cuts[2], cuts[3]}}
		}
		return [][2]Point{{cuts[3], cuts[0]}, {cuts[1], cuts[2]}}
	}
	return nil
}

// joined strings pieces together where their ends meet.
func joined(pieces [][2]Point) [][]Point {
	type spot struct{ x, y int64 }
	key := func(p Point) spot { return spot{int64(math.Round(p.X * 1e7)), int64(math.Round(p.Y * 1e7))} }
	ends := map[spot][]int{}
	for i, piece := range pieces {
		for _, p := range piece {
			ends[key(p)] = append(ends[key(p)], i)
		}
	}
	used := make([]bool, len(pieces))
	grow := func(path []Point) []Point {
		for {
			last := path[len(path)-1]
			next := -1
			for _, i := range ends[key(last)] {
				if !used[i] {
					next = i
					break
				}
			}
			if next < 0 {
				return path
			}
			used[next] = true
			p := pieces[next][0]
			if key(p) == key(last) {
				p = pieces[next][1]
			}
			path = append(path, p)
		}
	}
	var paths [][]Point
	for i, piece := range pieces {
		if used[i] || key(piece[0]) == key(piece[1]) {
			continue
		}
		used[i] = true
		path := grow([]Point{piece[0], piece[1]})
		for l, r := 0, len(path)-1; l < r; l, r = l+1, r-1 {
			path[l], path[r] = path[r], path[l]
		}
		paths = append(paths, grow(path))
	}
	return paths
}

// ContourItems draws contours whose places are mm on paper, each longest path with its
// label: the value as told.
func ContourItems(contours []Contour, with Pen, told func(level float64) string) []Item {
	var items []Item
	for _, c := range contours {
		best, most := Item{}, 0.0
		for _, path := range c.Paths {
			closed := len(path) > 3 && near(path[0], path[len(path)-1])
			item := Item{Layer: Light, Pen: with, Points: path, Closed: closed}
			if closed {
				item.Points = path[:len(path)-1]
			}
			items = append(items, item)
			if label, long := onPath(path, told(c.Level)); long > most {
				best, most = label, long
			}
		}
		if most > 2.5*TextWidth(best.Text, best.Size, false) {
			items = append(items, mask(best), best)
		}
	}
	return items
}

// onPath sets a text on the middle of a path, along it. It returns the path's length.
func onPath(path []Point, text string) (Item, float64) {
	var long float64
	for i := 1; i < len(path); i++ {
		long += math.Hypot(path[i].X-path[i-1].X, path[i].Y-path[i-1].Y)
	}
	item := Label(Light, text, Point{}, 2, Middle)
	at := 0.0
	for i := 1; i < len(path); i++ {
		step := math.Hypot(path[i].X-path[i-1].X, path[i].Y-path[i-1].Y)
		if at += step; at < long/2 || step == 0 {
			continue
		}
		f := 1 - (at-long/2)/step
		item.Points = []Point{{path[i-1].X + f*(path[i].X-path[i-1].X), path[i-1].Y + f*(path[i].Y-path[i-1].Y)}}
		item.Angle = math.Atan2(path[i-1].Y-path[i].Y, path[i].X-path[i-1].X)
		if item.Angle > math.Pi/2 {
			item.Angle -= math.Pi
		} else if item.Angle <= -math.Pi/2 {
			item.Angle += math.Pi
		}
		break
	}
	return item, long
}
