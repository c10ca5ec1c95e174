package kit

import (
	"maps"

	"softloft/document"
)

// filled returns k with the defaults of the keys that nobody gave, as the types' tags
// state them; doc is the kit file from which the entries were read, or nil. A plan fills
// its own entries by the tags, together with the rest of it.
func filled(k Kit, doc *document.Document) Kit {
	given := func(kind, id, key string) bool {
		return doc != nil && doc.Has(document.Key(entryPath("", kind, id), key))
	}
	k.Tube = each(k.Tube, func(_ string, t *Tube) {
		if t.Shape == "" {
			t.Shape = "round"
		}
	})
	k.Crate = each(k.Crate, func(id string, c *Crate) {
		if !given("crate", id, "reflectance") {
			c.Reflectance = 0.04
		}
	})
	k.Lamp = each(k.Lamp, func(id string, l *Lamp) {
		if !given("lamp", id, "power_factor") {
			l.PowerFactor = 1
		}
	})
	k.Pulley = each(k.Pulley, func(_ string, p *Pulley) {
		if p.Rated != nil && p.Kind == "" {
			p.Kind = "WLL"
		}
	})
	for _, set := range k.hardware() {
		*set = each(*set, func(_ string, h *Hardware) {
			if h.Rated != nil && h.Kind == "" {
				h.Kind = "WLL"
			}
		})
	}
	return k
}

// each returns a copy of a set with change made to every entry.
func each[T any](set map[string]T, change func(id string, entry *T)) map[string]T {
	set = maps.Clone(set)
	for id, entry := range set {
		change(id, &entry)
		set[id] = entry
	}
	return set
}

// hardware lists the sets of hardware, in the order of Kinds.
func (k *Kit) hardware() []*map[string]Hardware {
	return []*map[string]Hardware{&k.Arm, &k.Head, &k.Clamp, &k.Shackle, &k.Safety, &k.Webbing, &k.Sling, &k.Corner,
		&k.Tee, &k.Ear, &k.Tie, &k.Retainer, &k.Bag, &k.Cable, &k.Connector, &k.Adapter}
}
