package document

import (
	"encoding"
	"fmt"
	"reflect"
	"strings"

	"go.yaml.in/yaml/v4"
)

// mostMistakes is how many mistakes are told of one document.
const mostMistakes = 1000

// reader reads the values of one document.
type reader struct {
	d        *Document
	top      reflect.Type
	mistakes Mistakes
	refused  map[*yaml.Node]bool // told by inspect; not read
	shapes   map[reflect.Type][]field
	homes    map[string][]string // where each key of the top struct is at home; made when first needed
	depth    int                 // of readings inside each other
}

func newReader(d *Document, into any) *reader {
	return &reader{d: d, top: reflect.TypeOf(into), refused: map[*yaml.Node]bool{}, shapes: map[reflect.Type][]field{}}
}

// target returns what into points to. Anything but a pointer to a struct is told as a mistake.
func (r *reader) target(into any) reflect.Value {
	v := reflect.ValueOf(into)
	if v.Kind() != reflect.Pointer || v.IsNil() {
		r.tell(r.d.root, "", fmt.Sprintf("a document cannot be read into %T", into), "this is a fault of the program")
		return reflect.Value{}
	}
	return v.Elem()
}

// tell adds a mistake at a node.
func (r *reader) tell(node *yaml.Node, path, problem, hint string) {
	if len(r.mistakes) == mostMistakes {
		problem, hint, path = fmt.Sprintf("more mistakes follow; these are %d of them", mostMistakes), "mend these first", ""
	}
	if len(r.mistakes) <= mostMistakes {
		r.mistakes = append(r.mistakes, *r.d.at(node.Line, node.Column, path, problem, hint))
	}
}

// wrong tells a mistake at a spot's value and returns false.
func (r *reader) wrong(at spot, problem, hint string) bool {
	r.tell(at.value, at.path, problem, hint)
	return false
}

// read reads the value at a spot into v, which can be set, and tells whether it had no mistake.
func (r *reader) read(at spot, v reflect.Value) bool {
	switch {
	case r.refused[at.value] || r.refused[at.key]:
		return false
	case isNull(at.value):
		return r.wrong(at, "no value stands here", "write "+due(v.Type())+" or leave it out")
	case v.Kind() == reflect.Pointer:
		return r.readPointer(at, v)
	}
	if into, ok := v.Addr().Interface().(Reader); ok {
		return r.readForm(at, into)
	}
	return r.readForms(at, v)
}

// readForms reads by v's own rule for text, its words, its kind or the tags of its fields. A type
// that reads itself from a cursor as well has its rule for text asked for scalars alone.
func (r *reader) readForms(at spot, v reflect.Value) bool {
	into := v.Addr().Interface()
	_, formed := into.(Reader)
	scalar := at.value.Kind == yaml.ScalarNode
	switch into := into.(type) {
	case encoding.TextUnmarshaler:
		if scalar || !formed {
			return r.readText(at, into, v.Type())
		}
	case worded:
		if scalar || !formed {
			return r.readWord(at, v, into.Words())
		}
	}
	return r.readPlain(at, v)
}

// isNull tells whether a node is the null of the core schema or nothing at all.
func isNull(node *yaml.Node) bool {
	if node.Kind != yaml.ScalarNode || node.Style != 0 {
		return false
	}
	switch node.Value {
	case "", "~", "null", "Null", "NULL":
		return true
	}
	return false
}

// readPlain reads by v's kind.
func (r *reader) readPlain(at spot, v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Struct:
		return r.readStruct(at, v)
	case reflect.Slice:
		return r.readSlice(at, v)
	case reflect.Array:
		return r.readArray(at, v)
	case reflect.Map:
		return r.readMap(at, v)
	}
	if at.value.Kind != yaml.ScalarNode {
		return r.wrong(at, kindName(at.value)+" stands here, "+due(v.Type())+" is due", example(v.Type(), "such as "))
	}
	return r.readScalar(at, v)
}

// readPointer reads into a new value and keeps it where it had no mistake.
func (r *reader) readPointer(at spot, v reflect.Value) bool {
	fresh := reflect.New(v.Type().Elem())
	if !v.IsNil() {
		fresh.Elem().Set(v.Elem())
	}
	if !r.read(at, fresh.Elem()) {
		return false
	}
	v.Set(fresh)
	return true
}

// readSlice reads every item of a list into a new slice.
func (r *reader) readSlice(at spot, v reflect.Value) bool {
	if at.value.Kind != yaml.SequenceNode {
		return r.notList(at, v.Type())
	}
	items := reflect.MakeSlice(v.Type(), len(at.value.Content), len(at.value.Content))
	if !r.readItems(at, items) {
		return false
	}
	v.Set(items)
	return true
}

// readArray reads a list of a fixed length.
func (r *reader) readArray(at spot, v reflect.Value) bool {
	if at.value.Kind != yaml.SequenceNode {
		return r.notList(at, v.Type())
	}
	count := len(at.value.Content)
	ok := r.readItems(at, v.Slice(0, min(count, v.Len())))
	if count == v.Len() {
		return ok
	}
	return r.wrong(at, fmt.Sprintf("%s here, %d are due", counted(count, "value stands", "values stand"), v.Len()), example(v.Type(), "such as "))
}

// readItems reads the first items of a list into those of v.
func (r *reader) readItems(at spot, v reflect.Value) bool {
	ok := true
	for i := range v.Len() {
		item := spot{nil, at.value.Content[i], Item(at.path, i)}
		ok = r.read(item, v.Index(i)) && ok
	}
	return ok
}

func (r *reader) notList(at spot, t reflect.Type) bool {
	return r.wrong(at, kindName(at.value)+" stands here, a list is due", example(t, "such as "))
}

// readMap reads a mapping whose keys the user chooses. Entries that v has already stay.
func (r *reader) readMap(at spot, v reflect.Value) bool {
	if v.Type().Key().Kind() != reflect.String {
		return r.wrong(at, "a value of type "+v.Type().String()+" cannot be read", "this is a fault of the program")
	}
	if at.value.Kind != yaml.MappingNode {
		return r.wrong(at, kindName(at.value)+" stands here, names with values are due", example(v.Type(), "such as "))
	}
	if v.IsNil() {
		v.Set(reflect.MakeMap(v.Type()))
	}
	ok := true
	for _, entry := range r.entries(at) {
		value := reflect.New(v.Type().Elem()).Elem()
		if !r.read(entry, value) {
			ok = false
			continue
		}
		v.SetMapIndex(reflect.ValueOf(entry.key.Value).Convert(v.Type().Key()), value)
	}
	return ok
}

// entries returns the entries of a mapping whose keys were not refused.
func (r *reader) entries(at spot) []spot {
	var all []spot
	for i := 0; i+1 < len(at.value.Content); i += 2 {
		key := at.value.Content[i]
		if !r.refused[key] {
			all = append(all, spot{key, at.value.Content[i+1], Key(at.path, key.Value)})
		}
	}
	return all
}

// readForm lets a type with more than one form read itself.
func (r *reader) readForm(at spot, into Reader) bool {
	if r.depth > 4*MaxDepth {
		return r.wrong(at, fmt.Sprintf("a value of type %T reads itself without end", into), "this is a fault of the program")
	}
	r.depth++
	defer func() { r.depth-- }()
	cursor := &Cursor{r: r, at: at, within: reflect.TypeOf(into), right: true}
	into.ReadFrom(cursor)
	return cursor.finish()
}

// counted returns a count and its noun.
func counted(count int, one, many string) string {
	if count == 1 {
		return "1 " + one
	}
	return fmt.Sprint(count) + " " + many
}

// quoted returns a text in quotation marks, clipped.
func quoted(text string) string { return `"` + strings.TrimSpace(clip(text)) + `"` }
