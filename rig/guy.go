package rig

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
)

// guys places the ropes that hold box or stands against the wind, from the box or a
// stand's top to where they are made fast.
func (d *deriver) guys() {
	if d.Plan.Hang == nil {
		return
	}
	for i := range d.Plan.Hang.Guys {
		d.guy(&d.Plan.Hang.Guys[i], i)
	}
}

func (d *deriver) guy(g *plan.Guy, i int) {
	path := fmt.Sprintf("hang.guys[%d]", i)
	from, holder, ok := d.guyFrom(g)
	id := first(g.Rope, d.Plan.Hang.Rope)
	piece, okRope := d.Kit.Suspender(id)
	if !ok || !okRope {
		d.notPlaced(fmt.Sprintf("guy %d", i+1), "it has no rope, or it holds nothing that is placed")
		return
	}
	to := r3.Vec{X: float64(g.To[0]), Y: float64(g.To[1]), Z: float64(g.To[2])}
	length := r3.Norm(r3.Sub(to, from)) + d.guyEnds()
	p := Part{ID: fmt.Sprintf("guy.%d", i+1), What: "guy", Name: piece.Entry.Label(id), KitKind: piece.Kind, KitID: id, Body: "guys",
		InRoom: true, Demo: piece.Entry.Source.Demo("mass"), Center: r3.Scale(0.5, r3.Add(from, to)), From: &from, To: &to, Length: length,
		Path: path, Why: fmt.Sprintf("holds %s against the wind, %.3f m with its knots: %s", holder, length, path)}
	p.Mass, p.MassFrom = suspenderMass(piece, length)
	if p.Mass == nil {
		d.add(p)
		return
	}
	d.onFloor(p)
}

// guyEnds is the rope for a guy's two knots; none with derive: none.
func (d *deriver) guyEnds() float64 {
	if !d.all() {
		return 0
	}
	return 2 * perKnot
}

// guyFrom returns where a guy holds, in the room: a corner, a place in box axes, or
// the top of a stand.
func (d *deriver) guyFrom(g *plan.Guy) (r3.Vec, string, bool) {
	for i := range d.Stands {
		if g.From.Name != "" && d.Stands[i].Name == g.From.Name {
			return d.Stands[i].Top(), "stand " + g.From.Name, true
		}
	}
	if g.From.Name != "" && !contains(plan.CornerNames[:], g.From.Name) {
		return r3.Vec{}, "", false
	}
	at := d.attachment(plan.From{Corner: g.From.Name, At: g.From.At, Deep: g.From.Deep})
	return d.Pose.Out(at), "the box", true
}
