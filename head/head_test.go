package head

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// A closed surface has every edge twice, once each way, and triangles look where their
// vertices' normals do.
func TestClosed(t *testing.T) {
	m := Sculpt()
	edges := map[[2]int32]int{}
	against := 0
	for _, c := range m.Triangles {
		for k := range c {
			edges[[2]int32{c[k], c[(k+1)%3]}]++
		}
		a, b, d := m.Vertices[c[0]], m.Vertices[c[1]], m.Vertices[c[2]]
		if n := r3.Cross(r3.Sub(b, a), r3.Sub(d, a)); r3.Dot(n, m.Normals[c[0]]) < 0 {
			against++
		}
	}
	for e, count := range edges {
		if back := edges[[2]int32{e[1], e[0]}]; back != count {
			t.Fatalf("edge %v is there %d times one way and %d the other", e, count, back)
		}
	}
	if share := float64(against) / float64(len(m.Triangles)); share > 0.002 {
		t.Errorf("%.2g of the triangles look against their normals", share)
	}
}

// Volume (divergence theorem) and normals of a ball: 4/3 pi r^3, outward from the middle.
func TestBall(t *testing.T) {
	center, radius := v(0.1, -0.2, 0.3), 0.1
	m := Ball(center, radius, 0.003)
	volume := 0.0
	for _, c := range m.Triangles {
		a, b, d := r3.Sub(m.Vertices[c[0]], center), r3.Sub(m.Vertices[c[1]], center), r3.Sub(m.Vertices[c[2]], center)
		volume += r3.Dot(a, r3.Cross(b, d)) / 6
	}
	if want := 4.0 / 3 * math.Pi * radius * radius * radius; math.Abs(volume/want-1) > 2e-3 {
		t.Errorf("volume %g, want %g", volume, want)
	}
	for i, p := range m.Vertices {
		if off := r3.Sub(p, center); math.Abs(length(off)-radius) > 1e-6 || r3.Dot(off, m.Normals[i]) < radius*(1-1e-5) {
			t.Fatalf("vertex %v: normal %v", p, m.Normals[i])
		}
	}
}

// A ray past a ball is free and one through it is not: the distance of a line from a
// point decides.
func TestBlockedByABall(t *testing.T) {
	const radius = 0.1
	b := BlocksOf(Ball(r3.Vec{}, radius, 0.003))
	for i := range 4000 {
		a, c := float64(i)*0.618033988749895, float64(i)*0.754877666246693
		from := r3.Scale(0.5, v(math.Cos(a), math.Sin(a), math.Cos(c)))
		to := r3.Scale(0.14, v(math.Sin(c*3), math.Cos(a*5), math.Sin(a*7)))
		way := r3.Sub(to, from)
		near := length(r3.Cross(from, way)) / length(way)
		if math.Abs(near-radius) < 2e-4 {
			continue
		}
		if got, want := b.Blocked(from, way), near < radius; got != want {
			t.Fatalf("ray %v %v passes %g m from the middle: blocked %v", from, way, near, got)
		}
	}
}

// From all over the face the tree tells what testing every triangle tells.
func TestTreeIsBruteForce(t *testing.T) {
	m := Sculpt()
	b := BlocksOf(m)
	if len(b.edges) != len(m.Triangles) {
		t.Fatalf("the tree holds %d of %d triangles", len(b.edges), len(m.Triangles))
	}
	blocked := 0
	for k := range 300 {
		i := (k*7919 + 13) % len(m.Vertices)
		from := r3.Add(m.Vertices[i], r3.Scale(0.0008, m.Normals[i]))
		a := float64(k) * 2.399963
		way := v(math.Cos(a), math.Sin(a), 0.2+float64(k%7)/3)
		r := ray{from, way, v(1/way.X, 1/way.Y, 1/way.Z)}
		want := false
		for j := range b.edges {
			want = want || r.hits(&b.edges[j])
		}
		if got := b.Blocked(from, way); got != want {
			t.Fatalf("from %v along %v: got %v, every triangle says %v", from, way, got, want)
		}
		if want {
			blocked++
		}
	}
	if blocked < 30 || blocked > 270 {
		t.Errorf("%d of 300 rays are blocked: the check is idle", blocked)
	}
}

// It is a head: the sockets lie behind brow and cheek, the nose stands out before the
// lip, the chin before the neck, and both sides are alike. Measures as in doc.go, common
// practice, to the 5 mm that a plain sculpture keeps.
func TestMeasures(t *testing.T) {
	f := sculpture()
	front := func(y, z float64) float64 { // where a level line from before meets it
		for x := 0.06; x > -0.3; x -= 1e-4 {
			if f(v(x, y, z)) < 0 {
				return x
			}
		}
		return math.NaN()
	}
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 0.005 {
			t.Errorf("%s: %.4f m, want about %.3f", what, got, want)
		}
	}
	near("eyeball", front(0.0315, 0), 0)
	near("brow", front(0.030, 0.022), 0.012)
	if !(front(0, -0.036) > front(0, -0.055)+0.01) {
		t.Error("the nose does not stand out before the lip")
	}
	if !(front(0, -0.100) > front(0, -0.15)+0.04) {
		t.Error("the chin does not stand out before the neck")
	}
	low, high := math.Inf(1), math.Inf(-1)
	m := Sculpt()
	for _, p := range m.Vertices {
		if p.Z > -0.13 && p.X > -0.03 {
			low = math.Min(low, p.Z)
		}
		high = math.Max(high, p.Z)
	}
	near("crown over the eyes", high, 0.11)
	near("chin to crown", high-low, 0.23)
	for _, p := range m.Vertices {
		if a, b := f(p), f(v(p.X, -p.Y, p.Z)); math.Abs(a-b) > 1e-12 {
			t.Fatalf("at %v the sides differ: %g and %g", p, a, b)
		}
	}
}

// The view from before shows a vertex where parallel projection puts it, the nearest of
// all that lie behind each other, and covers about the head's outline.
func TestView(t *testing.T) {
	m := Ball(r3.Vec{}, 0.1, 0.004)
	w := FromBefore(m, 0, r3.Vec{}, 0.3, 150, 150)
	value := make([]float64, len(m.Vertices))
	for i, p := range m.Vertices {
		value[i] = p.X
	}
	x, cover := w.Spread(value)
	area := 0.0
	for i := range x {
		area += cover[i] * 0.002 * 0.002
		if cover[i] < 1 {
			continue
		}
		y, z := (float64(i%150)+0.5)*0.002-0.15, 0.15-(float64(i/150)+0.5)*0.002
		if want := math.Sqrt(0.01 - y*y - z*z); want > 0.03 && math.Abs(x[i]-want) > 0.002 {
			t.Fatalf("at %g, %g is shown %g, want %g", y, z, x[i], want)
		}
	}
	if want := math.Pi * 0.01; math.Abs(area/want-1) > 0.01 {
		t.Errorf("it covers %g m2, want %g", area, want)
	}
}

// Where nothing stands before a place's plane, nothing blocks: against every vertex. The
// crown is such a place, the socket is none.
func TestFree(t *testing.T) {
	m := Sculpt()
	b := BlocksOf(m)
	free := 0
	for i := 0; i < len(m.Vertices); i += 61 {
		n := m.Normals[i]
		from := r3.Add(m.Vertices[i], r3.Scale(0.0008, n))
		want := true
		for _, p := range m.Vertices {
			want = want && r3.Dot(r3.Sub(p, from), n) <= 1e-15
		}
		if got := b.Free(from, n); got != want {
			t.Fatalf("at %v: free %v, every vertex says %v", m.Vertices[i], got, want)
		}
		if want {
			free++
		}
	}
	if free < 50 {
		t.Errorf("%d places are free: the check is idle", free)
	}
}
