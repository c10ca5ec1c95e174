package schema

import (
	"reflect"

	"github.com/invopop/jsonschema"

	"softloft/kit"
	"softloft/plan"
	"softloft/quantity"
)

// union describes a type whose value may take several forms.
type union struct {
	text  string // the forms, as docs/plan.md prints them
	forms []form
}

// form is one form of a value.
type form func(*builder) *jsonschema.Schema

func (b *builder) union(u union) *jsonschema.Schema {
	s := &jsonschema.Schema{Description: u.text}
	for _, f := range u.forms {
		s.OneOf = append(s.OneOf, f(b))
	}
	return s
}

func words(all ...string) form {
	return func(*builder) *jsonschema.Schema { return oneWord(all) }
}

func pattern(text string) form {
	return func(*builder) *jsonschema.Schema { return &jsonschema.Schema{Type: "string", Pattern: text} }
}

// as takes the form of another type.
func as[T any]() form {
	return func(b *builder) *jsonschema.Schema { return b.of(reflect.TypeFor[T]()) }
}

// mapping has the keys that T's tags name, whatever other forms T has.
func mapping[T any]() form {
	return func(b *builder) *jsonschema.Schema { return b.structure(reflect.TypeFor[T]()) }
}

func listOf[T any](n int) form {
	return func(b *builder) *jsonschema.Schema { return list(b.of(reflect.TypeFor[T]()), n) }
}

// bySide is a value for some of the four sides.
func bySide(value form) form {
	return func(b *builder) *jsonschema.Schema {
		s := &jsonschema.Schema{Type: "object", Properties: jsonschema.NewProperties(), AdditionalProperties: jsonschema.FalseSchema}
		for _, side := range plan.SideNames {
			s.Properties.Set(side, value(b))
		}
		return s
	}
}

func either(forms ...form) form {
	return func(b *builder) *jsonschema.Schema { return b.union(union{forms: forms}) }
}

// formsOf returns the forms of a type that reads itself.
func formsOf(t reflect.Type) (union, bool) {
	if u, ok := planForms()[t]; ok {
		return u, true
	}
	u, ok := kitForms()[t]
	return u, ok
}

func planForms() map[reflect.Type]union {
	side := either(words(plan.SideWords()...), mapping[plan.Face]())
	corners := words(plan.CornerNames[:]...)
	flat, deep := listOf[quantity.Length](2), listOf[quantity.Length](3)
	return map[reflect.Type]union{
		reflect.TypeFor[plan.Factor]():     {"number or a source's id", []form{number(1, 1000), pattern(`[^-+0-9.\s]`)}},
		reflect.TypeFor[plan.Facing]():     {"`up`, `down` or [number, number, number]", []form{words("up", "down"), listOf[float64](3)}},
		reflect.TypeFor[plan.Bearing]():    {"`any` or an angle", []form{words("any"), as[quantity.Angle]()}},
		reflect.TypeFor[plan.Join]():       {"`none`, {uprights} or {drops}", []form{words("none"), mapping[plan.Join]()}},
		reflect.TypeFor[plan.Upper]():      {"`none` or {tube, corners, welded}", []form{words("none"), mapping[plan.Upper]()}},
		reflect.TypeFor[plan.ClothLayer](): {"cloth's id or {kit, gap}", []form{as[string](), mapping[plan.ClothLayer]()}},
		reflect.TypeFor[plan.ClothTie]():   {"`slack`, {sag} or {cut, pretension}", []form{words("slack"), mapping[plan.ClothTie]()}},
		reflect.TypeFor[plan.Face]():       {"`open`, `white`, `black`, `silver` or {reflectance}", []form{words(plan.RoofWords()...), mapping[plan.Face]()}},
		reflect.TypeFor[plan.Sides]():      {"`white`, `black`, `silver`, `none`, {reflectance}, or one of these by side: {north, south, east, west}", []form{side, bySide(side)}},
		reflect.TypeFor[plan.Skirts]():     {"length, `none`, or a length by side: {north, south, east, west}", []form{words("none"), as[quantity.Length](), bySide(as[quantity.Length]())}},
		reflect.TypeFor[plan.From]():       {"`nw`, `ne`, `se`, `sw`, [x, y] or [x, y, z]", []form{corners, flat, deep}},
		reflect.TypeFor[plan.GuyFrom]():    {"a corner, a stand's name, [x, y] or [x, y, z]", []form{as[string](), flat, deep}},
		reflect.TypeFor[plan.To]():         {"a point's name or {bridle: [point, point], apex: length}", []form{as[string](), mapping[plan.Bridle]()}},
		reflect.TypeFor[plan.BagPlace]():   {"`base` or `leg` and its number", []form{pattern(`^(base|leg [1-9][0-9]*)$`)}},
	}
}

func kitForms() map[reflect.Type]union {
	return map[reflect.Type]union{
		reflect.TypeFor[kit.Sources]():   {"text, or a text by key", []form{as[string](), as[map[string]string]()}},
		reflect.TypeFor[kit.Weight]():    {"mass, or mass per length", []form{pattern(unitPattern)}},
		reflect.TypeFor[kit.CrateMass](): {"mass, or mass per area", []form{pattern(unitPattern)}},
		reflect.TypeFor[kit.Spread](): {"`lambertian`, {beam, field} or {file}", []form{words("lambertian"),
			object(property{"beam", as[quantity.Angle]()}, property{"field", as[quantity.Angle]()}), object(property{"file", as[string]()})}},
		reflect.TypeFor[kit.Supply](): {"`inside` or {mass, off_box}", []form{words("inside"),
			optional(property{"mass", as[quantity.Mass]()}, property{"off_box", as[bool]()})}},
	}
}

func number(least, most int) form {
	return func(*builder) *jsonschema.Schema {
		return &jsonschema.Schema{Type: "number", Minimum: jsonNumber(least), Maximum: jsonNumber(most)}
	}
}

type property struct {
	name string
	of   form
}

// object is a mapping that has all of some keys.
func object(keys ...property) form { return keyed(true, keys) }

// optional is a mapping that has some of some keys.
func optional(keys ...property) form { return keyed(false, keys) }

func keyed(required bool, keys []property) form {
	return func(b *builder) *jsonschema.Schema {
		s := &jsonschema.Schema{Type: "object", Properties: jsonschema.NewProperties(), AdditionalProperties: jsonschema.FalseSchema}
		for _, k := range keys {
			s.Properties.Set(k.name, k.of(b))
			if required {
				s.Required = append(s.Required, k.name)
			}
		}
		return s
	}
}
