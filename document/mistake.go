package document

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Place is where something stands in a file. Line and Column count from 1, Column in
// characters; both are 0 where the place is the whole file.
type Place struct {
	File         string
	Line, Column int
}

// String returns file:line:column, or the file alone where there is no line.
func (p Place) String() string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// Mistake is something wrong in a document.
type Mistake struct {
	Place   Place
	Path    string // path of the value, such as box.trim; empty for the whole document
	Problem string // what is wrong, in lowercase, no full stop
	Hint    string // what would be right; may be empty
	Text    string // text of the line at Place, at most 400 bytes
}

// Error returns the place, the value's name, the problem and the hint in one line:
//
//	plan.yaml:6:9: trim: bare number 14, a length needs its unit; write 14 ft or 4.27 m
func (m Mistake) Error() string {
	var out strings.Builder
	out.WriteString(m.Place.String())
	if name := label(m.Path); name != "" {
		out.WriteString(": " + name)
	}
	out.WriteString(": " + m.Problem)
	switch {
	case m.Hint == "":
	case strings.HasPrefix(m.Hint, "such as "):
		out.WriteString(", " + m.Hint)
	default:
		out.WriteString("; " + m.Hint)
	}
	return out.String()
}

// Mistakes are the mistakes of one document, sorted by place. No mistakes are nil; use
// Err where an error is due.
type Mistakes []Mistake

// Error returns one line for each mistake.
func (m Mistakes) Error() string {
	lines := make([]string, len(m))
	for i, one := range m {
		lines[i] = one.Error()
	}
	return strings.Join(lines, "\n")
}

// Err returns the mistakes as an error, nil where there are none.
func (m Mistakes) Err() error {
	if len(m) == 0 {
		return nil
	}
	return m
}

// Sort puts the mistakes in the order of their places and drops those that are told twice.
func (m Mistakes) Sort() Mistakes {
	slices.SortStableFunc(m, func(a, b Mistake) int {
		return cmp.Or(cmp.Compare(a.Place.File, b.Place.File), cmp.Compare(a.Place.Line, b.Place.Line), cmp.Compare(a.Place.Column, b.Place.Column))
	})
	return slices.Compact(m)
}
