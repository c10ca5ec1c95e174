package vary

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"softloft/finding"
	"softloft/light"
	"softloft/load"
)

func TestParse(t *testing.T) {
	file := read(t, bare)
	for _, c := range []struct {
		ask, key, unit string
		texts          []string
	}{
		{"trim=1m..3m/3", "box.trim", "m", []string{"1 m", "2 m", "3 m"}},
		{" box.trim = 3m .. 1m /3", "box.trim", "m", []string{"3 m", "2 m", "1 m"}},
		{"trim=1 ft,2'6\",1/2 in", "box.trim", "m", []string{"1 ft", "2'6\"", "1/2 in"}},
		{"trim=1/2 in..3/2 in/3", "box.trim", "m", nil}, // 3/2 in is no fraction below 1
		{"above=0m..1m/2", "lamps[].above", "m", []string{"0 m", "1 m"}},
		{"lamps[0].level=20%..60%/3", "lamps[0].level", "", []string{"0.2", "0.4", "0.6"}},
		{"tilt=-10deg..10deg/3", "box.tilt.by", "deg", []string{"-10 deg", "0 deg", "10 deg"}},
		{"want.exposure.stop=T2..T8/3", "want.exposure.stop", "T", []string{"T2", "T4", "T8"}},
		{"ribs.count=1..4", "box.ribs.count", "", nil},
		{"box.ribs.count=1..4", "box.ribs.count", "", []string{"1", "2", "3", "4"}},
		{"box.ribs.count=1..7/3", "box.ribs.count", "", []string{"1", "4", "7"}},
		{"cloth=light,[half,heavy],none", "box.cloth", "", []string{"[light]", "[half,heavy]", "[]"}},
		{"corners=rigid,pinned", "box.corners", "", []string{"rigid", "pinned"}},
		{"box.size[1]=8ft,10ft", "box.size[1]", "m", []string{"8ft", "10ft"}},
		{"kit.cloth.denser.diffuse=0.1..0.3/2", "kit.cloth.denser.diffuse", "", []string{"0.1", "0.3"}},
		{"box.sides.north=white,black", "box.sides.north", "", []string{"white", "black"}},
	} {
		a, err := Parse(c.ask, file)
		if c.texts == nil {
			if err == nil {
				t.Errorf("%s: no error", c.ask)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s: %v", c.ask, err)
			continue
		}
		var texts []string
		for _, s := range a.Steps {
			texts = append(texts, s.Text)
		}
		if diff := cmp.Diff(c.texts, texts); diff != "" || a.Key != c.key || a.Unit != c.unit {
			t.Errorf("%s: %s in %q: %s", c.ask, a.Key, a.Unit, diff)
		}
	}
	if a, err := Parse("trim=10ft..18ft", file); err != nil || len(a.Steps) != 9 {
		t.Errorf("%v, %v", a, err)
	}
}

func TestParseWrong(t *testing.T) {
	file := read(t, bare)
	for ask, want := range map[string]string{
		"trimm=1m..2m":                        "did you mean trim?",
		"box.cloths=light,heavy":              "did you mean box.cloth?",
		"lamps[0].abov=1m..2m":                "did you mean lamps[].above?",
		"shuter=90deg..180deg":                "did you mean shutter?",
		"fps=24,25":                           "did you mean want.exposure.fps?",
		"trim":                                "such as trim=10ft..18ft",
		"trim=":                               "no values for box.trim",
		"trim=1m..2":                          "bare number 2, a length needs its unit",
		"trim=1kg..2kg":                       "1 kg is a mass, a length is due",
		"trim=2m..2000mm":                     "both ends are the same",
		"trim=2m":                             "one value of box.trim varies nothing",
		"trim=1m..2m/1":                       "2 to 200 are due",
		"trim=1m..2m/10000":                   "200 are the most",
		"trim=1m..2m/99999999999999999999999": "200 are the most",
		"trim=1m..2m/2.5":                     "is no number of values",
		"trim=1m,2m,":                         "is empty",
		"trim=1m,100cm":                       "stands twice",
		"box=1,2":                             "a group of keys",
		"lamps=1,2":                           "a list of groups",
		"title=a,b":                           "no answer depends on it",
		"box.frame=a..b":                      "no values between two",
		"lamps[7].above=1m..2m":               "the plan has no lamps[7]",
		"rise=1m..2m":                         "the plan has no stands",
		"kit.cloth.light.back=0,1":            "the plan has no kit.cloth.light",
		"box.ribs.count=1..4/3":               "not whole numbers",
		"box.ribs.count=1..4.5":               "not a whole number",
		"box.ribs.count=1..1e6":               "200 are the most",
		"room.reflectance.floor=NaN..1":       "is not a number",
		"box.trim.x=1m..2m":                   "there is no key",
		"box..trim=1m..2m":                    "not the key of a value",
		"[0]=1,2":                             "not the key of a value",
		"=1m..2m":                             "no key with its values",
	} {
		if a, err := Parse(ask, file); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, told %v", ask, a, err)
		}
	}
}

// TestRange: a range keeps its ends, its order and its count.
func TestRange(t *testing.T) {
	file := read(t, bare)
	rapid.Check(t, func(t *rapid.T) {
		from, to, n := rapid.IntRange(1, 3000).Draw(t, "from"), rapid.IntRange(1, 3000).Draw(t, "to"), rapid.IntRange(2, 200).Draw(t, "n")
		if from == to {
			return
		}
		k := kind{number: true, measured: true}
		a, err := Parse("trim="+k.text(float64(from)/100)+".."+k.text(float64(to)/100)+"/"+kind{whole: true}.text(float64(n)), file)
		if err != nil {
			t.Fatal(err)
		}
		if len(a.Steps) != n || a.Steps[0].Value != float64(from)/100 || a.Steps[n-1].Value != float64(to)/100 {
			t.Fatalf("%d values from %v to %v", len(a.Steps), a.Steps[0], a.Steps[n-1])
		}
		for i := 1; i < n; i++ {
			if (a.Steps[i].Value > a.Steps[i-1].Value) != (to > from) {
				t.Fatalf("%v after %v", a.Steps[i], a.Steps[i-1])
			}
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"trim=1m..2m/3", "lamps[].level=20%,50%", `kit.rope["1.5 in"].mass=1kg/m,2kg/m`, "cloth=[a,b],c", "box.sides[0]=1", "=", "a[", "room.points[0].at[1]=1m,2m"} {
		f.Add(seed)
	}
	file := read(f, bare)
	f.Fuzz(func(t *testing.T, text string) {
		a, err := Parse(text, file)
		if err == nil && (len(a.Steps) < 2 || len(a.Steps) > mostSteps || len(a.Paths) == 0) {
			t.Errorf("%q: %+v", text, a)
		}
	})
}

// What is not known is never less than what is.
func TestWorst(t *testing.T) {
	nan := unknownNumber
	if s := worstSpill([]light.SpillAnswer{{On: "a", StopsBelow: 3, Max: 1}, {On: "b", StopsBelow: nan, Max: nan}, {On: "c", StopsBelow: 1, Max: 1}}); s.On != "b" {
		t.Errorf("%+v", s)
	}
	if s := worstSpill([]light.SpillAnswer{{On: "a", StopsBelow: nan}, {On: "b", StopsBelow: 3, Max: 1}, {On: "c", StopsBelow: 2, Max: 1}}); s.On != "c" || s.None {
		t.Errorf("%+v", s)
	}
	if s := worstSpill([]light.SpillAnswer{{On: "a", StopsBelow: nan}}); !s.None {
		t.Errorf("%+v", s)
	}
	lines := []load.Line{{Name: "a", Cases: load.Cases{Built: 5, Grown: 7, Lift: nan, TiltWorst: nan, LostWorst: 6, Diagonal: nan}, Governs: "grown"}, {Name: "b", Cases: load.Cases{Built: nan, Grown: 3}}}
	if m := mostOnLine(lines[:1]); m.Force != 7 || m.Case != "grown" {
		t.Errorf("%+v", m)
	}
	if m := mostOnLine(lines); m.Name != "b" || finding.Known(float64(m.Force)) {
		t.Errorf("%+v", m)
	}
	points := []load.Point{{Name: "P", Cases: load.PointCases{Built: &load.Vec{0, 3, -4}, LostWorst: &load.Vec{0, 0, -6}}}, {Name: "Q"}}
	if m := mostOnPoint(points[:1]); m.Force != 6 || m.Case != "lost_worst" {
		t.Errorf("%+v", m)
	}
	if m := mostOnPoint(points); m.Name != "Q" || !math.IsNaN(float64(m.Force)) {
		t.Errorf("%+v", m)
	}
	if mostOnStand(nil) != nil || worstSpill(nil) != nil {
		t.Error("nothing is something")
	}
}
