package finding_test

import (
	"math"
	"strings"
	"testing"

	"softloft/finding"
	"softloft/source"
)

// row is one published or independently computed number, reached through a
// formula. tolerance is half of the last printed digit.
type row struct {
	from      string
	inputs    map[string]float64
	want      float64
	tolerance float64
}

// through concludes a check whose value is the work, and gives that value.
func through(t *testing.T, steps []string, formula string, inputs map[string]float64) float64 {
	t.Helper()
	var work finding.Work
	for symbol, value := range inputs {
		work.Inputs = append(work.Inputs, finding.Input{Symbol: symbol, Value: value})
	}
	for _, step := range steps {
		work.Steps = append(work.Steps, finding.Step{Formula: step})
	}
	work.Formula = formula
	check := finding.Check{
		ID: "test", Statement: "a published case", Relation: finding.AtMost, Value: work,
		Limit:  finding.Given(finding.Input{Symbol: "limit", Value: math.MaxFloat64}),
		Source: source.Cite("definition", ""),
	}
	if err := check.Err(); err != nil {
		t.Fatal(err)
	}
	f := check.Conclude()
	if f.Why != "" {
		t.Fatalf("%s: %s", formula, f.Why)
	}
	return f.Value
}

func compare(t *testing.T, steps []string, formula string, rows []row) {
	t.Helper()
	for _, r := range rows {
		got := through(t, steps, formula, r.inputs)
		if !(math.Abs(got-r.want) <= r.tolerance) {
			t.Errorf("%s: %s gives %.9g, want %.9g ± %g", r.from, formula, got, r.want, r.tolerance)
		}
	}
}

// bridle is a two-leg bridle of the theatre rigging mathematics primer, whose
// formula was read: lesson 4 the tensions, lesson 3 the lengths.
type bridle struct {
	from                string
	w, h1, v1, h2, v2   float64
	l1, l2, t1, t2, out float64 // lengths, tensions, thrust
	share1, share2      float64
	angle               float64 // included, degrees
}

var bridles = []bridle{
	{"S1, inputs read in lesson 4, results computed from its formula", 500, 3, 4, 6, 3, 5, 6.708, 454.55, 304.92, 272.73, 363.64, 136.36, 100.3},
	{"S2, lengths read in lesson 3 (10.77, 6.7), tensions computed from its formula", 1000, 4, 10, 3, 6, 10.770, 6.708, 598.35, 496.90, 222.22, 555.56, 444.44, 48.37},
	{"S3, computed from the primer's formula", 600, 6, 8, 6, 8, 10, 10, 375, 375, 225, 300, 300, 73.74},
	// The reference table prints 67.32 for T_2, which its own thrust refutes: 62.5 · 10.7703/10 = 67.31.
	{"S4, computed from the primer's formula", 400, 2, 12, 10, 4, 12.166, 10.770, 380.17, 67.31, 62.5, 375, 25, 77.66},
	{"S5, a flat bridle, computed from the primer's formula", 1000, 10, 1, 10, 1, 10.05, 10.05, 5024.9, 5024.9, 5000, 500, 500, 168.6},
}

func TestBridlesOfThePrimer(t *testing.T) {
	steps := []string{
		"L_1 = √(H_1² + V_1²)",
		"L_2 = √(H_2² + V_2²)",
		"T_1 = W · L_1 · H_2 / (V_1 · H_2 + V_2 · H_1)",
		"T_2 = W · L_2 · H_1 / (V_1 · H_2 + V_2 · H_1)",
	}
	for _, b := range bridles {
		given := map[string]float64{"W": b.w, "H_1": b.h1, "V_1": b.v1, "H_2": b.h2, "V_2": b.v2}
		for formula, want := range map[string][2]float64{ // value, half of the last printed digit
			"x = L_1":             {b.l1, 0.0005},
			"x = L_2":             {b.l2, 0.0005},
			"x = T_1":             {b.t1, half(b.t1)},
			"x = T_2":             {b.t2, half(b.t2)},
			"x = T_1 * H_1 / L_1": {b.out, 0.005},
			"x = T_2 * H_2 / L_2": {b.out, 0.005}, // equal on both sides
			"x = T_1 * V_1 / L_1": {b.share1, 0.005},
			"x = T_2 * V_2 / L_2": {b.share2, 0.005},
			"x = deg(atan(H_1 / V_1) + atan(H_2 / V_2))":    {b.angle, 0.05},
			"x = deg(atan2(H_1, V_1)) + deg(atan(H_2/V_2))": {b.angle, 0.05},
		} {
			got := through(t, steps, formula, given)
			if !(math.Abs(got-want[0]) <= want[1]*1.0001) {
				t.Errorf("%s: %s gives %.9g, want %g ± %g", b.from, formula, got, want[0], want[1])
			}
		}
	}
}

// half is half of the last printed digit of a bridle's tension.
func half(tension float64) float64 {
	if tension > 5000 {
		return 0.05
	}
	return 0.005
}

func angles(from, symbol string, tolerance float64, pairs ...float64) []row {
	var rows []row
	for i := 0; i < len(pairs); i += 2 {
		rows = append(rows, row{from, map[string]float64{symbol: pairs[i]}, pairs[i+1], tolerance})
	}
	return rows
}

func TestSlingAngleFactors(t *testing.T) {
	// Length over height, from the horizontal (US convention); table of the
	// rigging handbooks, also ASME B30.9 second-hand: 60° 1.1547, 45° 1.4142,
	// 30° 2.000. The other rows were computed independently.
	compare(t, nil, "f = 1 / sin(a°)", angles("sling angle factor", "a", 0.00005,
		90, 1.000, 80, 1.0154, 75, 1.0353, 70, 1.0642, 65, 1.1034, 60, 1.1547, 55, 1.2208, 50, 1.3054, 45, 1.4142,
		40, 1.5557, 35, 1.7434, 30, 2.000, 25, 2.3662, 20, 2.9238, 15, 3.8637, 10, 5.7588, 5, 11.4737))
}

func TestBlockLoadFactors(t *testing.T) {
	// The theatre rigging mathematics primer, read: f = sin θ / sin(θ/2),
	// which is 2 cos(θ/2); rows computed independently from it.
	pairs := []float64{0, 2.0000, 20, 1.9696, 30, 1.9319, 45, 1.8478, 60, 1.7321, 70, 1.6383, 80, 1.5321, 90, 1.4142, 100, 1.2856,
		110, 1.1472, 120, 1.0000, 130, 0.8452, 135, 0.7654, 150, 0.5176, 180, 0}
	compare(t, nil, "f = 2 · cos(θ° / 2)", angles("block load factor", "θ", 0.00005, pairs...))
	// Its other form is not defined at 0, where the finding is not known.
	compare(t, nil, "f = sin(θ°) / sin(θ° / 2)", angles("block load factor", "θ", 0.00005, pairs[2:]...))
	// Read: 200 lb over a block at 90° loads it with 282.84 lb.
	compare(t, nil, "R = 2 · T · cos(θ° / 2)", []row{{"primer, worked example", map[string]float64{"T": 200, "θ": 90}, 282.84, 0.005}})
}

func TestHaulForces(t *testing.T) {
	// P = W / (e + e² + … + e^n): the standard friction model of a tackle;
	// rows computed independently. W 100, n 1 and e .9 when lowering: 90.0.
	compare(t, nil, "P = W / e", []row{{"n = 1", map[string]float64{"W": 100, "e": 0.9}, 111.11, 0.005}})
	compare(t, nil, "P = W / (e + e²)", []row{
		{"n = 2", map[string]float64{"W": 100, "e": 0.9}, 58.48, 0.005},
		{"n = 2", map[string]float64{"W": 100, "e": 0.95}, 53.98, 0.005},
	})
	compare(t, nil, "P = W / (e + e^2 + e^3 + e^4)", []row{
		{"n = 4", map[string]float64{"W": 100, "e": 0.95}, 28.37, 0.005},
		{"n = 4", map[string]float64{"W": 200, "e": 0.9}, 64.62, 0.005},
	})
	compare(t, nil, "P = W / e^-1", []row{{"lowering", map[string]float64{"W": 100, "e": 0.9}, 90.0, 0.05}})
	// US Army tackle rule, form read: 100 lb, 4 sheaves, 4 parts: 35.
	compare(t, nil, "P = W * (1 + 0.1 * sheaves) / parts", []row{{"army tackle rule", map[string]float64{"W": 100, "sheaves": 4, "parts": 4}, 35, 0.5}})
}

func TestRopeAsASpring(t *testing.T) {
	// The standard impact equation, read: F = W (1 + √(1 + 2 k h / W)); W 50 lb,
	// k 2000 lb/in. h 12 in: exactly 1600 lb; h 2 in: 684.4; h 0: 2 W.
	formula := "F = W · (1 + √(1 + 2 · k · h / W))"
	compare(t, nil, formula, []row{
		{"h 12 in", map[string]float64{"W": 50, "k": 2000, "h": 12}, 1600, 1e-9},
		{"h 2 in", map[string]float64{"W": 50, "k": 2000, "h": 2}, 684.4, 0.05},
		{"h 0", map[string]float64{"W": 50, "k": 2000, "h": 0}, 100, 1e-9},
		{"W 20, k 1000, h 8", map[string]float64{"W": 20, "k": 1000, "h": 8}, 586.0, 0.05},
	})
}

func TestIncidentMeterEquation(t *testing.T) {
	// ISO 2720:1974, read as printed in an open library's examples:
	// N 8, t 1, S 100, C 250 gives 160 lx. Then T of 1000 lx at ISO 800, 1/48 s
	// (computed independently): 8.164966.
	compare(t, nil, "E = C · N² / (t · S)", []row{{"160 lx", map[string]float64{"C": 250, "N": 8, "t": 1, "S": 100}, 160, 1e-9}})
	compare(t, nil, "N = √(E · t · S / C)", []row{{"1000 lx", map[string]float64{"C": 250, "E": 1000, "t": 1.0 / 48, "S": 800}, 8.164966, 5e-7}})
	// Stops of a transmission of 0.85 (computed independently): 0.234465.
	compare(t, nil, "s = -log2(τ)", []row{{"stops", map[string]float64{"τ": 0.85}, 0.234465, 5e-7}})
}

func TestFactorsOverPeople(t *testing.T) {
	factor := func(kind source.Hardware) source.Factor {
		f, ok := source.StrictestFactor(kind)
		if !ok {
			t.Fatalf("no factor for %s", kind)
		}
		return f
	}
	// D1: textile round sling, working load limit 1000 kg, breaking at 7000 kg
	// (Machinery Directive: 7). DGUV Information 215-313, 1.4: half of the limit,
	// 500 kg; its Table 1: 7000/14 = 500 kg.
	usual, _ := source.FactorOf("machinery-directive", source.RoundSling)
	compare(t, nil, "F = WLL · s", []row{{"D1, half rule", map[string]float64{"WLL": 1000, "s": source.WorkingLoadShare().Value}, 500, 1e-9}})
	compare(t, nil, "F = WLL · u / n", []row{{"D1, Table 1", map[string]float64{"WLL": 1000, "u": usual.Value, "n": factor(source.RoundSling).Value}, 500, 1e-9}})
	// D2: wire of 5 mm, breaking at 13.3 kN, Table 1: 1.33 kN.
	compare(t, nil, "F = B / n", []row{{"D2", map[string]float64{"B": 13300, "n": factor(source.WireRope).Value}, 1330, 1e-9}})
	// D3: manila of 1/2 in (CI 1308-96: 2385 lb), bowline 60 %, factor 10: 143 lb.
	bowline, _ := source.Knot("bowline")
	compare(t, nil, "F = B · k / n", []row{{"D3", map[string]float64{"B": 2385, "k": bowline.Share, "n": 10}, 143, 0.5}})
}

// A working reads like the published example that it repeats.
func TestWorkingOfABridle(t *testing.T) {
	f := bridleCheck().Conclude()
	want := `over: Bridle at P1: 100.3 deg, at most 90 deg, margin 0.897, case built
  β_1 = deg(atan(H_1 / V_1))   west leg from the vertical
    = deg(atan(3 / 4))
    = 36.8699 deg
  β_2 = deg(atan(H_2 / V_2))   east leg from the vertical
    = deg(atan(6 / 3))
    = 63.4349 deg
  β = β_1 + β_2   included angle
    = 36.8699 + 63.4349
    = 100.305 deg
  100.3 deg, at most 90 deg, margin 0.897: over
  H_1 = 3 ft   plan.yaml:40
  V_1 = 4 ft   plan.yaml:40
  H_2 = 6 ft   plan.yaml:41
  V_2 = 3 ft   plan.yaml:41
  β_max = 90 deg   questioned above; common practice
  assumed: both legs taut
  source: common practice`
	if got := strings.Join(f.Working(finding.Sources), "\n"); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if got := f.Working(finding.Brief); len(got) != 1 || got[0] != strings.Split(want, "\n")[0] {
		t.Errorf("the line alone is %q", got)
	}
	if got := f.Working(finding.Numbers); strings.Join(got, "\n") != strings.Join(strings.Split(want, "\n")[:11], "\n") {
		t.Errorf("symbols, numbers and result are\n%s", strings.Join(got, "\n"))
	}
}

// bridleCheck is S1 of the primer, held to the angle that is questioned.
func bridleCheck() finding.Check {
	return finding.Check{
		ID: "load.bridle.P1", Subject: finding.Subject{Part: "hang/lines/P1", Place: finding.Place{Line: 40, Column: 5}},
		Statement: "Bridle at P1", Case: "built", Relation: finding.AtMost, Unit: "deg",
		Value: finding.Work{
			Formula: "β = β_1 + β_2", Name: "included angle",
			Steps: []finding.Step{
				{Formula: "β_1 = deg(atan(H_1/V_1))", Result: finding.Input{Name: "west leg from the vertical", Unit: "deg"}},
				{Formula: "β_2 = deg(atan(H_2/V_2))", Result: finding.Input{Name: "east leg from the vertical", Unit: "deg"}},
			},
			Inputs: []finding.Input{
				{Symbol: "H_1", Value: 3, Unit: "ft", Origin: "plan.yaml:40"}, {Symbol: "V_1", Value: 4, Unit: "ft", Origin: "plan.yaml:40"},
				{Symbol: "H_2", Value: 6, Unit: "ft", Origin: "plan.yaml:41"}, {Symbol: "V_2", Value: 3, Unit: "ft", Origin: "plan.yaml:41"},
			},
		},
		Limit:       finding.Given(finding.Input{Symbol: "β_max", Name: "questioned above", Value: 90, Unit: "deg", Origin: "common practice"}),
		Source:      source.BridleQuestioned().Citation,
		Assumptions: []string{"both legs taut"},
	}
}
