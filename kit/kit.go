package kit

import (
	"fmt"
	"maps"
	"slices"
)

// Kit is a set of entries by kind and id. The zero Kit is empty.
type Kit struct {
	Alloy     map[string]Alloy    `key:"alloy"`
	Tube      map[string]Tube     `key:"tube"`
	Cloth     map[string]Cloth    `key:"cloth"`
	Crate     map[string]Crate    `key:"crate"`
	Wrap      map[string]Wrap     `key:"wrap"`
	Lamp      map[string]Lamp     `key:"lamp"`
	Rope      map[string]Rope     `key:"rope"`
	Pulley    map[string]Pulley   `key:"pulley"`
	Stand     map[string]Stand    `key:"stand"`
	Arm       map[string]Hardware `key:"arm"`
	Head      map[string]Hardware `key:"head"`
	Clamp     map[string]Hardware `key:"clamp"`
	Shackle   map[string]Hardware `key:"shackle"`
	Safety    map[string]Hardware `key:"safety"`
	Webbing   map[string]Hardware `key:"webbing"`
	Sling     map[string]Hardware `key:"sling"`
	Corner    map[string]Hardware `key:"corner"`
	Tee       map[string]Hardware `key:"tee"`
	Ear       map[string]Hardware `key:"ear"`
	Tie       map[string]Hardware `key:"tie"`
	Retainer  map[string]Hardware `key:"retainer"`
	Bag       map[string]Hardware `key:"bag"`
	Cable     map[string]Hardware `key:"cable"`
	Connector map[string]Hardware `key:"connector"`
	Adapter   map[string]Hardware `key:"adapter"`
}

// With returns the kit with more's entries added; an entry of more replaces the
// one with the same kind and id.
func (k Kit) With(more Kit) Kit {
	return Kit{
		Alloy: over(k.Alloy, more.Alloy), Tube: over(k.Tube, more.Tube),
		Cloth: over(k.Cloth, more.Cloth), Crate: over(k.Crate, more.Crate),
		Wrap: over(k.Wrap, more.Wrap), Lamp: over(k.Lamp, more.Lamp),
		Rope: over(k.Rope, more.Rope), Pulley: over(k.Pulley, more.Pulley),
		Stand: over(k.Stand, more.Stand), Arm: over(k.Arm, more.Arm),
		Head: over(k.Head, more.Head), Clamp: over(k.Clamp, more.Clamp),
		Shackle: over(k.Shackle, more.Shackle), Safety: over(k.Safety, more.Safety),
		Webbing: over(k.Webbing, more.Webbing), Sling: over(k.Sling, more.Sling),
		Corner: over(k.Corner, more.Corner), Tee: over(k.Tee, more.Tee),
		Ear: over(k.Ear, more.Ear), Tie: over(k.Tie, more.Tie),
		Retainer: over(k.Retainer, more.Retainer), Bag: over(k.Bag, more.Bag),
		Cable: over(k.Cable, more.Cable), Connector: over(k.Connector, more.Connector),
		Adapter: over(k.Adapter, more.Adapter),
	}
}

func over[T any](base, more map[string]T) map[string]T {
	all := make(map[string]T, len(base)+len(more))
	maps.Copy(all, base)
	maps.Copy(all, more)
	return all
}

// Suspender is what a line, a drop or a secondary is made of, from whichever kind
// names it. Breaking is true where Rated is the load at which it breaks.
type Suspender struct {
	Kind, ID string
	Entry    Entry
	Hardware Hardware
	Rope     *Rope
}

// Suspender finds a rope, sling, webbing or safety by its id.
func (k Kit) Suspender(id string) (Suspender, bool) {
	if rope, ok := k.Rope[id]; ok {
		return Suspender{Kind: "rope", ID: id, Entry: rope.Entry, Rope: &rope}, true
	}
	for _, from := range []struct {
		kind string
		set  map[string]Hardware
	}{{"sling", k.Sling}, {"webbing", k.Webbing}, {"safety", k.Safety}} {
		if piece, ok := from.set[id]; ok {
			return Suspender{Kind: from.kind, ID: id, Entry: piece.Entry, Hardware: piece}, true
		}
	}
	return Suspender{}, false
}

// IDs lists the ids of a set in order.
func IDs[T any](set map[string]T) []string { return slices.Sorted(maps.Keys(set)) }

// Label is the name a crew reads: the entry's name, else its id.
func (e Entry) Label(id string) string {
	if e.Name != "" {
		return e.Name
	}
	return fmt.Sprint(id)
}
