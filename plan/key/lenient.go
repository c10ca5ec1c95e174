package key

import (
	"encoding"
	"reflect"

	"softloft/document"
)

// ReadWhatCan reads a document into the struct that into points to and keeps, of a value with a
// mistake in it, all that has none: document.Read drops such a value as a whole. It tells no mistakes
// and serves to look for more of them in a document in which document.Read has found some.
func ReadWhatCan(file string, data []byte, into any) {
	document.Read(file, data, &lenient{reflect.ValueOf(into).Elem()})
}

type lenient struct{ into reflect.Value }

// ReadFrom reads key by key and item by item.
func (l *lenient) ReadFrom(c *document.Cursor) { readWhatCan(c, l.into) }

func readWhatCan(c *document.Cursor, v reflect.Value) {
	switch {
	case v.Kind() == reflect.Pointer:
		inner := reflect.New(v.Type().Elem())
		if readWhatCan(c, inner.Elem()); c.IsMap() || c.IsList() || !inner.Elem().IsZero() {
			v.Set(inner)
		}
	case whole(v):
		c.Into(v.Addr().Interface())
	case v.Kind() == reflect.Struct && c.IsMap():
		for _, f := range Fields(v.Type()) {
			if at, ok := c.Key(f.Name); ok {
				readWhatCan(at, v.FieldByIndex(f.Index))
			}
		}
	case (v.Kind() == reflect.Slice || v.Kind() == reflect.Array) && c.IsList():
		readItems(c.Items(), v)
	case v.Kind() == reflect.Map && c.IsMap():
		readEntries(c, v)
	}
}

// whole tells whether a value is read by its own rules or is a single one.
func whole(v reflect.Value) bool {
	switch v.Addr().Interface().(type) {
	case document.Reader, encoding.TextUnmarshaler, interface{ Words() []string }:
		return true
	}
	switch v.Kind() {
	case reflect.Struct, reflect.Slice, reflect.Array, reflect.Map:
		return false
	}
	return true
}

func readItems(items []*document.Cursor, v reflect.Value) {
	if v.Kind() == reflect.Slice {
		v.Set(reflect.MakeSlice(v.Type(), len(items), len(items)))
	}
	for i := range min(len(items), v.Len()) {
		readWhatCan(items[i], v.Index(i))
	}
}

func readEntries(c *document.Cursor, v reflect.Value) {
	v.Set(reflect.MakeMap(v.Type()))
	for _, id := range c.Keys() {
		at, _ := c.Key(id)
		entry := reflect.New(v.Type().Elem()).Elem()
		readWhatCan(at, entry)
		v.SetMapIndex(reflect.ValueOf(id).Convert(v.Type().Key()), entry)
	}
}
