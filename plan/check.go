package plan

import (
	"fmt"
	"strings"

	"softloft/document"
	"softloft/quantity"
)

// check finds what is wrong with a plan that was read. Reading is what reading
// found: a value that could not be read is not complained of again.
func check(f *File, reading document.Mistakes) document.Mistakes {
	c := &checker{File: f, unread: map[string]bool{}}
	for _, m := range reading {
		c.unread[m.Path] = true
	}
	delete(c.unread, "")
	if c.lists(); len(c.found) > 0 {
		return c.found // the other checks would take long
	}
	c.version()
	c.numbers()
	c.entries()
	c.rules()
	c.room()
	c.action()
	c.want()
	c.box()
	c.lamps()
	c.hang()
	c.stands()
	c.supply()
	c.probes()
	return c.found
}

type checker struct {
	*File
	unread map[string]bool // paths that reading complained of
	found  document.Mistakes
}

func (c *checker) version() {
	if c.Doc.Has("softloft") && c.Plan.Softloft != Version {
		c.wrong("softloft", fmt.Sprintf("version %d of the plan file", c.Plan.Softloft), fmt.Sprintf("this softloft reads version %d", Version))
	}
}

// mostTold is how many mistakes are told at once.
const mostTold = 1000

// wrong tells a mistake at a path, unless reading has complained of that value.
func (c *checker) wrong(path, problem, hint string) {
	if len(c.found) < mostTold && !c.spoiled(path) {
		c.found = append(c.found, document.Mark(c.Doc, path, problem, hint))
	}
}

// spoiled tells whether a value, or one around it or in it, could not be read.
func (c *checker) spoiled(path string) bool {
	for at := path; at != ""; at, _ = cut(at) {
		if c.unread[at] {
			return true
		}
	}
	for at := range c.unread {
		if strings.HasPrefix(at, path+"[") {
			return true
		}
	}
	return false
}

// typed returns what the user typed at a path, fit for a sentence.
func (c *checker) typed(path string) string {
	text, _ := c.Doc.Typed(path)
	if runes := []rune(text); len(runes) > 60 {
		return string(runes[:60]) + "…"
	}
	return text
}

// length prints a length that was worked out, in the units of the sheets.
func (c *checker) length(x float64) string { return c.Plan.Sheet.Units.Length(quantity.Length(x)) }
