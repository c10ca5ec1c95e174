package load

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"softloft/finding"
)

// standKit has stands whose numbers are those of the cases below, and tubes without
// mass, so that nothing but what a case names weighs.
const standKit = `kit:
  alloy: {air: {E: 69 GPa, poisson: 0.33, density: 0 kg/m3, yield: 240 MPa}}
  tube: {nothing: {outer: 42.16 mm, wall: 3.56 mm, alloy: air}}
  arm: {bare: {mass: 0 kg}}
  lamp: {panel: {mass: 11.3 kg, size: [0.3 m, 0.3 m]}, twenty: {mass: 20 lb, size: [1 in, 1 in]}}
  bag: {twelve: {mass: 12 kg}}
  stand:
    three: {mass: 12 kg, base: 1.1 m, legs: 3, rises: [1 m, 5 m], rated: [{at: 2 m, load: 60 kg}, {at: 3 m, load: 50 kg}, {at: 4 m, load: 20 kg}]}
    four: {mass: 12 kg, base: 1.1 m, legs: 4, rises: [1 m, 5 m]}
    five: {mass: 12 kg, base: 1.1 m, legs: 5, rises: [1 m, 5 m]}
    forty-3: {mass: 40 lb, base: 48 in, legs: 3, rises: [1 m, 5 m]}
    forty-4: {mass: 40 lb, base: 48 in, legs: 4, rises: [1 m, 5 m]}
`

// onTwo is a weightless box of 2.438 m on two stands, with weights of its own.
func onTwo(added string) string {
	return `softloft: 1
derive: none
box: {size: [2.438 m, 1.219 m], cloth_at: 2.5 m, frame: nothing, sides: none}
stands:
  - {name: west, kit: three, at: [-1.219 m, 0 m], rise: 2.5 m, holds: {ear: west}}
  - {name: east, kit: three, at: [1.219 m, 0 m], rise: 2.5 m, holds: {ear: east}}
added:
` + added + standKit
}

// L6 of the frame checks: statics, every digit exact. A box of 27 kg on two stands; the
// same with two lamps of 22.6 kg; the lamp pair moved 0.3 m along the span.
func TestTwoStandsShareByTheLever(t *testing.T) {
	for _, c := range []struct {
		name  string
		added string
		want  [2]float64
	}{
		{"27 kg", "  - {name: a, mass: 27 kg, at: [0 m, 0 m, -0.2 m]}\n", [2]float64{132.390, 132.390}},
		{"27 kg and two lamps", "  - {name: a, mass: 49.6 kg, at: [0 m, 0 m, -0.2 m]}\n", [2]float64{243.205, 243.205}},
		{"lamp pair 0.3 m off", "  - {name: a, mass: 4.4 kg, at: [0 m, 0 m, -0.2 m]}\n  - {name: b, mass: 22.6 kg, at: [-0.3 m, 0 m, -0.2 m]}\n", [2]float64{159.662, 105.118}},
	} {
		got, found := analyze(t, onTwo(c.added))
		balancedOnEars(t, got)
		for k, want := range c.want {
			if math.Abs(float64(got.Stands[k].Load)-want) > 5.1e-4 {
				t.Errorf("%s, %s: %.4f N, want %.3f", c.name, got.Stands[k].Name, float64(got.Stands[k].Load), want)
			}
		}
		if f := byID(found, "load.hinge"); f == nil || f.Result != finding.Within {
			t.Errorf("%s: center under the ears' line: %+v", c.name, f)
		}
	}
}

// L6: the arm's moment about the stand's axis, 1.0 m out: one lamp 110.815, two 221.630,
// the whole 27 kg 264.780 N·m.
func TestArmMoment(t *testing.T) {
	for lamps, want := range map[int]float64{1: 110.815, 2: 221.630} {
		got, _ := analyze(t, armPlan("three", lamps, 0, "panel", 1, ""))
		if math.Abs(float64(got.Stands[0].Moment)-want) > 5.1e-4 {
			t.Errorf("%d lamps: %.4f N·m, want %.3f", lamps, float64(got.Stands[0].Moment), want)
		}
	}
}

// armPlan is one stand with an arm of a reach in m along a world bearing in degrees.
func armPlan(kit string, lamps int, bearing float64, lamp string, reach float64, more string) string {
	text := fmt.Sprintf(`softloft: 1
derive: none
box: {size: [2 m, 2 m], cloth_at: 3 m}
stands: [{name: one, kit: %s, at: [5 m, 0 m], rise: 3 m%s, holds: {arm: {kit: bare, reach: %.12g m, bearing: %.12g deg}}}]
lamps:
`, kit, more, reach, bearing)
	for range lamps {
		text += fmt.Sprintf("  - {kit: %s, at: [0 m, 0 m], above: 0 m, on: {arm: 1}}\n", lamp)
	}
	return text + standKit
}

// L6 tip factors: restoring over overturning about the edge at r·cos(π/n) for 3, 4 and 5
// legs with the load straight over an edge; with the arm over a leg the factor is that
// of a round base. Stand 12 kg, r 0.55 m, two lamps of 11.3 kg 1 m out, or one. Ballast
// at the base for 1.0 and 1.5, kg.
func TestTipFactors(t *testing.T) {
	for _, c := range []struct {
		kit     string
		lamps   int
		bearing float64
		edge    float64
		factor  float64
		one     float64
		half    float64
	}{
		{"three", 2, 60, 0.27500, 0.20140, 47.582, 77.373},
		{"four", 2, 45, 0.38891, 0.33792, 23.511, 41.267},
		{"five", 2, 36, 0.44496, 0.42567, 16.191, 30.287},
		{"three", 1, 60, 0.27500, 0.40281, 17.791, 32.686},
		{"four", 1, 45, 0.38891, 0.67584, 5.756, 14.634},
		{"three", 2, 0, 0.27500, 0.64897, 6.4909, 15.736}, // over a leg: as a round base
		{"four", 2, 90, 0.38891, 0.64897, 6.4909, 15.736},
		{"five", 2, 72, 0.44496, 0.64897, 6.4909, 15.736},
		{"five", 1, 72, 0.44496, 1.29794, 0, 1.868},
	} {
		got, found := analyze(t, armPlan(c.kit, c.lamps, c.bearing, "panel", 1, ""))
		s := got.Stands[0]
		near(t, "edge", float64(s.EdgeAt), c.edge, 1.2e-5)
		if math.Abs(float64(s.TipMargin)-c.factor) > 5.1e-6 {
			t.Errorf("%s: factor %.6f, want %.5f", c.kit, float64(s.TipMargin), c.factor)
		}
		near(t, "for 1.5", float64(s.BagsNeeded), c.half, 5e-4)
		if math.Abs(float64(s.BagsForOne)-c.one) > 5.1e-4 {
			t.Errorf("%s: for 1.0 %.4f kg, want %.3f", c.kit, float64(s.BagsForOne), c.one)
		}
		if n := math.Ceil(c.half/12 - 1e-9); float64(s.BagCounts[0].Needed) != n {
			t.Errorf("%s: %v bags of 12 kg, want %v", c.kit, s.BagCounts[0].Needed, n)
		}
		if f := byID(found, "load.tip.one"); f == nil || f.Result != finding.Over || math.Abs(f.Value/c.factor-1) > 1e-4 {
			t.Errorf("%s: finding %+v", c.kit, f)
		}
	}
}

// T1 to T3 of the load checks, lb and in: base 40 lb, r 24 in, arm load 20 lb at 36 in
// over an edge: 480/480; with a 50 lb bag at the centre 1080/480; four legs 1527.4/380.6.
func TestTipEdges(t *testing.T) {
	bag := ", bags: {mass: 50 lb, count: 1}"
	for _, c := range []struct {
		name    string
		kit     string
		bearing float64
		more    string
		want    float64
		tol     float64
	}{
		{"T1", "forty-3", 60, "", 1, 1e-9},
		{"T2", "forty-3", 60, bag, 2.25, 1e-9},
		{"T3", "forty-4", 45, bag, 4.013, 5e-4},
	} {
		got, _ := analyze(t, armPlan(c.kit, 1, c.bearing, "twenty", 36*0.0254, c.more))
		if math.Abs(float64(got.Stands[0].TipMargin)-c.want) > c.tol {
			t.Errorf("%s: %.6f, want %.4f", c.name, float64(got.Stands[0].TipMargin), c.want)
		}
	}
}

// A push at the top goes over each edge straight: an empty stand of 12 kg, r 0.55 m,
// three legs, 3 m high, is tipped by 12·g·0.275/3 N. Statics.
func TestPushTips(t *testing.T) {
	push := 12 * 9.80665 * 0.275 / 3
	text := strings.Replace(armPlan("three", 0, 0, "panel", 1, ""), "derive: none\n", fmt.Sprintf("derive: none\nrules: {push: %.12g N}\n", push), 1)
	text = strings.Replace(text, "lamps:\n", "", 1)
	got, _ := analyze(t, text)
	near(t, "margin", float64(got.Stands[0].TipMargin), 1, 1e-9)
}

// Turning the stand and its arm together changes nothing; a bag at the base never makes
// it worse; the ballast that is asked for gives the ratio.
func TestTipProperties(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		bearing, turn := rapid.Float64Range(0, 360).Draw(r, "bearing"), rapid.Float64Range(0, 360).Draw(r, "turn")
		kit := rapid.SampledFrom([]string{"three", "four", "five"}).Draw(r, "kit")
		here, _ := analyze(t, armPlan(kit, 1, bearing, "panel", 1, ""))
		there, _ := analyze(t, armPlan(kit, 1, bearing+turn, "panel", 1, fmt.Sprintf(", turn: %.12g deg", turn)))
		a, b := float64(here.Stands[0].TipMargin), float64(there.Stands[0].TipMargin)
		if math.Abs(a-b) > 1e-6*a {
			r.Fatalf("turned by %g: %g and %g", turn, a, b)
		}
		ballast := float64(here.Stands[0].BagsNeeded)
		bagged, _ := analyze(t, armPlan(kit, 1, bearing, "panel", 1, fmt.Sprintf(", bags: {mass: %.12g kg}", ballast)))
		if got := float64(bagged.Stands[0].TipMargin); math.Abs(got-1.5) > 1e-6 && ballast > 0 || got < a-1e-9 {
			r.Fatalf("with %g kg: %g, without %g", ballast, got, a)
		}
	})
}

// The head takes an off-center load on the side where the load tightens it: to the right
// as the operator sees it from behind the clamp (common practice).
func TestHeadTightens(t *testing.T) {
	for hand, want := range map[string]bool{"right": true, "left": false} {
		text := strings.Replace(armPlan("three", 1, 0, "panel", 1, ""), "bearing: 0 deg", "bearing: 0 deg, head: "+hand, 1)
		got, found := analyze(t, text)
		if s := got.Stands[0]; s.Tightens == nil || *s.Tightens != want {
			t.Errorf("%s: %v, want %v", hand, s.Tightens, want)
		}
		if refused := byID(found, "load.head.one") != nil; refused == want {
			t.Errorf("%s: refused is %v", hand, refused)
		}
	}
	got, _ := analyze(t, onTwo("  - {name: a, mass: 27 kg, at: [0 m, 0 m, -0.2 m]}\n"))
	if got.Stands[0].Tightens != nil {
		t.Error("an ear has a head that tightens")
	}
}

// The rating of a stand is a table by height: between two rows the next higher one
// holds, over the highest nobody knows (common practice). Rows of 60, 50 and 20 kg at 2,
// 3 and 4 m.
func TestRatingByHeight(t *testing.T) {
	for rise, kilograms := range map[string]float64{"1.5 m": 60, "2 m": 60, "2.01 m": 50, "3 m": 50, "3.5 m": 20, "4.5 m": math.NaN()} {
		text := strings.ReplaceAll(onTwo("  - {name: a, mass: 27 kg, at: [0 m, 0 m, -0.2 m]}\n"), "rise: 2.5 m", "rise: "+rise)
		_, found := analyze(t, text)
		f := byID(found, "load.stand.west")
		switch {
		case f == nil:
			t.Errorf("%s: no finding", rise)
		case math.IsNaN(kilograms):
			if f.Result != finding.NotKnown {
				t.Errorf("%s: %s, want not known", rise, f.Result)
			}
		case math.Abs(f.Limit-kilograms*9.80665) > 1e-9:
			t.Errorf("%s: limit %g N, want %g kg", rise, f.Limit, kilograms)
		}
	}
}

// Four stands share evenly where box and load are alike on all sides, each is also held
// to half of the weight, and the reactions carry the weight whatever it does.
func TestFourStands(t *testing.T) {
	square := func(x, y float64) string {
		return fmt.Sprintf(`softloft: 1
derive: none
box: {size: [3 m, 3 m], cloth_at: 2.5 m, frame: nothing, sides: none}
stands:
  - {name: n, kit: three, at: [0 m, 1.5 m], rise: 2.5 m, holds: {ear: north}}
  - {name: s, kit: three, at: [0 m, -1.5 m], rise: 2.5 m, holds: {ear: south}}
  - {name: e, kit: three, at: [1.5 m, 0 m], rise: 2.5 m, holds: {ear: east}}
  - {name: w, kit: three, at: [-1.5 m, 0 m], rise: 2.5 m, holds: {ear: west}}
added: [{name: a, mass: 40 kg, at: [%.12g m, %.12g m, -0.2 m]}]
`, x, y) + standKit
	}
	weight := 40 * 9.80665
	got, found := analyze(t, square(0, 0))
	balancedOnEars(t, got)
	for _, s := range got.Stands {
		near(t, s.Name, float64(s.Load), weight/4, 1e-6)
		near(t, "diagonal", float64(s.Diagonal), weight/2, 1e-12)
		if s.Sharing != byElastic {
			t.Errorf("%s: %q", s.Name, s.Sharing)
		}
	}
	if f := byID(found, "load.stand.n"); math.Abs(f.Value-weight/2) > 1e-9 {
		t.Errorf("held to %g N, want half of the weight, %g", f.Value, weight/2)
	}
	rapid.Check(t, func(r *rapid.T) {
		x, y := rapid.Float64Range(-0.5, 0.5).Draw(r, "x"), rapid.Float64Range(-0.5, 0.5).Draw(r, "y")
		got, _ := analyze(t, square(x, y))
		at := [4][2]float64{{0, 1.5}, {0, -1.5}, {1.5, 0}, {-1.5, 0}}
		var up, mx, my float64
		for k, s := range got.Stands {
			n := float64(s.Load)
			up, mx, my = up+n, mx+n*at[k][0], my+n*at[k][1]
		}
		// The box sags, and its load with it: moments to a millimetre of the weight.
		if math.Abs(up/weight-1) > 1e-6 || math.Abs(mx-weight*x) > 1e-3*weight || math.Abs(my-weight*y) > 1e-3*weight {
			r.Fatalf("reactions %g N of %g, moments %g %g of %g %g", up, weight, mx, my, weight*x, weight*y)
		}
	})
}

// Two routes to one number: three ears by statics and by the frame on its ears, four by
// the place of rest under large rotations and by the linear frame.
func TestSharesTwoWays(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		x, y := rapid.Float64Range(-0.4, 0.4).Draw(r, "x"), rapid.Float64Range(-0.4, 0.4).Draw(r, "y")
		four := rapid.Bool().Draw(r, "four")
		text := fmt.Sprintf(`softloft: 1
derive: none
box: {size: [3 m, 2 m], cloth_at: 2.5 m, turn: %.12g deg, frame: nothing, sides: none}
stands:
  - {name: n, kit: three, at: [0 m, 1 m], rise: 2.5 m, holds: {ear: north}}
  - {name: e, kit: three, at: [1.5 m, 0 m], rise: 2.5 m, holds: {ear: east}}
  - {name: w, kit: three, at: [-1.5 m, 0 m], rise: 2.5 m, holds: {ear: west}}
`, rapid.Float64Range(-180, 180).Draw(r, "turn"))
		if four {
			text += "  - {name: s, kit: three, at: [0 m, -1 m], rise: 2.5 m, holds: {ear: south}}\n"
		}
		text += fmt.Sprintf("added: [{name: a, mass: 20 kg, at: [%.12g m, %.12g m, -0.1 m]}]\n", x, y) + standKit
		w := &work{rig: derive(t, text)}
		w.share()
		f := &w.floor
		if f.frame == nil {
			r.Fatalf("no rest: %s", f.frameWhy)
		}
		other := reactions(f.frame, len(f.ears))
		if four {
			linear, err := f.model.problem.Linear()
			if err != nil {
				r.Fatal(err)
			}
			result, err := linear.Solve(f.frame.loads)
			if err != nil {
				r.Fatal(err)
			}
			for k := range other {
				other[k] = result.Reaction[k].Force.Z
			}
		}
		for k := range f.built {
			if math.Abs(f.built[k]-other[k]) > 2e-3*20*9.80665 {
				r.Fatalf("ear %d: %.4f N the one way, %.4f the other", k, f.built[k], other[k])
			}
		}
	})
}

// A box that stands only partly hold is not known, and neither is one whose center of
// gravity lies over the line of its two ears; neither is an error.
func TestPartlyHeld(t *testing.T) {
	whole := onTwo("  - {name: a, mass: 27 kg, at: [0 m, 0 m, -0.2 m]}\n")
	east := "  - {name: east, kit: three, at: [1.219 m, 0 m], rise: 2.5 m, holds: {ear: east}}\n"
	for name, text := range map[string]string{
		"one ear":       strings.Replace(whole, east, "", 1),
		"same ear":      strings.Replace(whole, "[1.219 m, 0 m], rise: 2.5 m, holds: {ear: east}", "[-1.219 m, 0 m], rise: 2.5 m, holds: {ear: west}", 1),
		"arms only":     armPlan("three", 1, 0, "panel", 1, ""),
		"center above":  onTwo("  - {name: a, mass: 27 kg, at: [0 m, 0 m, 0.2 m]}\n"),
		"center beside": onTwo("  - {name: a, mass: 27 kg, at: [0 m, 0.2 m, -0.2 m]}\n"),
	} {
		_, found := analyze(t, text)
		unknown := false
		for _, f := range found {
			unknown = unknown || f.Result == finding.NotKnown && (f.ID == "load.stands" || f.ID == "load.hangs" || f.ID == "load.hinge")
		}
		if !unknown {
			t.Errorf("%s: nothing is not known", name)
		}
	}
}

// What follows from a mass that nobody gave is explained by it: one root, not one finding
// for each stand.
func TestUnknownMassIsTheRoot(t *testing.T) {
	text := strings.Replace(onTwo("  - {name: a, mass: 27 kg, at: [0 m, 0 m, -0.2 m]}\n"), "sides: none}", "sides: none, cloth: [bare]}", 1)
	text = strings.Replace(text, "kit:\n", "kit:\n  cloth: {bare: {diffuse: 0.5, back: 0.3}}\n", 1)
	_, found := analyze(t, text)
	for _, f := range finding.Roots(finding.Silence(found)) {
		if f.Result == finding.NotKnown && f.ID != "load.mass.cloth.1" {
			t.Errorf("%s is not explained by the mass: %s", f.ID, f.Why)
		}
	}
}

// What nobody rated is not known: an arm without a rating; with one it is held to half of
// it, as people are beneath (the share of a working load limit of package source).
func TestArmRating(t *testing.T) {
	text := armPlan("three", 2, 0, "panel", 1, "")
	_, found := analyze(t, text)
	if f := byID(found, "load.rated.arm.one"); f == nil || f.Result != finding.NotKnown {
		t.Errorf("unrated: %+v", f)
	}
	for rated, want := range map[string]finding.Result{"46 kg": finding.Tight, "60 kg": finding.Within, "40 kg": finding.Over} {
		_, found = analyze(t, strings.Replace(text, "bare: {mass: 0 kg}", "bare: {mass: 0 kg, rated: "+rated+"}", 1))
		if f := byID(found, "load.rated.arm.one"); f == nil || f.Result != want {
			t.Errorf("rated %s for 22.6 kg: %+v, want %s", rated, f, want)
		}
	}
}

// balancedOnEars holds what is left of forces and moments to rounding.
func balancedOnEars(t *testing.T, a Answer) {
	t.Helper()
	if a.Residual == nil {
		t.Fatal("the box on its ears came to no rest")
	}
	weight := float64(a.Mass) * 9.80665
	if float64(a.Residual.ForceN) > 1e-9*weight || float64(a.Residual.MomentNm) > 1e-8*weight {
		t.Errorf("out of balance: %+v of %.1f N", *a.Residual, weight)
	}
}

// A frame that comes to no rest on its ears is not known: ribs over a bottom frame that
// nothing joins to it fall.
func TestLooseRibs(t *testing.T) {
	text := strings.Replace(onTwo("  - {name: a, mass: 27 kg, at: [0 m, 0 m, -0.2 m]}\n"), "frame: nothing,", "frame: nothing, depth: 0.5 m, ribs: {tube: nothing, count: 1}, ", 1)
	text = strings.Replace(text, "sides: none", "sides: none, cloth: []", 1)
	_, found := analyze(t, text)
	if f := byID(found, "load.frame"); f == nil || f.Result != finding.NotKnown {
		t.Errorf("loose ribs: %+v", f)
	}
}

func byID(found []finding.Finding, id string) *finding.Finding {
	for i := range found {
		if found[i].ID == id {
			return &found[i]
		}
	}
	return nil
}
