package fit

import (
	"fmt"
	"math"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// Run checks a rig.
func Run(r *rig.Rig) []finding.Finding {
	var found []finding.Finding
	for _, o := range r.Odd {
		found = append(found, odd(r, o))
	}
	for i := range r.Optics.Lamps {
		found = append(found, besideBox(r, &r.Optics.Lamps[i])...)
		found = append(found, keepOff(r, &r.Optics.Lamps[i])...)
	}
	for _, look := range []func(*rig.Rig) []finding.Finding{overHeads, crowd, mounts, leak, heat, obstacles, walls, stands} {
		found = append(found, look(r)...)
	}
	return found
}

// odd turns what was noticed while placing into a finding.
func odd(r *rig.Rig, o rig.Oddity) finding.Finding {
	subject := subject(r, o.Part, o.Path)
	if o.Unknown {
		return finding.Unknown(o.ID, subject, o.Statement, "it can't be placed as the plan says")
	}
	return finding.Refused(o.ID, subject, o.Statement, "it can be built, but should not be")
}

// besideBox refuses a lamp whose opening reaches past the box's sides.
func besideBox(r *rig.Rig, o *rig.Opening) []finding.Finding {
	half := [2]float64{r.Optics.Size[0] / 2, r.Optics.Size[1] / 2}
	reach := [2]float64{
		math.Abs(o.Center.X) + (math.Abs(o.U.X)*o.Size[0]+math.Abs(o.V.X)*o.Size[1])/2,
		math.Abs(o.Center.Y) + (math.Abs(o.U.Y)*o.Size[0]+math.Abs(o.V.Y)*o.Size[1])/2,
	}
	if reach[0] <= half[0]+1e-9 && reach[1] <= half[1]+1e-9 && o.Center.Z >= 0 {
		return nil
	}
	where := "reaches past the side of its box"
	if o.Center.Z < 0 {
		where = "hangs below the cloth"
	}
	return []finding.Finding{finding.Refused("fit.beside."+o.Part, subject(r, o.Part, partPath(r, o.Part)),
		fmt.Sprintf("Lamp %s %s", o.Name, where), "its light misses the cloth")}
}

// keepOff holds a lamp's opening to the distance that its label asks to what can
// burn: here the lowest cloth beneath it.
func keepOff(r *rig.Rig, o *rig.Opening) []finding.Finding {
	entry := r.Kit.Lamp[o.Kit]
	if len(r.Optics.Cloths) == 0 || entry.KeepOff == nil {
		return nil
	}
	path := partPath(r, o.Part)
	top := 0.0
	for _, layer := range r.Optics.Cloths[:len(r.Optics.Cloths)-1] {
		top += layer.Gap
	}
	return []finding.Finding{finding.Check{
		ID: "fit.keep_off." + o.Part, Subject: subject(r, o.Part, path), Statement: fmt.Sprintf("Lamp %s, its distance to the cloth", o.Name),
		Relation: finding.AtLeast, Unit: "m",
		Value: finding.Work{Formula: "d = z - c", Name: "distance from the opening to the uppermost cloth", Inputs: []finding.Input{
			{Symbol: "z", Name: "opening above the cloth plane", Value: o.Center.Z, Unit: "m", Origin: r.Origin(path + ".above")},
			{Symbol: "c", Name: "uppermost cloth above the cloth plane", Value: top, Unit: "m", Origin: "box.cloth"},
		}},
		Limit: finding.Given(finding.Input{Symbol: "d_min", Name: "distance that the lamp's label asks for", Value: float64(*entry.KeepOff), Unit: "m",
			Origin: "kit lamp " + o.Kit + ": " + entry.Source.For("keep_off")}),
		Source: source.Cite("common-practice", "the distance on the lamp's label"),
	}.Conclude()}
}

func partPath(r *rig.Rig, id string) string {
	if p, ok := r.Part(id); ok {
		return p.Path
	}
	return ""
}

func subject(r *rig.Rig, part, key string) finding.Subject {
	line, column := r.Place(key)
	return finding.On(part, line, column)
}
