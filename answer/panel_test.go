package answer

import (
	"fmt"
	"math"
	"testing"

	"softloft/kit"
	"softloft/plan"
)

// A bare Lambertian panel, through the whole way from a plan file to the answers.
// Configuration factors F of a rectangle seen from a point: Siegel & Howell, Thermal
// Radiation Heat Transfer, 4th ed., p. 842 (parallel and perpendicular corner), as
// computed in double precision and cross-checked by Gauss-Legendre integration.
// E = M·F. Feet; the panel lies at height h over the origin, the receiver at (x, y, 0).
var rectangles = []struct {
	name     string
	a, b, h  float64
	x, y     float64
	nx, ny   float64
	nz       float64
	expected float64
}{
	{"R1", 4, 8, 8, 0, 0, 0, 0, 1, 0.1323652276},
	{"R2", 4, 8, 8, 2, 4, 0, 0, 1, 0.0901843706},
	{"R3", 4, 8, 8, 2, 0, 0, 0, 1, 0.1197282352},
	{"R4", 4, 8, 8, 0, 4, 0, 0, 1, 0.0988458793},
	{"R5", 4, 8, 8, 6, 0, 0, 0, 1, 0.0606405059},
	{"R6", 12, 12, 12, 0, 0, 0, 0, 1, 0.2394564705},
	{"R7", 12, 12, 12, 6, 6, 0, 0, 1, 0.1385316060},
	{"R8", 12, 12, 12, 6, 0, 0, 0, 1, 0.1803687411},
	{"R9", 12, 12, 12, 12, 0, 0, 0, 1, 0.0843536644},
	{"R10", 12, 12, 12, 9, 9, 0, 0, 1, 0.0766162910},
	{"R11", 12, 12, 8, 0, 0, 0, 0, 1, 0.4128500871},
	{"R12", 20, 20, 16, 0, 0, 0, 0, 1, 0.3288766182},
	{"R13", 20, 20, 10, 0, 0, 0, 0, 1, 0.5541264240},
	{"R14", 20, 20, 10, 10, 10, 0, 0, 1, 0.2077571250},
	{"R15", 20, 20, 10, 5, 0, 0, 0, 1, 0.4979010130},
	{"V1 cut by the horizon", 12, 12, 12, 0, 0, 1, 0, 0, 0.0278553824},
	{"V2 facing", 12, 12, 12, 12, 0, -1, 0, 0, 0.0719581953},
	{"V3 facing away", 12, 12, 12, 12, 0, 1, 0, 0, 0},
	{"V4", 12, 12, 12, 6, 0, -1, 0, 0, 0.0710934390},
	{"V5", 12, 12, 12, 6, 6, -1, 0, 0, 0.0557341970},
	{"V6", 20, 20, 10, 0, 0, 1, 0, 0, 0.1114683940},
	{"T2 tilted 45°", 12, 12, 12, 0, 0, 1, 0, 1, 0.1693212941},
	{"T7 at the source", 4, 8, 8, 6, 2, -6, -2, 8, 0.0712510033},
}

// The same rectangle in four ways that must not matter: bare, under a clear cloth,
// split in four lamps, and everything turned and tilted together.
func TestBarePanelIsTheClosedForm(t *testing.T) {
	for _, way := range []struct {
		name       string
		cloth      string
		split      bool
		turn, tilt float64
		about      string
	}{
		{name: "bare", about: "x"},
		{name: "clear cloth", cloth: "clear", about: "x"},
		{name: "four lamps", split: true, about: "x"},
		{name: "turned and tilted", turn: 33, tilt: 17, about: "x"},
		{name: "turned, tilted, clear cloth, four lamps", cloth: "clear", split: true, turn: -70, tilt: -26, about: "y"},
	} {
		t.Run(way.name, func(t *testing.T) {
			worst, sum, n := 0.0, 0.0, 0
			for _, c := range rectangles {
				origin := [3]float64{3, -2, c.h + 40}
				place := turned([3]float64{c.x, c.y, -c.h}, way.turn, way.tilt, way.about)
				facing := turned([3]float64{c.nx, c.ny, c.nz}, way.turn, way.tilt, way.about)
				text := panelPlan(c.a, c.b, way.split, way.cloth) + fmt.Sprintf(`  at: [%.15g ft, %.15g ft]
  cloth_at: %.15g ft
  turn: %.15g deg
  tilt: {about: %s, by: %.15g deg}
probes:
  - {name: meter, at: [%.15g ft, %.15g ft, %.15g ft], facing: [%.15g, %.15g, %.15g]}
`, origin[0], origin[1], origin[2], way.turn, way.about, way.tilt,
					origin[0]+place[0], origin[1]+place[1], origin[2]+place[2], facing[0], facing[1], facing[2])
				got := float64(of(t, text).Light.Probes[0].Lux[0]) / 1000
				if c.expected == 0 && got != 0 {
					t.Errorf("%s: F = %g, want 0", c.name, got)
				}
				if c.expected > 0 && math.Abs(got/c.expected-1) > 1e-3 {
					t.Errorf("%s: F = %.7f, want %.7f", c.name, got, c.expected)
				}
				if c.expected > 0 {
					d := math.Abs(got/c.expected - 1)
					worst, sum, n = math.Max(worst, d), sum+d*d, n+1
				}
			}
			if worst > 1e-3 {
				t.Errorf("worst deviation from the closed form: %.2g, want 0.1 %% at most", worst)
			}
			t.Logf("accuracy\tbare panel through a whole plan, %s\t%d\t%.2g %%\t%.2g %%\tclosed form, Siegel & Howell p. 842", way.name, n, 100*math.Sqrt(sum/float64(n)), 100*worst)
		})
	}
}

// panelPlan is a panel of a × b ft in the cloth plane, of 1000 lm/m².
func panelPlan(a, b float64, split bool, cloth string) string {
	lamps, parts := "  - {kit: panel, at: [0 ft, 0 ft], above: 0 ft}\n", 1.0
	if split {
		parts, lamps = 2, ""
		for _, s := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
			lamps += fmt.Sprintf("  - {kit: panel, at: [%.15g ft, %.15g ft], above: 0 ft}\n", s[0]*a/4, s[1]*b/4)
		}
	}
	area := a * b * 0.3048 * 0.3048 / parts / parts
	return fmt.Sprintf(`softloft: 1
derive: none
kit:
  lamp: {panel: {size: [%.15g ft, %.15g ft], lumens: %.15g lm}}
  cloth: {clear: {mass: 0 kg/m2, through: 1, diffuse: 0, back: 0}}
lamps:
%sbox:
  size: [%g ft, %g ft]
  sides: none
  cloth: [%s]
`, a/parts, b/parts, 1000*area, lamps, a, b, cloth)
}

// turned rotates about the vertical by turn after tilting about x or y, in degrees.
func turned(v [3]float64, turn, tilt float64, about string) [3]float64 {
	sin, cos := math.Sincos(tilt * math.Pi / 180)
	if about == "x" {
		v = [3]float64{v[0], cos*v[1] - sin*v[2], sin*v[1] + cos*v[2]}
	} else {
		v = [3]float64{cos*v[0] + sin*v[2], v[1], -sin*v[0] + cos*v[2]}
	}
	sin, cos = math.Sincos(turn * math.Pi / 180)
	return [3]float64{cos*v[0] - sin*v[1], sin*v[0] + cos*v[1], v[2]}
}

// of answers a plan's text.
func of(t testing.TB, text string) *Answers {
	t.Helper()
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	file, mistakes := plan.Read("test.yaml", []byte(text), base)
	if len(mistakes) > 0 {
		t.Fatalf("the plan is not read:\n%v\n%s", mistakes, text)
	}
	return Of(file)
}
