package plan

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"softloft/document"
	"softloft/kit"
)

// atMost complains of a list that is too long.
func (c *checker) atMost(path, what string, n, most int) {
	if n > most {
		c.wrong(path, fmt.Sprintf("%d %s", n, what), fmt.Sprintf("at most %d", most))
	}
}

// named is a name and where it stands.
type named struct{ path, name string }

// names complains of names that are empty, unprintable or given twice. A name that
// the user did not type is told at the item.
func (c *checker) names(what string, all []named) {
	first := map[string]string{}
	for _, n := range all {
		if !c.name(n, what) {
			continue
		}
		if other, ok := first[n.name]; ok {
			c.wrong(n.path, fmt.Sprintf("a second %s named %s", what, quoted(n.name)), "another name; the first one is "+c.line(other))
			continue
		}
		first[n.name] = n.path
	}
}

// name complains of one name and tells whether it can be used.
func (c *checker) name(n named, what string) bool {
	switch {
	case strings.TrimSpace(n.name) == "":
		if c.Doc.Has(n.path) {
			c.wrong(n.path, "an empty name for a "+what, "a name that findings and sheets can print")
		}
		return false
	case strings.ContainsFunc(n.name, unprintable):
		c.wrong(n.path, "the name of a "+what+" holds a line break or a sign that does not print", "a name on one line")
		return false
	case len([]rune(n.name)) > mostNameRunes:
		c.wrong(n.path, "the name "+quoted(n.name)+" is too long", fmt.Sprintf("at most %d characters", mostNameRunes))
		return false
	}
	return true
}

func unprintable(r rune) bool { return r == unicode.ReplacementChar || !unicode.IsPrint(r) }

// line says where a path stands.
func (c *checker) line(path string) string {
	at, ok := c.Doc.Place(path)
	if !ok {
		return "at " + path
	}
	return fmt.Sprintf("in line %d", at.Line)
}

// known complains of a word that isn't among the known ones, and suggests the
// nearest.
func (c *checker) known(path, what, word string, known []string) bool {
	if word == "" && !c.Doc.Has(path) {
		return false
	}
	if slices.Contains(known, word) {
		return true
	}
	c.wrong(path, "no "+what+" "+quoted(word), suggestion(word, known, what))
	return false
}

// suggestion says what would be right in place of an unknown word.
func suggestion(word string, known []string, what string) string {
	const few = 8
	if len(known) == 0 {
		return "the plan and its kit have no " + what + " at all"
	}
	if near := kit.Nearest(word, known); near != "" && len(word) > 2 {
		return "did you mean " + quoted(near) + "?"
	}
	shown := known[:min(len(known), few)]
	text := "known: " + strings.Join(shown, ", ")
	if len(known) > few {
		text += fmt.Sprintf(" and %d more", len(known)-few)
	}
	return text
}

// item is a path of a list item's key.
func item(list string, i int, key string) string {
	return document.Key(document.Item(list, i), key)
}
