package light

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/photometry"
	"softloft/shape"
)

// open is a box of nothing but one downward opening of a x b in its cloth
// plane, leaving 1 lm/m2.
func open(a, b float64) Scene {
	return Scene{Size: [2]float64{a, b}, Clear: [2]float64{a, b}, Roof: Roof{Open: true},
		Lamps: []Lamp{downward(0, 0, 0, a, b, a*b)}}
}

// rectangles are configuration factors of a rectangle a x b, h above a point
// that faces n (n as given, not of unit length). Sources: Siegel and Howell,
// Thermal Radiation Heat Transfer, 4th ed., p. 842, by corners; values computed
// in double precision and checked by an independent Gauss-Legendre integration.
var rectangles = []struct {
	id                  string
	a, b, h, x, y, want float64
	n                   r3.Vec
}{
	{"R1", 4, 8, 8, 0, 0, 0.1323652276, r3.Vec{Z: 1}},
	{"R2", 4, 8, 8, 2, 4, 0.0901843706, r3.Vec{Z: 1}},
	{"R3", 4, 8, 8, 2, 0, 0.1197282352, r3.Vec{Z: 1}},
	{"R4", 4, 8, 8, 0, 4, 0.0988458793, r3.Vec{Z: 1}},
	{"R5", 4, 8, 8, 6, 0, 0.0606405059, r3.Vec{Z: 1}},
	{"R6", 12, 12, 12, 0, 0, 0.2394564705, r3.Vec{Z: 1}},
	{"R7", 12, 12, 12, 6, 6, 0.1385316060, r3.Vec{Z: 1}},
	{"R8", 12, 12, 12, 6, 0, 0.1803687411, r3.Vec{Z: 1}},
	{"R9", 12, 12, 12, 12, 0, 0.0843536644, r3.Vec{Z: 1}},
	{"R10", 12, 12, 12, 9, 9, 0.0766162910, r3.Vec{Z: 1}},
	{"R11", 12, 12, 8, 0, 0, 0.4128500871, r3.Vec{Z: 1}},
	{"R12", 20, 20, 16, 0, 0, 0.3288766182, r3.Vec{Z: 1}},
	{"R13", 20, 20, 10, 0, 0, 0.5541264240, r3.Vec{Z: 1}},
	{"R14", 20, 20, 10, 10, 10, 0.2077571250, r3.Vec{Z: 1}},
	{"R15", 20, 20, 10, 5, 0, 0.4979010130, r3.Vec{Z: 1}},
	{"V1", 12, 12, 12, 0, 0, 0.0278553824, r3.Vec{X: 1}},
	{"V2", 12, 12, 12, 12, 0, 0.0719581953, r3.Vec{X: -1}},
	{"V3", 12, 12, 12, 12, 0, 0, r3.Vec{X: 1}},
	{"V4", 12, 12, 12, 6, 0, 0.0710934390, r3.Vec{X: -1}},
	{"V5", 12, 12, 12, 6, 6, 0.0557341970, r3.Vec{X: -1}},
	{"V6", 20, 20, 10, 0, 0, 0.1114683940, r3.Vec{X: 1}},
	{"T1", 12, 12, 12, 0, 0, 0.2073753865, r3.Vec{X: math.Sin(math.Pi / 6), Z: math.Cos(math.Pi / 6)}},
	{"T2", 12, 12, 12, 0, 0, 0.1693212941, r3.Vec{X: 1, Z: 1}},
	{"T3", 12, 12, 12, 0, 0, 0.1197282352, r3.Vec{Y: math.Sqrt(3), Z: 1}},
	{"T7", 4, 8, 8, 6, 2, 0.0712510033, r3.Vec{X: -6, Y: -2, Z: 8}},
}

// T1 of the horizon cuts nothing where the tilt is 30 deg; at 45 and 60 deg the
// values are the cosine times R6 as published, which holds for a source that
// the horizon does not cut.
func TestRectanglesOfTheHandbook(t *testing.T) {
	all := spread{reference: handbook}
	for _, c := range rectangles {
		e := prepared(t, open(c.a, c.b))
		p := r3.Vec{X: c.x, Y: c.y, Z: -c.h}
		got := e.At(p, c.n, Flat)
		if c.want == 0 {
			if got != 0 {
				t.Errorf("%s: got %g, want 0", c.id, got)
			}
			continue
		}
		all.rel(t, c.id, got, c.want, 1e-8)
	}
	all.told(t, "rectangles, level, upright and tilted receivers")
}

// The same openings through a cloth that passes all, cut in four, turned and
// tilted with the receiver, give the same.
func TestRectanglesAnyWay(t *testing.T) {
	for _, c := range rectangles {
		p := r3.Vec{X: c.x, Y: c.y, Z: -c.h}
		clear := open(c.a, c.b)
		clear.Cloths = []Cloth{{Through: 1}}
		four := open(c.a, c.b)
		four.Lamps = nil
		for _, s := range [4][2]float64{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
			four.Lamps = append(four.Lamps, downward(s[0]*c.a/4, s[1]*c.b/4, 0, c.a/2, c.b/2, c.a*c.b/4))
		}
		turned, q, n := inclined(c.a, c.b, p, c.n)
		for what, v := range map[string]float64{
			"clear cloth": prepared(t, clear).At(p, c.n, Flat), "in four": prepared(t, four).At(p, c.n, Flat),
			"inclined": prepared(t, turned).At(q, n, Flat),
		} {
			if math.Abs(v-c.want) > 1e-8*math.Max(c.want, 1e-2) {
				t.Errorf("%s %s: got %.10g, want %.10g", c.id, what, v, c.want)
			}
		}
	}
}

// inclined is the opening turned, tilted and moved below a box of no use to it,
// with the receiver moved along.
func inclined(a, b float64, p, n r3.Vec) (Scene, r3.Vec, r3.Vec) {
	pose := shape.At(r3.Vec{X: 3, Y: -2, Z: -40}).Rotated(r3.Vec{X: 1, Y: 2, Z: -0.5}, 2.1)
	s := open(1, 1)
	s.Lamps = []Lamp{{Centre: pose.Origin, Axis: r3.Scale(-1, pose.Z), U: pose.X, V: r3.Scale(-1, pose.Y),
		Size: [2]float64{a, b}, Lumens: a * b, Distribution: photometry.Lambertian{}}}
	return s, pose.Out(p), pose.OutDirection(n)
}

// Configuration factors of triangles, same source as the rectangles.
func TestTriangles(t *testing.T) {
	all := spread{reference: handbook}
	triangle := shape.Polygon{{Z: 8}, {X: 6, Z: 8}, {Y: 6, Z: 8}}
	all.rel(t, "G1", edgeVector(triangle, r3.Vec{X: 1, Y: 1}).Z/math.Pi, 0.0759837370, 1e-9)
	all.rel(t, "G2", edgeVector(triangle, r3.Vec{X: 4, Y: 4}).Z/math.Pi, 0.0645121821, 1e-9)
	all.told(t, "triangles")
}

// Light vectors over exitance: Lambert's formula without the receiver.
func TestVector(t *testing.T) {
	all := spread{reference: closedForm}
	v := prepared(t, open(20, 20)).Vector(r3.Vec{X: 5, Y: -3, Z: -10})
	all.rel(t, "x", v.X, -0.11427337, 1e-7)
	all.rel(t, "y", v.Y, 0.06583329, 1e-7)
	all.rel(t, "z", v.Z, 0.48012729, 1e-7)
	v = prepared(t, open(12, 12)).Vector(r3.Vec{X: 12, Z: -12})
	all.rel(t, "x", v.X, -0.07195820, 1e-7)
	all.rel(t, "z", v.Z, 0.08435366, 1e-7)
	all.told(t, "light vectors under rectangles")
}

// disk is a regular polygon of the disk's area: 2000 corners stand for the
// circle to 1e-6.
func disk(r, h, off float64) shape.Polygon {
	const n = 2000
	angle := 2 * math.Pi / n
	r *= math.Sqrt(angle / math.Sin(angle))
	p := make(shape.Polygon, n)
	for i := range p {
		sin, cos := math.Sincos(angle * float64(i))
		p[i] = r3.Vec{X: r*cos - off, Y: r * sin, Z: h}
	}
	return p
}

// Disks: catalog of configuration factors B-12 (on the axis), B-13 (tilted on
// the axis), and Siegel and Howell for points off the axis.
func TestDisks(t *testing.T) {
	all := spread{reference: catalog + ", B-12 and B-13"}
	var w sight
	factor := func(p shape.Polygon, n r3.Vec) float64 {
		m := meter{Flat, r3.Unit(n)}
		return m.uniform(m.horizon(&w, p, r3.Vec{}), r3.Vec{}) / math.Pi
	}
	for _, c := range [][4]float64{{1, 1, 0, 0.5}, {6, 12, 0, 0.2}, {6, 8, 0, 0.36}, {2, 8, 0, 0.0588235294},
		{6, 12, 3, 0.1847036875}, {6, 12, 6, 0.1464466094}, {6, 12, 12, 0.0658784289}, {10, 10, 10, 0.2763932023}, {1, 2, 1.5, 0.1022841400}} {
		all.rel(t, fmt.Sprint("parallel ", c), factor(disk(c[0], c[1], c[2]), up), c[3], 5e-6)
	}
	for _, c := range [][4]float64{{6, 12, 6, 0.0606601718}, {6, 12, 12, 0.0581563057}, {10, 10, 15, 0.1372577192}, {1, 2, 1.5, 0.0656355518}} {
		all.rel(t, fmt.Sprint("facing the axis ", c), factor(disk(c[0], c[1], c[2]), r3.Vec{X: -1}), c[3], 5e-6)
	}
	for _, c := range [][4]float64{{6, 12, 0, 0.2}, {6, 12, 30, 0.1732050808}, {6, 12, 45, 0.1414213562}, {6, 12, 60, 0.1}, {6, 12, 70, 0.0691213297},
		{6, 12, 90, 0.0202596632}, {10, 10, 60, 0.2573520555}, {10, 10, 75, 0.1663317333}, {10, 10, 90, 0.0908450569}} {
		sin, cos := math.Sincos(c[2] * math.Pi / 180)
		all.rel(t, fmt.Sprint("tilted ", c), factor(disk(c[0], c[1], 0), r3.Vec{X: sin, Z: cos}), c[3], 5e-6)
	}
	all.told(t, "disks, level, facing the axis, tilted")
}

// Worked cases: 20 000 lm from a 12 x 12 ft cloth, 10 000 lm from 4 x 8 ft.
// Values computed from the closed forms above.
func TestWorkedCases(t *testing.T) {
	all := spread{reference: closedForm}
	const foot = 0.3048
	s := open(12*foot, 12*foot)
	s.Lamps[0].Lumens = 20000
	e := prepared(t, s)
	all.rel(t, "W1 below the center", e.At(r3.Vec{Z: -12 * foot}, up, Flat), 357.984444, 1e-8)
	all.rel(t, "W1 corner", e.At(r3.Vec{X: 6 * foot, Y: 6 * foot, Z: -12 * foot}, up, Flat), 207.103027, 1e-8)
	s = open(4*foot, 8*foot)
	s.Lamps[0].Lumens = 10000
	all.rel(t, "W2 below the center", prepared(t, s).At(r3.Vec{Z: -8 * foot}, up, Flat), 445.239829, 1e-8)
	all.told(t, "worked cases of 12 x 12 ft and 4 x 8 ft")
}

// The over-estimate of the inverse-square law, in percent, by distance over
// the dimension that the row names. The rule of five is ANSI/IES LS-1 9.1.1;
// values computed from the closed form.
func TestInverseSquareError(t *testing.T) {
	all := spread{reference: "ANSI/IES LS-1 9.1.1 (the rule), closed form (values)"}
	over := func(a, b, d float64) float64 {
		return 100 * (a*b/(math.Pi*d*d)/prepared(t, open(a, b)).At(r3.Vec{Z: -d}, up, Flat) - 1)
	}
	for _, c := range [][4]float64{
		{0.5, 129.774198, 65.398669, 76.477301}, {1, 32.930167, 16.549916, 20.239240}, {2, 8.301624, 4.158380, 5.167082},
		{3, 3.697123, 1.850173, 2.306493}, {5, 1.332458, 0.666446, 0.832243}, {10, 0.333278, 0.166653, 0.208265},
	} {
		all.rel(t, "square, side", over(1, 1, c[0]), c[1], 2e-6)
		all.rel(t, "square, diagonal", over(1, 1, c[0]*math.Sqrt2), c[2], 2e-6)
		all.rel(t, "one by two, long side", over(0.5, 1, c[0]), c[3], 3e-6)
	}
	all.told(t, "over-estimate of the inverse-square law")
}

// Meter dome and mean sphere under 20 x 20 at 10: solid angle 2 pi/3, dome
// (L/2)(solid angle + a . v) (cardioid response).
func TestDomeAndScalar(t *testing.T) {
	all := spread{reference: closedForm + ", cardioid response"}
	e := prepared(t, open(20, 20))
	p := r3.Vec{Z: -10}
	all.rel(t, "dome up", e.At(p, up, Dome)*math.Pi, 1.91761730, 1e-8)
	all.rel(t, "dome across", e.At(p, alongX, Dome)*math.Pi, 1.04719755, 1e-8)
	all.rel(t, "scalar", e.At(p, up, Scalar)*math.Pi, 2*math.Pi/3/4, 1e-9)
	all.told(t, "dome and mean sphere")
}

// A receptor's mean over its surface, by its definition: a cylinder's side in
// facets, each a flat receiver.
func TestCylinderIsMeanOverItsSide(t *testing.T) {
	for _, s := range []Scene{open(12, 12), boxScene(), crated(open(3, 3))} {
		e := prepared(t, s)
		p := r3.Vec{X: 1, Y: 0.5, Z: -3}
		sum := 0.0
		const n = 7200
		for i := range n {
			sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / n)
			sum += e.At(p, r3.Vec{X: cos, Y: sin}, Flat)
		}
		rel(t, "cylinder", e.At(p, up, Cylinder), sum/n, 2e-5)
	}
}

func crated(s Scene) Scene {
	s.Crate = &Crate{CellX: 0.1, CellY: 0.1, Depth: 0.08}
	return s
}

// Furnace: a closed box that emits and reflects evenly all over has the same
// light everywhere, M/(1 - reflectance), for any cut into patches.
func TestFurnace(t *testing.T) {
	all := spread{reference: "M/(1 - reflectance), exact in any closed enclosure"}
	s := boxScene()
	s.Cloths, s.Roof = []Cloth{{Back: 0.5}}, Roof{Reflectance: 0.5}
	for i := range s.Sides {
		s.Sides[i].Inner = 0.5
	}
	s.Lamps, s.Clear, s.Size = nil, [2]float64{5, 3}, [2]float64{5, 3}
	e := prepared(t, s)
	x := &e.exchange
	for i := range x.direct {
		x.direct[i] = 2 // emitting 1 adds what arrives twice over at reflectance 0.5
	}
	x.iterate()
	for i := range x.leaves {
		all.rel(t, "furnace", x.leaves[i], 2, 1e-10)
	}
	all.told(t, "furnace")
}

// cube is a unit cube of one patch per face, of which the floor emits 1 lm/m2.
// Its own exchange by hand uses the published factors C-11 and C-14.
func TestSixPatchCube(t *testing.T) {
	all := spread{reference: catalog + ", C-11 and C-14, solved by hand"}
	for _, c := range [][4]float64{{0.2, 0.04807693, 0.24022272, 0.24042509}, {0.5, 0.18181820, 0.36349165, 0.36367254},
		{0.8, 0.68965519, 0.86193884, 0.86210149}, {0.9, 1.52542375, 1.69478950, 1.69494669}} {
		var x exchange
		const n = 6
		x.factor = make([]float64, n*n)
		unit := [4]float64{0, 1, 0, 1}
		for i := range n {
			for j := range n {
				switch {
				case i == j:
				case i/2 == j/2:
					x.factor[i*n+j] = parallelRectangles(unit, unit, 1)
				default:
					x.factor[i*n+j] = perpendicularRectangles(unit, unit)
				}
			}
		}
		x.direct, x.stamped = make([]float64, n), make([]float64, n)
		for range n {
			x.area, x.reflect = append(x.area, 1), append(x.reflect, c[0])
			x.transmit, x.forward = append(x.transmit, 0), append(x.forward, 0)
			x.other, x.uncovered = append(x.other, -1), append(x.uncovered, 1)
		}
		x.direct[0] = 1 / c[0] // reflected, that is 1 lm/m2 emitted
		x.iterate()
		all.rel(t, "emitter", x.arrives[0]-x.direct[0], c[1], 2e-7)
		all.rel(t, "opposite", x.arrives[1], c[2], 2e-7)
		all.rel(t, "side", x.arrives[2], c[3], 2e-7)
	}
	all.told(t, "cube of six patches")
}

// An opening at the level of an open roof gives what it gives a hair above or below.
func TestOpeningAtTheRoofCountsOnce(t *testing.T) {
	at := func(z float64) float64 {
		s := Scene{Size: [2]float64{4, 4}, Clear: [2]float64{4, 4}, Depth: 0.5, Roof: Roof{Open: true},
			Lamps: []Lamp{downward(0.2, -0.3, z, 1, 0.5, 1000)}}
		return prepared(t, s).At(r3.Vec{X: 0.5, Z: -3}, up, Flat)
	}
	below, level, above := at(0.5-1e-5), at(0.5), at(0.5+1e-5)
	rel(t, "at the roof's level, from below", level, below, 1e-4)
	rel(t, "at the roof's level, from above", level, above, 1e-4)
}
