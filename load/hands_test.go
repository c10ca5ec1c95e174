package load

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"softloft/finding"
)

// customary is the same equation in pounds and inches.
var customary = liftingSet{constant: 51, reach: 10, height: 30, perHeight: 0.0075, travel: 1.8}

// Worked examples of the Applications Manual for the Revised NIOSH Lifting Equation
// (1994), inputs from memory, at full precision; the manual multiplies factors of two
// digits and prints 16.3, 14.5, 28.0 and 18.1 lb: LI 2.7, 3.0, 1.3, 1.9.
func TestLiftingExamples(t *testing.T) {
	for _, c := range []struct {
		name    string
		set     liftingSet
		grip    grip
		want    float64
		printed float64
	}{
		{"1, punch press stock, origin", customary, grip{23, 15, 49, 0, 1, 0.95}, 16.02, 16.3},
		{"1, destination", customary, grip{23, 64, 49, 0, 1, 1}, 14.15, 14.5},
		{"2, supply rolls, origin", customary, grip{15, 27, 17, 0, 1, 0.9}, 27.69, 28.0},
		{"2, destination", customary, grip{20, 10, 17, 0, 1, 0.9}, 18.06, 18.1},
		{"ideal, lb", customary, grip{10, 30, 10, 0, 1, 1}, 51, 51},
		{"ideal, kg", metric(), grip{25, 75, 25, 0, 1, 1}, 23, 23},
	} {
		if got := c.set.recommended(c.grip); math.Abs(got-c.want) > 0.006 || math.Abs(got-c.printed) > 0.4 {
			t.Errorf("%s: %.3f, want %.2f", c.name, got, c.want)
		}
	}
	for name, g := range map[string]grip{"too far": {63, 75, 25, 0, 1, 1}, "turned too far": {25, 75, 25, 136, 1, 1}} {
		if got := metric().recommended(g); got != 0 {
			t.Errorf("%s: %g kg", name, got)
		}
	}
}

// Both sets of units say nearly the same: 51 lb are 23.13 kg.
func TestLiftingInBothUnits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := grip{far: rapid.Float64Range(25, 60).Draw(t, "far"), high: rapid.Float64Range(0, 170).Draw(t, "high"), way: rapid.Float64Range(25, 150).Draw(t, "way"),
			turn: rapid.Float64Range(0, 135).Draw(t, "turn"), often: 1, held: 0.95}
		kg := metric().recommended(g)
		g.far, g.high, g.way = g.far/2.54, g.high/2.54, g.way/2.54
		if lb := customary.recommended(g) * 0.45359237; math.Abs(kg-lb) > 0.035*23 || kg < 0 || kg > 23 {
			t.Errorf("%+v: %g kg, %g kg by pounds", g, kg, lb)
		}
	})
}

// Two people lift two thirds of what both may alone, three a half (HSE figures, read): of
// 20 kg each 26.7 and 30 kg.
func TestCarriers(t *testing.T) {
	for mass, want := range map[float64]int{20: 1, 20.1: 2, 26.6: 2, 26.7: 3, 30: 3, 30.1: 4, 40: 4, 100: 10, 0: 0, -1: 0} {
		if got := carriers(mass, 20); got != want {
			t.Errorf("%g kg take %d, want %d", mass, got, want)
		}
	}
	if Carry(math.NaN()) != 0 || Carry(1) != 1 || Carry(1e9) != mostCarriers {
		t.Error("Carry of nothing known, of little, of a ship")
	}
	rapid.Check(t, func(t *rapid.T) {
		mass := rapid.Float64Range(0.1, 500).Draw(t, "mass")
		if Carry(mass+1) < Carry(mass) {
			t.Errorf("%g kg take %d, a kilogram more %d", mass, Carry(mass), Carry(mass+1))
		}
	})
}

// A crew's hands are held to the equation; without a crew only the people are told.
func TestHandsInAPlan(t *testing.T) {
	text := hungSquare{above: 3, ribs: ribsAt}.text()
	got, found := analyze(t, text)
	if len(got.Hands) != 2 || got.Hands[1].People != Carry(float64(got.Hands[1].Mass)) || byID(found, "load.hands.frame") != nil {
		t.Errorf("no crew: %+v", got.Hands)
	}
	for people, want := range map[string]finding.Result{"1": finding.Over, "2": finding.Over, "12": finding.Within} {
		_, found = analyze(t, strings.Replace(text, "softloft: 1\n", "softloft: 1\ncrew: {people: "+people+"}\n", 1))
		if f := byID(found, "load.hands.frame"); f == nil || f.Result != want {
			t.Errorf("%s people: %+v, want %s", people, f, want)
		}
	}
}

// No share is published of a team of more than three (HSE figures, read): where the answer
// hangs on it, it is not known.
func TestTeamOfMoreThanThree(t *testing.T) {
	steel := hungSquare{above: 3, ribs: ribsAt, density: "7850 kg/m3"}.text()
	for people, want := range map[string]finding.Result{"3": finding.Over, "4": finding.Over, "6": finding.NotKnown, "14": finding.Within} {
		_, found := analyze(t, strings.Replace(steel, "softloft: 1\n", "softloft: 1\ncrew: {people: "+people+"}\n", 1))
		if f := byID(found, "load.hands.frame"); f == nil || f.Result != want {
			t.Errorf("%s people: %+v, want %s", people, f, want)
		}
	}
}
