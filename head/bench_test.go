package head

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Rays to a 14 x 14 overhead from all over what is seen from before; one iteration is
// one ray.
func BenchmarkBlocked(b *testing.B) {
	m := Sculpt()
	blocks := BlocksOf(m)
	seen := FromBefore(m, 0, v(-0.06, 0, -0.042), 0.32, 312, 400).Seen()
	k := 0
	for b.Loop() {
		k++
		i := seen[k/196%len(seen)]
		pane := k % 196
		from := r3.Add(m.Vertices[i], r3.Scale(0.0008, m.Normals[i]))
		way := v(4*(float64(pane%14)/14-0.5), 4*(float64(pane/14)/14-0.5), 2.5)
		if r3.Dot(way, m.Normals[i]) > 0 {
			blocks.Blocked(from, way)
		}
	}
}

func BenchmarkSculpt(b *testing.B) {
	for b.Loop() {
		Sculpt()
	}
}
