package power

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

const foot = 0.3048

// Voltage drop with NFPA 70 chapter 9 table 8 (read), VD = 2·I·R·L/1000 and √3·I·R·L/1000.
func TestVoltageDropByTable8(t *testing.T) {
	for _, c := range []struct {
		name         string
		amps, feet   float64
		gauge        string
		volts        float64
		phases       int
		lost, inPart float64
	}{
		{"E1", 16, 100, "12", 120, 1, 6.176, 5.15},
		{"E2", 16, 100, "10", 120, 1, 3.872, 3.23},
		{"E3", 20, 50, "12", 120, 1, 3.860, 3.22},
		{"E4", 48, 150, "6", 120, 1, 7.070, 5.89},
		{"E5", 80, 200, "2", 120, 1, 6.208, 5.17},
		{"E6", 100, 300, "2/0", 208, 3, 5.025, 2.42},
		{"E7", 160, 250, "4/0", 208, 3, 4.212, 2.03},
	} {
		conductor, ok := Gauge(c.gauge)
		if !ok {
			t.Fatalf("no gauge %s", c.gauge)
		}
		lost := Lost(conductor, c.amps, c.feet*foot, c.phases)
		if math.Abs(lost-c.lost) > 0.0006 || math.Abs(100*lost/c.volts-c.inPart) > 0.006 {
			t.Errorf("%s: %.4f V, %.3f %%; want %.3f V, %.2f %%", c.name, lost, 100*lost/c.volts, c.lost, c.inPart)
		}
	}
}

// E8: the trade's constant K = 12.9 Ω·cmil/ft with 6530 cmil for 12 AWG (both read in
// tables) is within 3 % of the table's resistance.
func TestTradeConstantAgrees(t *testing.T) {
	byConstant := 2 * 12.9 * 16 * 100 / 6530
	c, _ := Gauge("12")
	if math.Abs(byConstant-6.322) > 0.001 || math.Abs(byConstant/Lost(c, 16, 100*foot, 1)-1) > 0.03 {
		t.Errorf("K gives %.3f V, the table %.3f V", byConstant, Lost(c, 16, 100*foot, 1))
	}
}

// BS 7671 worked by mV/(A m): E9 18 mV (table 4D2B) over 16 A and 30 m is 8.64 V, 3.76 % of
// 230 V; E10 10 mV (three-phase, table 4F3B) over 32 A and 40 m is 12.8 V, 3.2 % of 400 V.
func TestVoltageDropByMillivolts(t *testing.T) {
	e9 := Conductor{Drop1: 0.018}
	if lost := Lost(e9, 16, 30, 1); math.Abs(lost-8.64) > 1e-9 || math.Abs(100*lost/230-3.76) > 0.005 {
		t.Errorf("E9: %.3f V, %.3f %%", lost, 100*lost/230)
	}
	e10 := Conductor{Drop3: 0.010}
	if lost := Lost(e10, 32, 40, 3); math.Abs(lost-12.8) > 1e-9 || math.Abs(100*lost/400-3.2) > 0.005 {
		t.Errorf("E10: %.3f V, %.3f %%", lost, 100*lost/400)
	}
}

// Rows of BS 7671 tables 4F3B and 4F2B (read), mV/(A m) in one phase and in three.
func TestSectionsOfBS7671(t *testing.T) {
	for name, want := range map[string][2]float64{"0.75": {62, 54}, "1.5": {32, 27}, "2.5": {19, 16}, "4": {13.2, 11.1}, "16": {3.2, 2.7}} {
		c, ok := Section(name)
		if !ok || math.Abs(1000*c.Drop1-want[0]) > 1e-9 || math.Abs(1000*c.Drop3-want[1]) > 1e-9 {
			t.Errorf("%s mm2: %v, want %v", name, c, want)
		}
	}
}

// Overcurrent protection of cords, NFPA 70 520.44(C)(2) (read).
func TestBreakersOfCords(t *testing.T) {
	for name, want := range map[string]float64{"14": 15, "12": 20, "10": 25, "8": 35, "6": 45, "4": 60, "2": 80} {
		if c, _ := Gauge(name); c.Breaker != want {
			t.Errorf("%s AWG: %g A, want %g", name, c.Breaker, want)
		}
	}
	if c, _ := Gauge("1"); !math.IsNaN(c.Breaker) {
		t.Errorf("1 AWG has %g A, the table has no row", c.Breaker)
	}
}

// Currents by P/(V·f) and P/(√3·V·f), computed by hand.
func TestAmps(t *testing.T) {
	for _, c := range []struct {
		watts, volts, factor float64
		phases               int
		want                 float64
	}{
		{1200, 120, 1, 1, 10.000}, {1200, 120, 0.95, 1, 10.526}, {1200, 120, 0.6, 1, 16.667},
		{12000, 208, 0.95, 3, 35.062}, {24000, 208, 0.9, 3, 74.019},
	} {
		if got := Amps(c.watts, c.volts, c.factor, c.phases); math.Abs(got-c.want) > 0.0006 {
			t.Errorf("%g W at %g V, %g: %.4f A, want %.3f", c.watts, c.volts, c.factor, got, c.want)
		}
	}
	for _, bad := range [][3]float64{{1200, 0, 1}, {1200, 120, 0}, {-1, 120, 1}, {math.NaN(), 120, 1}} {
		if got := Amps(bad[0], bad[1], bad[2], 1); !math.IsNaN(got) {
			t.Errorf("Amps(%v) = %g", bad, got)
		}
	}
}

// Neutral of linear loads: the table that three phasors at 120° give.
func TestNeutral(t *testing.T) {
	for _, c := range [][4]float64{{100, 100, 100, 0}, {100, 0, 0, 100}, {100, 100, 0, 100}, {80, 60, 40, 34.641}, {30, 20, 10, 17.321}} {
		if got := Neutral(c[0], c[1], c[2]); math.Abs(got-c[3]) > 0.0006 {
			t.Errorf("neutral of %v: %.4f", c, got)
		}
	}
}

func TestNeutralIsThePhasorSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var x [3]float64
		var re, im float64
		for i := range x {
			x[i] = rapid.Float64Range(0, 1000).Draw(t, "leg")
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 3)
			re, im = re+x[i]*cos, im+x[i]*sin
		}
		if got := Neutral(x[0], x[1], x[2]); math.Abs(got-math.Hypot(re, im)) > 1e-4 {
			t.Fatalf("%v: %g, phasors give %g", x, got, math.Hypot(re, im))
		}
	})
}

// Third harmonics in the neutral (published text on the neutral current, read).
func TestNeutralOfThird(t *testing.T) {
	for _, c := range []struct{ k, want, digit float64 }{{0.1, 0.2985, 0.0001}, {0.15, 0.445, 0.001}, {0.5, 1.342, 0.001}, {0.577, 1.50, 0.01}} {
		if got := NeutralOfThird(c.k); math.Abs(got-c.want) > 0.6*c.digit {
			t.Errorf("k = %g: %.4f, want %g", c.k, got, c.want)
		}
	}
	for _, k := range []float64{-0.1, 0.8, math.NaN()} {
		if got := NeutralOfThird(k); !math.IsNaN(got) {
			t.Errorf("k = %g: %g, not known is due", k, got)
		}
	}
}

// How the trade writes cables (common practice).
func TestDesignated(t *testing.T) {
	for text, want := range map[string]string{
		"cable-12/3": "12 AWG", "12/3 extension": "12 AWG", "10/3": "10 AWG", "cable 2/0 AWG": "2/0 AWG", "4/0 AWG feeder": "4/0 AWG", "14 awg": "14 AWG",
		"cable-3G2.5": "2.5 mm2", "3x1.5": "1.5 mm2", "H07RN-F 5G4": "4 mm2", "16 mm2": "16 mm2", "2.50 mm²": "2.5 mm2",
		"data-cable": "", "11/3": "", "control cable, five-pin": "", "3G7": "", "": "", "112/3": "",
	} {
		if got, ok := Designated(text); got.Name != want || ok != (want != "") {
			t.Errorf("%q: %q, want %q", text, got.Name, want)
		}
	}
}

func FuzzDesignated(f *testing.F) {
	f.Add("cable-12/3")
	f.Fuzz(func(t *testing.T, text string) {
		if c, ok := Designated(text); ok != c.Known() {
			t.Errorf("%q: %v, known %v", text, ok, c.Known())
		}
	})
}
