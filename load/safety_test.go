package load

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// arrest is the impact equation written once more; impact is the finding's own formula.
func arrest(weight, fall, ea, length float64) float64 {
	return weight + math.Sqrt(weight*weight+2*weight*ea*fall/length)
}

func impact(weight, fall, ea, length float64) float64 {
	c := caught{weight: finding.Input{Symbol: "m", Value: weight / gravity, Unit: "kg"}, slack: fall, length: length, rope: &rig.Rope{EA: ea}, part: &rig.Part{}}
	return finding.Check{ID: "x", Relation: finding.AtMost, Unit: "N", Value: c.work(), Limit: finding.Given(finding.Input{Symbol: "z", Value: 1, Unit: "N"}), Source: source.Cite("plan", "")}.Conclude().Value
}

// The impact of a falling weight on an elastic rope (standard impact equation; the same as
// the rope form W + √(W² + 2WMf)): F/W, and F in the units of the row. lb and inches, then
// kg and m with a 5 mm wire of EA 558 kN and a rope of 14.6 kN, 1 m long. Computed.
func TestArrest(t *testing.T) {
	const g = gravity
	for _, c := range []struct{ weight, fall, ea, length, ratio, force, by float64 }{
		{50, 0, 2000, 1, 2, 100, 1e-9},
		{50, 2, 2000, 1, 13.689, 684.4, 0.05},
		{50, 12, 2000, 1, 32, 1600, 1e-9},
		{20, 8, 1000, 1, 29.302, 586.0, 0.05},
		{20 * g, 0.20, 558e3, 1, 34.75, 6815, 1},
		{20 * g, 0.05, 558e3, 1, 17.90, 3510, 1},
		{20 * g, 0.20, 14.6e3, 1, 6.55, 1284, 1},
	} {
		got := impact(c.weight, c.fall, c.ea, c.length)
		if math.Abs(got-c.force) > c.by || math.Abs(got/c.weight-c.ratio) > 5e-3 {
			t.Errorf("%+v: %.2f, %.3f W", c, got, got/c.weight)
		}
	}
}

// The energy at the lowest point: what the weight has lost, fall and stretch, is in the
// rope. It rises with the fall and with the stiffness, and is never under twice the weight.
func TestArrestEnergy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		weight := rapid.Float64Range(1, 5e3).Draw(t, "weight")
		fall, ea, length := rapid.Float64Range(0, 2).Draw(t, "fall"), rapid.Float64Range(1e3, 1e6).Draw(t, "EA"), rapid.Float64Range(0.1, 10).Draw(t, "length")
		f := impact(weight, fall, ea, length)
		stretch := f * length / ea
		if lost, kept := weight*(fall+stretch), f*stretch/2; math.Abs(lost-kept) > 1e-9*lost {
			t.Errorf("lost %g J, kept %g J", lost, kept)
		}
		if f < 2*weight*(1-1e-12) || impact(weight, fall+0.1, ea, length) < f || impact(weight, fall, 2*ea, length) < f {
			t.Errorf("%g N for %g N", f, weight)
		}
	})
}

// A lamp's safety in a plan: the told force is the impact equation's, a fall over 20 cm is
// over (DGUV Information 215-313, read), a stiffness that nobody gave is not known.
func TestLampSafety(t *testing.T) {
	base := hungSquare{above: 3, ribs: ribsAt, lamps: onRibs, hung: "  safety: {kit: wire, slack: 10 cm}\n"}.text()
	base = strings.Replace(base, "wire: {rated: 1 kN, mass: 0 kg}", "wire: {rated: 20 kN, mass: 0 kg, stiffness: 300 kN, length: 0.75 m}", 1)
	got, found := analyze(t, base)
	if len(got.Safety) != 4 {
		t.Fatalf("%d safeties", len(got.Safety))
	}
	want := arrest(9.5*gravity, 0.1, 300e3, 0.75)
	for _, s := range got.Safety {
		if math.Abs(float64(s.Force)-want) > 1e-6 || float64(s.Slack) != 0.1 {
			t.Errorf("%+v, want %.3f N", s, want)
		}
	}
	for _, c := range []struct {
		name, old, new, id string
		result             finding.Result
	}{
		{"as it is", "slack: 10 cm", "slack: 10 cm", "load.safety.A", finding.Within},
		{"as it is, the fall", "slack: 10 cm", "slack: 10 cm", "load.fall.A", finding.Within},
		{"a long fall", "slack: 10 cm", "slack: 21 cm", "load.fall.A", finding.Over},
		{"weak", "rated: 20 kN", "rated: 5 kN", "load.safety.A", finding.Over},
		{"unrated", "rated: 20 kN, ", "", "load.safety.A", finding.NotKnown},
		{"nobody gave the stiffness", "stiffness: 300 kN, length", "length", "load.safety.A", finding.NotKnown},
		{"the rib as it is", "slack: 10 cm", "slack: 0 cm", "load.anchor.A", finding.Within},
		{"the rib of foil", "wall: 3.56 mm", "wall: 0.1 mm", "load.anchor.A", finding.Over},
	} {
		if f := byID(found, c.id); c.old != c.new || f == nil {
			_, found = analyze(t, strings.Replace(base, c.old, c.new, 1))
		}
		if f := byID(found, c.id); f == nil || f.Result != c.result {
			t.Errorf("%s: %+v, want %s", c.name, f, c.result)
		}
		_, found = analyze(t, base)
	}
}

// Half of the box comes on each of two of four secondaries, whatever the rest do.
func TestSecondary(t *testing.T) {
	text := strings.Replace(hungSquare{above: 3, hung: "  secondary: {kit: wire, slack: 5 cm}\n"}.text(), "derive: none\n", "", 1)
	text = strings.Replace(text, "wire: {rated: 1 kN, mass: 0 kg}", "wire: {rated: 90 kN, mass: 0 kg, stiffness: 300 kN}", 1)
	got, found := analyze(t, text)
	seen := 0
	for _, s := range got.Safety {
		if strings.HasPrefix(s.Part, "secondary.") {
			seen++
			if want := arrest(float64(got.Mass)*gravity/2, 0.05, 300e3, float64(s.Length)); math.Abs(float64(s.Force)-want) > 1e-6 {
				t.Errorf("%+v, want %.3f", s, want)
			}
		}
	}
	if seen != 4 {
		t.Errorf("%d secondaries", seen)
	}
	if f := byID(found, "load.anchor.L1"); f == nil || f.Result == finding.NotKnown {
		t.Errorf("its point: %+v", f)
	}
}
