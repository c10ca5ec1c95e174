package head

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"
)

// Blocks tells what of a light a mesh takes from places on and about it. It does not
// change and may be used from many goroutines.
type Blocks struct {
	mesh  *Mesh
	edges []corner // of the triangles, in the tree's order
	nodes []node
}

// corner is a triangle by one corner and two edges.
type corner struct{ at, u, v r3.Vec }

// node is a box of the tree: leaves have count triangles from first; others have their
// first child next to them and the second at first.
type node struct {
	low, high    r3.Vec
	first, count int32
}

// leafSize is how many triangles a leaf has at most.
const leafSize = 4

// BlocksOf sorts a mesh into a tree of boxes.
func BlocksOf(m *Mesh) *Blocks {
	b := &Blocks{mesh: m}
	order := make([]int32, len(m.Triangles))
	middles := make([]r3.Vec, len(m.Triangles))
	for i, t := range m.Triangles {
		order[i] = int32(i)
		middles[i] = r3.Scale(1.0/3, r3.Add(m.Vertices[t[0]], r3.Add(m.Vertices[t[1]], m.Vertices[t[2]])))
	}
	b.grow(order, middles)
	return b
}

// grow adds the tree of some triangles.
func (b *Blocks) grow(order []int32, middles []r3.Vec) {
	index := len(b.nodes)
	low, high := b.bounds(order)
	b.nodes = append(b.nodes, node{low: low, high: high, first: int32(len(b.edges)), count: int32(len(order))})
	if len(order) <= leafSize {
		for _, i := range order {
			t := b.mesh.Triangles[i]
			p := b.mesh.Vertices[t[0]]
			b.edges = append(b.edges, corner{p, r3.Sub(b.mesh.Vertices[t[1]], p), r3.Sub(b.mesh.Vertices[t[2]], p)})
		}
		return
	}
	size := r3.Sub(high, low)
	along := func(p r3.Vec) float64 { return p.Z }
	switch {
	case size.X >= size.Y && size.X >= size.Z:
		along = func(p r3.Vec) float64 { return p.X }
	case size.Y >= size.Z:
		along = func(p r3.Vec) float64 { return p.Y }
	}
	sort.SliceStable(order, func(i, j int) bool { return along(middles[order[i]]) < along(middles[order[j]]) })
	half := len(order) / 2
	b.grow(order[:half], middles)
	b.nodes[index].count, b.nodes[index].first = 0, int32(len(b.nodes))
	b.grow(order[half:], middles)
}

func (b *Blocks) bounds(order []int32) (low, high r3.Vec) {
	low, high = v(math.Inf(1), math.Inf(1), math.Inf(1)), v(math.Inf(-1), math.Inf(-1), math.Inf(-1))
	for _, i := range order {
		for _, c := range b.mesh.Triangles[i] {
			p := b.mesh.Vertices[c]
			low = v(math.Min(low.X, p.X), math.Min(low.Y, p.Y), math.Min(low.Z, p.Z))
			high = v(math.Max(high.X, p.X), math.Max(high.Y, p.Y), math.Max(high.Z, p.Z))
		}
	}
	return low, high
}
