package document

import (
	"strings"

	"go.yaml.in/yaml/v4"
)

// Document is a document that was read: its bytes, and where each value stands in them. It does
// not change; Set returns another one.
type Document struct {
	file string
	data []byte
	text string     // data without a byte order mark
	line []int      // where each line begins in text
	root *yaml.Node // the top mapping
}

// Read reads data as a document into what into points to, a struct whose fields carry
// tags `key:"name"` or `key:"name,required"`. File names the document in places.
//
// Pointers are optional values; slices, fixed arrays, map[string]T, string, integers, float64,
// bool, types with UnmarshalText, string types with Words() []string and types with
// ReadFrom(*Cursor) are read; fields of an embedded struct count as the outer struct's own.
// What the document does not name keeps the value it had.
//
// All mistakes come at once, the first 1000 of them, except that a document which is no YAML has one. The
// Document is nil where there is no tree to look into.
func Read(file string, data []byte, into any) (*Document, Mistakes) {
	d, mistake := open(file, data)
	if mistake != nil {
		return nil, Mistakes{*mistake}
	}
	r := newReader(d, into)
	if top := r.target(into); top.IsValid() {
		r.inspect(d.root, "", 1)
		r.read(spot{value: d.root}, top)
	}
	return d, r.mistakes.Sort()
}

// open parses data into a document with a tree.
func open(file string, data []byte) (*Document, *Mistake) {
	d := &Document{file: file, data: data, text: strings.TrimPrefix(string(data), byteOrderMark)}
	d.line = lineStarts(d.text)
	if mistake := d.refuseBytes(); mistake != nil {
		return nil, mistake
	}
	if mistake := d.parse(); mistake != nil {
		return nil, mistake
	}
	return d, nil
}

// Place returns where the value at path stands, and whether there is one.
func (d *Document) Place(path string) (Place, bool) {
	at, _, ok := d.find(path)
	if !ok {
		return Place{File: d.file}, false
	}
	return d.place(at.value), true
}

// Typed returns the text of the scalar at path as the user typed it, without quotation marks.
func (d *Document) Typed(path string) (string, bool) {
	at, _, ok := d.find(path)
	if !ok || at.value.Kind != yaml.ScalarNode {
		return "", false
	}
	return at.value.Value, true
}

// Has tells whether the document has a value at path.
func (d *Document) Has(path string) bool {
	_, _, ok := d.find(path)
	return ok
}

// Bytes returns the document as it was read, byte for byte. The caller must not change it.
func (d *Document) Bytes() []byte { return d.data }

// File returns the name that places carry.
func (d *Document) File() string { return d.file }

// Mark makes a mistake at the place of path, or of its nearest parent that exists, for
// what is found wrong after reading. A nil document gives a mistake without a place.
func Mark(d *Document, path, problem, hint string) Mistake {
	mistake := Mistake{Path: path, Problem: problem, Hint: hint}
	if d == nil {
		return mistake
	}
	at, _, ok := d.find(path)
	node := at.value
	if !ok {
		node = at.anchor()
	}
	mistake.Place = d.place(node)
	mistake.Text = d.lineText(mistake.Place.Line)
	return mistake
}

// place returns where node stands.
func (d *Document) place(node *yaml.Node) Place { return Place{d.file, node.Line, node.Column} }

// at makes a mistake at a line and a column.
func (d *Document) at(line, column int, path, problem, hint string) *Mistake {
	return &Mistake{Place{d.file, line, column}, path, problem, hint, d.lineText(line)}
}
