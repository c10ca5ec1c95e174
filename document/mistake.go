package document

import "fmt"

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

// Error returns the place, the value's name, the problem and the hint in one line.
func (m Mistake) Error() string { return m.Place.String() + ": " + m.Problem }

// Mistakes are the mistakes of one document, sorted by place.
type Mistakes []Mistake

// Error returns one line for each mistake.
func (m Mistakes) Error() string { return "" }
