package plan

import (
	"maps"
	"slices"

	"softloft/document"
	"softloft/kit"
	"softloft/photometry"
)

// LampFiles lists the lamp files that the plan's lamps name as their spread, in
// order. Who reads the plan reads them and hands them in.
func (f *File) LampFiles() []string {
	var names []string
	for _, id := range f.lampsUsed() {
		if name := f.Kit.Lamp[id].Spread.File; name != "" {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// lampsUsed lists the ids of the lamps that are or may be placed.
func (f *File) lampsUsed() []string {
	used := map[string]bool{}
	for _, l := range f.Plan.Lamps {
		used[l.Kit] = true
	}
	if p := f.Plan.Provision; p != nil {
		for _, l := range p.Lamps {
			used[l.Kit] = true
		}
	}
	return slices.Sorted(maps.Keys(used))
}

// HandIn gives the plan its lamp files by name, also for plans that come from it by
// Set. A lamp whose file isn't handed in has no spread, so its light is not known.
func (f *File) HandIn(files map[string]*photometry.LampFile) {
	f.lampFiles = files
	lamps := make(map[string]kit.Lamp, len(f.Kit.Lamp))
	for id, lamp := range f.Kit.Lamp {
		if file := files[lamp.Spread.File]; file != nil && lamp.Spread.File != "" {
			lamp = lamp.WithFile(file)
		}
		lamps[id] = lamp
	}
	f.Kit.Lamp = lamps // the map before is the base kit's too
}

// WrongLampFile is the mistake of a lamp file that cannot be read: at the kit entry
// that names it, or at the lamp, where the entry isn't the plan's own.
func (f *File) WrongLampFile(name string, problem error) document.Mistake {
	for _, id := range f.lampsUsed() {
		path := document.Key(document.Key("kit.lamp", id), "spread")
		if f.Kit.Lamp[id].Spread.File == name && f.Doc.Has(path) {
			return document.Mark(f.Doc, path, problem.Error(), "")
		}
	}
	for i, l := range f.Plan.Lamps {
		if f.Kit.Lamp[l.Kit].Spread.File == name {
			return document.Mark(f.Doc, item("lamps", i, "kit"), problem.Error(), "")
		}
	}
	return document.Mark(f.Doc, "lamps", problem.Error(), "")
}
