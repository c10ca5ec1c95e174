package document

// Document is a document that was read: its bytes, and where each value stands in them. It does
// not change; Set returns another one.
type Document struct {
	file string
	data []byte
}

// Read reads data as a document into what into points to, a struct whose fields carry
// tags `key:"name"` or `key:"name,required"`. File names the document in places.
//
// Pointers are optional values; slices, fixed arrays, map[string]T, string, int, float64,
// bool, types with UnmarshalText, string types with Words() []string and types with
// ReadFrom(*Cursor) are read; fields of an embedded struct count as the outer struct's own.
// What the document does not name keeps the value it had.
//
// All mistakes come at once, except that a document which is no YAML has one. The Document is
// nil where there is no tree to look into.
func Read(file string, data []byte, into any) (*Document, Mistakes) { return nil, nil }

// Place returns where the value at path stands, and whether there is one.
func (d *Document) Place(path string) (Place, bool) { return Place{}, false }

// Typed returns the text of the scalar at path as the user typed it, without quotation marks.
func (d *Document) Typed(path string) (string, bool) { return "", false }

// Has tells whether the document has a value at path.
func (d *Document) Has(path string) bool { return false }

// Bytes returns the document as it was read, byte for byte. The caller must not change it.
func (d *Document) Bytes() []byte { return d.data }

// Set returns a document in which the scalar or flow value at path is text, which is YAML as one
// would type it after the colon. Every other byte stays. A key that is absent from an existing mapping is
// added as the mapping's last. Quote turns any string into such a text.
func (d *Document) Set(path, text string) (*Document, error) { return nil, nil }

// Mark makes a mistake at the place of path, or of its nearest parent that exists: for
// what is found wrong after reading.
func Mark(d *Document, path, problem, hint string) Mistake { return Mistake{} }

// Quote returns text as a YAML scalar on one line, in double quotation marks where it needs them.
func Quote(text string) string { return "" }

// Key returns the path of the value under key in the mapping at path.
func Key(path, key string) string { return "" }

// Item returns the path of the list item at index, from 0, in the list at path.
func Item(path string, index int) string { return "" }
