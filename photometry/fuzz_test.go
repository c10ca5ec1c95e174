package photometry

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// holds checks what is true of whatever was read: numbers are numbers, light is not
// negative, and errors say something.
func holds(t *testing.T, name string, data []byte) {
	f, err := ReadFile(name, data)
	if err != nil {
		if f != nil || err.Error() == "" {
			t.Fatal("a file beside an error")
		}
		return
	}
	for what, value := range map[string]*float64{
		"stated": f.LumensStated, "integrated": f.LumensIntegrated, "power": f.Power, "mass": f.Mass, "efficacy": f.Efficacy(),
		"beam across": f.Beam.Across, "beam along": f.Beam.Along, "field across": f.Field.Across, "field along": f.Field.Along, "area": f.Opening.Area(),
	} {
		if value != nil && !(*value >= 0 && !math.IsInf(*value, 0)) {
			t.Fatalf("%s is %g", what, *value)
		}
	}
	for _, size := range []float64{f.Opening.AlongC0, f.Opening.AlongC90, f.Opening.Height} {
		if !(size >= 0) {
			t.Fatalf("an opening of %g m", size)
		}
	}
	if f.Distribution == nil {
		return
	}
	if s := f.Distribution.Scale(); !(s > 0) {
		t.Fatalf("scale %g", s)
	}
	for _, d := range []r3.Vec{{Z: 1}, {Z: -1}, {X: 1}, {Y: -1}, {X: -0.6, Z: 0.8}, {X: 0.48, Y: -0.64, Z: 0.6}} {
		if value := f.Distribution.Intensity(d); !(value >= 0) {
			t.Fatalf("%g cd/lm toward %v", value, d)
		}
	}
}

func FuzzLM63(f *testing.F) {
	for _, text := range []string{z1, z3, z5, z6, typed(lm63("-90 0 90", "-90 0 90", "0 0 0", "0 1 0", "0 0 0"), 2), "lamp\nTILT=INCLUDE\n1 1\n0\n1\n1 -1 1 2 1 1 1 -1,0 0,5\n1 1 0\n0 90\n0\n1 0"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) { holds(t, "a.ies", data) })
}

func FuzzEULUMDAT(f *testing.F) {
	f.Add([]byte(ldt(1, 1, "0", column("0 45 90"), rowsOf("500 300 0"))))
	f.Add([]byte(ldt(3, 4, column("0 90 180 270"), column("0 90"), rowsOf("1 0", "1 0", "1 0"))))
	f.Add([]byte(ldt(0, 3, column("0 120 240"), column("0 90 180"), rowsOf("1 0 0", "1 0 0", "1 2,5 0"))))
	f.Fuzz(func(t *testing.T, data []byte) { holds(t, "a.ldt", data) })
}

func FuzzDescription(f *testing.F) {
	f.Add([]byte(described(`<Weight Value="8.5"/>`, oneBeam)[1:])) // the first sign is put before it
	f.Add([]byte(described("", oneBeam+`<GeometryReference Geometry="body"/>`)[1:]))
	f.Fuzz(func(t *testing.T, data []byte) { holds(t, "a.gdtf", append([]byte("<"), data...)) })
}

func FuzzZip(f *testing.F) {
	f.Add(gdtfZip(f, description, described(`<Weight Value="8.5"/>`, oneBeam))[2:])
	f.Fuzz(func(t *testing.T, data []byte) { holds(t, "a.gdtf", append([]byte("PK"), data...)) })
}
