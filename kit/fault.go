package kit

import (
	"cmp"
	"slices"

	"softloft/document"
)

// Fault is something wrong with an entry that could be read.
type Fault struct {
	Kind, ID string
	Key      string // such as wall, forward.part or rated[0].at; "" for the whole entry
	Problem  string // in lowercase, no full stop
	Hint     string // what would be right
}

// Path returns where the fault's value stands in a document whose kinds stand under
// the path under: "" in a kit file, "kit" in a plan.
func (f Fault) Path(under string) string {
	path := entryPath(under, f.Kind, f.ID)
	if f.Key == "" {
		return path
	}
	return path + "." + f.Key
}

func entryPath(under, kind, id string) string {
	return document.Key(document.Key(under, kind), id)
}

// Marked gives faults their places in the document from which the entries were
// read, under the path under (see Fault.Path).
func Marked(faults []Fault, doc *document.Document, under string) document.Mistakes {
	var mistakes document.Mistakes
	for _, f := range faults {
		mistakes = append(mistakes, document.Mark(doc, f.Path(under), f.Problem, f.Hint))
	}
	return byPlace(mistakes)
}

func byPlace(mistakes document.Mistakes) document.Mistakes {
	slices.SortStableFunc(mistakes, func(a, b document.Mistake) int {
		return cmp.Or(cmp.Compare(a.Place.Line, b.Place.Line), cmp.Compare(a.Place.Column, b.Place.Column))
	})
	return mistakes
}
