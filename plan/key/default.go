package key

import (
	"fmt"
	"reflect"

	"softloft/document"
)

// Default is a value that the user did not type.
type Default struct {
	Key    string // such as box.turn; lamps[].level where it was taken for every lamp
	Value  string // as one would type it
	Source string
}

// Fill sets what the document does not have to its default and lists it. A default counts where its parent
// is in the document or is a struct without a pointer. An error means that a tag is wrong, not the document.
func Fill(doc *document.Document, into any) ([]Default, error) {
	f := filler{doc: doc, parsed: map[parsing]reflect.Value{}, met: map[string]int{}, missed: map[string]int{}}
	Walk(doc, into, f.visit)
	return f.list(), f.err
}

type filler struct {
	doc         *document.Document
	parsed      map[parsing]reflect.Value
	met, missed map[string]int // how often a pattern was met, and was absent
	taken       []taken
	err         error
}

type parsing struct {
	of   reflect.Type
	text string
}

type taken struct {
	Default
	pattern string
}

func (f *filler) visit(v Value) {
	if v.Field.Default == "" || f.elsewhere(v) {
		return
	}
	f.met[v.Pattern]++
	if v.Present {
		return
	}
	value, err := f.parse(v.Field)
	if err != nil {
		f.err = err
		return
	}
	v.Value.Set(value)
	f.missed[v.Pattern]++
	f.taken = append(f.taken, taken{Default{v.Path, v.Field.Default, v.Field.Source}, v.Pattern})
}

// elsewhere tells whether a default waits for another key that isn't there.
func (f *filler) elsewhere(v Value) bool {
	return v.Field.When != "" && (f.doc == nil || !f.doc.Has(document.Key(v.Outer, v.Field.When)))
}

// list returns what was taken; what all items of a list miss stands there once.
func (f *filler) list() []Default {
	var all []Default
	told := map[string]bool{}
	for _, t := range f.taken {
		if t.Key != t.pattern && f.met[t.pattern] == f.missed[t.pattern] {
			if told[t.pattern] {
				continue
			}
			told[t.pattern] = true
			t.Key = t.pattern
		}
		all = append(all, t.Default)
	}
	return all
}

// parse reads a default's text by the rules of the document.
func (f *filler) parse(field Field) (reflect.Value, error) {
	key := parsing{field.Type, field.Default}
	if v, ok := f.parsed[key]; ok {
		return v, nil
	}
	holder := reflect.New(reflect.StructOf([]reflect.StructField{{Name: "Value", Type: field.Type, Tag: `key:"value"`}}))
	if _, mistakes := document.Read("default of "+field.Name, []byte("value: "+field.Default+"\n"), holder.Interface()); len(mistakes) > 0 {
		return reflect.Value{}, fmt.Errorf("default of key %s: %w", field.Name, mistakes)
	}
	v := holder.Elem().Field(0)
	f.parsed[key] = v
	return v, nil
}
