package kit

import (
	"maps"
	"slices"
)

// Kit is a set of entries by kind and id. The zero Kit is empty. Its maps are
// shared by copies and must not be written to.
type Kit struct {
	Alloy     map[string]Alloy    `key:"alloy" doc:"what tubes are made of"`
	Tube      map[string]Tube     `key:"tube" doc:"frame members: stock that is cut or taken from the shelf"`
	Cloth     map[string]Cloth    `key:"cloth" doc:"diffusion"`
	Crate     map[string]Crate    `key:"crate" doc:"egg-crates under the cloth"`
	Wrap      map[string]Wrap     `key:"wrap" doc:"cloth of sides, roof and skirts"`
	Lamp      map[string]Lamp     `key:"lamp" doc:"heads with their opening"`
	Rope      map[string]Rope     `key:"rope" doc:"fiber ropes and wires that lines are made of"`
	Pulley    map[string]Pulley   `key:"pulley" doc:"blocks that turn a line to its haul side"`
	Stand     map[string]Stand    `key:"stand" doc:"what stands on the floor"`
	Arm       map[string]Hardware `key:"arm" doc:"arms that reach from a stand's top"`
	Head      map[string]Hardware `key:"head" doc:"heads that hold an arm or a pin"`
	Clamp     map[string]Hardware `key:"clamp" doc:"clamps on beams, pipe grids and tubes"`
	Shackle   map[string]Hardware `key:"shackle" doc:"shackles between a line and what it holds"`
	Safety    map[string]Hardware `key:"safety" doc:"the second means that catches a lamp"`
	Webbing   map[string]Hardware `key:"webbing" doc:"straps"`
	Sling     map[string]Hardware `key:"sling" doc:"slings and chain for drops"`
	Corner    map[string]Hardware `key:"corner" doc:"fittings that join two tubes at a corner"`
	Tee       map[string]Hardware `key:"tee" doc:"fittings that join a tube's end to another's middle"`
	Ear       map[string]Hardware `key:"ear" doc:"ears by which stands hold a frame"`
	Tie       map[string]Hardware `key:"tie" doc:"ties between cloth and frame"`
	Retainer  map[string]Hardware `key:"retainer" doc:"what keeps a pin in its receiver"`
	Bag       map[string]Hardware `key:"bag" doc:"weights on stands"`
	Cable     map[string]Hardware `key:"cable" doc:"power and control cable"`
	Connector map[string]Hardware `key:"connector" doc:"what joins cables"`
	Adapter   map[string]Hardware `key:"adapter" doc:"from one pin or receiver to another"`
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
// names it. Rope is nil where a sling, webbing or safety was found; Hardware then
// has its properties.
type Suspender struct {
	Kind, ID string
	Entry    Entry
	Hardware Hardware
	Rope     *Rope
}

// Suspender finds a rope, sling, webbing or safety by its id. Check refuses an id
// that two of these kinds use.
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
