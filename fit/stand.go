package fit

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// stands looks at what stands: its range, its place, what it holds, its wheels.
func stands(r *rig.Rig) []finding.Finding {
	var found []finding.Finding
	for i := range r.Stands {
		s := &r.Stands[i]
		found = append(found, rises(r, s)...)
		found = append(found, inLight(r, s)...)
		found = append(found, wheels(r, s)...)
		if s.Ear != nil {
			found = append(found, meetsEar(r, s)...)
		}
		if s.Arm != nil {
			found = append(found, arm(r, s)...)
		}
	}
	return found
}

// rises holds a stand's rise to its range.
func rises(r *rig.Rig, s *rig.Stand) []finding.Finding {
	path := s.Path + ".rise"
	rise := finding.Given(finding.Input{Symbol: "h", Name: "rise", Value: s.Rise, Unit: "m", Origin: r.Origin(path)})
	origin := "kit stand " + s.KitID + ": " + r.Kit.Stand[s.KitID].Source.For("rises")
	top := finding.Check{ID: "fit.rise." + s.Name, Subject: subject(r, s.Part, path), Statement: fmt.Sprintf("Stand %s, its rise", s.Name),
		Relation: finding.AtMost, Unit: "m", Value: rise, Source: source.Cite("kit", "rises"),
		Limit: finding.Given(finding.Input{Symbol: "h_max", Name: "highest top", Value: s.Rises[1], Unit: "m", Origin: origin})}
	found := []finding.Finding{top.Conclude()}
	if s.Rise < s.Rises[0] {
		top.ID, top.Relation = "fit.rise_low."+s.Name, finding.AtLeast
		top.Limit = finding.Given(finding.Input{Symbol: "h_min", Name: "lowest top", Value: s.Rises[0], Unit: "m", Origin: origin})
		found = append(found, top.Conclude())
	}
	return found
}

// wheels refuses a loaded stand that can roll with people beneath; wheels that the kit
// doesn't know are not known.
func wheels(r *rig.Rig, s *rig.Stand) []finding.Finding {
	at := subject(r, s.Part, s.Path+".castors")
	switch {
	case s.Castors != "none" && !s.HasCastors:
		return []finding.Finding{finding.Unknown("fit.castors."+s.Name, at, "Stand "+s.Name+", its castors", "the kit's "+s.KitID+" has none")}
	case s.Castors == "rolling" && r.Plan.Rules.PeopleBelow && (s.Ear != nil || s.Arm != nil):
		return []finding.Finding{finding.Refused("fit.castors."+s.Name, at, "Stand "+s.Name+" can roll", "wheels are locked, and a loaded stand is never rolled over people (common practice)")}
	}
	return nil
}

const (
	// earBeside is how far a mast may stand from the ear that it holds, in m: the ear's
	// own length. Design assumption.
	earBeside = 0.15
	// earOver is how far a stand's top may be from its ear in height, in m: what a pin
	// has of play. Design assumption.
	earOver = 0.05
)

// meetsEar holds a stand's top to the ear that it holds.
func meetsEar(r *rig.Rig, s *rig.Stand) []finding.Finding {
	off := r3.Sub(r.EarInRoom(s.Ear), s.Top())
	var found []finding.Finding
	for _, c := range []struct {
		id, statement, symbol, name, path string
		value, limit                      float64
	}{
		{"fit.beside.", "Stand %s, from its mast to the ear that it holds", "d", "across", ".at", math.Hypot(off.X, off.Y), earBeside},
		{"fit.height.", "Stand %s, from its top to the height of the ear that it holds", "z", "up or down", ".rise", math.Abs(off.Z), earOver},
	} {
		found = append(found, finding.Check{ID: c.id + s.Name, Subject: subject(r, s.Part, s.Path+c.path), Statement: fmt.Sprintf(c.statement, s.Name),
			Relation: finding.AtMost, Unit: "m",
			Value:  finding.Given(finding.Input{Symbol: c.symbol, Name: c.name, Value: c.value, Unit: "m", Origin: "places, as planned"}),
			Limit:  finding.Given(finding.Input{Symbol: c.symbol + "_max", Name: "what ear and pin bridge", Value: c.limit, Unit: "m", Origin: "design assumption"}),
			Source: source.Cite("design-assumption", "play of an ear")}.Conclude())
	}
	return found
}

// arm looks at an arm: what holds its load up, how long it is, whether its lamps are
// where it ends.
func arm(r *rig.Rig, s *rig.Stand) []finding.Finding {
	var found []finding.Finding
	at := subject(r, s.Arm.Part, s.Path+".holds")
	if s.Bags == nil || s.Bags.Count == 0 || s.Bags.Mass == 0 {
		found = append(found, finding.Refused("fit.counterweight."+s.Name, at, "Stand "+s.Name+" holds an arm and no bags",
			"an arm is weighed down: a bag on the leg under it, off the floor (common practice)"))
	}
	if s.Arm.Longest != nil {
		found = append(found, finding.Check{ID: "fit.reach." + s.Name, Subject: at, Statement: fmt.Sprintf("Stand %s, how far its arm reaches", s.Name),
			Relation: finding.AtMost, Unit: "m", Source: source.Cite("kit", "length"),
			Value: finding.Work{Formula: "l = sqrt(r^2 + h^2)", Name: "length from head to lamp", Inputs: []finding.Input{
				{Symbol: "r", Name: "reach", Value: s.Arm.Reach, Unit: "m", Origin: r.Origin(s.Path + ".holds.arm.reach")},
				{Symbol: "h", Name: "rise of its end", Value: s.Arm.To.Z - s.Arm.From.Z, Unit: "m", Origin: r.Origin(s.Path + ".holds.arm.rise")}}},
			Limit: finding.Given(finding.Input{Symbol: "l_max", Name: "length of the arm", Value: *s.Arm.Longest, Unit: "m",
				Origin: "kit arm " + s.Arm.KitID + ": " + r.Kit.Arm[s.Arm.KitID].Source.For("length")})}.Conclude())
	}
	for i := range r.Plan.Lamps {
		l := &r.Plan.Lamps[i]
		if l.On == nil || l.On.Arm != s.Arm.Number {
			continue
		}
		found = append(found, atArmEnd(r, s, i)...)
	}
	return found
}

// armPlay is how far a lamp's clamp may be planned from its arm's end, in m: the pin and
// the yoke. Design assumption.
const armPlay = 0.3

// atArmEnd tells of a lamp that is planned elsewhere than its arm ends.
func atArmEnd(r *rig.Rig, s *rig.Stand, i int) []finding.Finding {
	l := &r.Plan.Lamps[i]
	id := "lamp." + l.Title(i+1)
	for k := range r.Optics.Lamps {
		o := &r.Optics.Lamps[k]
		if o.Part != id {
			continue
		}
		hook := r3.Sub(o.Center, r3.Scale(float64(r.Kit.Lamp[o.Kit].Hook), o.Axis))
		d := r3.Norm(r3.Sub(r.Pose.Out(hook), s.Arm.To))
		if d <= armPlay {
			return nil
		}
		return []finding.Finding{finding.Refused("fit.arm_end."+id, subject(r, id, fmt.Sprintf("lamps[%d]", i)), fmt.Sprintf("Lamp %s and the end of the arm that carries it", o.Name),
			fmt.Sprintf("its clamp is planned %.2f m from the arm's end", d))}
	}
	return nil
}
