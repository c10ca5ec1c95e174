package kit

import "softloft/quantity"

// Line is one value of an entry with its source. Derived is true for what follows from
// other values; Demo for what is invented. Source is empty where none is given.
type Line struct {
	Key, Value, Source string
	Doc                string // what the key means
	Demo, Derived      bool
}

// Described is an entry with all its values.
type Described struct {
	Kind, ID, Name, Note string
	Lines                []Line
}

// Describe returns every value of an entry with its source, given ones in the order of
// the form and derived ones after them. False where there is no such entry.
func (k Kit) Describe(kind, id string, units quantity.System) (Described, bool) {
	it, ok := k.item(kind, id)
	if !ok {
		return Described{}, false
	}
	return Described{Kind: kind, ID: id, Name: it.Entry.Label(id), Note: it.Entry.Note, Lines: k.lines(it, units)}, true
}

func (k Kit) lines(it item, units quantity.System) []Line {
	var lines []Line
	for _, p := range properties(it.Value) {
		from := p.Key
		if _, meaning := p.Value.(RatingKind); meaning {
			from = "rated" // who rates a piece says what the rating means
		}
		lines = append(lines, Line{
			Key: p.Key, Value: p.show(units), Source: it.Entry.Source.For(from), Doc: p.Doc, Demo: it.Entry.Source.Demo(from),
		})
	}
	return append(lines, k.derived(it, units)...)
}
