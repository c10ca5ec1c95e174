package schema

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"softloft/plan"
	"softloft/plan/key"
)

// Page returns docs/plan.md with each table of keys made anew. A table stands
// between the lines "<!-- keys: NAME -->" and "<!-- end -->"; NAME is a definition of
// the schema, such as box or kit_lamp. The error tells of a marker that is wrong,
// and of mappings that the page has no table for.
func Page(page []byte) ([]byte, error) {
	tables := tables()
	var out bytes.Buffer
	var told []string
	inside := false
	for line := range bytes.Lines(page) {
		text := strings.TrimSpace(string(line))
		if text == "<!-- end -->" {
			inside = false
		}
		if !inside {
			out.Write(line)
		}
		name, ok := strings.CutPrefix(text, "<!-- keys: ")
		if !ok {
			continue
		}
		name = strings.TrimSuffix(name, " -->")
		table, ok := tables[name]
		if !ok {
			return nil, fmt.Errorf("no keys of %q; there are those of %s", name, strings.Join(names(tables), ", "))
		}
		told = append(told, name)
		out.WriteString(table)
		inside = true
	}
	if inside {
		return nil, fmt.Errorf("the table of %s has no line <!-- end -->", told[len(told)-1])
	}
	for _, name := range names(tables) {
		if !slices.Contains(told, name) {
			return nil, fmt.Errorf("the page has no table of the keys of %s: add the lines <!-- keys: %s --> and <!-- end -->", name, name)
		}
	}
	return out.Bytes(), nil
}

func names(tables map[string]string) []string {
	var all []string
	for name := range tables {
		all = append(all, name)
	}
	slices.Sort(all)
	return all
}

// tables returns a table for every mapping that a plan may have, by name.
func tables() map[string]string {
	all := map[string]string{}
	var gather func(t reflect.Type)
	gather = func(t reflect.Type) {
		t = innermost(t)
		if inline, ok := inlineOf(t); ok {
			t = inline
		}
		fields := key.Fields(t)
		if _, done := all[name(t)]; done || len(fields) == 0 || isInline(t) {
			return
		}
		all[name(t)] = table(fields)
		for _, f := range fields {
			gather(f.Type)
		}
	}
	gather(reflect.TypeFor[plan.Plan]())
	return all
}

// inlineOf returns the mapping whose keys stand in the place of a type's own.
func inlineOf(t reflect.Type) (reflect.Type, bool) {
	if t.Kind() != reflect.Struct {
		return nil, false
	}
	for f := range t.Fields() {
		if f.Tag.Get("key") == ",inline" {
			return innermost(f.Type), true
		}
	}
	return nil, false
}

// isInline tells whether a mapping is told whole by its forms.
func isInline(t reflect.Type) bool { return t == reflect.TypeFor[plan.Face]() }

// innermost returns what a list, a map or an optional value holds.
func innermost(t reflect.Type) reflect.Type {
	for {
		if _, ok := formsOf(t); ok {
			return t
		}
		switch t.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
			t = t.Elem()
		default:
			return t
		}
	}
}

func table(fields []key.Field) string {
	var out strings.Builder
	out.WriteString("| key | value | default | meaning |\n| --- | --- | --- | --- |\n")
	for _, f := range fields {
		fmt.Fprintf(&out, "| `%s` | %s | %s | %s |\n", f.Name, cell(value(f.Type)), cell(defaultCell(f)), cell(meaning(f)))
	}
	return out.String()
}

func cell(text string) string { return strings.ReplaceAll(text, "|", "\\|") }

func defaultCell(f key.Field) string {
	switch {
	case f.Required:
		return "must be given"
	case f.Default == "":
		return ""
	}
	text := "`" + f.Default + "`"
	if f.Source != "contract" {
		text += " (" + f.Source + ")"
	}
	return text
}

func meaning(f key.Field) string {
	if f.Unused == "" {
		return f.Doc
	}
	return strings.TrimPrefix(f.Doc+"; read and checked, no analysis uses it yet", "; ")
}

// value says in words what may stand behind a key.
func value(t reflect.Type) string {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if u, ok := formsOf(t); ok {
		return u.text
	}
	if d, ok := dimensionOf(t); ok {
		return d.String()
	}
	if words := wordsOf(t); words != nil {
		return "`" + strings.Join(words, "`, `") + "`"
	}
	switch t.Kind() {
	case reflect.Struct:
		return mappingOf(t)
	case reflect.Slice:
		return "list: " + value(t.Elem())
	case reflect.Array:
		return "[" + strings.Repeat(value(t.Elem())+", ", t.Len()-1) + value(t.Elem()) + "]"
	case reflect.Map:
		return "by id: " + value(t.Elem())
	case reflect.Int:
		return "whole number"
	case reflect.Float64:
		return "number"
	case reflect.Bool:
		return "`true`, `false`"
	}
	return "text"
}

// mappingOf names a mapping with a link to its table, under a heading of its name.
func mappingOf(t reflect.Type) string {
	return fmt.Sprintf("[%s](#%s)", strings.ReplaceAll(name(t), "_", " "), strings.ReplaceAll(name(t), "_", "-"))
}
