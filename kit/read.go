package kit

import (
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"

	"softloft/document"
)

// Read reads a kit file and returns its own entries, defaults filled in. They are
// checked as what they become: part of base, which they extend and override. All
// mistakes come at once, each with its place.
func Read(file string, data []byte, base Kit) (Kit, document.Mistakes) {
	one := parse(file, data)
	return one.own, one.all(base.With(one.own))
}

// ReadFolder reads every .yaml file of a folder, in the order of their names, and
// returns base with their entries: a later file overrides an earlier one. Files may
// name each other's entries. Folders in it and files of another ending are left alone.
func ReadFolder(folder fs.FS, base Kit) (Kit, document.Mistakes) {
	entries, err := fs.ReadDir(folder, ".")
	if err != nil {
		return base, document.Mistakes{whole(".", err)}
	}
	var files []parsed
	merged := base
	for _, entry := range entries {
		if entry.IsDir() || !strings.HasSuffix(entry.Name(), ".yaml") {
			continue
		}
		one := load(folder, entry.Name())
		merged = merged.With(one.own)
		files = append(files, one)
	}
	var mistakes document.Mistakes
	for _, one := range files {
		mistakes = append(mistakes, one.all(merged)...)
	}
	return merged, mistakes
}

// parsed is a kit file that was read and not checked yet. doc is nil where there
// is nothing to look into.
type parsed struct {
	own      Kit
	doc      *document.Document
	mistakes document.Mistakes
}

func parse(file string, data []byte) parsed {
	var one parsed
	one.doc, one.mistakes = document.Read(file, data, &one.own)
	one.own = filled(one.own, one.doc)
	return one
}

// tooLong is one byte more than any document may have: enough for document.Read to
// refuse a file without all of it in memory.
const tooLong = 16 << 20

func load(folder fs.FS, name string) parsed {
	file, err := folder.Open(name)
	if err != nil {
		return parsed{mistakes: document.Mistakes{whole(name, err)}}
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, tooLong))
	if err != nil {
		return parsed{mistakes: document.Mistakes{whole(name, err)}}
	}
	return parse(name, data)
}

// whole is a mistake of a whole file.
func whole(file string, err error) document.Mistake {
	return document.Mistake{Place: document.Place{File: file}, Problem: fmt.Sprintf("can't be read: %v", err)}
}

// all returns the file's mistakes of reading and of checking, sorted by place.
func (p parsed) all(merged Kit) document.Mistakes {
	return byPlace(slices.Concat(p.mistakes, p.check(merged)))
}

// check finds what is wrong with the file's entries as part of merged. An entry
// that could not be read in full isn't checked: its mistakes are told already.
func (p parsed) check(merged Kit) document.Mistakes {
	if p.doc == nil {
		return nil
	}
	var faults []Fault
	for _, f := range merged.Check(p.own) {
		unread := slices.ContainsFunc(p.mistakes, func(m document.Mistake) bool { return within(m.Path, entryPath("", f.Kind, f.ID)) })
		if !unread {
			faults = append(faults, f)
		}
	}
	return Marked(faults, p.doc, "")
}

// within reports whether path is parent or lies under it.
func within(path, parent string) bool {
	rest, ok := strings.CutPrefix(path, parent)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}
