package plan

import (
	"fmt"
	"slices"
	"strings"

	"softloft/document"
	"softloft/quantity"
)

// A value of the plan that may take several forms reads itself, and says which
// forms would be right where it can't. Where it stands as a mapping, its struct's
// own tags are read, through a type without its methods.

// quoted puts a text from the file into a sentence, cut where it is long.
func quoted(text string) string {
	const most = 60
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "…"
	}
	return fmt.Sprintf("%q", text)
}

// isNone reports whether a value is a word, and complains of a word but none.
func isNone(c *document.Cursor, forms string) bool {
	if !c.IsText() {
		return false
	}
	if c.Text() != "none" {
		c.Wrong("no such value "+quoted(c.Text()), forms)
	}
	return true
}

// ReadFrom takes none, {uprights: …} or {drops: …}.
func (j *Join) ReadFrom(c *document.Cursor) {
	if isNone(c, "none, {uprights: {tube, count}} or {drops: {kit, count, length}}") {
		*j = Join{}
		return
	}
	type mapping Join
	var form mapping
	if !c.Into(&form) {
		return
	}
	if (form.Uprights != nil) == (form.Drops != nil) {
		c.Wrong("a join is one thing", "none, {uprights: {tube, count}} or {drops: {kit, count, length}}")
		return
	}
	*j = Join(form)
}

// ReadFrom takes none or {tube, corners, welded}.
func (u *Upper) ReadFrom(c *document.Cursor) {
	if isNone(c, "none or {tube, corners, welded}") {
		return
	}
	type mapping Upper
	var form mapping
	if c.Into(&form) {
		*u = Upper(form)
	}
}

// ReadFrom takes a cloth's id or {kit, gap}.
func (l *ClothLayer) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		l.Kit = c.Text()
		return
	}
	type mapping ClothLayer
	var form mapping
	if c.Into(&form) {
		*l = ClothLayer(form)
	}
}

// ReadFrom takes slack, {sag} or {cut, pretension}.
func (t *ClothTie) ReadFrom(c *document.Cursor) {
	const forms = "slack, {sag: 2 in} or {cut: [12 ft, 12 ft], pretension: 20 N/m}"
	if c.IsText() {
		if c.Text() != "slack" {
			c.Wrong("no such tie "+quoted(c.Text()), forms)
		}
		return
	}
	type mapping ClothTie
	var form mapping
	if !c.Into(&form) {
		return
	}
	if (form.Sag != nil) == (form.Cut != nil || form.Pretension != nil) || (form.Cut == nil) != (form.Pretension == nil) {
		c.Wrong("a tie is one thing", forms)
		return
	}
	*t = ClothTie(form)
}

// ReadFrom takes a word for a roof or {reflectance}.
func (f *Face) ReadFrom(c *document.Cursor) { f.read(c, "roof", RoofWords()) }

// side is a Face whose words are those of a side.
type side Face

// ReadFrom takes a word for a side or {reflectance}.
func (s *side) ReadFrom(c *document.Cursor) { (*Face)(s).read(c, "side", SideWords()) }

func (f *Face) read(c *document.Cursor, what string, words []string) {
	if c.IsText() {
		if !slices.Contains(words, c.Text()) {
			c.Wrong("no such "+what+" "+quoted(c.Text()), strings.Join(words, ", ")+" or {reflectance: 0.8}")
			return
		}
		*f = Face{Word: c.Text()}
		return
	}
	type mapping Face
	var form mapping
	if !c.Into(&form) || form.Reflectance == nil {
		return
	}
	if !(*form.Reflectance >= 0 && *form.Reflectance < 1) {
		c.Wrong(fmt.Sprintf("a reflectance of %v", *form.Reflectance), "0 or more and less than 1, such as 0.8")
		return
	}
	*f = Face{Reflectance: form.Reflectance}
}

// ReadFrom takes one face for all sides, or a face by side; a side that isn't
// named has the default.
func (s *Sides) ReadFrom(c *document.Cursor) {
	all := side{Word: SideWords()[0]}
	if _, one := c.Key("reflectance"); one || !c.IsMap() {
		c.Into(&all)
		*s = Sides{Face(all), Face(all), Face(all), Face(all)}
		return
	}
	form := bySide[side]{all, all, all, all}
	if c.Into(&form) {
		*s = Sides{Face(form.North), Face(form.South), Face(form.East), Face(form.West)}
	}
}

// bySide is a value for each side.
type bySide[T any] struct {
	North T `key:"north"`
	South T `key:"south"`
	East  T `key:"east"`
	West  T `key:"west"`
}

// ReadFrom takes none, one length for all sides, or a length by side; a side that
// isn't named has none.
func (s *Skirts) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		if c.Text() == "none" {
			*s = Skirts{}
			return
		}
		var all quantity.Length
		c.Into(&all)
		*s = Skirts{all, all, all, all}
		return
	}
	var form bySide[quantity.Length]
	if c.Into(&form) {
		*s = Skirts{form.North, form.South, form.East, form.West}
	}
}

// ReadFrom takes a corner's name, [x, y] or [x, y, z].
func (f *From) ReadFrom(c *document.Cursor) {
	if !c.IsText() {
		f.At, f.Deep = place(c, "nw, ne, se, sw, [x, y] or [x, y, z]")
		return
	}
	if !slices.Contains(CornerNames[:], c.Text()) {
		c.Wrong("no such corner "+quoted(c.Text()), "nw, ne, se, sw, or a place in box axes: [x, y] or [x, y, z]")
		return
	}
	f.Corner = c.Text()
}

// place reads a place in box axes with two coordinates or three (deep).
func place(c *document.Cursor, forms string) (at [3]quantity.Length, deep bool) {
	switch n := len(c.Items()); {
	case c.IsList() && n == 2:
		var flat [2]quantity.Length
		c.Into(&flat)
		return [3]quantity.Length{flat[0], flat[1]}, false
	case c.IsList() && n == 3:
		deep = c.Into(&at)
		return at, deep
	case c.IsList():
		c.Wrong(fmt.Sprintf("a place with %d values", n), forms)
	default:
		c.Wrong("a place is a corner's name or a list", forms)
	}
	return at, false
}

// ReadFrom takes a name, [x, y] or [x, y, z].
func (f *GuyFrom) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		f.Name = c.Text()
		return
	}
	f.At, f.Deep = place(c, "a corner, a stand's name, [x, y] or [x, y, z]")
}

// ReadFrom takes a point's name or {bridle: [P1, P2], apex}.
func (t *To) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		t.Point = c.Text()
		return
	}
	var bridle Bridle
	if c.Into(&bridle) {
		t.Bridle = &bridle
	}
}
