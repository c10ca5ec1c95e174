package kit

import (
	"reflect"
	"slices"
)

// property is one value of an entry that somebody gave.
type property struct {
	Key   string
	Doc   string // what the key means
	Value any    // never nil, never a pointer
}

// properties lists the values that an entry has, in the order of its keys, without
// name, source and note. A value that is absent isn't listed; nor is one that is 0
// or false where the form can't tell it from an absent one.
func properties(entry any) []property {
	var list []property
	value := reflect.ValueOf(entry)
	for field := range value.Type().Fields() {
		key := keyOf(field)
		if key == "" {
			continue
		}
		v := value.FieldByIndex(field.Index)
		if v.IsZero() {
			continue
		}
		if v.Kind() == reflect.Pointer {
			v = v.Elem()
		}
		list = append(list, property{Key: key, Doc: field.Tag.Get("doc"), Value: v.Interface()})
	}
	return list
}

func has(list []property, key string) bool {
	return slices.ContainsFunc(list, func(p property) bool { return p.Key == key })
}
