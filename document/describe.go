package document

import (
	"encoding"
	"reflect"
	"strings"

	"softloft/quantity"
)

// due says what a type takes, with an article.
func due(t reflect.Type) string {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch zero := reflect.New(t).Interface().(type) {
	case interface{ Dimension() quantity.Dimension }:
		return zero.Dimension().WithArticle()
	case Reader, encoding.TextUnmarshaler:
		return "a value"
	case worded:
		return "a word"
	}
	switch t.Kind() {
	case reflect.String:
		return "a text"
	case reflect.Bool:
		return "true or false"
	case reflect.Float32, reflect.Float64:
		return "a bare number"
	case reflect.Slice, reflect.Array:
		return "a list"
	case reflect.Struct, reflect.Map:
		return "a mapping"
	}
	return "a whole number"
}

// example returns a value that a type takes, as one would type it, after an introduction; empty
// where there is none short enough.
func example(t reflect.Type, introduction string) string {
	text := sample(t, 0)
	if text == "..." && introduction == "such as " {
		return "" // no example of a text helps
	}
	if text != "" {
		return introduction + text
	}
	return ""
}

// sample returns a value of type t, depth lists or mappings down.
func sample(t reflect.Type, depth int) string {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch zero := reflect.New(t).Interface().(type) {
	case interface{ Dimension() quantity.Dimension }:
		return zero.Dimension().Examples()[0]
	case Reader, encoding.TextUnmarshaler:
		return ""
	case worded:
		return zero.Words()[0]
	}
	switch t.Kind() {
	case reflect.String:
		return "..."
	case reflect.Bool:
		return "true"
	case reflect.Float32, reflect.Float64:
		return "0.5"
	case reflect.Array, reflect.Slice:
		return sampleList(t, depth)
	case reflect.Map:
		return sampleEntry("name", t.Elem(), depth)
	case reflect.Struct:
		return sampleStruct(t, depth)
	}
	return "1"
}

// sampleList returns a list with as many items as an array has, or one.
func sampleList(t reflect.Type, depth int) string {
	count := 1
	if t.Kind() == reflect.Array {
		count = t.Len()
	}
	item := sample(t.Elem(), depth+1)
	if item == "" || depth > 1 || count > 4 || count == 0 {
		return ""
	}
	return "[" + strings.Repeat(item+", ", count-1) + item + "]"
}

// sampleStruct returns a mapping with the struct's first key.
func sampleStruct(t reflect.Type, depth int) string {
	for _, f := range reflect.VisibleFields(t) {
		if name, _, _ := strings.Cut(f.Tag.Get("key"), ","); name != "" && len(f.Index) == 1 {
			return sampleEntry(name, f.Type, depth)
		}
	}
	return ""
}

func sampleEntry(name string, t reflect.Type, depth int) string {
	value := sample(t, depth+1)
	if value == "" || depth > 1 {
		return ""
	}
	return "{" + name + ": " + value + "}"
}
