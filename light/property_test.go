package light

import (
	"math"
	"runtime"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"softloft/shape"
)

// full is a scene with one of everything.
func full() Scene {
	s := boxScene()
	s.Size, s.Clear = [2]float64{3.6, 2.4}, [2]float64{3.4, 2.2}
	s.Sides = [4]Side{{true, 0.8, 0.04}, {true, 0.04, 0.04}, {}, {true, 0.5, 0.04}}
	s.Roof = Roof{Reflectance: 0.7}
	s.Skirts = [4]float64{0.3, 1.5, 0.6, 0}
	s.Cloths = []Cloth{{Diffuse: 0.35, Back: 0.4, Through: 0.05, Gap: 0.2}, {Diffuse: 0.3, Back: 0.3, ForwardPart: 0.2, ForwardSigma: 0.2, Through: 0.05}}
	s.Lamps = []Lamp{aimed(-1, 0.5, 0.5, 0, 0, true), aimed(1, 0.4, 0.45, 0.4, 1, true), aimed(0.2, -0.6, 0.5, -0.5, 2.5, false)}
	s.Blockers = []shape.Solid{shape.Cylinder{From: r3.Vec{X: -1.8, Y: 0.5, Z: 0.55}, To: r3.Vec{X: 1.8, Y: 0.5, Z: 0.55}, Radius: 0.02}}
	s.Outside = []shape.Polygon{{{X: -1.5, Y: -1, Z: -4}, {X: -1.5, Y: 1.2, Z: -4}, {X: -1.5, Y: 1.2, Z: -0.8}, {X: -1.5, Y: -1, Z: -1.4}}}
	return s
}

// turned is a scene turned a quarter about z: x to y, y to -x.
func turned(s Scene) Scene {
	q := func(v r3.Vec) r3.Vec { return r3.Vec{X: -v.Y, Y: v.X, Z: v.Z} }
	t := s
	t.Size, t.Clear = [2]float64{s.Size[1], s.Size[0]}, [2]float64{s.Clear[1], s.Clear[0]}
	t.Sides = [4]Side{North: s.Sides[East], South: s.Sides[West], East: s.Sides[South], West: s.Sides[North]}
	t.Skirts = [4]float64{North: s.Skirts[East], South: s.Skirts[West], East: s.Skirts[South], West: s.Skirts[North]}
	t.Lamps, t.Blockers, t.Outside = nil, nil, nil
	for _, l := range s.Lamps {
		l.Centre, l.Axis, l.U, l.V = q(l.Centre), q(l.Axis), q(l.U), q(l.V)
		t.Lamps = append(t.Lamps, l)
	}
	for _, b := range s.Blockers {
		c := b.(shape.Cylinder)
		c.From, c.To = q(c.From), q(c.To)
		t.Blockers = append(t.Blockers, c)
	}
	for _, p := range s.Outside {
		var turned shape.Polygon
		for _, c := range p {
			turned = append(turned, q(c))
		}
		t.Outside = append(t.Outside, turned)
	}
	return t
}

// A quarter turn of everything changes nothing.
func TestQuarterTurn(t *testing.T) {
	t.Parallel()
	plain := full()
	plain.Cloths[1].ForwardPart, plain.Cloths[1].Diffuse = 0, 0.5
	quarterTurn(t, plain, 5e-5)
	// The lobe's sum meets the edge of a shadow point by point only.
	quarterTurn(t, full(), 1e-2)
}

func quarterTurn(t *testing.T, s Scene, tolerance float64) {
	t.Helper()
	a, b := prepared(t, s), prepared(t, turned(s))
	for _, r := range walkPoints {
		p := r3.Vec{X: -r.p.Y, Y: r.p.X, Z: r.p.Z}
		n := r3.Vec{X: -r.n.Y, Y: r.n.X, Z: r.n.Z}
		for _, receptor := range []Receptor{Flat, Dome, Cylinder, Scalar} {
			rel(t, "turned", b.At(p, n, receptor), a.At(r.p, r.n, receptor), tolerance)
		}
	}
}

// Twice the lumens is twice the light, and lamps add up.
func TestLinear(t *testing.T) {
	t.Parallel()
	s := full()
	whole := prepared(t, s)
	var parts []*Engine
	for i := range s.Lamps {
		one := s
		one.Lamps = append([]Lamp(nil), s.Lamps...)
		for k := range one.Lamps {
			if k != i {
				one.Lamps[k].Lumens = 0
			}
		}
		parts = append(parts, prepared(t, one))
	}
	for _, r := range walkPoints {
		sum := 0.0
		for _, e := range parts {
			sum += e.At(r.p, r.n, Flat)
		}
		rel(t, "sum of lamps", sum, whole.At(r.p, r.n, Flat), 2e-3) // cells of the bounce move with the light
	}
}

// The same bytes for any number of cores.
func TestSameBytes(t *testing.T) {
	read := func() []float64 {
		e := prepared(t, full())
		out := make([]float64, 60)
		var wait sync.WaitGroup
		for k := range runtime.GOMAXPROCS(0) {
			wait.Add(1)
			go func() {
				defer wait.Done()
				for i := k; i < len(out); i += runtime.GOMAXPROCS(0) {
					out[i] = e.At(r3.Vec{X: float64(i%10) - 5, Y: float64(i/10) - 3, Z: -2.5}, up, Dome)
				}
			}()
		}
		wait.Wait()
		return out
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	one := read()
	runtime.GOMAXPROCS(4)
	for i, x := range read() {
		if math.Float64bits(x) != math.Float64bits(one[i]) {
			t.Fatalf("point %d: %v on one core, %v on four", i, one[i], x)
		}
	}
}

// The vector is the difference of before and behind, for any direction.
func TestVectorIsDifference(t *testing.T) {
	t.Parallel()
	e := prepared(t, full())
	rapid.Check(t, func(t *rapid.T) {
		g := rapid.Float64Range(-3, 3)
		p := r3.Vec{X: g.Draw(t, "x"), Y: g.Draw(t, "y"), Z: rapid.Float64Range(-4, -0.7).Draw(t, "z")}
		n := r3.Vec{X: g.Draw(t, "nx"), Y: g.Draw(t, "ny"), Z: g.Draw(t, "nz")}
		if r3.Norm(n) < 0.1 {
			return
		}
		n = r3.Unit(n)
		d := e.At(p, n, Flat) - e.At(p, r3.Scale(-1, n), Flat)
		v := e.Vector(p)
		if math.Abs(d-r3.Dot(v, n)) > 2e-3*r3.Norm(v)+1e-6 {
			t.Fatalf("difference %g, vector gives %g", d, r3.Dot(v, n))
		}
	})
}

// Nothing panics, and what is no number stays none.
func TestNoNumbers(t *testing.T) {
	t.Parallel()
	e := prepared(t, full())
	for _, bad := range []r3.Vec{{X: math.NaN()}, {Y: math.Inf(1)}} {
		if x := e.At(bad, up, Flat); !math.IsNaN(x) {
			t.Errorf("at %v: %g", bad, x)
		}
		if x := e.At(r3.Vec{Z: -1}, bad, Flat); !math.IsNaN(x) {
			t.Errorf("facing %v: %g", bad, x)
		}
	}
	if x := e.At(r3.Vec{Z: -1}, r3.Vec{}, Flat); !math.IsNaN(x) {
		t.Errorf("facing nowhere: %g", x)
	}
	for _, p := range []r3.Vec{{}, {Z: -0.05}, {Z: 0.3}, {X: 1.7, Y: 1.1}, {X: 5, Z: 0.3}, {Z: 9}, {X: 1.8, Y: 1.2, Z: -0.3}} {
		for _, n := range []r3.Vec{up, alongX, {Z: -1}} {
			if x := e.At(p, n, Flat); !(x >= 0) || math.IsInf(x, 0) {
				t.Errorf("at %v: %g", p, x)
			}
		}
	}
}

// Scenes that make no sense are refused in words.
func TestRefused(t *testing.T) {
	for name, spoil := range map[string]func(*Scene){
		"size":   func(s *Scene) { s.Size[0] = 0 },
		"clear":  func(s *Scene) { s.Clear[1] = 99 },
		"depth":  func(s *Scene) { s.Depth = math.NaN() },
		"cloth":  func(s *Scene) { s.Cloths = []Cloth{{Diffuse: 0.8, Back: 0.4}} },
		"lobe":   func(s *Scene) { s.Cloths = []Cloth{{ForwardPart: 0.4}} },
		"crate":  func(s *Scene) { s.Crate = &Crate{CellX: 0.1, CellY: 0, Depth: 0.1} },
		"side":   func(s *Scene) { s.Sides[0].Inner = 1.2 },
		"lumens": func(s *Scene) { s.Lamps[0].Lumens = math.Inf(1) },
		"axes":   func(s *Scene) { s.Lamps[0].U = r3.Vec{X: 1, Y: 1} },
		"spread": func(s *Scene) { s.Lamps[0].Distribution = nil },
	} {
		s := boxScene()
		spoil(&s)
		if _, err := Prepare(s); err == nil {
			t.Errorf("%s was taken", name)
		}
	}
}

// An opening on the cloth puts all of its flux into the cloth under it: what
// leaves below is the closed form of the opening times the cloth's share.
func TestOpeningOnTheCloth(t *testing.T) {
	for _, depth := range []float64{0, 0.5} {
		s := panelScene()
		s.Depth = depth
		for i := range s.Sides {
			s.Sides[i] = Side{Present: depth > 0, Inner: 0.8}
		}
		s.Cloths = []Cloth{{Diffuse: 0.3, Back: 0.4, Through: 0.2}}
		s.Lamps[0].Size, s.Lamps[0].Lumens = [2]float64{2, 1.5}, 3000
		e := prepared(t, s)
		bare := panelScene()
		bare.Lamps[0].Size, bare.Lamps[0].Lumens = [2]float64{2, 1.5}, 3000
		closed := prepared(t, bare)
		for _, r := range walkPoints {
			rel(t, "on the cloth", e.At(r.p, r.n, Flat), 0.5*closed.At(r.p, r.n, Flat), 1e-9)
		}
		rel(t, "cloth flux", e.clothFlux(), 3000, 1e-9)
		balance(t, e)
	}
}

// Halving the steps over a beam's opening changes the answer by under 0.3 %.
func TestOpeningSteps(t *testing.T) {
	t.Parallel()
	s := boxScene()
	s.Cloths = nil
	for _, z := range []float64{0.15, 0.3, 0.9} {
		s.Lamps = []Lamp{aimed(0.3, 0.2, z, 0.3, 1, false)}
		whole := prepared(t, s)
		quarters := s
		quarters.Lamps = nil
		l := s.Lamps[0]
		for _, a := range []float64{-1, 1} {
			for _, b := range []float64{-1, 1} {
				q := l
				q.Centre = r3.Add(l.Centre, r3.Add(r3.Scale(a*l.Size[0]/4, l.U), r3.Scale(b*l.Size[1]/4, l.V)))
				q.Size = [2]float64{l.Size[0] / 2, l.Size[1] / 2}
				q.Lumens = l.Lumens / 4
				quarters.Lamps = append(quarters.Lamps, q)
			}
		}
		four := prepared(t, quarters)
		for _, p := range []r3.Vec{{X: 0.3, Y: 0.2, Z: -0.1}, {X: 0.6, Y: 0.3, Z: -0.5}, {X: 1.5, Y: -0.5, Z: -3}} {
			rel(t, "halved", four.At(p, up, Flat), whole.At(p, up, Flat), 3e-3)
		}
	}
}
