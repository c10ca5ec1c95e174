package vary

import (
	"reflect"
	"slices"
	"strings"

	"softloft/document"
	"softloft/kit"
	"softloft/plan"
	"softloft/plan/key"
)

// nearest returns the key that differs least from what was typed, empty where none is
// near. A short name counts as well as a whole path; indices don't count. Failing that,
// it is the first path that ends in what was typed.
func nearest(typed string) string {
	var all, bare []string
	for _, short := range shortNames {
		all = append(all, short[0])
	}
	for _, f := range key.Fields(reflect.TypeFor[plan.Box]()) {
		all = append(all, f.Name)
	}
	all = append(all, paths(reflect.TypeFor[plan.Plan](), "", nil)...)
	for _, name := range all {
		bare = append(bare, unindexed(name))
	}
	given := unindexed(typed)
	if i := slices.Index(bare, kit.Nearest(given, bare)); i >= 0 {
		return all[i]
	}
	last := given[strings.LastIndexByte(given, '.')+1:]
	for i, name := range bare {
		if name[strings.LastIndexByte(name, '.')+1:] == last {
			return all[i]
		}
	}
	return ""
}

// paths lists the keys of the plan's form, without those of kit entries.
func paths(t reflect.Type, at string, above []reflect.Type) []string {
	t = direct(t)
	for t.Kind() == reflect.Slice || t.Kind() == reflect.Array && t.Elem().Kind() == reflect.Struct {
		if t != reflect.TypeFor[plan.Sides]() {
			at += "[]"
		}
		t = direct(t.Elem())
	}
	if t.Kind() != reflect.Struct || slices.Contains(above, t) {
		return nil
	}
	var all []string
	for _, f := range key.Fields(t) {
		path := document.Key(at, f.Name)
		all = append(all, path)
		all = append(all, paths(f.Type, path, append(slices.Clone(above), t))...)
	}
	return all
}

// unindexed is a path in small letters without its brackets.
func unindexed(path string) string {
	path = strings.ToLower(path[:min(len(path), 80)])
	var out strings.Builder
	depth := 0
	for _, c := range path {
		switch {
		case c == '[':
			depth++
		case c == ']':
			depth = max(0, depth-1)
		case depth == 0 && c != '_' && c != '-' && c != ' ':
			out.WriteRune(c)
		}
	}
	return out.String()
}
