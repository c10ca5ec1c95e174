package photometry

import (
	"archive/zip"
	"bytes"
	"fmt"
	"math"
	"runtime"
	"strings"
	"testing"
)

// gdtfZip packs a description as DIN SPEC 15800 lays it out.
func gdtfZip(t testing.TB, name, xml string) []byte {
	t.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	file, err := w.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := file.Write([]byte(xml)); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// described is a description with a weight and one body that holds beams.
func described(weight, beams string) string {
	return `<?xml version="1.0" encoding="UTF-8"?>
<GDTF DataVersion="1.2"><FixtureType Name="round lamp" Manufacturer="none" FixtureTypeID="0">
<PhysicalDescriptions><Properties>` + weight + `</Properties></PhysicalDescriptions>
<Geometries><Geometry Name="body">` + beams + `</Geometry></Geometries>
<DMXModes><DMXMode Name="only" Geometry="body"/></DMXModes></FixtureType></GDTF>`
}

const oneBeam = `<Beam Name="b" LuminousFlux="7000" PowerConsumption="216" BeamAngle="60" FieldAngle="90" BeamRadius="0.1" BeamType="Wash"/>`

// The figures of a real sample file in neutral dress: weight 0 is unknown, 7000 lm,
// 216 W, 60 and 90 deg, radius 0.1 m; 32.407407 lm/W; by the law through both angles
// the peak is 7295.773877 cd (an independent integration).
func TestGDTF(t *testing.T) {
	f, err := ReadFile("lamp.gdtf", gdtfZip(t, description, described(`<Weight Value="0.000000"/>`, oneBeam)))
	if err != nil {
		t.Fatal(err)
	}
	if f.Format != GDTF || f.Photometry != TwoAngles || f.Version != "1.2" || f.Name != "round lamp" {
		t.Errorf("%+v", f)
	}
	if f.Mass != nil || !hasOdd(f, "weight is 0") {
		t.Errorf("mass %v, odd %q", show(f.Mass), f.Odd)
	}
	close(t, "lumens", f.LumensStated, 7000, 0)
	close(t, "power", f.Power, 216, 0)
	close(t, "efficacy", f.Efficacy(), 32.407407, 1e-6)
	close(t, "beam", f.Beam.Across, 60*degree, 1e-12)
	close(t, "field", f.Field.Along, 90*degree, 1e-12)
	close(t, "area", f.Opening.Area(), math.Pi*0.01, 1e-12)
	if math.Abs(f.Peak.Candela/7295.773877-1) > 1e-7 || !f.Peak.Modeled {
		t.Errorf("peak %+v", f.Peak)
	}
	if f.LumensIntegrated != nil || f.Planes != 0 {
		t.Error("an integral without a table")
	}
	if f.Distribution == nil {
		t.Error("no distribution")
	}
}

// What is left out or 0 is not known, whatever the standard would put in for it
// (DIN SPEC 15800:2022-02: 10000 lm, 1000 W, 25 deg, 0.05 m, 0 kg).
func TestGDTFDefaultsAreUnknown(t *testing.T) {
	f, err := ReadFile("lamp.gdtf", gdtfZip(t, description, described("", `<Beam Name="b" BeamAngle="60"/>`)))
	if err != nil {
		t.Fatal(err)
	}
	if f.Mass != nil || f.LumensStated != nil || f.Power != nil || f.Field.Across != nil || f.Peak != nil || f.Distribution != nil || f.Opening.Shape != unknownShape {
		t.Errorf("%+v", f)
	}
	for _, part := range []string{"10000 lm", "1000 W", "25 deg", "0.05 m"} {
		if !hasOdd(f, part) {
			t.Errorf("odd: %q misses %q", f.Odd, part)
		}
	}
}

func TestGDTFVariants(t *testing.T) {
	for _, c := range []struct {
		name, xml   string
		lumens      float64
		watts       float64
		mass        float64
		distributed bool
		odd         string
	}{
		{"weight", described(`<Weight Value="8.5"/>`, oneBeam), 7000, 216, 8.5, true, ""},
		{"same angles", described("", strings.Replace(oneBeam, `"90"`, `"60"`, 1)), 7000, 216, 0, false, "both 60 deg"},
		{"field under beam", described("", strings.Replace(oneBeam, `"90"`, `"50"`, 1)), 7000, 216, 0, false, "must be above 0 and under the field"},
		{"rectangle", described("", strings.Replace(oneBeam, "Wash", "Rectangle", 1)), 7000, 216, 0, false, "kind is Rectangle"},
		{"two beams", described("", oneBeam+oneBeam), 14000, 432, 0, true, "2 beams"},
		{"unlike beams", described("", oneBeam+strings.Replace(oneBeam, `"60"`, `"40"`, 1)), 14000, 432, 0, false, "beams differ"},
		{"278 digits elsewhere", described("", strings.Replace(oneBeam, "<Beam ", `<Model SVGFrontOffsetX="`+strings.Repeat("1", 278)+`"/><Beam `, 1)), 7000, 216, 0, true, ""},
		{"garbage in a number", described("", strings.Replace(oneBeam, `"216"`, `"many"`, 1)), 7000, 0, 0, true, "is no number"},
		{"wiring tells the power", described("", strings.Replace(oneBeam, ` PowerConsumption="216"`, "", 1)+`<WiringObject ComponentType="Consumer" ElectricalPayLoad="250"/>`), 7000, 250, 0, true, "1000 W"},
		{"referred to twice", strings.Replace(described("", `<GeometryReference Geometry="head"/><GeometryReference Geometry="head"/>`), "</Geometries>", `<Geometry Name="head">`+oneBeam+"</Geometry></Geometries>", 1), 14000, 432, 0, true, "2 beams"},
		{"ISO 8859-1", strings.Replace(strings.Replace(described(`<Weight Value="8.5"/>`, oneBeam), "UTF-8", "ISO-8859-1", 1), "round lamp", "r\xfcnd", 1), 7000, 216, 8.5, true, ""},
	} {
		f, err := ReadFile("lamp.gdtf", gdtfZip(t, description, c.xml))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		close(t, c.name+": lumens", f.LumensStated, c.lumens, 1e-9)
		for _, value := range []struct {
			got  *float64
			want float64
		}{{f.Power, c.watts}, {f.Mass, c.mass}} {
			if value.want == 0 && value.got != nil {
				t.Errorf("%s: %v, want not known", c.name, show(value.got))
			} else if value.want != 0 {
				close(t, c.name, value.got, value.want, 1e-9)
			}
		}
		if (f.Distribution != nil) != c.distributed {
			t.Errorf("%s: distribution %v, odd %q", c.name, f.Distribution, f.Odd)
		}
		if c.odd != "" && !hasOdd(f, c.odd) {
			t.Errorf("%s: odd is %q", c.name, f.Odd)
		}
	}
}

func TestGDTFRefused(t *testing.T) {
	good := gdtfZip(t, description, described("", oneBeam))
	loop := strings.Replace(described("", `<GeometryReference Geometry="a"/>`), "</Geometries>", `<Geometry Name="a"><GeometryReference Geometry="body"/></Geometry></Geometries>`, 1)
	var tree strings.Builder // each holds the next ten times
	for i := range 40 {
		fmt.Fprintf(&tree, `<Geometry Name="g%d">%s</Geometry>`, i, strings.Repeat(fmt.Sprintf(`<GeometryReference Geometry="g%d"/>`, i+1), 10))
	}
	bomb := strings.Replace(described("", `<GeometryReference Geometry="g0"/>`), "</Geometries>", tree.String()+`<Geometry Name="g40">`+oneBeam+"</Geometry></Geometries>", 1)
	for _, c := range []struct {
		name string
		data []byte
		want string
	}{
		{"cut off", good[:len(good)-30], "cannot be opened"},
		{"no description", gdtfZip(t, "other.xml", "<a/>"), "a zip without description.xml"},
		{"no GDTF", gdtfZip(t, description, "<a></a>"), "no element GDTF"},
		{"not XML", gdtfZip(t, description, "<GDTF"), "not well-formed XML"},
		{"XML cut off", gdtfZip(t, description, "<GDTF><a>"), "ends within the element a"},
		{"no beam", gdtfZip(t, description, described("", "")), "no beam"},
		{"in a circle", gdtfZip(t, description, loop), "refers to itself"},
		{"multiplied", gdtfZip(t, description, bomb), "more than a million beams"},
		{"too deep", gdtfZip(t, description, "<GDTF>"+strings.Repeat("<a>", 300)), "too deep"},
		{"endless element", gdtfZip(t, description, `<GDTF a="`+strings.Repeat("b", 1<<20)), "an element of more than"},
		{"UTF-16", gdtfZip(t, description, `<?xml version="1.0" encoding="UTF-16"?><GDTF/>`), "GDTF is written in UTF-8"},
	} {
		_, err := ReadFile("lamp.gdtf", c.data)
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.HasPrefix(err.Error(), "lamp.gdtf") {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}

// A zip that unpacks to a thousand times its size takes no more than a fixed amount of
// memory at a time: it is read as it comes.
func TestGDTFBombHolds(t *testing.T) {
	data := gdtfZip(t, description, described("", strings.Repeat(`<Model Name="m"></Model>`, 1_000_000)+oneBeam))
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	f, err := ReadFile("lamp.gdtf", data)
	runtime.GC()
	runtime.ReadMemStats(&after)
	if err != nil {
		t.Fatal(err)
	}
	if held := int64(after.HeapAlloc) - int64(before.HeapAlloc); held > 1<<20 {
		t.Errorf("holds %d bytes after a file of %d", held, len(data))
	}
	runtime.KeepAlive(f)
}
