package photometry

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// lm63 writes a file of 2002 with 1 lamp of 1000 lm, type C and a point for an opening.
func lm63(vertical, horizontal string, rows ...string) string {
	return fmt.Sprintf("IESNA:LM-63-2002\n[TEST] 1\n[TESTLAB] none\n[ISSUEDATE] 2020\n[MANUFAC] none\nTILT=NONE\n1 1000 1 %d %d 1 2 0.3 0.6 0\n1 1 100\n%s\n%s\n%s\n",
		len(strings.Fields(vertical)), len(strings.Fields(horizontal)), vertical, horizontal, strings.Join(rows, "\n"))
}

func read(t *testing.T, name, text string) *LampFile {
	t.Helper()
	f, err := ReadFile(name, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func close(t *testing.T, what string, got *float64, want, tolerance float64) {
	t.Helper()
	if got == nil || math.Abs(*got-want) > tolerance {
		t.Errorf("%s: %v, want %.9g", what, show(got), want)
	}
}

func show(p *float64) string {
	if p == nil {
		return "nil"
	}
	return fmt.Sprintf("%.9g", *p)
}

// candela is the intensity toward C and gamma in degrees.
func candela(f *LampFile, gamma, c float64) float64 {
	return *f.LumensIntegrated * f.Distribution.Intensity(typeC.direction(c*degree, gamma*degree))
}

const tens = "0 10 20 30 40 50 60 70 80 90"

// Fluxes of worked tables: the exact integral of an intensity linear in angle, i0 cos a
// - i1 cos b + m(sin b - sin a) for each step (rule b), as an independent program sums
// it. The table of Z1 is that of a worked zonal-flux example of LM-63 data; the mean of
// zone ends would give 8863.15, 3141.49, 3865.37 and 3266.23 instead.
var (
	z1 = lm63(tens, "0", "8500 5000 3250 5250 2750 1500 200 50 10 0")
	z2 = lm63(tens, "0", "1000 984.8 939.7 866 766 642.8 500 342 173.6 0")
	z3 = lm63("0 30 60 90", "0 45 90", "1200 900 400 0", "1200 1000 600 100", "1200 1100 800 200")
	z4 = lm63("0 30 60 90", "0 90 180", "1000 800 300 0", "1000 700 200 0", "1000 500 100 0")
	z5 = lm63("0 30 60 90", "90 180 270", "1000 800 300 0", "1000 700 200 0", "1000 500 100 0")
	z6 = strings.Replace(strings.Replace(lm63("0 22.5 45 67.5 90", "0", "1000 900 700 400 100"),
		"TILT=NONE", "TILT=INCLUDE\n1\n4\n0 45 90 180\n1 .9 .8 1", 1), "1 1000 ", "1 5000 ", 1)
)

func TestFluxOfWorkedTables(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       float64
	}{
		{"Z1", z1, 8749.731263}, {"Z2", z2, 3133.487345}, {"Z3", z3, 3779.052853}, {"Z6", z6, 3226.849649},
	} {
		close(t, c.name, read(t, c.name+".ies", c.text).LumensIntegrated, c.want, 1e-6)
	}
}

// An isotropic source of 1000 cd gives 4 pi times as many lumens in any steps
// (definition of the candela); a Lambertian one of 1000 cd gives pi times as many, which
// 1-deg steps reach within 0.01 %.
func TestFluxOfClosedForms(t *testing.T) {
	close(t, "isotropic", read(t, "a.ies", lm63("0 90 180", "0", "1000 1000 1000")).LumensIntegrated, 4000*math.Pi, 1e-9)
	close(t, "isotropic, whole", read(t, "a.ies", lm63("0 25 180", "0 120 240 360", "1000 1000 1000", "1000 1000 1000", "1000 1000 1000", "1000 1000 1000")).LumensIntegrated, 4000*math.Pi, 1e-9)
	var angles, values []string
	for v := range 91 {
		angles = append(angles, fmt.Sprint(v))
		values = append(values, fmt.Sprintf("%.9f", 1000*math.Cos(float64(v)*degree)))
	}
	close(t, "Lambert", read(t, "a.ies", lm63(strings.Join(angles, " "), "0", strings.Join(values, " "))).LumensIntegrated, 1000*math.Pi, 0.1)
}

// Intensities between the planes of the mirrors of LM-63-2002, by hand: linear in
// either angle.
func TestMirrors(t *testing.T) {
	for _, c := range []struct {
		name, text     string
		gamma, c, want float64
	}{
		{"Z3", z3, 45, 30, 750}, {"Z3", z3, 45, 150, 750}, {"Z3", z3, 45, 210, 750}, {"Z3", z3, 45, 330, 750},
		{"Z3", z3, 75, 100, 466.666667}, {"Z3", z3, 10, 275, 1162.962963},
		{"Z4", z4, 30, 45, 750}, {"Z4", z4, 30, 315, 750}, {"Z4", z4, 45, 135, 375}, {"Z4", z4, 45, 225, 375}, {"Z4", z4, 60, 180, 100},
		{"Z5", z5, 30, 135, 750}, {"Z5", z5, 30, 45, 750}, {"Z5", z5, 45, 225, 375}, {"Z5", z5, 45, 315, 375},
		{"Z5", z5, 30, 0, 700}, {"Z5", z5, 30, 90, 800}, {"Z5", z5, 60, 270, 100},
		{"Z3", z3, 91, 0, 0},
	} {
		if got := candela(read(t, "a.ies", c.text), c.gamma, c.c); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%s at gamma %g C %g: %.9g, want %.9g", c.name, c.gamma, c.c, got, c.want)
		}
	}
}

// The plane at 360 deg may be left out (LM-63-2002: 0 to 360); the two files are the
// same light, told as odd.
func TestPlane360(t *testing.T) {
	rows := []string{"1000 800 300 0", "1000 700 200 0", "1000 500 100 0", "1000 600 250 0"}
	with := read(t, "a.ies", lm63("0 30 60 90", "0 90 180 270 360", append(rows, rows[0])...))
	without := read(t, "a.ies", lm63("0 30 60 90", "0 90 180 270", rows...))
	close(t, "flux", without.LumensIntegrated, *with.LumensIntegrated, 1e-9)
	for c := 0.0; c < 360; c += 7 {
		if a, b := candela(with, 40, c), candela(without, 40, c); math.Abs(a-b) > 1e-9 {
			t.Errorf("C %g: %g and %g", c, a, b)
		}
	}
	if !hasOdd(without, "360 deg is left out") || hasOdd(with, "360") {
		t.Errorf("odd: %q and %q", without.Odd, with.Odd)
	}
	unlike := read(t, "a.ies", lm63("0 30 60 90", "0 90 180 270 360", append(rows, rows[1])...))
	if !hasOdd(unlike, "same direction and differ") {
		t.Errorf("odd: %q", unlike.Odd)
	}
}

func hasOdd(f *LampFile, part string) bool {
	for _, text := range f.Odd {
		if strings.Contains(text, part) {
			return true
		}
	}
	return false
}

// Tilt factors are linear between their angles (LM-63-2002, TILT=INCLUDE). They don't
// touch the table.
func TestTilt(t *testing.T) {
	f := read(t, "z6.ies", z6)
	close(t, "22.5 deg", f.Tilt.Factor(22.5*degree), 0.95, 1e-12)
	close(t, "135 deg", f.Tilt.Factor(135*degree), 0.9, 1e-12)
	close(t, "0 deg", f.Tilt.Factor(0), 1, 0)
	if f.Tilt.Factor(181*degree) != nil || f.Tilt.Factor(math.NaN()) != nil || f.Tilt.Geometry != 1 {
		t.Error("a factor outside of the angles, or another geometry")
	}
}

// Directions of types A and B: A = (cos V sin H, sin V, cos V cos H), B = (sin H,
// cos H sin V, cos H cos V); x right, y up, z aim (from memory, in line with the
// definition of the planes in LM-63-2002 section 3).
func TestDirectionsOfTypesAandB(t *testing.T) {
	for _, c := range []struct {
		kind goniometer
		h, v float64
		want r3.Vec
	}{
		{typeA, 30, 40, r3.Vec{X: 0.38302222, Y: 0.64278761, Z: 0.66341395}},
		{typeB, 30, 40, r3.Vec{X: 0.5, Y: 0.55667040, Z: 0.66341395}},
		{typeA, -45, 20, r3.Vec{X: -0.66446302, Y: 0.34202014, Z: 0.66446302}},
		{typeB, -45, 20, r3.Vec{X: -0.70710678, Y: 0.24184476, Z: 0.66446302}},
	} {
		got := c.kind.direction(c.h*degree, c.v*degree)
		if r3.Norm(r3.Sub(got, c.want)) > 2e-8 {
			t.Errorf("%c H %g V %g: %v, want %v", c.kind, c.h, c.v, got, c.want)
		}
		h, v := c.kind.angles(got)
		if math.Abs(h-c.h*degree) > 1e-12 || math.Abs(v-c.v*degree) > 1e-12 {
			t.Errorf("%c H %g V %g comes back as %g, %g", c.kind, c.h, c.v, h/degree, v/degree)
		}
	}
	off := math.Acos(typeA.direction(30*degree, 40*degree).Z) / degree
	if math.Abs(off-48.439237) > 1e-6 {
		t.Errorf("%.7g deg off axis, want 48.439237", off)
	}
}

// The solid angle of a cell H 0-10, V 0-10 of type B is 0.0303073244 sr (integral of
// cos H), the same for type A by cos V; a table of 1 over the cell has that flux.
func TestSolidAngleOfTypesAandB(t *testing.T) {
	for _, kind := range []int{2, 3} {
		text := strings.Replace(lm63("5 15", "5 15", "1 1", "1 1"), " 1 2 0.3", fmt.Sprintf(" %d 2 0.3", kind), 1)
		want := 0.17453292519943295 * (math.Sin(15*degree) - math.Sin(5*degree))
		close(t, fmt.Sprint("type ", kind), read(t, "a.ies", text).LumensIntegrated, want, 1e-12)
	}
	cell := &Table{kind: typeB, v: []float64{0, 10 * degree}, h: []float64{0, 10 * degree}, cd: []float64{1, 1, 1, 1}, mirror: whole}
	if got := cell.integral(); math.Abs(got-0.0303073244) > 1e-10 {
		t.Errorf("%.10g sr, want 0.0303073244", got)
	}
}

// Type B with H from 0 is mirrored about the upright plane (LM-63-2002); whole tables
// keep left and right apart.
func TestMirrorsOfTypeB(t *testing.T) {
	half := strings.Replace(lm63("-90 0 90", "0 45 90", "0 800 0", "0 400 0", "0 0 0"), " 1 2 0.3", " 2 2 0.3", 1)
	f := read(t, "a.ies", half)
	whole := strings.Replace(lm63("-90 0 90", "-90 -45 0 45 90", "0 0 0", "0 200 0", "0 800 0", "0 400 0", "0 0 0"), " 1 2 0.3", " 2 2 0.3", 1)
	g := read(t, "a.ies", whole)
	at := func(f *LampFile, h float64) float64 {
		return *f.LumensIntegrated * f.Distribution.Intensity(typeB.direction(h*degree, 0))
	}
	if at(f, 30) != at(f, -30) || math.Abs(at(f, 45)-400) > 1e-9 {
		t.Errorf("%g and %g", at(f, 30), at(f, -30))
	}
	if math.Abs(at(g, -45)-200) > 1e-9 || math.Abs(at(g, 45)-400) > 1e-9 {
		t.Errorf("left %g, right %g", at(g, -45), at(g, 45))
	}
	// level, the upper half from 800 at 0 to 400 at 45 deg: half of the peak at 45,
	// a tenth (80) at 81 deg
	close(t, "beam along", f.Beam.Along, 90*degree, 1e-9)
	close(t, "field along", f.Field.Along, 162*degree, 1e-9)
	close(t, "beam across", f.Beam.Across, 90*degree, 1e-9)
}

// Beam and field of a table that falls from 1000 cd linearly to 0 at 90 deg: half of
// it at 45 deg, a tenth at 81 deg (50 % and 10 % are common practice, from memory). C0
// is along the length in LM-63.
func TestBeamAndField(t *testing.T) {
	f := read(t, "a.ies", lm63("0 90", "0 90", "1000 0", "1000 500"))
	close(t, "beam along", f.Beam.Along, 90*degree, 1e-9)
	close(t, "field along", f.Field.Along, 162*degree, 1e-9)
	close(t, "beam across", f.Beam.Across, 180*degree, 1e-9)
	if f.Peak.Candela != 1000 || f.Peak.Gamma != 0 {
		t.Errorf("peak %+v", f.Peak)
	}
	// two lobes: the outermost directions count, not the hollow between
	wings := read(t, "a.ies", lm63("0 30 60 90", "0", "200 1000 0 0"))
	close(t, "beam of two lobes", wings.Beam.Across, 90*degree, 1e-9)
	if math.Abs(wings.Peak.Gamma-30*degree) > 1e-12 {
		t.Errorf("peak %+v", wings.Peak)
	}
}

// Sizes by the tables of openings of LM-63: 1986/1991, 1995, 2002/2019. 1 is 1 ft.
func TestOpenings(t *testing.T) {
	const ft = 0.3048
	for _, c := range []struct {
		version       string
		sizes         string
		shape         string
		along0, along float64 // C0, C90, in ft
		height        float64
	}{
		{"IESNA91", "0 0 0", "point", 0, 0, 0},
		{"IESNA91", "1 2 0", "rectangle", 2, 1, 0},
		{"IESNA91", "1 2 3", "box", 2, 1, 3},
		{"IESNA91", "-1 0 0", "disk", 1, 1, 0},
		{"IESNA91", "-1 0 2", "upright cylinder", 1, 1, 2},
		{"IESNA91", "-1 2 0", "ellipse", 2, 1, 0},
		{"IESNA91", "-1 2 3", "ellipsoid", 2, 1, 3},
		{"IESNA:LM-63-1995", "-1 0 0", "disk", 1, 1, 0},
		{"IESNA:LM-63-1995", "-1 0 -1", "sphere", 1, 1, 1},
		{"IESNA:LM-63-1995", "-1 0 2", "upright cylinder", 1, 1, 2},
		{"IESNA:LM-63-1995", "0 2 -1", "cylinder along the length", 2, 1, 1},
		{"IESNA:LM-63-1995", "2 0 -1", "cylinder along the width", 1, 2, 1},
		{"IESNA:LM-63-1995", "-1 2 3", "upright elliptic cylinder", 2, 1, 3},
		{"IESNA:LM-63-1995", "1 -2 3", "upright elliptic cylinder", 2, 1, 3},
		{"IESNA:LM-63-1995", "-1 2 -3", "ellipsoid", 2, 1, 3},
		{"IESNA:LM-63-1995", "1 -2 -3", "ellipsoid", 2, 1, 3},
		{"IESNA:LM-63-2002", "2 2 0", "rectangle", 2, 2, 0},
		{"IESNA:LM-63-2002", "-1 -1 0", "disk", 1, 1, 0},
		{"IESNA:LM-63-2002", "-1 -2 0", "ellipse", 2, 1, 0},
		{"IESNA:LM-63-2002", "-1 -1 2", "upright cylinder", 1, 1, 2},
		{"IES:LM-63-2019", "-1 -1 -1", "sphere", 1, 1, 1},
		{"IES:LM-63-2019", "-1 2 -1", "cylinder along the length", 2, 1, 1},
		{"IES:LM-63-2019", "2 -1 -1", "cylinder along the width", 1, 2, 1},
		{"IES:LM-63-2019", "-1 0 -1", "upright disk", 0, 1, 1}, // a sphere in 1995
		{"IES:LM-63-2019", "-1 0 0", "disk", 1, 1, 0},          // the form of 1995
	} {
		text := strings.Replace(lm63("0 90", "0", "1000 0"), "1 2 0.3 0.6 0", "1 1 "+c.sizes, 1)
		text = strings.Replace(text, "IESNA:LM-63-2002", c.version, 1)
		got := read(t, "a.ies", text).Opening
		if got.Shape != c.shape || math.Abs(got.AlongC0-c.along0*ft) > 1e-12 || math.Abs(got.AlongC90-c.along*ft) > 1e-12 || math.Abs(got.Height-c.height*ft) > 1e-12 {
			t.Errorf("%s %s: %+v", c.version, c.sizes, got)
		}
	}
	// areas: a disk of 1 ft, r 0.1524 m, has 0.0729658770 m2; 2 x 2 ft 0.37161216 m2
	disk := strings.Replace(lm63("0 90", "0", "1000 0"), "1 2 0.3 0.6 0", "1 1 -1 -1 0", 1)
	close(t, "disk", read(t, "a.ies", disk).Opening.Area(), 0.0729658770, 1e-10)
	square := strings.Replace(lm63("0 90", "0", "1000 0"), "1 2 0.3 0.6 0", "1 1 2 2 0", 1)
	close(t, "square", read(t, "a.ies", square).Opening.Area(), 0.37161216, 1e-12)
}
