package plan

import (
	"slices"

	"softloft/kit"
)

// entries checks the plan's own kit entries as what they become: part of the kit.
func (c *checker) entries() {
	for _, m := range kit.Marked(c.Kit.Check(c.Plan.Kit), c.Doc, "kit") {
		c.wrong(m.Path, m.Problem, m.Hint)
	}
}

// suspenders lists what a line, a drop or a secondary may be made of.
func (c *checker) suspenders() []string {
	all := slices.Concat(ids(c.Kit.Rope), ids(c.Kit.Sling), ids(c.Kit.Webbing), ids(c.Kit.Safety))
	slices.Sort(all)
	return all
}

func ids[T any](set map[string]T) []string { return kit.IDs(set) }
