package plan

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"softloft/document"
	"softloft/kit"
	"softloft/plan/key"
	"softloft/quantity"
)

func mustRead(t testing.TB, file string, base kit.Kit) *File {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	f, mistakes := Read(filepath.Base(file), data, base)
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	return f
}

// TestEverything reads a plan that has every key of the contract: nothing is
// complained of, and what no analysis uses yet is listed with its place.
func TestEverything(t *testing.T) {
	f := mustRead(t, "testdata/everything.yaml", testKit(t))
	var unused []string
	for _, u := range f.Unused {
		if u.Place.Line == 0 || u.Why == "" {
			t.Errorf("%+v has no place or no reason", u)
		}
		unused = append(unused, u.Key)
	}
	want := []string{"sheet.paper", "box.leak"}
	if diff := cmp.Diff(want, unused); diff != "" {
		t.Error(diff)
	}
	missing := map[string]bool{}
	key.Walk(nil, &Plan{Room: &Room{Outdoors: &Outdoors{}}, Box: &Box{}, Hang: &Hang{}}, func(v key.Value) { missing[v.Pattern] = true })
	key.Walk(f.Doc, f.Plan, func(v key.Value) {
		if v.Present {
			delete(missing, v.Pattern)
		}
	})
	left := slices.Collect(func(yield func(string) bool) {
		for k := range missing {
			if !yield(k) {
				return
			}
		}
	})
	slices.Sort(left)
	// The box's height is given in one way, a join is of one kind, and a room with walls is not outdoors.
	if diff := cmp.Diff([]string{"box.cloth_at", "room.outdoors", "room.outdoors.blocked", "room.outdoors.from", "room.outdoors.gust"}, keep(left, "box.", "room.")); diff != "" {
		t.Error("testdata/everything.yaml lacks keys:", diff)
	}
}

func keep(paths []string, prefixes ...string) []string {
	var kept []string
	for _, p := range paths {
		for _, prefix := range prefixes {
			if strings.HasPrefix(p, prefix) {
				kept = append(kept, p)
			}
		}
	}
	return kept
}

// TestValues compares what was read with the plan's text, typed again by hand.
func TestValues(t *testing.T) {
	f := mustRead(t, "testdata/everything.yaml", testKit(t))
	p, b := f.Plan, f.Plan.Box
	const deg = quantity.Degree
	seven := 0.7
	half := 0.5
	for _, c := range []struct {
		key       string
		got, want any
	}{
		{"revision", p.Revision, "7"},
		{"sheet.units", p.Sheet.Units, quantity.InMetres},
		{"rules.factor", [2]Factor{*p.Rules.Factor.Rope, *p.Rules.Factor.Hardware}, [2]Factor{{Number: 10}, {Source: "dguv-215-313"}}},
		{"room.points[0].kind", p.Room.Points[0].Kind, PointKind("pipe grid")},
		{"room.points[0].stated_on", p.Room.Points[0].StatedOn, "2027-03-02"},
		{"action.marks[0].eyes", float64(p.Action.Marks[0].Eyes), 64 * 0.0254},
		{"box.join", b.Join, Join{Uprights: &Uprights{Tube: "box-tube", Count: 4}}},
		{"box.upper", *b.Upper, Upper{Tube: "pipe", Corners: "pinned", Welded: true}},
		{"box.cloth", b.Cloth, []ClothLayer{{Kit: "silk"}, {Kit: "muslin", Gap: quantity.Foot}}},
		{"box.sides", b.Sides, Sides{{Word: "white"}, {Reflectance: &seven}, {Word: "none"}, {Word: "silver"}}},
		{"box.roof", b.Roof, Face{Reflectance: &half}},
		{"box.skirt", b.Skirt, Skirts{1, 0, 0.3, 0}},
		{"box.tilt", *b.Tilt, Tilt{About: "y", By: 5 * deg}},
		{"lamps[0].level", float64(p.Lamps[0].Level), 0.8},
		{"lamps[1].level", float64(p.Lamps[1].Level), 0.5},
		{"lamps[1].on", *p.Lamps[1].On, On{Bar: "pipe", Ends: "rigid"}},
		{"lamps[3].on", *p.Lamps[3].On, On{Frame: "west"}},
		{"hang.lines[0].from", p.Hang.Lines[0].From, From{Corner: "nw"}},
		{"hang.lines[1].from", p.Hang.Lines[1].From, From{At: [3]quantity.Length{1.83, 1.83}}},
		{"hang.lines[2].from", p.Hang.Lines[2].From, From{At: [3]quantity.Length{1.83, -1.83, 0.6}, Deep: true}},
		{"hang.lines[1].to", *p.Hang.Lines[1].To.Bridle, Bridle{Points: [2]string{"P2", "P1"}, Apex: 6}},
		{"hang.guys[1].from", p.Hang.Guys[1].From, GuyFrom{At: [3]quantity.Length{0, 1.83}}},
		{"stands[0].bags.at", p.Stands[0].Bags.At, BagPlace{Leg: 1}},
		{"stands[0].holds.arm.head", p.Stands[0].Holds.Arm.Head, Hand("left")},
		{"probes[1].facing", p.Probes[1].Facing, Facing{3, 0, 4}},
		{"probes[0].facing", p.Probes[0].Facing, Facing{0, 0, -1}},
		{"kit: the plan's own and the base's", []bool{has(f.Kit.Tube, "2 in"), has(f.Kit.Tube, "pipe")}, []bool{true, true}},
	} {
		if diff := cmp.Diff(c.want, c.got); diff != "" {
			t.Errorf("%s: %s", c.key, diff)
		}
	}
}

func has[T any](set map[string]T, id string) bool { _, ok := set[id]; return ok }

// TestDefaults: the contract's own defaults, each told with its key, and in force.
func TestDefaults(t *testing.T) {
	f := mustRead(t, "testdata/hung.yaml", kit.Kit{})
	told := map[string]string{}
	for _, d := range f.Defaults {
		if d.Source == "" || told[d.Key] != "" {
			t.Errorf("%+v has no source or is told twice", d)
		}
		told[d.Key] = d.Value
	}
	// Source: softloft's contract, "the first is the default unless said otherwise".
	for key, want := range map[string]string{
		"sheet.units": "feet", "sheet.paper": "letter", "rules.people_below": "true", "rules.load_cells": "false", "rules.push": "0 N",
		"room.reflectance.floor": "0.2", "room.reflectance.walls": "0.3", "room.reflectance.ceiling": "0.1", "room.points[].kind": "beam",
		"box.turn": "0 deg", "box.corners": "rigid", "box.join": "none", "box.upper": "none", "box.ribs.ends": "rigid", "box.cloth_tie": "slack",
		"box.clear": "[3.658 m, 3.658 m]", "box.leak": "0 m", "box.roof": "open", "box.skirt": "none",
		"lamps[].level": "100%", "lamps[].aims.tilt": "0 deg", "lamps[].roll": "0 deg", "lamps[1].name": "panel 2",
		"kit.tube.pipe.shape": "round", "kit.lamp.panel.power_factor": "1", "kit.lamp.panel.spread": "lambertian",
	} {
		if told[key] != want {
			t.Errorf("default of %s: told %q, want %q", key, told[key], want)
		}
	}
	for _, typed := range []string{"derive", "box.sides", "box.cloth_at", "box.ribs.along", "box.ribs.level", "room.points[].direction", "action.area.at"} {
		if v, ok := told[typed]; ok {
			t.Errorf("%s is told as a default, %q", typed, v)
		}
	}
	p := f.Plan
	if p.Lamps[3].Level != 1 || !p.Rules.PeopleBelow || p.Box.Roof.Word != "open" || f.Kit.Tube["pipe"].Shape != "round" || f.Kit.Lamp["panel"].PowerFactor != 1 {
		t.Error("a default is told and not in force")
	}
}

// TestSomeItemsMiss: a default that only some items of a list miss is told for each of those.
func TestSomeItemsMiss(t *testing.T) {
	f, mistakes := Read("p", []byte(`{softloft: 1, box: {size: [1 m, 1 m], trim: 2 m}, lamps: [
  {kit: panel, at: [0 m, 0 m], above: 1 m, level: 50%}, {kit: par, at: [0 m, 0 m], above: 1 m}]}`), testKit(t))
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	var levels []string
	for _, d := range f.Defaults {
		if strings.HasSuffix(d.Key, ".level") || strings.HasSuffix(d.Key, ".ends") {
			levels = append(levels, d.Key)
		}
	}
	if diff := cmp.Diff([]string{"lamps[1].level"}, levels); diff != "" {
		t.Error(diff)
	}
}

// TestTags: every default's text can be read as its key's value, and has a source; every
// key says what it means.
func TestTags(t *testing.T) {
	seen := map[reflect.Type]bool{}
	var look func(reflect.Type)
	look = func(ty reflect.Type) {
		for ty.Kind() == reflect.Pointer || ty.Kind() == reflect.Slice || ty.Kind() == reflect.Array || ty.Kind() == reflect.Map {
			ty = ty.Elem()
		}
		if seen[ty] {
			return
		}
		seen[ty] = true
		for _, f := range key.Fields(ty) {
			if f.Doc == "" {
				t.Errorf("%s.%s says nothing of its meaning", ty, f.Name)
			}
			if (f.Default == "") != (f.Source == "") {
				t.Errorf("%s.%s has default %q from source %q", ty, f.Name, f.Default, f.Source)
			}
			look(f.Type)
		}
		if ty.Kind() == reflect.Struct {
			if _, err := key.Fill(nil, reflect.New(ty).Interface()); err != nil {
				t.Error(err)
			}
		}
	}
	look(reflect.TypeFor[Plan]())
	if len(seen) < 60 {
		t.Errorf("only %d types were met", len(seen))
	}
}

// TestSameBytes: the same plan gives the same defaults in the same order.
func TestSameBytes(t *testing.T) {
	base := testKit(t)
	first := mustRead(t, "testdata/everything.yaml", base)
	for range 5 {
		again := mustRead(t, "testdata/everything.yaml", base)
		if diff := cmp.Diff(first.Defaults, again.Defaults); diff != "" {
			t.Fatal(diff)
		}
	}
}

// TestNoPlan: what is no plan at all has one sentence, soon.
func TestNoPlan(t *testing.T) {
	noise := make([]byte, 1<<20)
	for i := range noise {
		noise[i] = byte(i*7 + i/251)
	}
	bomb := "a: &a [x, x, x, x, x, x, x, x, x]\nb: &b [*a, *a, *a, *a, *a, *a, *a, *a, *a]\nc: &c [*b, *b, *b, *b, *b, *b, *b, *b, *b]\n"
	for name, text := range map[string]string{
		"empty": "", "blanks": "\n \n", "comment": "# nothing\n", "list": "- 1\n", "word": "softloft", "null": "~",
		"noise": string(noise), "bomb": bomb, "deep": strings.Repeat("[", 100000), "flow": strings.Repeat("{a: ", 10000),
		"two documents": "softloft: 1\n---\nsoftloft: 1\n", "tab": "box:\n\tsize: 1\n",
	} {
		f, mistakes := Read("plan.yaml", []byte(text), kit.Kit{})
		if f != nil || len(mistakes) == 0 {
			t.Errorf("%s: read as a plan, told %v", name, mistakes)
			continue
		}
		if told := mistakes.Error(); len(mistakes) > 50 || strings.Contains(told, "yaml:") && !strings.HasPrefix(told, "plan.yaml:") {
			t.Errorf("%s: told %d bytes: %.300s", name, len(told), told)
		}
	}
}

// TestDuplicateKeys and aliases are told in the user's words.
func TestDuplicateKeys(t *testing.T) {
	_, mistakes := Read("plan.yaml", []byte("softloft: 1\nbox: {size: [1 m, 1 m], trim: 3 m, trim: 4 m}\ntitle: &a x\nrevision: *a\n"), kit.Kit{})
	if len(mistakes) < 3 {
		t.Errorf("told %v", mistakes)
	}
}

// TestManyLamps: two thousand lamps are read, one more is too many.
func TestManyLamps(t *testing.T) {
	plan := func(n int) []byte {
		text := "softloft: 1\nbox: {size: [100 m, 100 m], trim: 3 m}\nlamps:\n"
		return []byte(text + strings.Repeat("  - {kit: panel, at: [0 m, 0 m], above: 1 m}\n", n))
	}
	base := testKit(t)
	if f, mistakes := Read("p", plan(mostLamps), base); len(mistakes) > 0 || len(f.Plan.Lamps) != mostLamps {
		t.Error(mistakes)
	}
	if _, mistakes := Read("p", plan(mostLamps+1), base); len(mistakes) != 1 || !strings.Contains(mistakes[0].Problem, "2001 lamps") {
		t.Error(mistakes)
	}
}

// finite complains of each number in a value that is not finite.
func finite(t testing.TB, v reflect.Value, at string) {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			t.Errorf("%s is %v", at, x)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			finite(t, v.Elem(), at)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, v.Field(i), at+"."+v.Type().Field(i).Name)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			finite(t, v.Index(i), document.Item(at, i))
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			finite(t, v.MapIndex(k), document.Key(at, k.String()))
		}
	}
}

// FuzzRead: nothing panics; what is read without a mistake has only finite numbers and can be
// read again from its own bytes.
func FuzzRead(f *testing.F) {
	for _, pattern := range []string{"testdata/*.yaml", "../examples/*.yaml"} {
		files, _ := filepath.Glob(pattern)
		for _, file := range files {
			data, err := os.ReadFile(file)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(data)
		}
	}
	files, _ := filepath.Glob("testdata/mistakes/*.txt")
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		_, all := sections(string(data))
		for _, s := range all {
			if s.name != "want" {
				f.Add([]byte(s.text))
			}
		}
	}
	base := testKit(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		file, mistakes := Read("fuzz.yaml", data, base)
		if (file == nil) != (len(mistakes) > 0) {
			t.Fatalf("a file %v with mistakes %v", file != nil, mistakes)
		}
		for _, m := range mistakes {
			if m.Problem == "" || strings.Contains(m.Problem, "fault of") {
				t.Fatalf("told %+v", m)
			}
		}
		if file == nil {
			return
		}
		finite(t, reflect.ValueOf(file.Plan), "plan")
		again, mistakes := Read("fuzz.yaml", file.Doc.Bytes(), base)
		if len(mistakes) > 0 {
			t.Fatalf("read once and not again: %v", mistakes)
		}
		if diff := cmp.Diff(file.Plan, again.Plan); diff != "" {
			t.Fatal(diff)
		}
	})
}

// TestTooMuch: plans up to the largest size that a document may have are answered soon, however
// their lists are filled.
func TestTooMuch(t *testing.T) {
	base := testKit(t)
	const top = "softloft: 1\nbox: {size: [10 m, 10 m], trim: 3 m%s}\n"
	many := func(n int, format string) string {
		var out strings.Builder
		for i := range n {
			fmt.Fprintf(&out, format, i)
		}
		return out.String()
	}
	for name, text := range map[string]string{
		"ribs":     fmt.Sprintf(top, ", depth: 1 m, ribs: {tube: pipe, at: ["+many(100000, "%d mm,")+"0 m]}"),
		"lines":    fmt.Sprintf(top, "") + "room:\n  points:\n" + many(20000, "    - {name: P%d, at: [0 m, 0 m, 5 m]}\n") + "hang:\n  rope: line\n  lines:\n" + many(20000, "    - {name: L%d, from: nw, to: Q}\n"),
		"unknown":  fmt.Sprintf(top, "") + "room:\n  points:\n" + many(2000, "    - {name: point number %d, at: [0 m, 0 m, 5 m]}\n") + "hang:\n  rope: line\n  lines:\n" + many(1000, "    - {name: L%d, from: nw, to: pointed number x}\n"),
		"slings":   fmt.Sprintf(top, "") + "kit:\n  sling:\n" + many(50000, "    s%d: {rated: 1 kN}\n"),
		"tubes":    fmt.Sprintf(top, "") + "kit:\n  tube:\n" + many(1000, "    t%d: {outer: 1 mm, wall: 1 mm, alloy: none such}\n"),
		"corners":  fmt.Sprintf(top, "") + "room:\n  surfaces:\n    - name: s\n      corners:\n" + many(50000, "        - [%d mm, 0 m, 0 m]\n"),
		"surfaces": fmt.Sprintf(top, "") + "room:\n  surfaces:\n" + many(500, "    - {name: s%d, corners: [[0 m, 0 m, 0 m], [1 m, 0 m, 0 m], [0 m, 1 m, 0 m]], reflectance: 2}\n"),
		"keys":     fmt.Sprintf(top, "") + many(50000, "key%d: x\n"),
	} {
		start := time.Now()
		if _, mistakes := Read("plan.yaml", []byte(text), base); len(mistakes) == 0 || len(mistakes) > 2*mostTold {
			t.Errorf("%s: %d mistakes", name, len(mistakes))
		}
		if took := time.Since(start); took > time.Minute {
			t.Errorf("%s: %.1f s for %d bytes", name, took.Seconds(), len(text))
		} else {
			t.Logf("%s: %.2f s for %d bytes", name, took.Seconds(), len(text))
		}
	}
}
