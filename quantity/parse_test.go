package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// A factor is what NIST SP 811 (2008), appendix B.8, prints: seven digits, exact ones in full.
// Rows marked "from memory" could not be read again, the others were read in a transcript of B.8.
func TestFactorsOfSP811(t *testing.T) {
	for _, row := range []struct {
		text string
		d    Dimension
		want float64
	}{
		{"1 ft", OfLength, 3.048e-01},
		{"1 in", OfLength, 2.54e-02},  // from memory
		{"1 yd", OfLength, 9.144e-01}, // from memory
		{"1 lb", OfMass, 4.535924e-01},
		{"1 oz", OfMass, 2.834952e-02},
		{"1 lbf", OfForce, 4.448222},
		{"1 kgf", OfForce, 9.80665},
		{"1 lbf ft", OfMoment, 1.355818},
		{"1 lbf in", OfMoment, 1.129848e-01},
		{"1 deg", OfAngle, 1.745329e-02}, // from memory
		{"1 psi", OfPressure, 6.894757e+03},
		{"1 ksi", OfPressure, 6.894757e+06},
		{"1 lbf/ft2", OfPressure, 4.788026e+01},
		{"1 lbf/ft", OfLineForce, 1.459390e+01},
		{"1 lbf/in", OfLineForce, 1.751268e+02},
		{"1 lb/ft", OfLineMass, 1.488164},
		{"1 lb/in", OfLineMass, 1.785797e+01},
		{"1 lb/ft2", OfAreaMass, 4.882428}, // from memory
		{"1 oz/ft2", OfAreaMass, 3.051517e-01},
		{"1 oz/yd2", OfAreaMass, 3.390575e-02},
		{"1 lb/ft3", OfDensity, 1.601846e+01},
		{"1 lb/in3", OfDensity, 2.767990e+04},
		{"1 fc", OfIlluminance, 1.076391e+01},
		{"1 mph", OfSpeed, 4.4704e-01},
		{"1 km/h", OfSpeed, 2.777778e-01}, // from memory
		{"1 knot", OfSpeed, 5.144444e-01},
	} {
		got, err := Parse(row.text, row.d)
		if err != nil {
			t.Errorf("%s: %v", row.text, err)
			continue
		}
		// half a unit of the seventh digit
		if digits := math.Pow(10, math.Floor(math.Log10(row.want))-6); math.Abs(got-row.want) > digits/2*1.0001 {
			t.Errorf("%s = %v, SP 811 prints %v", row.text, got, row.want)
		}
	}
}

// Exact by definition: 1 ft = 0.3048 m, 1 lb = 0.45359237 kg (international yard and pound agreement, 1959), g = 9.80665
// m/s² (3rd CGPM, 1901), and the prefixes of the SI (SI brochure, 9th edition, table 7).
func TestReads(t *testing.T) {
	for _, row := range []struct {
		text string
		d    Dimension
		want float64
	}{
		{`12'6"`, OfLength, 3.81},
		{`12 ft 6 in`, OfLength, 3.81},
		{`12ft6in`, OfLength, 3.81},
		{`12 ft. 6 in.`, OfLength, 3.81},
		{`12 FT 6 IN`, OfLength, 3.81},
		{`12'-6"`, OfLength, 3.81},
		{`12' - 6"`, OfLength, 3.81},
		{`12ft-6in`, OfLength, 3.81},
		{`12′6″`, OfLength, 3.81},
		{`12’6”`, OfLength, 3.81},
		{`12‘6“`, OfLength, 3.81},
		{`12'6''`, OfLength, 3.81},
		{`12′6′′`, OfLength, 3.81},
		{"12\u00a0ft\u20096\u202fin", OfLength, 3.81},
		{`12' 6-1/2"`, OfLength, 3.8227},
		{`12' 6 1/2"`, OfLength, 3.8227},
		{`12'6½"`, OfLength, 3.8227},
		{`12' 6.5"`, OfLength, 3.8227},
		{`12'½"`, OfLength, 3.6703},
		{`12' 1/2"`, OfLength, 3.6703},
		{`-12'6"`, OfLength, -3.81},
		{`−12′6″`, OfLength, -3.81},
		{`-0'6"`, OfLength, -0.1524},
		{`+1 ft`, OfLength, 0.3048},
		{`12'`, OfLength, 3.6576},
		{`12.5 ft`, OfLength, 3.81},
		{`12½ ft`, OfLength, 3.81},
		{`6 1/2 in`, OfLength, 0.1651},
		{`6½"`, OfLength, 0.1651},
		{`6 ½ in`, OfLength, 0.1651},
		{`1-1/4 in`, OfLength, 0.03175},
		{`-1-1/4 in`, OfLength, -0.03175},
		{`1/2 in`, OfLength, 0.0127},
		{`⅞"`, OfLength, 0.022225},
		{`1⁄8 in`, OfLength, 0.003175},
		{`14"`, OfLength, 0.3556},
		{`3.66 m`, OfLength, 3.66},
		{`366 cm`, OfLength, 3.66},
		{`3,66 m`, OfLength, 3.66},
		{`0,125 in`, OfLength, 0.003175},
		{`50 mm`, OfLength, 0.05},
		{`.5 m`, OfLength, 0.5},
		{`5. m`, OfLength, 5},
		{`1e-3 km`, OfLength, 1},
		{`3.66000000000000000000000000000000000000000000000000000000000000 m`, OfLength, 3.66},
		{`0 ft`, OfLength, 0},
		{`0.0e99999999 ft`, OfLength, 0},
		{`250 lb`, OfMass, 113.3980925},
		{`250 lbs`, OfMass, 113.3980925},
		{`1/2 lb`, OfMass, 0.226796185},
		{`120 kg`, OfMass, 120},
		{`1.1 t`, OfMass, 1100},
		{`5 KG`, OfMass, 5},
		{`250 lb`, OfForce, 113.3980925 * 9.80665},
		{`100 kg`, OfForce, 980.665},
		{`1 t`, OfForce, 9806.65},
		{`1.1 kN`, OfForce, 1100},
		{`5 N`, OfForce, 5},
		{`5 N m`, OfMoment, 5},
		{`5 N·m`, OfMoment, 5},
		{`15 deg`, OfAngle, math.Pi / 12},
		{`15°`, OfAngle, math.Pi / 12},
		{`180º`, OfAngle, math.Pi},
		{`0.26 rad`, OfAngle, 0.26},
		{`100 lb/ft2`, OfPressure, 488.2427636383050 * 9.80665},
		{`100 lb/ft²`, OfPressure, 488.2427636383050 * 9.80665},
		{`500 kg/m2`, OfPressure, 4903.325},
		{`4.8 kPa`, OfPressure, 4800},
		{`160 MPa`, OfPressure, 160e6},
		{`69 GPa`, OfPressure, 69e9},
		{`3 Pa`, OfPressure, 3},
		{`20 N/m`, OfLineForce, 20},
		{`30 kN/m`, OfLineForce, 30e3},
		{`10 kg/m`, OfLineForce, 98.0665},
		{`0.75 kg/m`, OfLineMass, 0.75},
		{`0.25 kg/m2`, OfAreaMass, 0.25},
		{`250 g/m^2`, OfAreaMass, 0.25},
		{`2700 kg/m³`, OfDensity, 2700},
		{`5000 N m2`, OfRigidity, 5000},
		{`5000 N*m2`, OfRigidity, 5000},
		{`5000 Nm2`, OfRigidity, 5000},
		{`5 kN m²`, OfRigidity, 5000},
		{`20000 lm`, OfFlux, 20000},
		{`540 lx`, OfIlluminance, 540},
		{`5000 cd`, OfIntensity, 5000},
		{`120 V`, OfVoltage, 120},
		{`20 A`, OfCurrent, 20},
		{`500 mA`, OfCurrent, 0.5},
		{`1.2 kW`, OfPower, 1200},
		{`300W`, OfPower, 300},
		{`90 s`, OfDuration, 90},
		{`5 min`, OfDuration, 300},
		{`2 h`, OfDuration, 7200},
		{`12 m/s`, OfSpeed, 12},
		{`12 m / s`, OfSpeed, 12},
		{`25 mph`, OfSpeed, 11.176},
		{`36 km/h`, OfSpeed, 10},
		{`0.5 stop`, OfStops, 0.5},
		{`2 stops`, OfStops, 2},
		{`-1/3 stop`, OfStops, -1.0 / 3},
		{`T2.8`, OfTStop, 2.8},
		{`t 4`, OfTStop, 4},
		{`60%`, OfShare, 0.6},
		{`60 %`, OfShare, 0.6},
		{`12,5 %`, OfShare, 0.125},
		{`0.6`, OfShare, 0.6},
		{`0`, OfShare, 0},
		{` 3.66 m `, OfLength, 3.66},
	} {
		got, err := Parse(row.text, row.d)
		if err != nil {
			t.Errorf("%s: %v", row.text, err)
		} else if math.Abs(got-row.want) > 4e-16*math.Abs(row.want) {
			t.Errorf("%s = %v, want %v", row.text, got, row.want)
		}
	}
}

// Two ways to write one quantity give one float64, not two that are near.
func TestSameQuantitySameNumber(t *testing.T) {
	for _, pair := range [][2]string{
		{`12 ft`, `3.6576 m`}, {`12'6"`, `381 cm`}, {`1/8 in`, `3.175 mm`}, {`7'-0 3/8"`, `2143.125 mm`}, {`1e3 mm`, `1 m`},
	} {
		a, err1 := Parse(pair[0], OfLength)
		b, err2 := Parse(pair[1], OfLength)
		if err1 != nil || err2 != nil || a != b {
			t.Errorf("%s = %v (%v), %s = %v (%v)", pair[0], a, err1, pair[1], b, err2)
		}
	}
}

func TestRefuses(t *testing.T) {
	for _, row := range []struct {
		text string
		d    Dimension
		want string
	}{
		{"14", OfLength, `bare number 14, a length needs its unit; write 14 ft or 4.27 m`},
		{"0", OfLength, `bare number 0, a length needs its unit; write 0 ft or 0 m`},
		{"5 1/2", OfLength, `bare number 5 1/2, a length needs its unit; write 5 1/2 ft or 1.68 m`},
		{"15", OfAngle, `bare number 15, an angle needs its unit; write 15 deg`},
		{"2.8", OfTStop, `bare number 2.8, a T-stop needs its unit; write T2.8`},
		{"0.5", OfStops, `bare number 0.5, a difference in stops needs its unit; write 0.5 stop`},
		{"250 lb", OfLength, `250 lb is a mass, a length is due, such as 12'6" or 3.8 m`},
		{`12'6"`, OfMass, `12'6" is a length, a mass is due, such as 250 lb or 120 kg`},
		{`12'`, OfMass, `12' is a length, a mass is due, such as 250 lb or 120 kg`},
		{"T2.8", OfStops, `T2.8 is a T-stop, a difference in stops is due, such as 0.5 stop`},
		{"1 stop", OfTStop, `1 stop is a difference in stops, a T-stop is due, such as T2.8`},
		{"100 lb/ft2", OfForce, `100 lb/ft2 is a mass per area, a force is due, such as 250 lb or 1.1 kN`},
		{"60 lb", OfShare, `60 lb is a mass, a share is due, such as 0.6 or 60%`},
		{"", OfLength, `nothing stands here, a length is due, such as 12'6" or 3.8 m`},
		{"   ", OfPower, `nothing stands here, a power is due, such as 300 W or 1.2 kW`},
		{"nan m", OfLength, `"nan m" does not begin with a number, such as 12'6" or 3.8 m`},
		{".inf", OfLength, `".inf" does not begin with a number, such as 12'6" or 3.8 m`},
		{"Inf", OfShare, `"Inf" does not begin with a number, such as 0.6 or 60%`},
		{"1e999 m", OfLength, `1e999 is too large a number, such as 12'6" or 3.8 m`},
		{"1e308 km", OfLength, `1e308 is too large a number, such as 12'6" or 3.8 m`},
		{"1e-999 m", OfLength, `1e-999 is too small a number, though not 0, such as 12'6" or 3.8 m`},
		{"1e-99999999999 m", OfLength, `1e-99999999999 is too small a number, though not 0, such as 12'6" or 3.8 m`},
		{"1e99999 m", OfLength, `1e99999 is too large a number, such as 12'6" or 3.8 m`},
		{"0." + strings.Repeat("0", 500) + "1 m", OfLength, `0.00000000000000000000000000000000000... is too small a number, though not 0, such as 12'6" or 3.8 m`},
		{"12 ft wide", OfLength, `"wide" after 12 ft means nothing here; write a length alone, such as 12'6" or 3.8 m`},
		{"3 furlong", OfLength, `"furlong" is not a unit of length, such as 12'6" or 3.8 m`},
		{"12 ft2", OfLength, `"ft2" is not a unit of length, such as 12'6" or 3.8 m`},
		{`12'14"`, OfLength, `the 14 inches in "12'14"" are a foot or more; write inches below 12, such as 13'-2"`},
		{`-12'12"`, OfLength, `the 12 inches in "-12'12"" are a foot or more; write inches below 12, such as -13'-0"`},
		{`12.5'6"`, OfLength, `the feet in "12.5'6"" are no whole number though inches follow; write 12'6" or 12.5 ft`},
		{`12 1/2 ft 6 in`, OfLength, `the feet in "12 1/2 ft 6 in" are no whole number though inches follow; write 12'6" or 12.5 ft`},
		{`12'6`, OfLength, `the 6 at the end of "12'6" has no unit; write 12'6"`},
		{`12 ft 6 cm`, OfLength, `"cm" stands where inches are due, such as 12'6"`},
		{"1,250 lb", OfMass, `the comma in 1,250 is not clear; write 1250 or 1.250`},
		{"1,234.5 lb", OfMass, `the comma in 1,234.5 is not clear; write thousands without a comma: 1234.5`},
		{"0,6", OfShare, `the comma in 0,6 is not clear; write a decimal point, or a share in percent`},
		{"1.2.3 m", OfLength, `"1.2.3" has more than one decimal point; write one`},
		{"5/4 in", OfLength, `the fraction 5/4 is not below 1; write a whole number, a blank and a fraction, such as 6 1/2`},
		{"1/0 in", OfLength, `the fraction 1/0 is not below 1; write a whole number, a blank and a fraction, such as 6 1/2`},
		{"24 fps", OfSpeed, `"fps" is not a unit; write frames per second as a bare number where they are due, and a speed as m/s, ft/s or mph`},
		{"2 tons", OfMass, `"tons" may mean 2000 lb or 1000 kg; write it in lb, kg or t, where 1 t is 1000 kg`},
		{"5 MA", OfCurrent, `"MA" is not a unit of current, such as 20 A`},
		{"f/2.8", OfTStop, `"f/2.8" does not begin with a number, such as T2.8`},
		{"T0", OfTStop, `"T0" is not a T-stop, which is above 0, such as T2.8`},
		{"T2.8 1/2", OfTStop, `"T2.8 1/2" is not a T-stop; write one number after the T, such as T2.8`},
		{"--5 m", OfLength, `"--5 m" does not begin with a number, such as 12'6" or 3.8 m`},
		{"6 -1/2 in", OfLength, `"-1/2 in" is not a unit of length, such as 12'6" or 3.8 m`},
		{"5² m", OfLength, `"² m" is not a unit of length, such as 12'6" or 3.8 m`},
		{"0x10 m", OfLength, `"x10 m" is not a unit of length, such as 12'6" or 3.8 m`},
		{"1_000 m", OfLength, `"_000 m" is not a unit of length, such as 12'6" or 3.8 m`},
		{"1\x00 m", OfLength, `"? m" is not a unit of length, such as 12'6" or 3.8 m`},
		{"7 " + strings.Repeat("x", 100), OfLength, `"` + strings.Repeat("x", 37) + `..." is not a unit of length, such as 12'6" or 3.8 m`},
	} {
		_, err := Parse(row.text, row.d)
		if err == nil {
			t.Errorf("%s was read", row.text)
		} else if err.Error() != row.want {
			t.Errorf("%s:\n got %s\nwant %s", row.text, err, row.want)
		}
	}
}

// Every dimension knows examples that it reads, and one that it does not: a bare number.
func TestDimensionsExplainThemselves(t *testing.T) {
	for _, d := range Dimensions() {
		if len(d.Examples()) == 0 {
			t.Errorf("%v has no example", d)
		}
		for _, example := range d.Examples() {
			if _, err := Parse(example, d); err != nil {
				t.Errorf("example of %v: %v", d, err)
			}
		}
		_, err := Parse("3", d)
		if (err == nil) != (d == OfShare) {
			t.Errorf("bare number as %v: %v", d, err)
		}
		if err != nil {
			_, written, _ := strings.Cut(err.Error(), "write ")
			for _, hint := range strings.Split(written, " or ") {
				if _, err := Parse(hint, d); err != nil {
					t.Errorf("hint of %v: %v", d, err)
				}
			}
		}
	}
	if _, err := Parse("3 m", Dimension(99)); err == nil {
		t.Error("an unknown dimension reads metres")
	}
}

func TestUnmarshalTextKeepsTheOldValueOnError(t *testing.T) {
	x := Length(7)
	err := x.UnmarshalText([]byte("14"))
	var problem *Error
	if !errors.As(err, &problem) || problem.Hint != "write 14 ft or 4.27 m" || x != 7 {
		t.Errorf("error %v, value %v", err, x)
	}
	if err := x.UnmarshalText([]byte("14 ft")); err != nil || x != 4.2672 {
		t.Errorf("error %v, value %v", err, x)
	}
}

func TestLongTextIsQuick(t *testing.T) {
	for _, text := range []string{strings.Repeat("1", 9000) + "e-9000 m", "0." + strings.Repeat("1", 2_000_000) + " m", "0." + strings.Repeat("1", 300) + " m"} {
		if x, err := Parse(text, OfLength); err != nil || math.Abs(x-1.0/9) > 2e-17 {
			t.Errorf("%v, %v", x, err)
		}
	}
	for _, text := range []string{strings.Repeat("9", 4_000_000), strings.Repeat("1 ", 1_000_000), strings.Repeat("'", 4_000_000), "1 " + strings.Repeat("ft ", 100_000)} {
		if _, err := Parse(text, OfLength); err == nil || len(err.Error()) > 300 {
			t.Errorf("%.20s: %v", text, err)
		}
	}
}
