package light

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/head"
	"softloft/shape"
)

// headUnder is a head's pose h under the cloth plane.
func headUnder(x, y, h float64) shape.Pose {
	p := shape.At(r3.Vec{X: x, Y: y, Z: -h})
	return p.Rotated(r3.Vec{Z: 1}, 0.4)
}

// A furnace: the same luminance from everywhere gives pi L on every convex place, and
// less in a socket, under the nose, under the chin.
func TestHeadInAFurnace(t *testing.T) {
	t.Parallel()
	var s senders
	for _, d := range allAround(ambientWays) {
		s.ambients = append(s.ambients, ambient{d, alike(4 * math.Pi / ambientWays)})
	}
	s.quad = headQuad()
	mesh := head.Ball(r3.Vec{}, 0.09, 0.003)
	blocks := head.BlocksOf(mesh)
	for i := 0; i < len(mesh.Vertices); i += 97 {
		rel(t, "ball", s.arriving(mesh.Vertices[i], mesh.Normals[i], blocks.Blocked), math.Pi, 0.02)
	}
	mesh = head.Sculpt()
	blocks = head.BlocksOf(mesh)
	crown, sockets := 0, 0
	for i, p := range mesh.Vertices {
		lux := s.arriving(p, mesh.Normals[i], blocks.Blocked)
		if lux > math.Pi*1.02 {
			t.Fatalf("at %v arrives %g, more than there is", p, lux)
		}
		if p.Z > 0.075 {
			crown++
			rel(t, "crown", lux, math.Pi, 0.02)
		}
		if math.Abs(math.Abs(p.Y)-0.019) < 0.002 && math.Abs(p.Z-0.006) < 0.003 && p.X > -0.02 {
			sockets++
			if lux > 0.85*math.Pi {
				t.Errorf("in the socket at %v arrives %g", p, lux)
			}
		}
	}
	if crown < 500 || sockets < 5 {
		t.Errorf("%d places on the crown, %d in sockets: the check is idle", crown, sockets)
	}
}

// A ball under a disk of luminance L that it sees wholly, on the disk's axis:
// E = pi L sin^2(alpha) cos(theta), alpha the disk's half angle from the place
// (Lambert; e.g. Siegel and Howell, 4th ed., configuration of a disk on its axis).
func TestBallUnderADisk(t *testing.T) {
	const radius, disk, high = 0.1, 1.0, 2.0
	mesh := head.Ball(r3.Vec{}, radius, 0.003)
	blocks := head.BlocksOf(mesh)
	for _, theta := range []float64{0, 0.3, 0.6, 0.9} {
		normal := r3.Vec{X: math.Sin(theta), Z: math.Cos(theta)}
		at := r3.Scale(radius, normal)
		s := senders{quad: headQuad()}
		const n = 60
		for i := range n { // rings of equal panes
			r := disk * (float64(i) + 0.5) / n
			around := 6 * (i + 1)
			side := math.Sqrt(2 * math.Pi * r * disk / n / float64(around))
			for k := range around {
				sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(around))
				s.panes = append(s.panes, sender{pane{r3.Vec{X: at.X + r*cos, Y: r * sin, Z: high}, r3.Vec{X: side / 2}, r3.Vec{Y: side / 2}}, r3.Vec{Z: -1}, [4]float64{1, 1, 1, 1}})
			}
		}
		d := high - at.Z
		want := math.Pi * disk * disk / (disk*disk + d*d) * math.Cos(theta)
		rel(t, "under a disk", s.arriving(at, normal, blocks.Blocked), want, 2e-3)
	}
}

// What the panes and directions give on any flat receiver of a head that nothing
// blocks is what the engine gives there, for every kind of source, and by way of a room.
func TestSendersAreTheEngine(t *testing.T) {
	scenes := map[string]Scene{"plain": boxScene()}
	crated, bare, lobed, leaky := boxScene(), boxScene(), boxScene(), boxScene()
	crated.Crate = &Crate{CellX: 0.1, CellY: 0.1, Depth: 0.08}
	bare.Cloths = nil
	lobed.Cloths = []Cloth{{Diffuse: 0.2, ForwardPart: 0.3, ForwardSigma: 0.3, Back: 0.3}}
	leaky.Sides = [4]Side{}
	for i := range leaky.Lamps { // beyond the edge of the cloth too
		leaky.Lamps[i].Centre.X *= 2.6
	}
	scenes["crate"], scenes["bare lamps"], scenes["lobe"], scenes["leak"] = crated, bare, lobed, leaky
	for name, scene := range scenes {
		e := prepared(t, scene)
		pose := headUnder(0.6, -0.4, 2.8)
		s, err := e.sendersTo(pose, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, at := range []r3.Vec{{X: -0.06, Z: -0.04}, {}, {X: -0.08, Z: 0.1}, {X: 0, Y: 0.03, Z: -0.1}} {
			high := e.At(pose.Out(at), up, Flat)
			for _, n := range []r3.Vec{{Z: 1}, {X: 1, Z: 1}, {X: 1}, {Y: -1, Z: 0.5}} {
				n = r3.Unit(n)
				want := e.At(pose.Out(at), pose.OutDirection(n), Flat)
				if got := s.arriving(at, n, nothing); math.Abs(got-want) > 0.02*math.Max(want, 0.25*high) {
					t.Errorf("%s at %v facing %v: %.5g lx, the engine %.5g", name, at, n, got, want)
				}
			}
		}
	}
}

// Six readings come back from the light made of them: of a light that is a sum of
// squared cosines, exactly but for the bins.
func TestAmbientGivesReadingsBack(t *testing.T) {
	for _, amount := range [][6]float64{{1, 1, 1, 1, 1, 1}, {3, 1, 2, 0.5, 0.2, 4}, {0, 0, 0, 0, 0, 1}} {
		read := func(facing r3.Vec) float64 { // closed form over each hemisphere
			x := [6]float64{facing.X, -facing.X, facing.Y, -facing.Y, facing.Z, -facing.Z}
			sum := 0.0
			for i := range x {
				switch {
				case x[i] > 0.5:
					sum += math.Pi / 2 * amount[i]
				case x[i] > -0.5:
					sum += math.Pi / 8 * amount[i]
				}
			}
			return sum
		}
		s := senders{ambients: ambientsOf(read), quad: headQuad()}
		for _, n := range []r3.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}} {
			got := s.arriving(r3.Vec{}, n, nothing)
			if want := read(n); math.Abs(got-want) > 0.03*math.Max(want, 1) {
				t.Errorf("%v facing %v: %g, want %g", amount, n, got, want)
			}
		}
	}
}

// Under the brow exactly the panes are missing that a triangle of the head hides, each
// looked for by brute force; and they are most of an overhead.
func TestUnderTheBrow(t *testing.T) {
	t.Parallel()
	e := prepared(t, boxScene())
	s, err := e.sendersTo(shape.At(r3.Vec{Z: -2.5}), nil)
	if err != nil {
		t.Fatal(err)
	}
	mesh := head.Sculpt()
	blocks := head.BlocksOf(mesh)
	at, normal := r3.Vec{X: 0.0002, Y: 0.0315, Z: 0}, r3.Unit(r3.Vec{X: 1, Z: 0.1})
	from := r3.Add(at, r3.Scale(offSurface, normal))
	all, left := 0.0, 0.0
	for _, p := range s.panes {
		d := r3.Sub(p.center, from)
		if r3.Dot(d, normal) <= 0 {
			continue
		}
		r2 := r3.Norm2(d)
		w := s.quad.weights(at)
		l := p.luminance[0]*w[0] + p.luminance[1]*w[1] + p.luminance[2]*w[2] + p.luminance[3]*w[3]
		lux := l * r3.Dot(d, normal) * d.Z / (r2 * r2) * p.area()
		all += lux
		hidden := false
		for _, c := range mesh.Triangles {
			if (shape.Polygon{mesh.Vertices[c[0]], mesh.Vertices[c[1]], mesh.Vertices[c[2]]}).Crosses(from, p.center) {
				hidden = true
				break
			}
		}
		if !hidden {
			left += lux
		}
	}
	rel(t, "under the brow", s.arriving(at, normal, blocks.Blocked), left, 1e-9)
	if share := left / all; share <= 0 || share > 0.7 {
		t.Errorf("%g of the light is left", share)
	}
}

// The same bytes however often, on however many cores: what every vertex gets is added
// up in one order.
func TestPortraitRepeats(t *testing.T) {
	t.Parallel()
	e := prepared(t, boxScene())
	studio := newStudio(Ask{Width: 60, Height: 80})
	lit := func() []float64 {
		s, err := e.sendersTo(headUnder(0.3, 0, 3), nil)
		if err != nil {
			t.Fatal(err)
		}
		return studio.lit(s)
	}
	if !slices.EqualFunc(lit(), lit(), func(a, b float64) bool { return math.Float64bits(a) == math.Float64bits(b) }) {
		t.Error("two portraits differ")
	}
	s, _ := e.sendersTo(headUnder(0.3, 0, 3), nil)
	for k, i := range studio.seen { // nothing is left out where nothing is looked for
		if k%23 == 0 && studio.litAt(s, i) != s.arriving(studio.mesh.Vertices[i], studio.mesh.Normals[i], studio.blocks.Blocked) {
			t.Fatalf("vertex %d is lit otherwise where every ray is followed", i)
		}
	}
	if _, err := e.sendersTo(headUnder(0, 0, -1), nil); err == nil {
		t.Error("a head over the cloth has a portrait")
	}
}
