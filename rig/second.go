package rig

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/plan"
	"softloft/quantity"
)

// Second is the second means beside one line: it catches the box there when the line
// lets go. Part is empty where none is placed.
type Second struct {
	Part  string
	Line  string
	Slack float64
	At    r3.Vec // of the box, in box axes
	Top   r3.Vec // in the room
}

// caughtOver is the rating over a lamp's weight that a safety needs: twice the weight,
// because that is what it gets when the mount lets go all at once with no slack, and twice
// that, because only half of a working load limit counts over people (DGUV Information
// 215-313, 1.4).
const caughtOver = 4

// lampSafety places the second means that catches a lamp: the plan's, else the
// lightest of the kit that is rated to catch the lamp.
func (d *deriver) lampSafety(l *plan.Lamp, lamp Part, w Weight) {
	hang := d.Plan.Hang
	named := hang != nil && hang.Safety != nil
	if !named && !d.all() || w.Elsewhere && !d.all() {
		return
	}
	var piece kit.Suspender
	why, path := "catches "+lamp.Name+": hang.safety", "hang.safety"
	if named {
		piece, _ = d.Kit.Suspender(hang.Safety.Kit)
	} else {
		id, entry, ok := "", kit.Hardware{}, false
		if lamp.Mass != nil {
			id, entry, ok = lightest(d.Kit.Safety, caughtOver*(*lamp.Mass)*float64(quantity.StandardGravity))
		}
		if !ok {
			d.notPlaced("safety of "+lamp.ID, "the plan names none (hang.safety), and the kit has none that is rated to catch its weight")
			return
		}
		piece = kit.Suspender{Kind: "safety", ID: id, Entry: entry.Entry, Hardware: entry}
		why, path = "catches "+lamp.Name+": every lamp over people has a second means, common practice", lamp.Path
	}
	p := Part{ID: lamp.ID + ".safety", What: "safety", Name: piece.Entry.Label(piece.ID), KitKind: piece.Kind, KitID: piece.ID,
		Body: lamp.Body, Demo: piece.Entry.Source.Demo("mass"), Center: w.Station, Joined: []string{lamp.ID}, Why: why, Path: path}
	if w.OnTube == "" {
		p.Center = w.Center
	}
	if m, ok := piece.Hardware.Mass.Of(1); ok {
		p.Mass, p.MassFrom = mass(float64(m)), "kit"
	}
	d.weigh(p, w)
	if s, ok := d.Stand(l); ok {
		d.onArm(s.Arm.Number, weightOf(p), p.Center, false, false)
	}
}

// secondary places the second means of the whole box, one beside each line, from the
// same point: the points carry it.
func (d *deriver) secondary() {
	if d.Plan.Hang == nil || d.Plan.Hang.Secondary == nil || !d.all() {
		return
	}
	named := d.Plan.Hang.Secondary
	piece, ok := d.Kit.Suspender(named.Kit)
	if len(d.Lines) == 0 || !ok {
		d.notPlaced("secondary of the box", "the plan has no line, so nothing above that it could hang from")
		return
	}
	for i := range d.Lines {
		l := &d.Lines[i]
		top, ok := d.Top(l)
		if !ok {
			continue
		}
		if l.Bridle != nil {
			if p, ok := d.PointNamed(l.Bridle.Points[0]); ok {
				top = p.InRoom
			}
		}
		foot := d.Pose.Out(l.Attach)
		length := r3.Norm(r3.Sub(top, foot)) + float64(named.Slack)
		p := Part{ID: "secondary." + l.Name, What: "secondary", Name: piece.Entry.Label(named.Kit), KitKind: piece.Kind, KitID: named.Kit,
			Body: LinesBody, InRoom: true, Demo: piece.Entry.Source.Demo("mass"), Center: r3.Scale(0.5, r3.Add(foot, top)), From: &foot, To: &top,
			Length: length, Path: "hang.secondary",
			Why: fmt.Sprintf("second means beside line %s, %.3f m with its slack: hang.secondary", l.Name, length)}
		if l.Tube != "" {
			p.Joined = []string{l.Tube}
		}
		p.Mass, p.MassFrom = suspenderMass(piece, length)
		l.Parts = append(l.Parts, d.add(p))
		d.Seconds = append(d.Seconds, Second{Part: p.ID, Line: l.Name, Slack: float64(named.Slack), At: l.Attach, Top: top})
	}
}

// suspenderMass returns what a length of rope, sling or safety weighs.
func suspenderMass(piece kit.Suspender, length float64) (*float64, string) {
	if piece.Rope == nil {
		return pieceMass(piece.Hardware, length)
	}
	if piece.Rope.Mass == nil {
		return nil, ""
	}
	return mass(float64(*piece.Rope.Mass) * length), "kit mass per length"
}
