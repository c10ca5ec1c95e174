package key

import "softloft/document"

// Unused is a key of the document that no analysis uses yet.
type Unused struct {
	Key   string
	Place document.Place
	Why   string // what is to use it one day
}

// ListUnused lists the keys of the document that no analysis uses yet. Of a key in a key only the outer one is
// listed.
func ListUnused(doc *document.Document, into any) []Unused {
	var all []Unused
	inside := map[string]bool{}
	Walk(doc, into, func(v Value) {
		if inside[v.Outer] {
			inside[v.Path] = true
			return
		}
		if v.Field.Unused == "" || !v.Present {
			return
		}
		inside[v.Path] = true
		at, _ := doc.Place(v.Path)
		all = append(all, Unused{v.Path, at, v.Field.Unused})
	})
	return all
}
