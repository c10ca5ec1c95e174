package kit

import (
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"softloft/quantity"
)

func TestDescribe(t *testing.T) {
	k := standard(t)
	got, ok := k.Describe("tube", "pipe-1-1/2", quantity.InFeet)
	const mott = "Mott, Machine Elements in Mechanical Design, 4th ed., Table A16-6"
	want := Described{
		Kind: "tube", ID: "pipe-1-1/2", Name: "1-1/2 in aluminum pipe, schedule 40",
		Lines: []Line{
			{Key: "shape", Value: "round", Source: mott, Doc: "round or square"},
			{Key: "outer", Value: "1.9 in", Source: mott, Doc: "outer diameter or side"},
			{Key: "wall", Value: "0.145 in", Source: mott, Doc: "wall thickness"},
			{Key: "alloy", Value: "6061-T6", Source: "common practice", Doc: "id of what it is made of"},
			{Key: "lengths", Value: `4'-0", 6'-0", 8'-0", 10'-0", 12'-0", 16'-0", 20'-0"`, Source: "common practice", Doc: "lengths that stand on the shelf"},
			{Key: "mass", Value: "0.940 lb/ft", Source: "section times the density of 6061-T6", Derived: true},
		},
	}
	if diff := cmp.Diff(want, got); diff != "" || !ok {
		t.Error(diff)
	}
	for _, none := range [][2]string{{"tube", "pipe-9"}, {"pipe", "pipe-1"}, {"", "pipe-1"}, {"", ""}} {
		if d, ok := k.Describe(none[0], none[1], quantity.InFeet); ok {
			t.Errorf("%q is described: %+v", none, d)
		}
	}
}

func TestDescribeInMetres(t *testing.T) {
	k := standard(t)
	for _, row := range []struct{ kind, id, key, value string }{
		{"tube", "tube-48", "outer", "48.3 mm"},
		{"alloy", "6082-T6", "E", "70000 MPa"},
		{"alloy", "6082-T6", "density", "2700 kg/m3"},
		{"cloth", "heavy", "loss", "1.3 stop"}, // log2(1/0.42) = 1.2515
		{"cloth", "heavy", "passes", "42 %"},
		{"cloth", "heavy", "absorbs", "8 %"},
		{"stand", "roller-overhead", "receiver", "28 mm"},
		{"lamp", "panel-4x2", "supply", "6.35 kg, off the box"},
		{"lamp", "panel-2x1", "spread", "even in all directions (lambertian)"},
	} {
		d, _ := k.Describe(row.kind, row.id, quantity.InMetres)
		found := false
		for _, l := range d.Lines {
			if l.Key == row.key {
				found = true
				if l.Value != row.value {
					t.Errorf("%s %s: %s is %q, want %q", row.kind, row.id, row.key, l.Value, row.value)
				}
			}
		}
		if !found {
			t.Errorf("%s %s has no %s", row.kind, row.id, row.key)
		}
	}
}

func TestListSays(t *testing.T) {
	k := standard(t)
	rows := k.List("", quantity.InFeet)
	seen := map[string]bool{}
	for i, row := range rows {
		seen[row.Kind] = true
		if row.Name == "" || row.Summary == "" || row.Source == "" {
			t.Errorf("a row says too little: %+v", row)
		}
		if i > 0 && rows[i-1].Kind == row.Kind && rows[i-1].ID >= row.ID {
			t.Errorf("%s stands after %s", row.ID, rows[i-1].ID)
		}
	}
	for _, kind := range Kinds() {
		if !seen[kind] {
			t.Errorf("the standard kit has no %s", kind)
		}
	}
	if !reflect.DeepEqual(rows, k.List("", quantity.InFeet)) {
		t.Error("a second list differs")
	}
	if rows := k.List("pipe", quantity.InFeet); len(rows) != 0 {
		t.Errorf("no kind, and yet %d rows", len(rows))
	}
}

func TestListMarksInventedValues(t *testing.T) {
	k := standard(t)
	for kind, ids := range map[string]map[string]bool{
		"tube":    {"pipe-1-1/2": false},
		"lamp":    {"panel-2x1": true},
		"shackle": {"shackle-3/8": false},
		"clamp":   {"beam-clamp": true},
	} {
		for _, row := range k.List(kind, quantity.InFeet) {
			if demo, ok := ids[row.ID]; ok && row.Demo != demo {
				t.Errorf("%s: demo is %v", row.ID, row.Demo)
			}
		}
	}
}

// What is printed reads back to the digits that it shows.
func TestDigits(t *testing.T) {
	for x, want := range map[float64]string{1.9: "1.9", 0.0625: "0.0625", 12345.6: "12350", 0: "0", 2700: "2700", 1.0049999: "1.005", -0.5: "-0.5"} {
		if got := digits(x, 4); got != want {
			t.Errorf("%v prints as %s, want %s", x, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(1e-6, 1e12).Draw(t, "x")
		var back quantity.Share
		if err := back.UnmarshalText([]byte(digits(x, 4))); err != nil || !(float64(back) >= x*(1-6e-4) && float64(back) <= x*(1+6e-4)) {
			t.Fatalf("%v prints as %s and reads as %v (%v)", x, digits(x, 4), back, err)
		}
	})
}

// An entry of the second kit replaces the first's, and nothing else changes.
func TestWith(t *testing.T) {
	base := standard(t)
	own := Kit{Bag: map[string]Hardware{"bag-25": {Entry: Entry{Name: "ours"}}, "new": {}}, Ear: map[string]Hardware{"new": {}}}
	both := base.With(own)
	if len(both.items("")) != len(base.items(""))+2 || both.Bag["bag-25"].Name != "ours" || base.Bag["bag-25"].Name == "ours" {
		t.Errorf("%d and %d entries", len(both.items("")), len(base.items("")))
	}
	if diff := cmp.Diff(len(base.items("")), len(base.With(Kit{}).items(""))); diff != "" {
		t.Error(diff)
	}
}

// With copies every kind that there is.
func TestWithKnowsEveryKind(t *testing.T) {
	var own Kit
	value := reflect.ValueOf(&own).Elem()
	for i := range value.NumField() {
		set := reflect.MakeMap(value.Field(i).Type())
		set.SetMapIndex(reflect.ValueOf("x"), reflect.Zero(value.Field(i).Type().Elem()))
		value.Field(i).Set(set)
	}
	if got, want := len(Kit{}.With(own).items("")), len(Kinds()); got != want {
		t.Errorf("%d of %d kinds are copied", got, want)
	}
	if got, want := len(own.hardware()), value.NumField()-9; got != want {
		t.Errorf("%d sets of hardware are listed, %d are there", got, want)
	}
}
