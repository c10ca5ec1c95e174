package fit

import (
	"fmt"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// heat looks at drops of textile: the lower frame hangs out of the heat, on what is
// rated; polyester softens well below 250 °C (common practice). A lamp's label says how
// far it keeps from what can burn; without one, nobody knows.
func heat(r *rig.Rig) []finding.Finding {
	var found []finding.Finding
	for i := range r.Drops {
		d := &r.Drops[i]
		part, ok := r.Part(d.Part)
		if !ok || !textile(r, part) || len(r.Optics.Lamps) == 0 {
			continue
		}
		found = append(found, heatOn(r, d, part))
	}
	return found
}

// textile reports whether what a part is made of softens in the heat.
func textile(r *rig.Rig, p *rig.Part) bool {
	piece, ok := r.Kit.Suspender(p.KitID)
	if !ok {
		return false
	}
	if piece.Rope != nil {
		return piece.Rope.Kind != "wire"
	}
	for _, hard := range []string{"steel", "chain", "wire"} {
		if strings.Contains(piece.Hardware.Material, hard) {
			return false
		}
	}
	return true
}

func heatOn(r *rig.Rig, d *rig.Drop, part *rig.Part) finding.Finding {
	rope := segment(d.Name, d.Part, part.Path, r.Pose.Out(d.Upper), r.Pose.Out(d.Lower))
	var nearest *rig.Opening
	least := 0.0
	for i := range r.Optics.Lamps {
		o := &r.Optics.Lamps[i]
		away := r3.Norm(r3.Sub(rope.near(r.Pose.Out(o.Center)), r.Pose.Out(o.Center)))
		keep := 0.0
		if k := r.Kit.Lamp[o.Kit].KeepOff; k != nil {
			keep = float64(*k)
		}
		if nearest == nil || away-keep < least {
			nearest, least = o, away-keep
		}
	}
	id, at := "fit.heat."+d.Part, subject(r, d.Part, part.Path)
	statement := fmt.Sprintf("D%s of textile, its distance to lamp %s", d.Name[1:], nearest.Name)
	keep := r.Kit.Lamp[nearest.Kit].KeepOff
	if keep == nil {
		return finding.Unknown(id, at, statement, "textile softens in the heat over lamps, and no lamp's label says how far to keep off: chain or wire hangs there")
	}
	return finding.Check{ID: id, Subject: at, Statement: statement, Relation: finding.AtLeast, Unit: "m",
		Value: finding.Given(finding.Input{Symbol: "d", Name: "from the opening to the drop", Value: least + float64(*keep), Unit: "m", Origin: "places, as planned"}),
		Limit: finding.Given(finding.Input{Symbol: "d_min", Name: "distance that the lamp's label asks for", Value: float64(*keep), Unit: "m",
			Origin: "kit lamp " + nearest.Kit + ": " + r.Kit.Lamp[nearest.Kit].Source.For("keep_off")}),
		Source: source.Cite("common-practice", "out of the heat")}.Conclude()
}
