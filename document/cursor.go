package document

import (
	"fmt"
	"reflect"
	"slices"

	"go.yaml.in/yaml/v4"
)

// Reader is a value with more than one form. ReadFrom tells mistakes with Cursor.Wrong or through
// Cursor.Into. It is not called where no value stands.
type Reader interface {
	ReadFrom(c *Cursor)
}

// Cursor stands on one value of a document that is being read. A type that may be written in more
// than one form implements ReadFrom(*Cursor) on its pointer and looks at the form first:
//
//	func (s *Sides) ReadFrom(c *document.Cursor) {
//		if c.IsText() {
//			c.Into(&s.All)
//			return
//		}
//		c.Into(s) // by the tags of its fields
//	}
type Cursor struct {
	r      *reader
	at     spot
	within reflect.Type // of the value whose ReadFrom this cursor was made for; nil below it
	asked  []string     // keys that Key was asked for
	whole  bool         // Keys or Into took all keys
	right  bool         // no mistake was told by this cursor or below it
	below  []*Cursor
}

// IsText tells whether the value is a scalar.
func (c *Cursor) IsText() bool { return c.at.value.Kind == yaml.ScalarNode && !isNull(c.at.value) }

// IsList tells whether the value is a list.
func (c *Cursor) IsList() bool { return c.at.value.Kind == yaml.SequenceNode }

// IsMap tells whether the value is a mapping.
func (c *Cursor) IsMap() bool { return c.at.value.Kind == yaml.MappingNode }

// Text returns the text of a scalar as typed, without quotation marks; empty for anything else.
func (c *Cursor) Text() string {
	if !c.IsText() {
		return ""
	}
	return c.at.value.Value
}

// Items returns cursors on the items of a list; none for anything else.
func (c *Cursor) Items() []*Cursor {
	if !c.IsList() {
		return nil
	}
	items := make([]*Cursor, len(c.at.value.Content))
	for i, item := range c.at.value.Content {
		items[i] = c.down(spot{nil, item, Item(c.at.path, i)})
	}
	return items
}

// Key returns a cursor on the value under name, and whether there is one. Keys of a mapping that
// ReadFrom never asked for are told as unknown after it returns, unless it called Keys or Into.
func (c *Cursor) Key(name string) (*Cursor, bool) {
	c.asked = append(c.asked, name)
	at, ok := c.at.down(step{name, -1})
	if !ok {
		return nil, false
	}
	return c.down(at), true
}

// Keys returns the keys of a mapping in the document's order, without those that stand twice.
func (c *Cursor) Keys() []string {
	c.whole = true
	if !c.IsMap() {
		return nil
	}
	entries := c.r.entries(c.at)
	names := make([]string, len(entries))
	for i, entry := range entries {
		names[i] = entry.key.Value
	}
	return names
}

// Into reads the value into what v points to, by the rules of Read, and tells whether there was no
// mistake. Where v is the value whose ReadFrom was called, it is read by its kind or the tags of its fields.
func (c *Cursor) Into(v any) bool {
	c.whole = true
	into := reflect.ValueOf(v)
	if into.Kind() != reflect.Pointer || into.IsNil() {
		c.Wrong(fmt.Sprintf("a value cannot be read into %T", v), "this is a fault of the program")
		return false
	}
	read := c.r.read
	if into.Type() == c.within {
		read = c.r.readForms
	}
	ok := read(c.at, into.Elem())
	c.right = c.right && ok
	return ok
}

// Wrong tells a mistake at the value's place.
func (c *Cursor) Wrong(problem, hint string) {
	c.right = c.r.wrong(c.at, problem, hint)
}

// Path returns the value's path, such as lamps[0].at.
func (c *Cursor) Path() string { return c.at.path }

// Place returns where the value stands.
func (c *Cursor) Place() Place { return c.r.d.place(c.at.value) }

// down returns a cursor on a value below, whose mistakes count for this one.
func (c *Cursor) down(at spot) *Cursor {
	next := &Cursor{r: c.r, at: at, right: true}
	c.below = append(c.below, next)
	return next
}

// finish tells the keys that were never asked for, unless something else is wrong with the value, and
// whether there was no mistake at all.
func (c *Cursor) finish() bool {
	if c.right && c.IsMap() && !c.whole && len(c.asked) > 0 {
		for _, entry := range c.r.entries(c.at) {
			if !slices.Contains(c.asked, entry.key.Value) {
				c.r.unknownKey(c.at, entry, c.asked)
				c.right = false
			}
		}
	}
	for _, next := range c.below {
		c.right = next.finish() && c.right
	}
	return c.right
}
