package main

import (
	"fmt"

	"softloft/kit"
	"softloft/quantity"
	"softloft/sheet"
)

type kitCommand struct {
	kitFlags
	Kind  string `arg:"" optional:"" help:"Kind of entry: tube, cloth, lamp, rope, …"`
	ID    string `arg:"" optional:"" name:"id" help:"Entry of that kind: prints every value with its source."`
	Units string `help:"feet or metres." enum:"feet,metres" default:"feet"`
}

// Help is printed below the flags.
func (kitCommand) Help() string {
	return "With an entry: every value and where it comes from. A value that says DEMO is invented."
}

// Run lists the kit or describes one entry.
func (c *kitCommand) Run(s *session) error {
	all, err := c.kit(s)
	if err != nil {
		return err
	}
	units := quantity.System(c.Units)
	if c.ID != "" {
		return c.describe(s, all, units)
	}
	rows := all.List(c.Kind, units)
	if len(rows) == 0 {
		return fmt.Errorf("the kit has no entries of kind %q; softloft kit lists all kinds", c.Kind)
	}
	if c.JSON {
		return sheet.Encode(s.out, rows)
	}
	return sheet.KitRows(s.out, rows, sheet.Style{Color: s.color})
}

func (c *kitCommand) describe(s *session, all kit.Kit, units quantity.System) error {
	entry, ok := all.Describe(c.Kind, c.ID, units)
	if !ok {
		return fmt.Errorf("the kit has no %s %q; softloft kit %s lists what there is", c.Kind, c.ID, c.Kind)
	}
	if c.JSON {
		return sheet.Encode(s.out, entry)
	}
	return sheet.KitEntry(s.out, entry, sheet.Style{Color: s.color})
}
