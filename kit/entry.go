package kit

import (
	"softloft/document"
	"softloft/quantity"
)

// Entry is what every kit entry has besides its properties.
type Entry struct {
	Name   string  `key:"name" doc:"the name that a crew reads on the pull list; default the id"`
	Source Sources `key:"source" doc:"where the values come from: one text for all, or one for each key, with all for the rest"`
	Note   string  `key:"note" doc:"what a user must know about the values"`
}

// Label is the name a crew reads: the entry's name, else its id.
func (e Entry) Label(id string) string {
	if e.Name != "" {
		return e.Name
	}
	return id
}

// entry gives the part that all kinds of entries share.
func (e Entry) entry() Entry { return e }

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
