package document

// Cursor stands on one value of a document that is being read. A type that may be written in more
// than one form implements ReadFrom(*Cursor) on its pointer and looks at the form first:
//
//	func (s *Sides) ReadFrom(c *document.Cursor) {
//		if c.IsText() {
//			c.Into(&s.All)
//			return
//		}
//		c.Into(&s.Each)
//	}
type Cursor struct{}

// Reader is a value with more than one form. ReadFrom tells mistakes with Cursor.Wrong or through
// Cursor.Into.
type Reader interface {
	ReadFrom(c *Cursor)
}

// IsText tells whether the value is a scalar.
func (c *Cursor) IsText() bool { return false }

// IsList tells whether the value is a list.
func (c *Cursor) IsList() bool { return false }

// IsMap tells whether the value is a mapping.
func (c *Cursor) IsMap() bool { return false }

// Text returns the text of a scalar as typed, without quotation marks; empty for anything else.
func (c *Cursor) Text() string { return "" }

// Items returns cursors on the items of a list; none for anything else.
func (c *Cursor) Items() []*Cursor { return nil }

// Key returns a cursor on the value under name, and whether there is one. Keys of a mapping that
// ReadFrom never asked for are told as unknown after it returns, unless it called Keys or Into.
func (c *Cursor) Key(name string) (*Cursor, bool) { return nil, false }

// Keys returns the keys of a mapping in the document's order.
func (c *Cursor) Keys() []string { return nil }

// Into reads the value into what v points to, by the rules of Read, and tells whether there was no mistake.
func (c *Cursor) Into(v any) bool { return false }

// Wrong tells a mistake at the value's place.
func (c *Cursor) Wrong(problem, hint string) {}

// Path returns the value's path, such as lamps[0].at.
func (c *Cursor) Path() string { return "" }

// Place returns where the value stands.
func (c *Cursor) Place() Place { return Place{} }
