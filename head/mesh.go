package head

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Mesh is a closed surface of triangles. Corners run counter-clockwise from outside,
// and Normals are unit vectors outward at the vertices.
type Mesh struct {
	Vertices  []r3.Vec
	Normals   []r3.Vec
	Triangles [][3]int32
}

// grain is the width of a cell (m) of the sculpture's mesh.
const grain = 0.003

// Sculpt makes the head. It always makes the same one.
func Sculpt() *Mesh {
	return meshOf(sculpture(), v(-0.204, -0.147, -0.243), v(0.048, 0.147, 0.126), grain)
}

// Ball is a sphere as a mesh: for checks against closed forms.
func Ball(center r3.Vec, radius, grain float64) *Mesh {
	r := radius + 2.5*grain
	return meshOf(ball(center, radius).form, r3.Sub(center, v(r, r, r)), r3.Add(center, v(r, r, r)), grain)
}

// net is a surface being made over a grid of cells.
type net struct {
	form    form
	low     r3.Vec
	grain   float64
	n       [3]int // nodes along x, y, z
	value   []float64
	vertex  []int32 // of a cell, or -1
	surface *Mesh
}

func meshOf(f form, low, high r3.Vec, grain float64) *Mesh {
	size := r3.Sub(high, low)
	count := func(x float64) int { return int(math.Ceil(x/grain)) + 1 }
	n := &net{form: f, low: low, grain: grain, n: [3]int{count(size.X), count(size.Y), count(size.Z)}, surface: &Mesh{}}
	n.sample()
	n.setVertices()
	n.setTriangles()
	return n.surface
}

func (n *net) index(i, j, k int) int { return (k*n.n[1]+j)*n.n[0] + i }

func (n *net) node(i, j, k int) r3.Vec {
	return r3.Add(n.low, v(float64(i)*n.grain, float64(j)*n.grain, float64(k)*n.grain))
}

// block is how many nodes along an edge are skipped together where the surface is far.
const block = 6

// sample reads the field on the nodes; block by block where the middle of one is farther
// from the surface than its corners are from the middle.
func (n *net) sample() {
	n.value = make([]float64, n.n[0]*n.n[1]*n.n[2])
	half := float64(block-1) / 2 * n.grain
	for k := 0; k < n.n[2]; k += block {
		for j := 0; j < n.n[1]; j += block {
			for i := 0; i < n.n[0]; i += block {
				middle := n.form(r3.Add(n.node(i, j, k), v(half, half, half)))
				near := math.Abs(middle) < 2*math.Sqrt(3)*(half+n.grain)
				n.each(i, j, k, func(at int, p r3.Vec) {
					n.value[at] = middle
					if near {
						n.value[at] = n.form(p)
					}
				})
			}
		}
	}
}

// each visits the nodes of a block.
func (n *net) each(i, j, k int, do func(at int, p r3.Vec)) {
	for c := k; c < min(k+block, n.n[2]); c++ {
		for b := j; b < min(j+block, n.n[1]); b++ {
			for a := i; a < min(i+block, n.n[0]); a++ {
				do(n.index(a, b, c), n.node(a, b, c))
			}
		}
	}
}

// setVertices puts one vertex into every cell with corners on both sides.
func (n *net) setVertices() {
	n.vertex = make([]int32, len(n.value))
	for i := range n.vertex {
		n.vertex[i] = -1
	}
	for k := range n.n[2] - 1 {
		for j := range n.n[1] - 1 {
			for i := range n.n[0] - 1 {
				if p, ok := n.crossing(i, j, k); ok {
					n.vertex[n.index(i, j, k)] = int32(len(n.surface.Vertices))
					p = n.ontoSurface(p)
					n.surface.Vertices = append(n.surface.Vertices, p)
					n.surface.Normals = append(n.surface.Normals, n.gradient(p))
				}
			}
		}
	}
}

// crossing is the mean of the places where the surface crosses a cell's edges.
func (n *net) crossing(i, j, k int) (r3.Vec, bool) {
	var at [8]float64
	inside := 0
	for c := range at {
		at[c] = n.value[n.index(i+c&1, j+c>>1&1, k+c>>2&1)]
		if at[c] < 0 {
			inside++
		}
	}
	if inside == 0 || inside == 8 {
		return r3.Vec{}, false
	}
	var sum r3.Vec
	count := 0.0
	for c := range at {
		for _, bit := range [3]int{1, 2, 4} {
			d := c | bit
			if c&bit != 0 || (at[c] < 0) == (at[d] < 0) {
				continue
			}
			t := at[c] / (at[c] - at[d])
			a, b := n.node(i+c&1, j+c>>1&1, k+c>>2&1), n.node(i+d&1, j+d>>1&1, k+d>>2&1)
			sum = r3.Add(sum, r3.Add(a, r3.Scale(t, r3.Sub(b, a))))
			count++
		}
	}
	return r3.Scale(1/count, sum), true
}

// ontoSurface draws a vertex onto the surface, no farther than half a cell.
func (n *net) ontoSurface(p r3.Vec) r3.Vec {
	for range 2 {
		d := math.Max(-n.grain/2, math.Min(n.grain/2, n.form(p)))
		p = r3.Sub(p, r3.Scale(d, n.gradient(p)))
	}
	return p
}

// gradient is the unit vector outward.
func (n *net) gradient(p r3.Vec) r3.Vec {
	const h = 8e-4
	g := v(n.form(r3.Add(p, v(h, 0, 0)))-n.form(r3.Add(p, v(-h, 0, 0))),
		n.form(r3.Add(p, v(0, h, 0)))-n.form(r3.Add(p, v(0, -h, 0))),
		n.form(r3.Add(p, v(0, 0, h)))-n.form(r3.Add(p, v(0, 0, -h))))
	size := length(g)
	if size == 0 {
		return v(0, 0, 1)
	}
	return r3.Scale(1/size, g)
}

// setTriangles joins the vertices of the four cells about every edge that the surface
// crosses.
func (n *net) setTriangles() {
	steps := [3][3]int{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	for k := 1; k < n.n[2]-1; k++ {
		for j := 1; j < n.n[1]-1; j++ {
			for i := 1; i < n.n[0]-1; i++ {
				in := n.value[n.index(i, j, k)] < 0
				for axis, s := range steps {
					if in == (n.value[n.index(i+s[0], j+s[1], k+s[2])] < 0) {
						continue
					}
					a, b := steps[(axis+1)%3], steps[(axis+2)%3]
					n.quad(in, n.cell(i, j, k, a, b, 1, 1), n.cell(i, j, k, a, b, 0, 1), n.cell(i, j, k, a, b, 0, 0), n.cell(i, j, k, a, b, 1, 0))
				}
			}
		}
	}
}

// cell is the vertex of the cell so many steps back along two axes.
func (n *net) cell(i, j, k int, a, b [3]int, na, nb int) int32 {
	return n.vertex[n.index(i-na*a[0]-nb*b[0], j-na*a[1]-nb*b[1], k-na*a[2]-nb*b[2])]
}

func (n *net) quad(inside bool, a, b, c, d int32) {
	if a < 0 || b < 0 || c < 0 || d < 0 {
		return
	}
	if !inside {
		b, d = d, b
	}
	n.surface.Triangles = append(n.surface.Triangles, [3]int32{a, b, c}, [3]int32{a, c, d})
}
