package quantity

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Inches to metres by 1 in = 0.0254 m (NIST SP 811 appendix B.8); rounding and carry by hand.
func TestFeet(t *testing.T) {
	for _, row := range []struct {
		inches float64
		want   string
	}{
		{150.5, `12'-6 1/2"`},
		{0, `0'-0"`},
		{-3, `-0'-3"`},
		{-150.5, `-12'-6 1/2"`},
		{11.9375 + 0.001, `1'-0"`}, // 11 15/16 in and more: carry
		{11.93, `0'-11 7/8"`},
		{0.06, `0'-0"`},
		{-0.06, `0'-0"`},
		{0.125, `0'-0 1/8"`},
		{144, `12'-0"`},
		{math.NaN(), "not known"},
		{math.Inf(1), "not known"},
	} {
		if got := Feet(Length(row.inches * 0.0254)); got != row.want {
			t.Errorf("%v in prints %s, want %s", row.inches, got, row.want)
		}
	}
	if got := Feet(1e300); got != "3.281e+300 ft" {
		t.Errorf("1e300 m prints %s", got)
	}
}

func TestSystems(t *testing.T) {
	unknownForce := Force(math.NaN())
	for _, row := range []struct{ got, want string }{
		{Length(3.81).String(), "3.81 m"},
		{Length(0).String(), "0 m"},
		{Length(math.Copysign(0, -1)).String(), "0 m"},
		{Length(math.NaN()).String(), "not known"},
		{Mass(1e6).String(), "1000000 kg"},
		{TStop(2.8).String(), "T2.8"},
		{Share(0.6).String(), "0.6"},
		{InMetres.Length(3.81), "3.810 m"},
		{InMetres.Length(-0.0001), "0.000 m"},
		{InFeet.Length(3.81), `12'-6"`},
		{System("").Length(3.81), `12'-6"`},
		{InFeet.Mass(250 * Pound), "250 lb"},
		{InFeet.Mass(9.996 * Pound), "10.0 lb"},
		{InMetres.Mass(0.1234), "0.123 kg"},
		{InMetres.Mass(0), "0 kg"},
		{InFeet.Force(250 * PoundForce), "250 lb"},
		{InFeet.Force(unknownForce), "not known"},
		{InMetres.Force(999), "999 N"},
		{InMetres.Force(1112), "1.11 kN"},
		{InMetres.Force(-1112), "-1.11 kN"},
		{InFeet.Illuminance(1076.391), "100 fc"}, // 1 fc = 10.76391 lx: NIST SP 811 appendix B.8
		{InMetres.Illuminance(540), "540 lx"},
		{InFeet.Pressure(4788.026), "100 lb/ft2"}, // 1 lbf/ft2 = 47.88026 Pa: NIST SP 811 appendix B.8
		{InMetres.Pressure(4788), "4.79 kPa"},
		{InFeet.Stress(6.894757e6), "1.00 ksi"}, // 1 ksi = 6.894757 MPa: NIST SP 811 appendix B.8
		{InMetres.Stress(160e6), "160 MPa"},
		{InFeet.Moment(1.355818), "1.00 lbf ft"}, // NIST SP 811 appendix B.8
		{InMetres.Moment(40), "40.0 N m"},
		{InFeet.LineForce(14.5939), "1.00 lbf/ft"}, // NIST SP 811 appendix B.8
		{InMetres.LineForce(20), "20.0 N/m"},
		{InFeet.LineMass(1.488164), "1.00 lb/ft"}, // NIST SP 811 appendix B.8
		{InMetres.LineMass(0.75), "0.750 kg/m"},
		{InFeet.AreaMass(0.2034345), "6.00 oz/yd2"}, // 1 oz/yd2 = 0.03390575 kg/m2: NIST SP 811 appendix B.8
		{InMetres.AreaMass(0.25), "250 g/m2"},
		{InFeet.Speed(11.176), "25.0 mph"}, // 1 mph = 0.44704 m/s: NIST SP 811 appendix B.8
		{InMetres.Speed(12), "12.0 m/s"},
		{InFeet.Angle(Angle(math.Pi / 12)), "15.0 deg"},
		{InFeet.Stops(-0.04), "0.0 stop"},
		{InFeet.Stops(0.55), "0.6 stop"},
		{InFeet.Stops(Stops(math.Inf(-1))), "not known"},
		{InFeet.TStop(4), "T4"},
		{InFeet.TStop(5.65685), "T5.7"},
		{InFeet.TStop(1.41421), "T1.41"},
		{InFeet.Share(0.604), "60%"},
		{LoadUp(InFeet, 250*Pound), "250 lb"},
		{LoadUp(InFeet, 250.01*Pound), "255 lb"},
		{LoadUp(InFeet, 246*PoundForce), "250 lb"},
		{LoadUp(InMetres, Mass(113)), "114 kg"},
		{LoadUp(InMetres, Force(980.665)), "100 kg"},
		{LoadUp(InMetres, Force(981)), "102 kg"},
		{LoadUp(InMetres, Mass(-3)), "-4 kg"},
		{LoadUp(InMetres, Mass(0)), "0 kg"},
		{LoadUp(InFeet, unknownForce), "not known"},
	} {
		if row.got != row.want {
			t.Errorf("got %s, want %s", row.got, row.want)
		}
	}
}

// What String prints, Parse reads back without loss, in every dimension.
func TestPrintedReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64().Draw(t, "x")
		d := rapid.SampledFrom(Dimensions()).Draw(t, "d")
		if d == OfTStop {
			x = math.Abs(x)
			if x == 0 {
				t.Skip("a T-stop is above 0")
			}
		}
		got, err := Parse(format(x, d), d)
		if err != nil || got != x {
			t.Fatalf("%s reads as %v: %v", format(x, d), got, err)
		}
	})
}

// Feet reads back within half of its step, and what it prints prints the same again.
func TestFeetReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1e6, 1e6).Draw(t, "x")
		got, err := Parse(Feet(Length(x)), OfLength)
		if err != nil || math.Abs(got-x) > 0.0254/16+1e-9 {
			t.Fatalf("%s reads as %v: %v", Feet(Length(x)), got, err)
		}
		if again := Feet(Length(got)); again != Feet(Length(x)) {
			t.Fatalf("%s prints again as %s", Feet(Length(x)), again)
		}
	})
}

// A printed load is never below the load, and at most one step above.
func TestLoadUpIsAbove(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(0, 1e7).Draw(t, "x")
		printed, err := Parse(LoadUp(InFeet, Mass(x)), OfMass)
		if err != nil || printed < x*(1-1e-11)-1e-10 || printed > x+5*float64(Pound)+1e-6 {
			t.Fatalf("%v kg prints as %s: %v kg, %v", x, LoadUp(InFeet, Mass(x)), printed, err)
		}
		printed, err = Parse(LoadUp(InMetres, Force(x)), OfForce)
		if err != nil || printed < x*(1-1e-11)-1e-10 || printed > x+2*StandardGravity+1e-6 {
			t.Fatalf("%v N prints as %s: %v N, %v", x, LoadUp(InMetres, Force(x)), printed, err)
		}
	})
}

// Units and blanks and signs around a number do not change it.
func TestTypographyDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		feet := rapid.IntRange(0, 500).Draw(t, "feet")
		eighths := rapid.IntRange(0, 95).Draw(t, "eighths")
		length := Length(float64(feet)+float64(eighths)/96) * Foot
		text := Feet(length)
		for _, swap := range [][2]string{{"'", "′"}, {"'", "’"}, {"'-", " ft "}, {`"`, "″"}, {`"`, " in"}, {`"`, "''"}, {" 1/2", "½"}, {" 7/8", " ⅞"}, {" ", "-"}, {" ", "\u00a0"}, {"'-", "'"}, {"'-", "′–"}} {
			other := replaceOnce(text, swap)
			a, err1 := Parse(text, OfLength)
			b, err2 := Parse(other, OfLength)
			if err1 != nil || err2 != nil || a != b {
				t.Fatalf("%s = %v (%v), %s = %v (%v)", text, a, err1, other, b, err2)
			}
		}
	})
}

func replaceOnce(text string, swap [2]string) string {
	return strings.Replace(text, swap[0], swap[1], 1)
}
