package key

import (
	"reflect"
	"strings"
)

// Field is one key of a mapping in the file, as its Go field describes it.
type Field struct {
	Name     string // key in the file
	Required bool
	Default  string // text of the default; empty where the key has none
	Source   string // where the default comes from
	When     string // key beside which the default counts; empty: always
	Unused   string // what is to use the key one day; empty where something does
	Doc      string
	Type     reflect.Type
	Index    []int // of the Go field, for reflect's FieldByIndex
}

// Fields lists the keys of a struct type in the order of its fields; fields of embedded and inline
// structs stand in their place. A type that is no struct has none.
func Fields(t reflect.Type) []Field {
	if t.Kind() != reflect.Struct {
		return nil
	}
	var fields []Field
	for i := range t.NumField() {
		f := t.Field(i)
		name, option, _ := strings.Cut(f.Tag.Get("key"), ",")
		switch {
		case f.Anonymous && name == "", option == "inline":
			fields = append(fields, inner(f)...)
		case f.IsExported() && name != "":
			fields = append(fields, field(f, name, option))
		}
	}
	return fields
}

// inner lists the keys of an embedded or inline struct, seen from the outer one. What stands
// behind a pointer has no keys until it is there: Walk looks into it.
func inner(f reflect.StructField) []Field {
	fields := Fields(f.Type)
	for i := range fields {
		fields[i].Index = append([]int{f.Index[0]}, fields[i].Index...)
	}
	return fields
}

func field(f reflect.StructField, name, option string) Field {
	return Field{
		Name: name, Required: option == "required", Default: f.Tag.Get("default"), Source: f.Tag.Get("source"),
		When: f.Tag.Get("when"), Unused: f.Tag.Get("unused"), Doc: f.Tag.Get("doc"), Type: f.Type, Index: f.Index,
	}
}
