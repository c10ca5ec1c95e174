package vary

import (
	"reflect"
	"slices"
	"strings"

	"softloft/document"
	"softloft/plan"
	"softloft/quantity"
)

// kind is what values a key takes: numbers with a unit (measured), bare numbers, or
// words and forms such as {kit, gap}.
type kind struct {
	number    bool
	measured  bool
	whole     bool
	list      bool // a word stands for a list of one
	dimension quantity.Dimension
	words     []string // all that there are; nil where the kit has them
}

// names are keys whose text no analysis reads.
var names = []string{"title", "revision", "name", "by", "on", "stated_by", "stated_on", "source", "note", "part", "softloft"}

// kindOf says what values a type takes, or why it takes none.
func kindOf(t reflect.Type, name string) (k kind, why string) {
	t = direct(t)
	if t == reflect.TypeFor[plan.Skirts]() {
		return kind{number: true, measured: true, dimension: quantity.OfLength}, ""
	}
	if m, ok := reflect.Zero(t).Interface().(measured); ok {
		return kind{number: true, measured: true, dimension: m.Dimension()}, ""
	}
	if w, ok := reflect.Zero(t).Interface().(interface{ Words() []string }); ok {
		return kind{words: w.Words()}, ""
	}
	if slices.Contains(names, name) {
		return kind{}, "not a quantity: no answer depends on it"
	}
	reads := reflect.PointerTo(t).Implements(reflect.TypeFor[document.Reader]())
	switch t.Kind() {
	case reflect.Float64:
		return kind{number: true}, ""
	case reflect.Int:
		return kind{number: true, whole: true}, ""
	case reflect.Bool:
		return kind{words: []string{"true", "false"}}, ""
	case reflect.String:
		return kind{}, ""
	case reflect.Slice:
		return kind{list: true}, listOf(t)
	case reflect.Array:
		return kind{}, ""
	}
	if t == reflect.TypeFor[plan.Factor]() {
		return kind{number: true}, ""
	}
	if reads {
		return kind{}, ""
	}
	return kind{}, "not a quantity but a group of keys"
}

// listOf says why a list of groups takes no values.
func listOf(t reflect.Type) string {
	if inner := direct(t.Elem()); inner.Kind() == reflect.Struct && !reflect.PointerTo(inner).Implements(reflect.TypeFor[document.Reader]()) {
		return "not a quantity but a list of groups"
	}
	return ""
}

// unit is the unit of a key's numbers.
func (k kind) unit() string {
	switch {
	case !k.measured:
		return ""
	case k.dimension == quantity.OfAngle:
		return "deg"
	}
	return k.dimension.Unit()
}

// example is a range or list that the key takes, as one would type it.
func (k kind) example() string {
	switch {
	case k.measured && k.dimension == quantity.OfLength:
		return "10ft..18ft"
	case k.measured && k.dimension == quantity.OfShare:
		return "20%..100%"
	case k.measured:
		if examples := k.dimension.Examples(); len(examples) > 0 {
			return strings.ReplaceAll(examples[0], " ", "") + ",…"
		}
	case k.whole:
		return "1..4"
	case k.number:
		return "0.1..0.5"
	case len(k.words) > 1:
		return k.words[0] + "," + k.words[1]
	}
	return "A,B"
}

// wrapped is a typed value as the plan takes it.
func (k kind) wrapped(text string) string {
	switch {
	case k.list && text == "none":
		return "[]"
	case k.list && !strings.HasPrefix(text, "["):
		return "[" + text + "]"
	}
	return text
}
