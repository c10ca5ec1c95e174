package vary

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"softloft/document"
	"softloft/plan"
	"softloft/plan/key"
	"softloft/quantity"
)

// shortNames are keys that may be typed without what stands before them, besides every
// key of box. One that stands for several items changes all of them.
var shortNames = [...][2]string{
	{"tilt", "box.tilt.by"}, {"level", "lamps[].level"}, {"above", "lamps[].above"}, {"lamp", "lamps[].kit"},
	{"rope", "hang.rope"}, {"pulley", "hang.pulley"}, {"rise", "stands[].rise"}, {"lens", "cameras[].lens"}, {"push", "rules.push"},
	{"reserve", "provision.reserve"}, {"stop", "want.exposure.stop"}, {"iso", "want.exposure.iso"}, {"shutter", "want.exposure.shutter"},
}

// find returns the whole path of a typed key and what its values are.
func find(name string) (string, kind, error) {
	path := name
	for _, short := range shortNames {
		if name == short[0] {
			path = short[1]
		}
	}
	if len(fieldsOf(reflect.TypeFor[plan.Box](), path)) > 0 {
		path = document.Key("box", path)
	}
	steps, ok := split(path)
	if !ok {
		return "", kind{}, fmt.Errorf("%s is not the key of a value, such as trim, box.depth or lamps[0].above", quoted(name))
	}
	at := reflect.TypeFor[plan.Plan]()
	for _, s := range steps {
		if at, ok = below(at, s); !ok {
			return "", kind{}, unknown(name)
		}
	}
	k, why := kindOf(at, steps[len(steps)-1].key)
	if why != "" {
		return "", kind{}, fmt.Errorf("%s is %s; name a value in it, such as trim, box.depth or lamps[0].above", name, why)
	}
	return path, k, nil
}

// fieldsOf returns the field of a struct that has a name, in a list; empty for none.
func fieldsOf(t reflect.Type, name string) []key.Field {
	var found []key.Field
	for _, f := range key.Fields(t) {
		if f.Name == name {
			found = append(found, f)
		}
	}
	for i := range numField(t) {
		f := t.Field(i)
		if f.Tag.Get("key") == ",inline" && f.Type.Kind() == reflect.Pointer {
			found = append(found, fieldsOf(f.Type.Elem(), name)...)
		}
	}
	return found
}

func numField(t reflect.Type) int {
	if t.Kind() != reflect.Struct {
		return 0
	}
	return t.NumField()
}

// below is the type of what stands one step below a type.
func below(t reflect.Type, s part) (reflect.Type, bool) {
	t = direct(t)
	if s.key == "" {
		list := t.Kind() == reflect.Slice || t.Kind() == reflect.Array && t != reflect.TypeFor[plan.Sides]() && t != reflect.TypeFor[plan.Skirts]()
		if !list || t.Kind() == reflect.Array && s.item >= t.Len() {
			return nil, false
		}
		return t.Elem(), true
	}
	switch {
	case t.Kind() == reflect.Map:
		return t.Elem(), true
	case t == reflect.TypeFor[plan.Sides]() && s.key == "reflectance":
		return reflect.TypeFor[float64](), true
	case t.Kind() == reflect.Array && t.Len() == len(plan.SideNames) && slices.Contains(plan.SideNames[:], s.key):
		return t.Elem(), true
	}
	fields := fieldsOf(t, s.key)
	if len(fields) == 0 {
		return nil, false
	}
	return fields[0].Type, true
}

func direct(t reflect.Type) reflect.Type {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	return t
}

// part is one step of a path: a key, or where that is empty an item of a list, -1 for
// every item.
type part struct {
	key  string
	item int
}

// split parts a path into its steps; ok is false where it is none.
func split(path string) (all []part, ok bool) {
	for rest := path; rest != ""; {
		if inner, bracket := strings.CutPrefix(rest, "["); bracket {
			step, after, ok := bracketed(inner)
			if !ok || len(all) == 0 {
				return nil, false
			}
			all, rest = append(all, step), after
			continue
		}
		if len(all) > 0 {
			var dotted bool
			if rest, dotted = strings.CutPrefix(rest, "."); !dotted {
				return nil, false
			}
		}
		end := strings.IndexAny(rest, ".[")
		if end < 0 {
			end = len(rest)
		}
		if end == 0 {
			return nil, false
		}
		all, rest = append(all, part{rest[:end], -1}), rest[end:]
	}
	return all, len(all) > 0 && len(all) < 20
}

// bracketed reads what follows an opening bracket: nothing, an index or a quoted key.
func bracketed(inner string) (step part, rest string, ok bool) {
	if text, err := strconv.QuotedPrefix(inner); err == nil {
		name, err := strconv.Unquote(text)
		rest, ok = strings.CutPrefix(inner[len(text):], "]")
		return part{name, -1}, rest, ok && err == nil && name != ""
	}
	number, rest, ok := strings.Cut(inner, "]")
	if number == "" {
		return part{"", -1}, rest, ok
	}
	item, err := strconv.Atoi(number)
	return part{"", item}, rest, ok && err == nil && item >= 0
}

// unknown tells a key that the plan's form does not have, with what was perhaps meant.
func unknown(name string) error {
	if near := nearest(name); near != "" {
		return fmt.Errorf("there is no key %s; did you mean %s?", quoted(name), near)
	}
	return fmt.Errorf("there is no key %s; such as trim, depth, skirt, crate, cloth, level, or a whole path such as lamps[0].above", quoted(name))
}

// measured is a quantity with a dimension.
type measured interface{ Dimension() quantity.Dimension }
