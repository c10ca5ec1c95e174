package kit

import (
	"softloft/document"
	"softloft/quantity"
	"strings"
)

// Entry is what every kit entry has besides its properties.
type Entry struct {
	Name   string  `key:"name" doc:"the name that a crew reads on the pull list"`
	Source Sources `key:"source" doc:"where the values come from: one text for all, or one for each key"`
	Note   string  `key:"note" doc:"what a user must know about the values"`
}

// Sources says where an entry's values come from. All holds for each value that
// is not in Each. The text "demo value" marks an invented value.
type Sources struct {
	All  string
	Each map[string]string
}

// ReadFrom takes one text for all values or a mapping from key to text.
func (s *Sources) ReadFrom(c *document.Cursor) {
	if c.IsMap() {
		s.Each = map[string]string{}
		c.Into(&s.Each)
		return
	}
	s.All = c.Text()
}

// For returns the source of the value under key, or "" where none is given.
func (s Sources) For(key string) string {
	if text, ok := s.Each[key]; ok {
		return text
	}
	return s.All
}

// Demo reports whether the value under key is an invented one.
func (s Sources) Demo(key string) bool {
	return strings.HasPrefix(s.For(key), DemoValue)
}

// DemoValue opens the source of an invented value.
const DemoValue = "demo value"

// Weight is a mass for each piece, or a mass for each metre of length. Both nil
// means that nobody gave it.
type Weight struct {
	Each      *quantity.Mass
	PerLength *quantity.LineMass
}

// ReadFrom takes a mass or a mass per length.
func (w *Weight) ReadFrom(c *document.Cursor) {
	var perLength quantity.LineMass
	if perLength.UnmarshalText([]byte(c.Text())) == nil {
		w.PerLength = &perLength
		return
	}
	var each quantity.Mass
	if c.Into(&each) {
		w.Each = &each
	}
}

// Of returns the mass of one piece of a length, and whether it is known.
func (w Weight) Of(length quantity.Length) (quantity.Mass, bool) {
	switch {
	case w.Each != nil:
		return *w.Each, true
	case w.PerLength != nil:
		return quantity.Mass(float64(*w.PerLength) * float64(length)), true
	}
	return 0, false
}

// RatingKind says what a rated value means: a working load limit, or the load at
// which the piece breaks. The empty word is a working load limit.
type RatingKind string

// Words lists the kinds of rating.
func (RatingKind) Words() []string { return []string{"WLL", "breaking"} }
