package photometry

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func toward(angle float64) r3.Vec { return r3.Vec{X: math.Sin(angle), Z: math.Cos(angle)} }

// The worked case of a lamp of 7000 lm, beam 60 deg, field 90 deg: exponent
// 2.96090919 and peak 7295.773877 cd by exp(-(angle/b)^p) through both angles
// (computed by an independent integration).
func TestBeamWorkedCase(t *testing.T) {
	b, err := NewBeam(math.Pi/3, math.Pi/2)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(b.exponent-2.96090919) > 1e-7 {
		t.Errorf("exponent %.9g, want 2.96090919", b.exponent)
	}
	if got := 7000 * b.Intensity(toward(0)); math.Abs(got/7295.773877-1) > 1e-7 {
		t.Errorf("peak %.9g cd, want 7295.773877", got)
	}
}

// All flux goes out, and the two angles hold half and a tenth, whatever they are.
func TestBeamProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		beam := rapid.Float64Range(0.02, 2).Draw(t, "beam")
		field := beam * rapid.Float64Range(1.05, 4).Draw(t, "field over beam")
		if field > math.Pi {
			field = math.Pi
		}
		b, err := NewBeam(beam, field)
		if err != nil {
			if field > beam {
				t.Fatal(err)
			}
			return
		}
		peak := b.Intensity(toward(0))
		if half := b.Intensity(toward(beam / 2)); math.Abs(half/peak-0.5) > 1e-9 {
			t.Fatalf("%g of the peak at the beam angle", half/peak)
		}
		if field < math.Pi {
			if tenth := b.Intensity(toward(field / 2)); math.Abs(tenth/peak-0.1) > 1e-9 {
				t.Fatalf("%g of the peak at the field angle", tenth/peak)
			}
		}
		sum, n := 0.0, 40000
		for i := range n {
			a := (float64(i) + 0.5) / float64(n) * math.Pi / 2
			sum += b.Intensity(toward(a)) * math.Sin(a) * math.Pi * math.Pi / float64(n)
		}
		if math.Abs(sum-1) > 1e-5 {
			t.Fatalf("flux %.8g lm/lm", sum)
		}
	})
}

func TestBeamRefuses(t *testing.T) {
	for _, c := range [][2]float64{{0, 1}, {1, 1}, {1, 0.5}, {1, 4}, {math.NaN(), 1}, {1, math.NaN()}, {-1, 1}} {
		if _, err := NewBeam(c[0], c[1]); err == nil {
			t.Errorf("beam %g field %g was taken", c[0], c[1])
		}
	}
}

// Lambert: intensity 1/pi cd per lm on the axis, half of it at 60 deg.
func TestLambertian(t *testing.T) {
	if got := (Lambertian{}).Intensity(toward(math.Pi / 3)); math.Abs(got-0.5/math.Pi) > 1e-12 {
		t.Errorf("got %g", got)
	}
	if (Lambertian{}).Intensity(r3.Vec{Z: -1}) != 0 {
		t.Error("light behind the opening")
	}
}
