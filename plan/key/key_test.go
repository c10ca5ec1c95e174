package key

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"softloft/document"
)

type word string

func (word) Words() []string { return []string{"red", "blue"} }

type shared struct {
	Name string `key:"name" default:"none" source:"custom"`
}

type leg struct {
	Long float64 `key:"long,required" doc:"how long"`
	Feet int     `key:"feet" default:"4" source:"custom"`
}

type pair struct {
	Left  *leg `key:",inline"`
	Right string
}

// ReadFrom takes a word or a leg's keys.
func (p *pair) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		p.Right = c.Text()
		return
	}
	var l leg
	if c.Into(&l) {
		p.Left = &l
	}
}

type table struct {
	shared
	Color  word           `key:"color" default:"red" source:"custom"`
	Size   [2]float64     `key:"size" default:"[1, 2]" source:"custom"`
	Legs   []leg          `key:"legs"`
	Drawer *leg           `key:"drawer" unused:"later"`
	Depth  float64        `key:"depth" default:"3" source:"custom" when:"drawer"`
	Parts  map[string]leg `key:"parts"`
	Pair   pair           `key:"pair"`
}

func read(t *testing.T, text string) (*document.Document, *table) {
	t.Helper()
	into := &table{}
	doc, mistakes := document.Read("t", []byte(text), into)
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	return doc, into
}

func TestFields(t *testing.T) {
	var got []string
	for _, f := range Fields(reflect.TypeFor[table]()) {
		got = append(got, f.Name)
	}
	if diff := cmp.Diff([]string{"name", "color", "size", "legs", "drawer", "depth", "parts", "pair"}, got); diff != "" {
		t.Error(diff)
	}
	legs := Fields(reflect.TypeFor[leg]())
	if len(legs) != 2 || !legs[0].Required || legs[0].Doc != "how long" || legs[1].Default != "4" {
		t.Errorf("%+v", legs)
	}
	if Fields(reflect.TypeFor[int]()) != nil {
		t.Error("a number has keys")
	}
}

// TestFill: what the document lacks is filled in and told, once for a whole list.
func TestFill(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"color: blue", []string{"name=none", "size=[1, 2]"}},
		{"{color: blue, name: x, size: [3, 4]}", nil},
		{"{color: blue, name: x, size: [3, 4], drawer: {long: 1}}", []string{"drawer.feet=4", "depth=3"}},
		{"{color: blue, name: x, size: [3, 4], legs: [{long: 1}, {long: 2}]}", []string{"legs[].feet=4"}},
		{"{color: blue, name: x, size: [3, 4], legs: [{long: 1}, {long: 2, feet: 1}]}", []string{"legs[0].feet=4"}},
		{"{color: blue, name: x, size: [3, 4], legs: []}", nil},
		{"{color: blue, name: x, size: [3, 4], parts: {b: {long: 1}, a.b: {long: 1}}}", []string{`parts["a.b"].feet=4`, "parts.b.feet=4"}},
		{"{color: blue, name: x, size: [3, 4], pair: word}", nil},
		{"{color: blue, name: x, size: [3, 4], pair: {long: 1}}", []string{"pair.feet=4"}},
	} {
		doc, into := read(t, c.text)
		told, err := Fill(doc, into)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, d := range told {
			got = append(got, d.Key+"="+d.Value)
			if d.Source != "custom" {
				t.Errorf("%s: %s comes from %q", c.text, d.Key, d.Source)
			}
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", c.text, diff)
		}
	}
}

func TestFillValues(t *testing.T) {
	doc, into := read(t, "{legs: [{long: 1}], parts: {a: {long: 2}}, drawer: {long: 1, feet: 0}, pair: {long: 5}}")
	if _, err := Fill(doc, into); err != nil {
		t.Fatal(err)
	}
	want := &table{shared: shared{"none"}, Color: "red", Size: [2]float64{1, 2}, Legs: []leg{{1, 4}}, Drawer: &leg{1, 0}, Depth: 3,
		Parts: map[string]leg{"a": {2, 4}}, Pair: pair{Left: &leg{5, 4}}}
	if diff := cmp.Diff(want, into, cmp.AllowUnexported(table{}, shared{}, pair{})); diff != "" {
		t.Error(diff)
	}
}

// TestFillNothing: a nil document has no key.
func TestFillNothing(t *testing.T) {
	into := &table{}
	told, err := Fill(nil, into)
	if err != nil || len(told) != 3 || into.Color != "red" || into.Depth != 0 {
		t.Errorf("%v, %v, %+v", told, err, into)
	}
}

func TestFillBadTag(t *testing.T) {
	var into struct {
		Color word `key:"color" default:"green" source:"custom"`
	}
	_, err := Fill(nil, &into)
	var mistakes document.Mistakes
	if err == nil || !errors.As(err, &mistakes) || !strings.Contains(err.Error(), "color") {
		t.Errorf("told %v", err)
	}
}

func TestListUnused(t *testing.T) {
	doc, into := read(t, "color: red\ndrawer: {long: 1}\n")
	got := ListUnused(doc, into)
	want := []Unused{{Key: "drawer", Place: document.Place{File: "t", Line: 2, Column: 9}, Why: "later"}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	doc, into = read(t, "color: red")
	if got := ListUnused(doc, into); got != nil {
		t.Errorf("%+v", got)
	}
}

// TestReadWhatCan: of a value with a mistake in it, the rest is kept.
func TestReadWhatCan(t *testing.T) {
	const text = "{color: green, size: [1, x], legs: [{long: x, feet: 2}, {long: 3}], drawer: {long: 1, feet: x}, parts: {a: {long: x, feet: 7}}, pair: {long: 1}, extra: 1}"
	var into table
	ReadWhatCan("t", []byte(text), &into)
	want := table{Size: [2]float64{1, 0}, Legs: []leg{{0, 2}, {3, 0}}, Drawer: &leg{1, 0}, Parts: map[string]leg{"a": {0, 7}}, Pair: pair{Left: &leg{1, 0}}}
	if diff := cmp.Diff(want, into, cmp.AllowUnexported(table{}, shared{}, pair{})); diff != "" {
		t.Error(diff)
	}
	for _, text := range []string{"", "[]", "{legs: 1, drawer: 2, parts: [], size: {}, pair: []}", "{legs: [~], drawer: ~, parts: {a: ~}}", "\x00"} {
		ReadWhatCan("t", []byte(text), &table{}) // doesn't panic
	}
}
