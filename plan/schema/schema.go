package schema

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"github.com/invopop/jsonschema"

	"softloft/plan"
	"softloft/plan/key"
	"softloft/quantity"
)

// JSON returns the schema of a plan file, indented; the same bytes on every call.
func JSON() ([]byte, error) {
	b := builder{defs: jsonschema.Definitions{}}
	top := b.structure(reflect.TypeFor[plan.Plan]())
	top.Version = jsonschema.Version
	top.Title = "softloft plan"
	top.Description = "A large soft light overhead: what is asked, the room, the box, what carries it. Every quantity carries its unit."
	top.Definitions = b.defs
	text, err := json.MarshalIndent(top, "", "  ")
	if err != nil {
		return nil, err
	}
	return append(text, '\n'), nil
}

// builder gathers the definitions that a schema refers to.
type builder struct{ defs jsonschema.Definitions }

// of returns the schema of a type.
func (b *builder) of(t reflect.Type) *jsonschema.Schema {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if f, ok := formsOf(t); ok {
		return b.defined(name(t), func() *jsonschema.Schema { return b.union(f) })
	}
	if d, ok := dimensionOf(t); ok {
		return b.defined("quantity_"+strings.ReplaceAll(d.String(), " ", "_"), func() *jsonschema.Schema { return quantitySchema(d) })
	}
	if words := wordsOf(t); words != nil {
		return oneWord(words)
	}
	switch t.Kind() {
	case reflect.Struct:
		return b.defined(name(t), func() *jsonschema.Schema { return b.structure(t) })
	case reflect.Slice:
		return &jsonschema.Schema{Type: "array", Items: b.of(t.Elem())}
	case reflect.Array:
		return list(b.of(t.Elem()), t.Len())
	case reflect.Map:
		return &jsonschema.Schema{Type: "object", AdditionalProperties: b.of(t.Elem())}
	case reflect.Int:
		return &jsonschema.Schema{Type: "integer"}
	case reflect.Float64:
		return &jsonschema.Schema{Type: "number"}
	case reflect.Bool:
		return &jsonschema.Schema{Type: "boolean"}
	}
	return b.defined("text", textSchema)
}

// defined returns a reference to a definition, made where it isn't yet.
func (b *builder) defined(name string, of func() *jsonschema.Schema) *jsonschema.Schema {
	if _, ok := b.defs[name]; !ok {
		b.defs[name] = jsonschema.TrueSchema // for types that hold themselves
		b.defs[name] = of()
	}
	return &jsonschema.Schema{Ref: "#/$defs/" + name}
}

// name is a type's name among the definitions: kit_lamp is a kit entry, lamp a
// lamp's place in the box.
func name(t reflect.Type) string {
	n := snake(t.Name())
	if strings.HasSuffix(t.PkgPath(), "/kit") && n != "kit" {
		return "kit_" + n
	}
	return n
}

func snake(text string) string {
	var out strings.Builder
	for i, r := range text {
		if i > 0 && r >= 'A' && r <= 'Z' {
			out.WriteByte('_')
		}
		out.WriteString(strings.ToLower(string(r)))
	}
	return out.String()
}

// structure returns the schema of a mapping.
func (b *builder) structure(t reflect.Type) *jsonschema.Schema {
	s := &jsonschema.Schema{Type: "object", Properties: jsonschema.NewProperties(), AdditionalProperties: jsonschema.FalseSchema}
	for _, f := range key.Fields(t) {
		s.Properties.Set(f.Name, b.property(f))
		if f.Required {
			s.Required = append(s.Required, f.Name)
		}
	}
	for _, keys := range alternatives(t) {
		s.OneOf = append(s.OneOf, &jsonschema.Schema{Required: keys})
	}
	return s
}

func (b *builder) property(f key.Field) *jsonschema.Schema {
	s := b.of(f.Type)
	s.Description = f.Doc
	if f.Unused != "" {
		s.Description = strings.TrimPrefix(s.Description+"; no analysis uses it yet", "; ")
	}
	if f.Default != "" {
		s.Default = defaultValue(f.Default)
	}
	if f.Name == "softloft" {
		s.Const = plan.Version
	}
	return s
}

// defaultValue is a default's text as a value of JSON: 1.25, true, "120 V",
// ["0 m", "0 m"].
func defaultValue(text string) any {
	if json.Valid([]byte(text)) {
		return json.RawMessage(text)
	}
	if inner, ok := strings.CutPrefix(text, "["); ok {
		return strings.Split(strings.TrimSuffix(inner, "]"), ", ")
	}
	return text
}

// alternatives lists sets of keys of which a mapping has exactly one.
func alternatives(t reflect.Type) [][]string {
	switch t {
	case reflect.TypeFor[plan.Box]():
		return [][]string{{"trim"}, {"cloth_at"}}
	case reflect.TypeFor[plan.Ribs]():
		return [][]string{{"at"}, {"count"}}
	case reflect.TypeFor[plan.On]():
		return [][]string{{"rib"}, {"bar"}, {"arm"}, {"frame"}}
	case reflect.TypeFor[plan.Holds]():
		return [][]string{{"ear"}, {"arm"}}
	case reflect.TypeFor[plan.Camera]():
		return [][]string{{"at"}, {"orbit"}, {"track"}}
	case reflect.TypeFor[plan.Join]():
		return [][]string{{"uprights"}, {"drops"}}
	case reflect.TypeFor[plan.ClothTie]():
		return [][]string{{"sag"}, {"cut", "pretension"}}
	}
	return nil
}

func list(items *jsonschema.Schema, n int) *jsonschema.Schema {
	length := uint64(n)
	return &jsonschema.Schema{Type: "array", Items: items, MinItems: &length, MaxItems: &length}
}

func oneWord(words []string) *jsonschema.Schema {
	s := &jsonschema.Schema{}
	for _, word := range words {
		s.Enum = append(s.Enum, word)
	}
	return s
}

// textSchema is any text; YAML takes an unquoted 12 for a number.
func textSchema() *jsonschema.Schema {
	return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "string"}, {Type: "number"}}}
}

func dimensionOf(t reflect.Type) (quantity.Dimension, bool) {
	q, ok := reflect.Zero(t).Interface().(interface{ Dimension() quantity.Dimension })
	if !ok {
		return 0, false
	}
	return q.Dimension(), true
}

func wordsOf(t reflect.Type) []string {
	if w, ok := reflect.Zero(t).Interface().(interface{ Words() []string }); ok {
		return w.Words()
	}
	return nil
}

// quantitySchema is a number with its unit. The pattern only asks for a number and
// something that may be a unit; reading knows the units.
func quantitySchema(d quantity.Dimension) *jsonschema.Schema {
	s := &jsonschema.Schema{Type: "string", Pattern: unitPattern, Description: d.WithArticle() + " with its unit"}
	for _, example := range d.Examples() {
		s.Examples = append(s.Examples, example)
	}
	switch d {
	case quantity.OfTStop:
		s.Pattern = `^\s*[Tt]\s*[0-9.]`
		s.Description = fmt.Sprintf("%s after the letter T", d.WithArticle())
	case quantity.OfShare:
		s.Description = "a share: a bare number, or in percent"
		s.Type, s.Pattern = "", ""
		s.OneOf = []*jsonschema.Schema{{Type: "number"}, {Type: "string", Pattern: `^\s*[-+]?[0-9.,].*%\s*$`}}
	}
	return s
}

// unitPattern is a digit, and behind it a letter or one of the marks that units
// begin with; an e may be that of 1e3.
const unitPattern = `[0-9][.,]?\s*[A-DF-Za-df-z'"%°µμΩ′″’”]`

func jsonNumber(n int) json.Number { return json.Number(strconv.Itoa(n)) }
