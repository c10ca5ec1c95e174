package kit

import (
	"strings"

	"softloft/document"
	"softloft/source"
)

// Sources says where an entry's values come from. All holds for each value that
// is not in Each. A text is one of
//
//	demo value                      an invented value
//	mott, Table A16-6               a publication of the register by its id, and a clause
//	ci-1401, stretch, from memory   such a value from memory
//	anything else                   as it stands: from memory, common practice, our own scale
type Sources struct {
	All  string
	Each map[string]string
}

// DemoValue opens the source of an invented value.
const DemoValue = "demo value"

// allOthers is the key that stands for the values which a mapping doesn't name.
const allOthers = "all"

// ReadFrom takes one text for all values, or a mapping from key to text in which
// all stands for the keys that it doesn't name.
func (s *Sources) ReadFrom(c *document.Cursor) {
	if !c.IsMap() {
		c.Into(&s.All)
		return
	}
	each := map[string]string{}
	if !c.Into(&each) {
		return
	}
	s.All = each[allOthers]
	delete(each, allOthers)
	s.Each = each
}

// text returns the source of the value under key as the file has it.
func (s Sources) text(key string) string {
	if text, ok := s.Each[key]; ok {
		return text
	}
	return s.All
}

// For returns the source of the value under key in words, a publication by its
// title; "" where none is given.
func (s Sources) For(key string) string {
	text := s.text(key)
	if cited, ok := registered(text); ok {
		return cited.String()
	}
	return text
}

// Demo reports whether the value under key is an invented one.
func (s Sources) Demo(key string) bool { return strings.HasPrefix(s.text(key), DemoValue) }

// Citation returns what the register of publications has for the source of the value
// under key. What is no publication is cited as demo, as common practice, or as
// the kit entry itself with the text as its clause.
func (s Sources) Citation(key string) source.Citation {
	text := s.text(key)
	if cited, ok := registered(text); ok {
		return cited
	}
	if rest, ok := strings.CutPrefix(text, DemoValue); ok {
		return source.Cite("demo", strings.TrimPrefix(rest, ", "))
	}
	if rest, ok := strings.CutPrefix(text, commonPractice); ok {
		return source.Cite("common-practice", strings.TrimPrefix(rest, ", "))
	}
	cited := source.Cite("kit", text)
	cited.FromMemory = strings.Contains(text, fromMemory)
	return cited
}

const (
	commonPractice = "common practice"
	fromMemory     = "from memory"
)

// registered reads a text that opens with a publication's id: "id" or "id, clause".
func registered(text string) (source.Citation, bool) {
	id, clause, _ := strings.Cut(text, ", ")
	if _, ok := source.Lookup(source.ID(id)); !ok {
		return source.Citation{}, false
	}
	cited := source.Cite(source.ID(id), clause)
	if bare, ok := strings.CutSuffix(clause, fromMemory); ok {
		cited.Clause, cited.FromMemory = strings.TrimSuffix(bare, ", "), true
	}
	return cited, true
}
