package rig

import (
	"fmt"
	"math"

	"softloft/kit"
	"softloft/plan"
)

// grommetSpacing is the distance between a cloth's grommets in m: 18 in, common
// practice from memory, 12 to 18 in.
const grommetSpacing = 18 * 0.0254

// ties places one tie at each grommet of each cloth, along the four sides of the
// bottom frame. A side's ties weigh evenly along its tube.
func (d *deriver) ties() {
	ids := kit.IDs(d.Kit.Tie)
	switch {
	case len(d.box.Cloth) == 0:
		return
	case !d.all():
		d.notPlaced("cloth ties", "derive: none; the plan names no tie")
		return
	case len(ids) == 0:
		d.notPlaced("cloth ties", "the kit has no tie")
		return
	}
	if _, ok := d.Rig.Tube("frame.north"); !ok {
		d.notPlaced("cloth ties", "no bottom frame is placed")
		return
	}
	for i := range d.box.Cloth {
		for _, side := range plan.SideNames {
			d.sideTies(i, side, ids[0])
		}
	}
}

// sideTies places the ties of one side. A corner's tie counts with the side that it
// begins.
func (d *deriver) sideTies(cloth int, side, id string) {
	entry := d.Kit.Tie[id]
	tube, _ := d.Rig.Tube("frame." + side)
	length := lengthOf(tube)
	count := max(1, int(math.Ceil(length/grommetSpacing-1e-9)))
	for k := range count {
		at := nearest(tube.From, tube.To, tube.From)
		f := float64(k) / float64(count)
		at.X += f * (tube.To.X - tube.From.X)
		at.Y += f * (tube.To.Y - tube.From.Y)
		p := Part{ID: fmt.Sprintf("cloth.%d.tie.%s.%d", cloth+1, side, k+1), What: "tie", Name: entry.Label(id), KitKind: "tie", KitID: id,
			Body: tube.Body, Demo: entry.Source.Demo("mass"), Center: at, Joined: []string{fmt.Sprintf("cloth.%d", cloth+1)},
			Why: fmt.Sprintf("tie %d of %d on the %s side: a grommet every 18 in at most, common practice", k+1, count, side), Path: fmt.Sprintf("box.cloth[%d]", cloth)}
		p.Mass, p.MassFrom = pieceMass(entry, 0)
		d.add(p)
		if p.Mass != nil {
			d.hangOnSide("frame", side, p.ID, *p.Mass)
		}
	}
}
