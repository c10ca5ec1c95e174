package plan

import (
	"errors"
	"strconv"
	"strings"

	"softloft/document"
)

// Set returns the plan with the value under key changed to text, which is YAML as
// one would type it after the colon; comments and every other byte stay. Key is a
// path such as box.trim or lamps[0].level; a mapping that isn't there yet is added
// around it. The error is of type document.Mistakes where the changed plan has
// mistakes.
func (f *File) Set(key, text string) (*File, error) {
	doc, err := set(f.Doc, key, text)
	if err != nil {
		return nil, err
	}
	changed, mistakes := Read(f.name, doc.Bytes(), f.base)
	if len(mistakes) > 0 {
		return nil, mistakes
	}
	if f.lampFiles != nil {
		changed.HandIn(f.lampFiles)
	}
	return changed, nil
}

// set changes a value, or adds the mappings around it that are missing.
func set(doc *document.Document, path, text string) (*document.Document, error) {
	for {
		outer, name := cut(path)
		if outer == "" || doc.Has(path) || doc.Has(outer) {
			return doc.Set(path, text)
		}
		if name == "" {
			return nil, errors.New("there is no " + outer + " to change in the plan; add the list item in the file")
		}
		path, text = outer, "{"+document.Quote(name)+": "+text+"}"
	}
}

// cut parts a path at its last key; name is empty where the path ends in a list
// item.
func cut(path string) (outer, name string) {
	if strings.HasSuffix(path, "]") && !strings.HasSuffix(path, `"]`) {
		return path[:strings.LastIndexByte(path, '[')], ""
	}
	if strings.HasSuffix(path, `"]`) {
		open := strings.LastIndex(path, `["`)
		if open < 0 {
			return "", path
		}
		name, err := strconv.Unquote(path[open+1 : len(path)-1])
		if err != nil {
			return "", path
		}
		return path[:open], name
	}
	dot := strings.LastIndexByte(path, '.')
	return path[:max(dot, 0)], path[dot+1:]
}
