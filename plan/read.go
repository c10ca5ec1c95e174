package plan

import (
	"softloft/document"
	"softloft/kit"
	"softloft/photometry"
	"softloft/plan/key"
)

// File is a plan that was read, filled with defaults and found without a mistake.
type File struct {
	Plan     *Plan
	Doc      *document.Document
	Kit      kit.Kit       // the base kit with the plan's own entries
	Defaults []key.Default // what the user did not type
	Unused   []key.Unused  // keys that no analysis uses yet

	name      string
	base      kit.Kit
	lampFiles map[string]*photometry.LampFile // as they were handed in
}

// Read reads a plan. File names it in places; base is the kit that the plan's own
// entries extend. All mistakes come at once, sorted by place; the File is nil where
// there is one.
func Read(file string, data []byte, base kit.Kit) (*File, document.Mistakes) {
	p := &Plan{}
	doc, mistakes := document.Read(file, data, p)
	if doc == nil {
		return nil, mistakes
	}
	if len(mistakes) >= mostTold {
		return nil, mistakes
	}
	if len(mistakes) > 0 {
		p = &Plan{}
		key.ReadWhatCan(file, data, p)
	}
	f := &File{Plan: p, Doc: doc, name: file, base: base}
	var err error
	if f.Defaults, err = key.Fill(doc, p); err != nil {
		return nil, append(mistakes, document.Mark(doc, "", err.Error(), "this is a fault of softloft, not of the plan"))
	}
	f.Unused = key.ListUnused(doc, p)
	f.Kit = base.With(p.Kit)
	mistakes = append(mistakes, check(f, mistakes)...)
	if len(mistakes) > 0 {
		return nil, mistakes.Sort()
	}
	f.Defaults = append(f.Defaults, crossDefaults(f)...)
	return f, nil
}
