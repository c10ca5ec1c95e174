package document

import (
	"reflect"
	"strings"

	"go.yaml.in/yaml/v4"
)

// field is a field of a struct that a key fills.
type field struct {
	name     string
	index    []int // as reflect.Value.FieldByIndex takes it
	required bool
	of       reflect.Type
}

// shape returns the fields of a struct type in their order; those of embedded structs count as its own.
func (r *reader) shape(t reflect.Type) []field {
	if known, ok := r.shapes[t]; ok {
		return known
	}
	var all []field
	for _, f := range reflect.VisibleFields(t) {
		tag, ok := f.Tag.Lookup("key")
		if !ok || !f.IsExported() || throughPointer(t, f.Index) {
			continue
		}
		name, option, _ := strings.Cut(tag, ",")
		all = append(all, field{name, f.Index, option == "required", f.Type})
	}
	r.shapes[t] = all
	return all
}

// throughPointer tells whether a field lies in a struct that is embedded by a pointer, which is not
// supported: nobody would know whether to make it. A struct under a key of its own counts as well.
func throughPointer(t reflect.Type, index []int) bool {
	for depth := 1; depth < len(index); depth++ {
		outer := t.FieldByIndex(index[:depth])
		if outer.Type.Kind() == reflect.Pointer || outer.Tag.Get("key") != "" {
			return true
		}
	}
	return false
}

// readStruct reads a mapping into a struct's fields.
func (r *reader) readStruct(at spot, v reflect.Value) bool {
	if at.value.Kind != yaml.MappingNode {
		return r.wrong(at, kindName(at.value)+" stands here, keys with values are due", example(v.Type(), "such as "))
	}
	fields := r.shape(v.Type())
	byName := make(map[string]field, len(fields))
	names := make([]string, len(fields))
	for i, f := range fields {
		byName[f.name], names[i] = f, f.name
	}
	ok, found := true, map[string]bool{}
	for _, entry := range r.entries(at) {
		f, known := byName[entry.key.Value]
		if !known {
			r.unknownKey(at, entry, names)
			ok = false
			continue
		}
		found[f.name] = true
		ok = r.read(entry, v.FieldByIndex(f.index)) && ok
	}
	return r.requireFields(at, fields, found) && ok
}

// requireFields tells the required fields that were not found.
func (r *reader) requireFields(at spot, fields []field, found map[string]bool) bool {
	ok := true
	for _, f := range fields {
		if !f.required || found[f.name] {
			continue
		}
		problem := "missing"
		if name := label(at.path); name != "" {
			problem += " in " + name
		}
		r.tell(at.anchor(), Key(at.path, f.name), problem, example(f.of, "write "+f.name+": "))
		ok = false
	}
	return ok
}
