package light

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

const foot = 0.3048

// penumbras are shadow edges of a source of width S, edge d1 below it and receiver d2
// behind the edge. Source: elementary geometry (similar triangles), penumbra S d2/d1;
// cases of common practice: a box of 12 or 4 ft, 10 ft over a nose or a floor, and a
// lens of 0.1 m.
var penumbras = []struct {
	size, d1, d2, want float64
}{
	{1, 2, 1, 0.5},
	{0.2, 1, 1, 0.2},
	{12 * foot, 10 * foot, foot / 12, 0.03048},
	{4 * foot, 10 * foot, foot / 12, 0.01016},
	{12 * foot, 10 * foot, 5.5 * foot, 2.01168},
	{4 * foot, 10 * foot, 5.5 * foot, 0.67056},
	{0.1, 3, 1.7, 0.05666667},
}

// The whole width of an edge is that of the geometry: beyond it nothing is hidden or
// everything, and within it some.
func TestPenumbra(t *testing.T) {
	for _, c := range penumbras {
		e := prepared(t, open(c.size, c.size))
		d := c.d1 + c.d2
		at, half := r3.Vec{Z: -d}, c.want*c.d1/(2*c.d2*d) // tangent at the source's edge
		total := e.At(at, up, Flat)
		left := func(tangent float64) float64 {
			return e.veiled(halfVeil(at, up, alongX, tangent, veilAway)).At(at, up, Flat) / total
		}
		if v := left(-half * 1.000001); v != 0 {
			t.Errorf("%v: %g is left before the shadow's edge", c, v)
		}
		if v := left(half * 1.000001); math.Abs(v-1) > 1e-9 {
			t.Errorf("%v: %g is left beyond the shadow's edge", c, v)
		}
		if in, out := left(-half*0.999), left(half*0.999); in <= 0 || out >= 1 {
			t.Errorf("%v: within the edge are left %g and %g", c, in, out)
		}
	}
}

// corner is the configuration factor of a rectangle a x b, h over a point under its
// corner: Siegel and Howell, Thermal Radiation Heat Transfer, 4th ed., p. 842.
func corner(a, b, h float64) float64 {
	x, y := a/h, b/h
	return (x/math.Hypot(1, x)*math.Atan(y/math.Hypot(1, x)) + y/math.Hypot(1, y)*math.Atan(x/math.Hypot(1, y))) / (2 * math.Pi)
}

// From 10 to 90 %: against the handbook's factor of the part that is seen. Of a narrow
// source, where the cosines hardly change, it is 0.8 of the whole width (a linear ramp).
func TestEdgeWidth(t *testing.T) {
	for _, c := range penumbras {
		e := prepared(t, open(c.size, c.size))
		d := c.d1 + c.d2
		s := e.softnessAt(r3.Vec{Z: -d}, alongX, up)
		low, high := 0.0, c.size/2
		for range 60 { // the part from the middle to u holds 0.4 of the whole
			u := (low + high) / 2
			if corner(u, c.size/2, d)/corner(c.size/2, c.size/2, d) < 0.8 {
				low = u
			} else {
				high = u
			}
		}
		want := 2 * low / d * c.d2 * d / c.d1
		name := fmt.Sprintf("S %.3g d1 %.3g d2 %.3g", c.size, c.d1, c.d2)
		rel(t, name, s.width(c.d2), want, 2e-4)
		if c.size/d < 0.05 {
			rel(t, name+", linear", s.width(c.d2), 0.8*c.want, 1e-3)
		} else if s.width(c.d2) > 0.8*c.want*(1+1e-4) {
			t.Errorf("%s: %g is wider than a linear ramp", name, s.width(c.d2))
		}
	}
}

// An edge beside the source, a place over it, and a box without light: not known.
func TestEdgeNotKnown(t *testing.T) {
	e := prepared(t, open(2, 2))
	for _, at := range []r3.Vec{{Z: 3}, {Z: math.NaN()}} {
		if w := e.softnessAt(at, alongX, up).width(noseAway); !math.IsNaN(w) {
			t.Errorf("at %v the edge is %g", at, w)
		}
	}
	if w := e.softnessAt(r3.Vec{Z: -0.3}, alongX, up).width(armAway); !math.IsNaN(w) {
		t.Errorf("an arm over the source throws an edge of %g", w)
	}
	dark := open(2, 2)
	dark.Lamps[0].Lumens = 0
	if v := prepared(t, dark).seenByEye(r3.Vec{Z: -2}, alongX, up); !math.IsNaN(v) {
		t.Errorf("of no light an eye sees %g", v)
	}
}

// What an eye sees is counted on the source itself, place by place.
func TestSeenByEye(t *testing.T) {
	t.Parallel()
	const a, b, h = 4.0, 3.0, 2.0
	e := prepared(t, open(a, b))
	for _, x := range []float64{-3, -1, 0, 1} {
		for _, turn := range []float64{0.05, 0.7, 2.5} {
			forward := r3.Vec{X: math.Cos(turn), Y: math.Sin(turn)}
			at := r3.Vec{X: x, Y: 0.4, Z: -h}
			const n = 1200
			seen, whole := 0.0, 0.0
			for i := range n {
				for j := range n {
					d := r3.Vec{X: a*((float64(i)+0.5)/n-0.5) - at.X, Y: b*((float64(j)+0.5)/n-0.5) - at.Y, Z: h}
					share := h / math.Pow(r3.Norm2(d), 1.5)
					whole += share
					if f := r3.Dot(d, forward); f > 0 && d.Z/f < browUp/browForward {
						seen += share
					}
				}
			}
			if got := e.seenByEye(at, forward, up); math.Abs(got-seen/whole) > 3e-4 {
				t.Errorf("at %g turned %g: got %g, counted %g", x, turn, got, seen/whole)
			}
		}
	}
}

// Where a crate hides a source's rim the shadow is harder, and a performer beside the
// box sees an edge that is no wider than one under it.
func TestSofterAndHarder(t *testing.T) {
	s := boxScene()
	plain := prepared(t, s)
	s.Crate = &Crate{CellX: 0.1, CellY: 0.1, Depth: 0.2}
	crated := prepared(t, s)
	at := r3.Vec{Z: -3}
	under, narrow := plain.softnessAt(at, alongX, up), crated.softnessAt(at, alongX, up)
	if !(narrow.width(noseAway) < 0.8*under.width(noseAway)) {
		t.Errorf("with a crate %g, without %g", narrow.width(noseAway), under.width(noseAway))
	}
	beside := plain.softnessAt(r3.Vec{X: -4, Z: -3}, alongX, up)
	if !(beside.width(noseAway) < under.width(noseAway)) {
		t.Errorf("beside %g, under %g", beside.width(noseAway), under.width(noseAway))
	}
}

// The looks ahead and behind mirror each other under a box that is the same on both
// sides, and the source is ahead of the face in the one.
func TestLooksMirror(t *testing.T) {
	e := prepared(t, boxScene())
	read := func(at, facing r3.Vec, receptor Receptor) float64 { return e.At(at, facing, receptor) }
	ahead := lookAt(read, Stance{"ahead", r3.Vec{X: -2.8, Z: -3}, alongX})
	behind := lookAt(read, Stance{"behind", r3.Vec{X: 2.8, Z: -3}, alongX})
	rel(t, "face", float64(ahead.Face), float64(behind.Back), 1e-9)
	rel(t, "crown", float64(ahead.Crown), float64(behind.Crown), 1e-9)
	if !(ahead.Face > 10*ahead.Back) {
		t.Errorf("ahead the face gets %g, the back %g", ahead.Face, ahead.Back)
	}
}

// Of a cloth with a lobe, whose sum goes in steps, the edge is that of ten times as many
// readings, leveled as far: within 2 %.
func TestEdgeOfLobes(t *testing.T) {
	for _, sigma := range []float64{0.2, 0.4} {
		s := boxScene()
		s.Cloths = []Cloth{{Diffuse: 0.2, ForwardPart: 0.3, ForwardSigma: sigma, Back: 0.3}}
		e := prepared(t, s)
		at := r3.Vec{X: 0.5, Z: -3}
		got := e.softnessAt(at, alongX, up)
		axis, total := e.middle(at)
		toward := ahead(axis, alongX, up)
		low, high := e.opening(at, axis, toward)
		const n = 400
		var left [n + 1]float64
		for i := range left {
			left[i] = e.leftBy(at, axis, toward, low+(high-low)*float64(i)/n) / total
		}
		cross := func(share float64) float64 {
			for i := 15; i+15 <= n; i++ {
				sum := 0.0
				for k := i - 15; k <= i+15; k++ {
					sum += left[k] / 31
				}
				if sum > share {
					return math.Tan(low + (high-low)*float64(i)/n)
				}
			}
			return math.NaN()
		}
		rel(t, "lobe", got.full-got.dark, cross(0.9)-cross(0.1), 0.02)
	}
}
