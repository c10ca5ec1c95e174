package plan

import (
	"fmt"
	"strings"

	"softloft/document"
	"softloft/plan/key"
	"softloft/quantity"
	"softloft/source"
)

// crossDefaults lists the defaults that follow from other values.
func crossDefaults(f *File) []key.Default {
	p, b := f.Plan, f.Plan.Box
	var all []key.Default
	add := func(path, value, from string) {
		if !f.Doc.Has(path) {
			all = append(all, key.Default{Key: path, Value: value, Source: from})
		}
	}
	factorDefaults(p, add)
	if r := p.Room; r != nil {
		if r.Size != nil {
			add("room.origin", "middle of the room", "contract")
		}
	}
	hem := Hem(b, f.Kit)
	add("box.clear", pair(b.Size[0]-2*hem, b.Size[1]-2*hem), "box.size less twice the widest hem of the cloths")
	add("box.skirt", "none", "contract")
	add("box.upper", "none", "contract")
	if p.Derive == "none" {
		add("box.leak", "0 m", "contract: derive is none")
	}
	sideDefaults(f, add)
	for i := range p.Lamps {
		add(item("lamps", i, "name"), p.Lamps[i].Title(i+1), "kit and number")
	}
	for i := range p.Stands {
		add(item("stands", i, "name"), p.Stands[i].Title(i+1), "kit and number")
	}
	for _, id := range ids(p.Kit.Lamp) {
		add(document.Key(document.Key("kit.lamp", id), "spread"), "lambertian", "contract")
	}
	if p.Lift != nil {
		add("lift.lines", "all", "contract")
	}
	return all
}

func pair(a, b quantity.Length) string { return "[" + a.String() + ", " + b.String() + "]" }

// sideDefaults lists the sides and skirts that a plan leaves out where it names
// others.
func sideDefaults(f *File, add func(path, value, from string)) {
	for _, keys := range []struct{ path, value string }{{"box.sides", SideWords()[0]}, {"box.skirt", "none"}} {
		_, word := f.Doc.Typed(keys.path)
		if word || !f.Doc.Has(keys.path) || f.Doc.Has(keys.path+".reflectance") {
			continue
		}
		for _, side := range SideNames {
			add(document.Key(keys.path, side), keys.value, "contract")
		}
	}
}

// factorDefaults lists the strictest cited design factors, which hold where the
// plan sets none.
func factorDefaults(p *Plan, add func(path, value, from string)) {
	for _, of := range []struct {
		path  string
		kinds []source.Hardware
	}{
		{"rules.factor.rope", []source.Hardware{source.FiberRope, source.WireRope, source.RoundSling}},
		{"rules.factor.hardware", []source.Hardware{source.Shackle, source.MetalPart, source.Chain}},
	} {
		var values, from []string
		for _, kind := range of.kinds {
			strictest := source.StrictestGeneralFactor
			if p.Rules.PeopleBelow {
				strictest = source.StrictestFactor
			}
			if f, ok := strictest(kind); ok {
				values = append(values, fmt.Sprintf("%g (%s)", f.Value, kind))
				from = append(from, f.Citation.String())
			}
		}
		add(of.path, strings.Join(values, ", "), strings.Join(unique(from), "; "))
	}
}

func unique(texts []string) []string {
	var all []string
	seen := map[string]bool{}
	for _, text := range texts {
		if !seen[text] {
			seen[text] = true
			all = append(all, text)
		}
	}
	return all
}
