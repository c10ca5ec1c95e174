package head

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// View is a picture's geometry, seen from far off: parallel, upright. Every picture
// element has several samples.
type View struct {
	Width, Height int // elements
	Fine          int // samples along each edge of an element
	Toward        r3.Vec
	right, up     r3.Vec
	center        r3.Vec
	size          float64 // of an element, m
	mesh          *Mesh
	shown         []shown // of the samples, x fastest, from the top
}

// shown is what a sample shows: a triangle and the weights of its corners; none is -1.
type shown struct {
	triangle int32
	b, c     float32
}

// FromBefore looks at a head from before it, turned so far (rad) to its left, from far
// off. The picture holds height m about a place.
func FromBefore(m *Mesh, turn float64, center r3.Vec, height float64, width, high int) *View {
	sin, cos := math.Sincos(turn)
	w := &View{Width: width, Height: high, Fine: 2, Toward: v(cos, sin, 0), right: v(-sin, cos, 0), up: v(0, 0, 1),
		center: center, size: height / float64(high), mesh: m}
	w.shown = make([]shown, width*high*w.Fine*w.Fine)
	w.project()
	return w
}

// project finds the nearest triangle of every sample.
func (w *View) project() {
	for i := range w.shown {
		w.shown[i].triangle = -1
	}
	depth := make([]float64, len(w.shown))
	for i := range depth {
		depth[i] = math.Inf(-1)
	}
	for i, t := range w.mesh.Triangles {
		var p [3]r3.Vec
		for k, c := range t {
			p[k] = w.onto(w.mesh.Vertices[c])
		}
		w.paint(int32(i), p, depth)
	}
}

// onto gives a place's samples across and down, and how near it is.
func (w *View) onto(p r3.Vec) r3.Vec {
	d := r3.Sub(p, w.center)
	step := w.size / float64(w.Fine)
	return v(float64(w.Width*w.Fine)/2+r3.Dot(d, w.right)/step, float64(w.Height*w.Fine)/2-r3.Dot(d, w.up)/step, r3.Dot(d, w.Toward))
}

func (w *View) paint(index int32, p [3]r3.Vec, depth []float64) {
	area := (p[1].X-p[0].X)*(p[2].Y-p[0].Y) - (p[2].X-p[0].X)*(p[1].Y-p[0].Y)
	if area >= 0 { // from behind: y runs down
		return
	}
	nx, ny := w.Width*w.Fine, w.Height*w.Fine
	x0 := max(0, int(math.Ceil(min(p[0].X, p[1].X, p[2].X)-0.5)))
	x1 := min(nx-1, int(math.Floor(max(p[0].X, p[1].X, p[2].X)-0.5)))
	y0 := max(0, int(math.Ceil(min(p[0].Y, p[1].Y, p[2].Y)-0.5)))
	y1 := min(ny-1, int(math.Floor(max(p[0].Y, p[1].Y, p[2].Y)-0.5)))
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			px, py := float64(x)+0.5-p[0].X, float64(y)+0.5-p[0].Y
			b := (px*(p[2].Y-p[0].Y) - (p[2].X-p[0].X)*py) / area
			c := ((p[1].X-p[0].X)*py - px*(p[1].Y-p[0].Y)) / area
			if b < 0 || c < 0 || b+c > 1 {
				continue
			}
			near := p[0].Z + b*(p[1].Z-p[0].Z) + c*(p[2].Z-p[0].Z)
			if at := y*nx + x; near > depth[at] {
				depth[at] = near
				w.shown[at] = shown{index, float32(b), float32(c)}
			}
		}
	}
}

// Seen lists the vertices of all triangles that are shown, in order.
func (w *View) Seen() []int {
	used := make([]bool, len(w.mesh.Vertices))
	for _, s := range w.shown {
		if s.triangle >= 0 {
			for _, c := range w.mesh.Triangles[s.triangle] {
				used[c] = true
			}
		}
	}
	var all []int
	for i, u := range used {
		if u {
			all = append(all, i)
		}
	}
	return all
}

// Spread turns values at the vertices into those of the picture's elements, x fastest
// from the top, and tells how much of each element the head covers. The value of an
// element that it leaves free is NaN.
func (w *View) Spread(value []float64) (element, cover []float64) {
	element, cover = make([]float64, w.Width*w.Height), make([]float64, w.Width*w.Height)
	for y := range w.Height {
		for x := range w.Width {
			sum, count := 0.0, 0.0
			for k := range w.Fine * w.Fine {
				s := &w.shown[(y*w.Fine+k/w.Fine)*w.Width*w.Fine+x*w.Fine+k%w.Fine]
				if s.triangle < 0 {
					continue
				}
				t := w.mesh.Triangles[s.triangle]
				b, c := float64(s.b), float64(s.c)
				sum += (1-b-c)*value[t[0]] + b*value[t[1]] + c*value[t[2]]
				count++
			}
			element[y*w.Width+x], cover[y*w.Width+x] = sum/count, count/float64(w.Fine*w.Fine)
		}
	}
	return element, cover
}
