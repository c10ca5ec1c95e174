package kit

import (
	"fmt"
	"slices"
	"strings"
)

// Check finds what is wrong with the entries of own, which are part of k: k is a base
// with own (Kit.With), so that an entry of own may name another of either. It serves
// kit files and a plan's own entries alike and knows no places; Marked gives a fault
// its place in the document. Faults come by kind and id in order.
//
// It asks for sizes over 0, shares between 0 and 1, a wall that leaves a bore, shares
// of a cloth that come to 1 at most, a known alloy, known tubes in a corner's fits, and
// ids that are not used twice among what a line may be made of. It doesn't ask for
// sources, masses or ratings: what nobody gave is not known, and that is no mistake.
func (k Kit) Check(own Kit) []Fault {
	c := &checker{kit: k}
	for _, it := range own.items("") {
		c.item = it
		c.name()
		c.sources()
		c.entry()
	}
	return c.faults
}

// checker gathers the faults of the item at which it stands.
type checker struct {
	kit    Kit
	item   item
	faults []Fault
}

func (c *checker) wrong(key, problem, hint string) {
	c.faults = append(c.faults, Fault{Kind: c.item.Kind, ID: c.item.ID, Key: key, Problem: problem, Hint: hint})
}

// name refuses ids that nobody could type in a plan, and ids that would leave it
// open which of two entries a line is made of.
func (c *checker) name() {
	id := c.item.ID
	if strings.TrimSpace(id) != id || id == "" || len(id) > 80 || strings.ContainsFunc(id, unprintable) {
		c.wrong("", fmt.Sprintf("%q is no id", id), "a short word such as pipe-1-1/2, without blanks around it")
	}
	kinds := []string{"rope", "sling", "webbing", "safety"}
	if !slices.Contains(kinds, c.item.Kind) {
		return
	}
	for _, kind := range kinds {
		if _, ok := c.kit.item(kind, id); ok && kind != c.item.Kind {
			c.wrong("", fmt.Sprintf("%q is a %s as well, so a line's rope could be either", id, kind), "an id that no rope, sling, webbing or safety has")
		}
	}
}

func unprintable(r rune) bool { return r < ' ' || r == 0x7f }

// sources refuses a source for a key that the entry doesn't have: a typing error
// would leave a value without its source.
func (c *checker) sources() {
	values := properties(c.item.Value)
	for _, key := range IDs(c.item.Entry.Source.Each) {
		if !has(values, key) && key != "kind" {
			c.wrong("source", fmt.Sprintf("a source for %q, which this entry doesn't have", key), "keys of the entry that have a value, or all for the rest")
		}
	}
}

// entry checks what belongs to the item's kind.
func (c *checker) entry() {
	switch e := c.item.Value.(type) {
	case Alloy:
		c.alloy(e)
	case Tube:
		c.tube(e)
	case Cloth:
		c.cloth(e)
	case Crate:
		c.crate(e)
	case Wrap:
		c.wrap(e)
	case Lamp:
		c.lamp(e)
	case Rope:
		c.rope(e)
	case Pulley:
		c.pulley(e)
	case Stand:
		c.stand(e)
	case Hardware:
		c.hardware(e)
	}
}
