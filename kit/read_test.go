package kit

import (
	"errors"
	"io/fs"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"softloft/document"
	"softloft/quantity"
)

func folder(files map[string]string) fs.FS {
	all := fstest.MapFS{}
	for name, text := range files {
		all[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return all
}

func TestFolderExtendsAndOverrides(t *testing.T) {
	base := standard(t)
	k, mistakes := ReadFolder(folder(map[string]string{
		"1.yaml":     "tube:\n  pipe-1-1/2: {name: ours, outer: 1.9 in, wall: 0.145 in, alloy: our-alloy}\nbag:\n  brick: {mass: 5 lb}\n",
		"2.yaml":     "alloy:\n  our-alloy: {E: 70 GPa, poisson: 0.33, density: 2700 kg/m3}\nbag:\n  brick: {mass: 6 lb}\n",
		"notes.txt":  "not: [a kit",
		"old/3.yaml": "bag:\n  brick: {mass: 7 lb}\n",
	}), base)
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	if name := k.Tube["pipe-1-1/2"].Name; name != "ours" {
		t.Errorf("the folder's tube doesn't replace the standard one: %q", name)
	}
	near(t, "the later file's brick in lb", float64(*k.Bag["brick"].Mass.Each/quantity.Pound), 6, 1e-12)
	if len(k.Rope) != len(base.Rope) || base.Tube["pipe-1-1/2"].Name == "ours" {
		t.Error("other entries or the base changed")
	}
}

func TestMistakesHaveTheirPlaces(t *testing.T) {
	// A file and what is told of it, side by side.
	for _, row := range []struct{ text, told string }{
		{"tube:\n  x: {outer: 2 in, wall: 1 in, alloy: 6061-T7}\n", `k.yaml:2:26: wall: a wall of half of outer or more, which leaves no bore; less than half of outer
k.yaml:2:39: alloy: no such alloy "6061-T7"; did you mean 6061-T6`},
		{"rope:\n  wire-9: {kind: wire cable, breaks: 0 lb, source: {breks: papers}}\n", `k.yaml:2:18: kind: no such kind "wire cable"; wire, or the fiber's name such as manila, nylon or polyester
k.yaml:2:38: breaks: 0, where a size over 0 is due; leave the key out where nobody gave it, or write a size such as 250 lb
k.yaml:2:52: source: a source for "breks", which this entry doesn't have; keys of the entry that have a value, or all for the rest`},
		{"lamp:\n  p:\n    size: [2 ft, 1 ft]\n    power_factor: 0\n    spread: {beam: 90 deg, field: 60 deg}\n", `k.yaml:4:19: power_factor: a share of 0; over 0 and at most 1, such as 0.6
k.yaml:5:13: spread: a beam that is wider than the field; beam is the full angle at half of the peak, field at a tenth of it`},
		{"corner:\n  c: {fits: [pipe-1-12]}\n", `k.yaml:2:14: fits item 1: no such tube "pipe-1-12"; did you mean pipe-1-1/2`},
		{"sling:\n  wire-1/4: {rated: 100 lb}\n", `k.yaml:2:13: wire-1/4: "wire-1/4" is a rope as well, so a line's rope could be either; an id that no rope, sling, webbing or safety has`},
		// What could not be read is told once, and not checked on top of it.
		{"tube:\n  x: {outer: 2, wall: 3 in, alloy: A}\n", `k.yaml:2:14: outer: bare number 2, a length needs its unit; write 2 ft or 0.61 m`},
		{"bag:\n  b: {mass: 3 lb, color: red}\n", `k.yaml:2:19: color: unknown key in b; known here: name, source, note, mass, fits, rated, kind, welded, stiffness, slip, length, material`},
		{"tubes: {}\n", `k.yaml:1:1: tubes: unknown key; write tube`},
	} {
		_, mistakes := Read("k.yaml", []byte(row.text), standard(t))
		var told []string
		for _, m := range mistakes {
			told = append(told, m.Error())
		}
		if diff := cmp.Diff(row.told, strings.Join(told, "\n")); diff != "" {
			t.Errorf("%s\n%s", row.text, diff)
		}
	}
}

func TestNothingToRead(t *testing.T) {
	for name, text := range map[string]string{
		"empty": "", "comment": "# nothing\n", "list": "- a\n", "text": "a", "noise": "\x00\xff\x1b[", "anchor": "bag: &a {}\n", "huge": "# " + strings.Repeat("x", 8<<20),
	} {
		k, mistakes := Read(name, []byte(text), Kit{})
		if len(mistakes) == 0 || len(k.items("")) > 0 {
			t.Errorf("%s: read as %d entries, mistakes %v", name, len(k.items("")), mistakes)
		}
	}
}

// broken is a folder whose files can't be read.
type broken struct{ fs.FS }

func (b broken) Open(name string) (fs.File, error) {
	if name == "." {
		return b.FS.Open(name)
	}
	return nil, &fs.PathError{Op: "open", Path: name, Err: errors.New("no permission")}
}

func TestUnreadableFilesAreMistakes(t *testing.T) {
	base := standard(t)
	k, mistakes := ReadFolder(broken{folder(map[string]string{"a.yaml": "", "b.yaml": ""})}, base)
	if len(mistakes) != 2 || mistakes[0].Place.File != "a.yaml" || len(k.Tube) != len(base.Tube) {
		t.Errorf("got %v", mistakes)
	}
	if _, mistakes := ReadFolder(broken{fstest.MapFS{}}, base); len(mistakes) != 0 {
		t.Errorf("an empty folder has mistakes: %v", mistakes)
	}
	if _, mistakes := ReadFolder(gone{}, base); len(mistakes) != 1 {
		t.Errorf("a folder that isn't there: %v", mistakes)
	}
}

type gone struct{}

func (gone) Open(name string) (fs.File, error) { return nil, fs.ErrNotExist }

// The defaults that the loader fills in are those that the types' tags promise.
func TestDefaultsAreThoseOfTheTags(t *testing.T) {
	k, mistakes := Read("k.yaml", []byte(`
alloy: {A: {E: 70 GPa, poisson: 0.33, density: 2700 kg/m3}}
tube: {x: {outer: 40 mm, wall: 4 mm, alloy: A}}
cloth: {x: {through: 1}}
crate: {x: {cell: [4 in, 4 in], depth: 4 in}}
wrap: {x: {color: white}}
lamp: {x: {size: [1 ft, 1 ft]}}
rope: {x: {kind: manila}}
pulley: {x: {rated: 500 lb}}
stand: {x: {base: 1 m, legs: 3, rises: [1 m, 2 m]}}
shackle: {x: {rated: 500 lb}}
`), Kit{})
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	found := 0
	for _, it := range k.items("") {
		value := reflect.ValueOf(it.Value)
		for field := range value.Type().Fields() {
			text, ok := field.Tag.Lookup("default")
			if !ok {
				continue
			}
			found++
			if got := show(value.FieldByIndex(field.Index).Interface(), quantity.InMetres); got != show(RatingKind(text), "") && got != text {
				t.Errorf("%s %s: %s, the tag says %s", it.Kind, keyOf(field), got, text)
			}
		}
	}
	if found < 5 {
		t.Errorf("only %d defaults met", found)
	}
}

// A written value is kept where it could be taken for an absent one.
func TestWrittenZerosAreKept(t *testing.T) {
	k, mistakes := Read("k.yaml", []byte("crate: {x: {cell: [4 in, 4 in], depth: 4 in, reflectance: 0}}\nbag: {x: {mass: 0 lb}}\n"), Kit{})
	if len(mistakes) > 0 || k.Crate["x"].Reflectance != 0 || k.Bag["x"].Mass.Each == nil {
		t.Errorf("got %+v, %v", k, mistakes)
	}
}

func TestSources(t *testing.T) {
	k, mistakes := Read("k.yaml", []byte(`
rope:
  x:
    kind: manila
    breaks: 2000 lb
    knot: 0.5
    mass: 0.1 lb/ft
    stiffness: 9 kN
    source:
      all: the label on the rope
      breaks: ci-1308, half inch
      stiffness: ci-1401, stretch, from memory
      mass: demo value, a guess
      kind: common practice
  y: {kind: nylon, source: demo value}
`), Kit{})
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	x, y := k.Rope["x"].Source, k.Rope["y"].Source
	for _, row := range []struct {
		got, want any
	}{
		{x.For("breaks"), "Cordage Institute CI 1308-96, manila rope, three-strand, 1996, half inch"},
		{x.For("knot"), "the label on the rope"},
		{x.For("mass"), "demo value, a guess"},
		{x.Demo("mass"), true}, {x.Demo("breaks"), false}, {y.Demo("kind"), true},
		{string(x.Citation("breaks").Source), "ci-1308"}, {x.Citation("breaks").Clause, "half inch"}, {x.Citation("breaks").Read(), true},
		{x.Citation("stiffness").Clause, "stretch"}, {x.Citation("stiffness").Read(), false},
		{string(x.Citation("mass").Source), "demo"}, {string(x.Citation("kind").Source), "common-practice"},
		{string(x.Citation("knot").Source), "kit"}, {x.Citation("knot").Clause, "the label on the rope"},
		{Sources{}.For("breaks"), ""},
	} {
		if row.got != row.want {
			t.Errorf("got %v, want %v", row.got, row.want)
		}
	}
}

// Every id of the standard kit can stand in a plan without quotation marks.
func TestIDsArePlainYAML(t *testing.T) {
	for _, it := range standard(t).items("") {
		if quoted := document.Quote(it.ID); quoted != it.ID {
			t.Errorf("%s has to be written %s", it.ID, quoted)
		}
	}
}

func FuzzRead(f *testing.F) {
	names, err := fs.Glob(data, "data/*.yaml")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range names {
		text, err := fs.ReadFile(data, name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	f.Add([]byte("tube: {x: {outer: 1e300 m, wall: 1e-300 m, alloy: A53-B, source: {all: demo value}}}"))
	f.Add([]byte("lamp: {x: {size: [1 m, 1 m], spread: {file: a.ies}, supply: {mass: 1 kg, off_box: true}}}"))
	f.Add([]byte(`{"crate": {"x": {"cell": ["1 in", "2 in"], "depth": "1 in", "mass": "3 lb"}}}`))
	base := standard(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		k, mistakes := Read("k.yaml", text, base)
		if len(mistakes) > 0 {
			for _, m := range mistakes {
				if m.Place.File != "k.yaml" || m.Problem == "" {
					t.Errorf("a mistake without its place or problem: %+v", m)
				}
			}
			return
		}
		merged := base.With(k)
		for _, units := range []quantity.System{quantity.InFeet, quantity.InMetres} {
			for _, row := range k.List("", units) {
				d, ok := merged.Describe(row.Kind, row.ID, units)
				if !ok {
					t.Fatalf("%s %q is listed and can't be described", row.Kind, row.ID)
				}
				unknown := func(l Line) bool { return strings.Contains(l.Value, "not known") || strings.Contains(l.Value, "NaN") }
				if i := slices.IndexFunc(d.Lines, unknown); i >= 0 && !strings.Contains(string(text), "not known") && !strings.Contains(string(text), "NaN") {
					t.Errorf("%s %q: %s is %s", row.Kind, row.ID, d.Lines[i].Key, d.Lines[i].Value)
				}
			}
		}
	})
}
