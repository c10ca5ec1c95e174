package kit

import (
	"maps"

	"softloft/document"
)

// Filled returns k with the defaults of the keys that nobody gave, as the types'
// tags state them. The entries were read from doc, where they stand under the path
// under: "" in a kit file, "kit" in a plan. A nil doc gives no key.
func Filled(k Kit, doc *document.Document, under string) Kit {
	given := func(kind, id, key string) bool {
		return doc != nil && doc.Has(document.Key(entryPath(under, kind, id), key))
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
	k.Pulley = each(k.Pulley, func(_ string, p *Pulley) { p.Kind = orWLL(p.Kind) })
	for _, set := range k.hardware() {
		*set = each(*set, func(_ string, h *Hardware) { h.Kind = orWLL(h.Kind) })
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

func orWLL(kind RatingKind) RatingKind {
	if kind == "" {
		return "WLL"
	}
	return kind
}

// hardware lists the sets of hardware, in the order of Kinds.
func (k *Kit) hardware() []*map[string]Hardware {
	return []*map[string]Hardware{&k.Arm, &k.Head, &k.Clamp, &k.Shackle, &k.Safety, &k.Webbing, &k.Sling, &k.Corner,
		&k.Tee, &k.Ear, &k.Tie, &k.Retainer, &k.Bag, &k.Cable, &k.Connector, &k.Adapter}
}
