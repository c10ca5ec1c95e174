package document

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"softloft/quantity"

	"github.com/google/go-cmp/cmp"
)

const samplePlanText = `# A plan.
softloft: 1
title: "Kitchen: day"   # quoted
on: true
sheet: {units: metres, paper: a4}
box:
  size: [12 ft, 20 ft]
  at: [-1.5 m, 6 1/2 in]   # in the world
  trim: 12'6"
  sides: white
  roof:
    reflectance: 0.5
    north: black

lamps:
  - {name: on, kit: panel, level: 60%, on: {rib: 1}}
  - name: two
    kit: "1.5 in"
    on: [1, 2]
    at: [1 m, 2 m]
camera: {looks: [0 ft, 0 ft, 5 ft], lens: 35 mm}
track: [[1, -2.5, 3e2]]
kit:
  "1.5 in": {mass: 2 kg, parts: [a, b]}
  other:
    mass: 3 lb
`

func ptr[T any](x T) *T { return &x }

func TestReadsEveryKindOfValue(t *testing.T) {
	got := samplePlan{Spare: 7, Title: "replaced"}
	d, mistakes := Read("plan.yaml", []byte(samplePlanText), &got)
	if mistakes.Err() != nil {
		t.Fatal(mistakes)
	}
	want := samplePlan{
		Version: 1, Title: "Kitchen: day", On: true, Spare: 7, // Spare is not named: it keeps its value
		Sheet: sampleSheet{quantity.InMetres, "a4"},
		Box: sampleBox{
			samplePlace: samplePlace{At: [2]quantity.Length{-1.5, 0.1651}},
			Size:        [2]quantity.Length{3.6576, 6.096},
			Trim:        ptr(quantity.Length(3.81)),
			Sides:       sampleSides{All: "white"},
			Roof:        &sampleSides{Reflectance: ptr(0.5), North: "black"},
		},
		Lamps: []sampleLamp{
			{Name: "on", Kit: "panel", Level: 0.6, On: sampleHold{Ribs: []int{1}}},
			{Name: "two", Kit: "1.5 in", On: sampleHold{Ribs: []int{1, 2}}, At: [2]quantity.Length{1, 2}},
		},
		Camera: &sampleCamera{[3]quantity.Length{0, 0, 1.524}, 0.035},
		Track:  [][3]float64{{1, -2.5, 300}},
		Kit:    map[string]sampleItem{"1.5 in": {Mass: 2, Parts: []string{"a", "b"}}, "other": {Mass: 1.36077711}},
	}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(sampleBox{})); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if string(d.Bytes()) != samplePlanText {
		t.Error("the bytes changed")
	}
}

func TestPlaces(t *testing.T) {
	d, _ := Read("plan.yaml", []byte("\ufeff"+samplePlanText), new(samplePlan))
	for _, row := range []struct{ path, place, typed string }{
		{"softloft", "plan.yaml:2:11", "1"},
		{"title", "plan.yaml:3:8", "Kitchen: day"},
		{"box.trim", "plan.yaml:9:9", `12'6"`},
		{"box.at[1]", "plan.yaml:8:16", "6 1/2 in"},
		{"box.roof.north", "plan.yaml:13:12", "black"},
		{"lamps[0].on.rib", "plan.yaml:16:50", "1"},
		{"lamps[1].on[1]", "plan.yaml:19:13", "2"},
		{`kit["1.5 in"].parts[1]`, "plan.yaml:24:37", "b"},
		{`kit.other.mass`, "plan.yaml:26:11", "3 lb"},
	} {
		place, ok := d.Place(row.path)
		typed, known := d.Typed(row.path)
		if !ok || !known || !d.Has(row.path) || place.String() != row.place || typed != row.typed {
			t.Errorf("%s: %v %v, typed %q %v", row.path, place, ok, typed, known)
		}
	}
	for _, path := range []string{"box.turn", "lamps[2]", "lamps.name", "title[0]", "box..trim", "box.trim.x", "[0]", ".box", "box.", "lamps[x]", `kit["1.5 in"`, "lamps[-1]"} {
		if _, ok := d.Place(path); ok || d.Has(path) {
			t.Errorf("%s has a place", path)
		}
		if _, ok := d.Typed(path); ok {
			t.Errorf("%s has a text", path)
		}
	}
	if _, ok := d.Typed("box"); ok {
		t.Error("a mapping has a text")
	}
}

// A mistake that is found after reading stands at the value, or at the key of the nearest parent.
func TestMark(t *testing.T) {
	d, _ := Read("plan.yaml", []byte(samplePlanText), new(samplePlan))
	for _, row := range []struct{ path, want, text string }{
		{"box.trim", "plan.yaml:9:9: trim: too low; raise it", `  trim: 12'6"`},
		{"box.turn", "plan.yaml:6:1: turn: too low; raise it", "box:"},
		{"lamps[1].at[3]", "plan.yaml:20:5: at item 4: too low; raise it", "    at: [1 m, 2 m]"},
		{"lamps[1].aims.tilt", "plan.yaml:17:5: tilt: too low; raise it", "  - name: two"},
		{"", "plan.yaml:2:1: too low; raise it", "softloft: 1"},
		{"hang", "plan.yaml:2:1: hang: too low; raise it", "softloft: 1"},
	} {
		got := Mark(d, row.path, "too low", "raise it")
		if got.Error() != row.want || got.Text != row.text {
			t.Errorf("%s: %s, text %q", row.path, got.Error(), got.Text)
		}
	}
	if got := Mark(nil, "box.trim", "too low", ""); got.Error() != ": trim: too low" {
		t.Errorf("without a document: %s", got.Error())
	}
}

func TestPaths(t *testing.T) {
	for path, want := range map[string]string{
		Item(Key(Key("", "hang"), "lines"), 2): "hang.lines[2]",
		Key(Item("lamps", 0), "at"):            "lamps[0].at",
		Key("kit", "1.5 in"):                   `kit["1.5 in"]`,
		Key("kit", "steel pipe"):               "kit.steel pipe",
		Key("", `a"b`):                         `["a\"b"]`,
	} {
		if path != want {
			t.Errorf("%s, want %s", path, want)
		}
		if _, ok := steps(path); !ok {
			t.Errorf("%s is not read back", path)
		}
	}
}

// Mistakes come in the order of their places, each once.
func TestMistakesAreSorted(t *testing.T) {
	at := func(line, column int) Mistake { return Mistake{Place: Place{"p", line, column}, Problem: "x"} }
	got := Mistakes{at(2, 1), at(1, 5), at(2, 1), at(1, 2)}.Sort()
	if diff := cmp.Diff(Mistakes{at(1, 2), at(1, 5), at(2, 1)}, got); diff != "" {
		t.Error(diff)
	}
	if Mistakes(nil).Err() != nil {
		t.Error("no mistakes are an error")
	}
}

// What the program asks for wrongly is told as well, and does not panic.
func TestFaultsOfTheProgram(t *testing.T) {
	var nowhere *samplePlan
	for _, into := range []any{nil, 3, samplePlan{}, nowhere, new(struct {
		A chan int `key:"a"`
	}), new(struct {
		A map[int]string `key:"a"`
	}), new(struct {
		A endless `key:"a"`
	}), new(struct {
		A any `key:"a"`
	})} {
		if _, mistakes := Read("plan.yaml", []byte("a: 1\n"), into); len(mistakes) == 0 || !strings.Contains(mistakes.Error(), "fault of the program") {
			t.Errorf("%T: %v", into, mistakes)
		}
	}
}

type endless struct{}

func (e *endless) ReadFrom(c *Cursor) { c.Into(new(endlessOther)) }

type endlessOther struct{}

func (e *endlessOther) ReadFrom(c *Cursor) { c.Into(new(endless)) }

// A document beyond the limits is refused before it costs time; one of the largest that is read
// takes a second at most. 4 MB of noise of every kind.
func TestNoiseIsRefusedQuickly(t *testing.T) {
	for _, noise := range []string{"[", "{", "- ", "? ", "a:\n ", "[1,", "1,", "- 1\n", "a: 1\n", "{a: 1, ", "#\n", "- a\n# x\n", "&a ", "!!", "a: b\n ", "\"", "'", ": ", "\t", "%a\n", "*a ", "\n", " ", "a\n", "---\n", "{a: [", "[],", "\"b\":c,", "\\", "|\n", ">\n x\n", "é", "\r", "<<: ", "@", "a.b.c "} {
		for _, before := range []string{"", "a: ["} {
			data := []byte(before + strings.Repeat(noise, MaxBytes/len(noise)-8))
			var mistakes Mistakes
			took := quickest(func() { _, mistakes = Read("noise.yaml", data, new(samplePlan)) })
			if took > time.Second {
				t.Errorf("%q after %q took %v", noise, before, took)
			}
			if len(mistakes) == 0 || len(mistakes) > mostMistakes+1 || len(mistakes.Error()) > 400*len(mistakes) {
				t.Errorf("%q after %q: %d mistakes", noise, before, len(mistakes))
			}
		}
	}
	_, mistakes := Read("large.yaml", make([]byte, MaxBytes+1), new(samplePlan))
	if want := "large.yaml: 4.0 MB long, 4 MB at most are read; give a plan, or a part of it"; mistakes.Error() != want {
		t.Errorf("%v", mistakes)
	}
}

// quickest returns the time that f takes; where it seems too long, the least of three, because other
// work may share the machine.
func quickest(f func()) time.Duration {
	least := time.Hour
	for range 3 {
		start := time.Now()
		f()
		least = min(least, time.Since(start))
		if least < time.Second {
			break
		}
	}
	return least
}

// As many mistakes as are told, and no more.
func TestMistakesAreCounted(t *testing.T) {
	var text strings.Builder
	for i := range 3000 {
		fmt.Fprintf(&text, "key%d: 1\n", i)
	}
	_, mistakes := Read("plan.yaml", []byte(text.String()), new(samplePlan))
	if len(mistakes) != mostMistakes+1 || !strings.Contains(mistakes[mostMistakes].Problem, "more mistakes follow") {
		t.Errorf("%d mistakes, the last %v", len(mistakes), mistakes[len(mistakes)-1])
	}
}

// Depth is bounded where the parser does not bound it: flow values within block values.
func TestDepth(t *testing.T) {
	block := ""
	for i := range 40 {
		block += strings.Repeat(" ", i) + "a:\n"
	}
	text := block + strings.Repeat(" ", 40) + "a: " + strings.Repeat("[", 40) + strings.Repeat("]", 40) + "\n"
	_, mistakes := Read("plan.yaml", []byte(text), new(struct {
		A map[string]any `key:"a"`
	}))
	if !strings.Contains(mistakes.Error(), "nested more than 64 deep") {
		t.Error(mistakes)
	}
}

func TestNearest(t *testing.T) {
	words := []string{"size", "at", "trim", "turn", "tilt", "sides", "cloth_tie", "lamps"}
	for _, row := range []struct {
		text string
		want []string
	}{
		{"tirm", []string{"trim"}}, {"side", []string{"size", "sides"}}, {"Size", []string{"size"}}, {"cloth-tie", []string{"cloth_tie"}},
		{"clothtye", []string{"cloth_tie"}}, {"lamp", []string{"lamps"}}, {"position", nil}, {"", nil}, {"a", nil},
	} {
		if got := nearest(row.text, words); !reflect.DeepEqual(got, row.want) {
			t.Errorf("%s: %v, want %v", row.text, got, row.want)
		}
	}
}
