package document

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// What changes is one piece of one line, or one line more; each row says the old and the new piece.
func TestSet(t *testing.T) {
	for _, row := range []struct{ before, path, text, after string }{
		{"a: 1\nb: 2\n", "a", "3", "a: 3\nb: 2\n"},
		{"trim: 12'6\"   # inches\n", "trim", "14 ft", "trim: 14 ft   # inches\n"},
		{"a: \"x\\\"y\" # c\n", "a", "z", "a: z # c\n"},
		{"a: 'it''s'\n", "a", "its", "a: its\n"},
		{"a: {b: [1, 2 ,3], c: 4}\n", "a.b[1]", "22", "a: {b: [1, 22 ,3], c: 4}\n"},
		{"a: {b: [12'6\", \"]\", '}'] , c: 4}\n", "a.b", "[1]", "a: {b: [1] , c: 4}\n"},
		{"a: [1, # one ]\n 2, # two\n]\nb: 3\n", "a", "[5]", "a: [5]\nb: 3\n"},
		{"l:\n- x: 1\n- x: 2\n", "l[1].x", "3", "l:\n- x: 1\n- x: 3\n"},
		{"{\"a\":1,\"b\":[1,2]}", "b[0]", "7", "{\"a\":1,\"b\":[7,2]}"},
		{"{\"a\": 1}", "a", "\"x\"", "{\"a\": \"x\"}"},
		{"a: 1\r\nb: 2\r\n", "a", "3", "a: 3\r\nb: 2\r\n"},
		{"\ufeffa: 1\nb: ½ x\n", "b", "y", "\ufeffa: 1\nb: y\n"},
		{"½: {é: 1}\n", "½.é", "2", "½: {é: 2}\n"},
		{"%YAML 1.2\n---\na: 1\n", "a", "2", "%YAML 1.2\n---\na: 2\n"},
		// a value where none stood
		{"a:\nb: 2\n", "a", "1", "a: 1\nb: 2\n"},
		{"a: # c\nb: 2\n", "a", "1", "a: 1 # c\nb: 2\n"},
		{"a: {b: , c: 1}\n", "a.b", "2", "a: {b: 2, c: 1}\n"},
		{"l:\n-\n- 2\n", "l[0]", "1", "l:\n- 1\n- 2\n"},
		{"a: null\n", "a", "1", "a: 1\n"},
		// a key that is absent
		{"a: 1\n", "b", "2", "a: 1\nb: 2\n"},
		{"a: 1", "b", "2", "a: 1\nb: 2"},
		{"a: 1\r\nb: 2", "c", "3", "a: 1\r\nb: 2\r\nc: 3"},
		{"box:\n  size: 1\n  # more\n\nlamps: 2\n", "box.trim", "14 ft", "box:\n  size: 1\n  trim: 14 ft\n  # more\n\nlamps: 2\n"},
		{"box:\n  size: 1 # c\n  deep:\n    x: 1\nlamps: 2\n", "box.trim", "14 ft", "box:\n  size: 1 # c\n  deep:\n    x: 1\n  trim: 14 ft\nlamps: 2\n"},
		{"box:\n  size: [1,\n    2]\nlamps: 2\n", "box.trim", "3", "box:\n  size: [1,\n    2]\n  trim: 3\nlamps: 2\n"},
		{"box:\n  note: |\n    a\n\n    b\n\nlamps: 2\n", "box.trim", "3", "box:\n  note: |\n    a\n\n    b\n  trim: 3\n\nlamps: 2\n"},
		{"box:\n  note: a\n    b\nlamps: 2\n", "box.trim", "3", "box:\n  note: a\n    b\n  trim: 3\nlamps: 2\n"},
		{"box:\r\n  size: 1\r\nlamps: 2\r\n", "box.trim", "3", "box:\r\n  size: 1\r\n  trim: 3\r\nlamps: 2\r\n"},
		{"box: {size: 1}\n", "box.trim", "3", "box: {size: 1, trim: 3}\n"},
		{"box: {size: 1, }\n", "box.trim", "3", "box: {size: 1, trim: 3, }\n"},
		{"box: {}\n", "box.trim", "3", "box: {trim: 3}\n"},
		{"lamps:\n  - kit: a\n  - kit: b\n", "lamps[0].level", "50%", "lamps:\n  - kit: a\n    level: 50%\n  - kit: b\n"},
		{"box:\n  size: 1\n", "box.tilt.by", "5 deg", "box:\n  size: 1\n  tilt: {by: 5 deg}\n"},
		{"kit: {}\n", `kit["1.5 in"]`, "{mass: 1 kg}", "kit: {1.5 in: {mass: 1 kg}}\n"},
		// an item after the last
		{"l: [1, 2]\n", "l[2]", "3", "l: [1, 2, 3]\n"},
		{"l: []\n", "l[0]", "3", "l: [3]\n"},
		{"l:\n  - a\n  - b\nm: 1\n", "l[2]", "c", "l:\n  - a\n  - b\n  - c\nm: 1\n"},
		{"l:\n- a: 1\n  b: 2\nm: 1\n", "l[1]", "{a: 3}", "l:\n- a: 1\n  b: 2\n- {a: 3}\nm: 1\n"},
		// a comma that would end the text
		{"a: [1 m, 2 m]\n", "a[0]", "3,66 m", "a: ['3,66 m', 2 m]\n"},
		{"a: 1 m\n", "a", "3,66 m", "a: 3,66 m\n"},
	} {
		d, mistake := open("plan.yaml", []byte(row.before))
		if mistake != nil {
			t.Errorf("%q: %v", row.before, mistake)
			continue
		}
		changed, err := d.Set(row.path, row.text)
		if err != nil {
			t.Errorf("%q %s: %v", row.before, row.path, err)
		} else if string(changed.Bytes()) != row.after {
			t.Errorf("%q %s:\n got %q\nwant %q", row.before, row.path, changed.Bytes(), row.after)
		}
		if string(d.Bytes()) != row.before {
			t.Errorf("%q %s changed the first document", row.before, row.path)
		}
	}
}

func TestSetRefuses(t *testing.T) {
	const text = "a: 1\nb:\n  c: 2\nl: [1]\nnote: |\n  x\nlong: x\n  y\nt: !!str 5\n"
	for _, row := range []struct{ path, text, want string }{
		{"b", "3", "b: the value is written over several lines; change the values in it, or the document by hand"},
		{"note", "3", "note: the value is written over several lines; change the values in it, or the document by hand"},
		{"long", "3", "long: the value is written over several lines; change the values in it, or the document by hand"},
		{"t", "3", "t: the value is written over several lines; change the values in it, or the document by hand"},
		{"", "3", ": this is not the path of a value, such as box.trim or lamps[0].at"},
		{"a..b", "3", "a..b: this is not the path of a value, such as box.trim or lamps[0].at"},
		{"a.b", "3", `a.b: "1" stands there, which has nothing below it`},
		{"l[3]", "3", "l[3]: the list has 1 items"},
		{"b[0]", "3", "b[0]: a mapping stands there, which has nothing below it"},
		{"x[0]", "3", "x[0]: there is no x to put an item in"},
		{"a", "", "a: a value on one line is due, such as 3 ft or [1 ft, 2 ft]"},
		{"a", "3\n", ""},
		{"a", "3\nb: 4", "a: a value on one line is due, such as 3 ft or [1 ft, 2 ft]"},
		{"a", "3 # c", `a: "3 # c" is more or less than one value`},
		{"a", "# c", `a: "# c" is more or less than one value`},
		{"a", "null", `a: "null" is more or less than one value`},
		{"a", "b: c", `a: "b: c" is no value: a colon makes a key here, where none can stand`},
		{"a", "[1", `a: "[1" is no value: the list that begins here is not closed, or a comma is missing`},
		{"a", "&x 3", `a: "&x 3" is no value: names with * or & that stand for other values are not taken`},
		{"a", "!!str 3", `a: "!!str 3" is no value: tags with ! are not taken`},
		{"a", "| x", `a: "| x" is no value: text stands after | or >`},
	} {
		d, mistake := open("plan.yaml", []byte(text))
		if mistake != nil {
			t.Fatal(mistake)
		}
		_, err := d.Set(row.path, row.text)
		if got := fmt.Sprint(err); row.want != "" && got != row.want || row.want == "" && err != nil {
			t.Errorf("%s = %q:\n got %s\nwant %s", row.path, row.text, got, row.want)
		}
	}
}

func TestQuote(t *testing.T) {
	for text, want := range map[string]string{
		"Kitchen": "Kitchen", "12'6\"": "12'6\"", "a, b": `"a, b"`, "a: b": `"a: b"`, "a #b": `"a #b"`, "": `""`, "null": `"null"`, "~": `"~"`,
		"- a": `"- a"`, "it's": "it's", "a\nb": `"a\nb"`, " a": `" a"`, "[a": `"[a"`, "½": "½", "\xff": "\ufffd", "*a": `"*a"`, "a{": `"a{"`,
	} {
		if got := Quote(text); got != want {
			t.Errorf("%q is quoted as %s, want %s", text, got, want)
		}
	}
}

// randomDocument draws a mapping as text, and the paths of the values in it that Set takes.
type randomDocument struct {
	t     *rapid.T
	text  strings.Builder
	paths []string
}

func (r *randomDocument) mapping(indent, path string, depth int) {
	keys := rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"a", "b", "trim", "size", "1.5 in", "é"}), 1, 4, rapid.ID).Draw(r.t, "keys")
	for _, key := range keys {
		r.text.WriteString(indent + Quote(key) + ":")
		r.value(indent, Key(path, key), depth)
		if rapid.IntRange(0, 4).Draw(r.t, "comment") == 0 {
			r.text.WriteString(indent + "  # " + key + ": [\n\n")
		}
	}
}

func (r *randomDocument) value(indent, path string, depth int) {
	kind := rapid.IntRange(0, 5).Draw(r.t, "kind")
	switch {
	case kind == 0 && depth > 0:
		r.text.WriteString(" # block\n")
		r.mapping(indent+"  ", path, depth-1)
	case kind == 1 && depth > 0:
		r.text.WriteString("\n")
		for i := range rapid.IntRange(1, 3).Draw(r.t, "items") {
			r.text.WriteString(indent + "-")
			r.value(indent+"  ", Item(path, i), 0)
		}
	case kind == 2:
		r.text.WriteString(" {x: ")
		r.scalar(Key(path, "x"))
		r.text.WriteString(" , y: [")
		r.scalar(Item(Key(path, "y"), 0))
		r.text.WriteString(",1]} # c\n")
		r.paths = append(r.paths, path)
	default:
		r.text.WriteString(strings.Repeat(" ", max(1, kind)))
		r.scalar(path)
		r.text.WriteString("\n")
	}
}

func (r *randomDocument) scalar(path string) {
	r.text.WriteString(rapid.SampledFrom([]string{"1", "12'6\"", "\"q # \\\" ]\"", "'it''s, }'", "3 ft", "½ in", "x#y"}).Draw(r.t, "scalar"))
	r.paths = append(r.paths, path)
}

// Whatever is set: it reads back, every other line stays byte for byte, every other value stays.
func TestSetTouchesNothingElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := &randomDocument{t: t}
		r.mapping("", "", 2)
		text := r.text.String()
		ending := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "ending")
		text = strings.ReplaceAll(text, "\n", ending)
		d, mistake := open("plan.yaml", []byte(text))
		if mistake != nil {
			t.Fatalf("%s\n%v", text, mistake)
		}
		path := rapid.SampledFrom(r.paths).Draw(t, "path")
		value := rapid.SampledFrom([]string{"14 ft", "[1, {z: 2}]", "a, b: c # d", "{}", "é", "\t\"\x01"}).Draw(t, "value")
		typed := value
		if !strings.HasPrefix(value, "[") && value != "{}" {
			typed = Quote(value)
		}
		changed, err := d.Set(path, typed)
		if err != nil {
			t.Fatalf("%s\n%s = %s: %v", text, path, typed, err)
		}
		if got, ok := changed.Typed(path); typed[0] != '[' && typed[0] != '{' && (!ok || got != value) {
			t.Fatalf("%s\n%s = %q, want %q", changed.Bytes(), path, got, value)
		}
		place, _ := d.Place(path)
		before, after := strings.Split(text, "\n"), strings.Split(string(changed.Bytes()), "\n")
		for i := range before {
			if i+1 != place.Line && before[i] != after[i] || len(before) != len(after) {
				t.Fatalf("line %d: %q became %q", i+1, before[i], after[i])
			}
		}
		for _, other := range r.paths {
			was, _ := d.Typed(other)
			if is, _ := changed.Typed(other); is != was && !strings.HasPrefix(other, path) {
				t.Fatalf("%s: %q became %q", other, was, is)
			}
		}
	})
}
