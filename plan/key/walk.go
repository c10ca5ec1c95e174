package key

import (
	"cmp"
	"reflect"
	"slices"

	"softloft/document"
)

// Value is one value that Walk meets.
type Value struct {
	Path    string // such as lamps[2].level
	Pattern string // Path with empty brackets for list items: lamps[].level
	Outer   string // Path of the mapping or list that it stands in
	Field   Field  // zero for list items and entries of a map
	Present bool   // whether the document has it
	Value   reflect.Value
}

// Walk calls visit for every value of the struct that into points to, outer values before inner ones,
// in the order of the types' fields and, in maps, of the keys. It looks into what the document has, and into
// structs that stand without a pointer; into an absent pointer, list or map it does not. visit may set Value.
// A nil document has nothing.
func Walk(doc *document.Document, into any, visit func(Value)) {
	w := walker{doc: doc, visit: visit, fields: map[reflect.Type][]Field{}}
	w.structure(reflect.ValueOf(into).Elem(), place{present: doc != nil})
}

type walker struct {
	doc    *document.Document
	visit  func(Value)
	fields map[reflect.Type][]Field // of the types that were met
}

func (w walker) fieldsOf(t reflect.Type) []Field {
	fields, ok := w.fields[t]
	if !ok {
		fields = Fields(t)
		w.fields[t] = fields
	}
	return fields
}

// place is where a value stands.
type place struct {
	path, pattern string
	present       bool
}

func (w walker) structure(v reflect.Value, at place) {
	for _, f := range w.fieldsOf(v.Type()) {
		inner := place{path: document.Key(at.path, f.Name), pattern: document.Key(at.pattern, f.Name)}
		inner.present = at.present && w.doc.Has(inner.path)
		value := v.FieldByIndex(f.Index)
		w.visit(Value{inner.path, inner.pattern, at.path, f, inner.present, value})
		w.into(value, inner)
	}
	w.inline(v, at)
}

// inline looks into inline pointers, whose keys stand at the same place.
func (w walker) inline(v reflect.Value, at place) {
	for i := range v.NumField() {
		f := v.Type().Field(i)
		if f.Tag.Get("key") == ",inline" && f.Type.Kind() == reflect.Pointer && !v.Field(i).IsNil() {
			w.structure(v.Field(i).Elem(), at)
		}
	}
}

var reader = reflect.TypeFor[document.Reader]()

func (w walker) into(v reflect.Value, at place) {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return
		}
		v = v.Elem()
	}
	if reflect.PointerTo(v.Type()).Implements(reader) && !w.keyed(at) {
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		w.structure(v, at)
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			inner := place{path: document.Item(at.path, i), pattern: at.pattern + "[]"}
			inner.present = at.present && w.doc.Has(inner.path)
			w.visit(Value{inner.path, inner.pattern, at.path, Field{}, inner.present, v.Index(i)})
			w.into(v.Index(i), inner)
		}
	case reflect.Map:
		w.entries(v, at)
	}
}

// keyed tells whether a value of several forms stands as a mapping or list, not as a word.
func (w walker) keyed(at place) bool {
	if !at.present {
		return false
	}
	_, word := w.doc.Typed(at.path)
	return !word
}

// entries walks the values of a map, which are not addressable: each is copied out and back.
func (w walker) entries(v reflect.Value, at place) {
	if v.Type().Elem().Kind() != reflect.Struct {
		return
	}
	ids := v.MapKeys()
	slices.SortFunc(ids, func(a, b reflect.Value) int { return cmp.Compare(a.String(), b.String()) })
	for _, id := range ids {
		entry := reflect.New(v.Type().Elem()).Elem()
		entry.Set(v.MapIndex(id))
		inner := place{document.Key(at.path, id.String()), document.Key(at.pattern, id.String()), at.present}
		w.visit(Value{inner.path, inner.pattern, at.path, Field{}, inner.present, entry})
		w.into(entry, inner)
		v.SetMapIndex(id, entry)
	}
}
