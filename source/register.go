package source

import (
	"slices"
	"strings"
)

// register holds all publications sorted by id. It is built once and never
// written to.
var register = sorted(own, rigging, stage, rope, structure, wind, light, power)

func sorted(topics ...[]Publication) []Publication {
	all := slices.Concat(topics...)
	slices.SortFunc(all, func(a, b Publication) int { return strings.Compare(string(a.ID), string(b.ID)) })
	return all
}

// Lookup finds a publication by its id.
func Lookup(id ID) (Publication, bool) {
	i, found := slices.BinarySearchFunc(register, id, func(p Publication, id ID) int {
		return strings.Compare(string(p.ID), string(id))
	})
	if !found {
		return Publication{}, false
	}
	return register[i], true
}

// All lists the register, sorted by id. The slice is the caller's own.
func All() []Publication { return slices.Clone(register) }

// What a Note says of a publication that was not read in the original.
const (
	memory    = "from memory"
	titleOnly = "only the title was read"
	titleFrom = "title from memory"
)
