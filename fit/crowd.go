package fit

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/shape"
	"softloft/source"
)

// crowd refuses lamps that take each other's place, today's and those that may still go
// up: more than fit.
func crowd(r *rig.Rig) []finding.Finding {
	var found []finding.Finding
	all := append(r.Optics.Lamps[:len(r.Optics.Lamps):len(r.Optics.Lamps)], r.Optics.Provided...)
	for i := range all {
		for j := range i {
			a, b := &all[j], &all[i]
			if apart(housing(r, a), housing(r, b)) > 0 {
				continue
			}
			found = append(found, finding.Refused(fmt.Sprintf("fit.crowd.%s.%s", a.Part, b.Part), subject(r, b.Part, crowdPath(r, b.Part)),
				fmt.Sprintf("Lamps %s and %s", a.Name, b.Name), "they are in each other's place: more lamps than fit"))
		}
	}
	return found
}

// crowdPath is the plan's key of a lamp, of a provided one the list's.
func crowdPath(r *rig.Rig, id string) string {
	if path := partPath(r, id); path != "" {
		return path
	}
	return "provision.lamps"
}

// housing is a lamp's body, or its opening where the kit gives none, less a hair on
// every side, so that lamps side by side don't meet.
func housing(r *rig.Rig, o *rig.Opening) block {
	size := [3]float64{o.Size[0], o.Size[1], 0}
	if o.Body != nil {
		size = *o.Body
	}
	const hair = 1e-3 // m
	out := r.Pose.OutDirection
	pose := shape.Pose{Origin: r.Pose.Out(r3.Sub(o.Center, r3.Scale(size[2]/2, o.Axis))), X: out(o.U), Y: out(o.V), Z: out(r3.Scale(-1, o.Axis))}
	b := block{name: o.Name, part: o.Part, Box: shape.Box{Pose: pose}}
	for axis := range size {
		b.Half[axis] = math.Max(0, size[axis]/2-hair)
	}
	return b
}

// leak tells which sides leak light at the ties because no wrap goes there.
func leak(r *rig.Rig) []finding.Finding {
	var bare string
	var covered, around float64
	for i, name := range [4]string{"north", "south", "east", "west"} {
		length := r.Optics.Size[i/2]
		around += length
		if r.Optics.Leak[i] == 0 {
			covered += length
			continue
		}
		if bare != "" {
			bare += ", "
		}
		bare += name
	}
	if bare == "" || r.Optics.Depth == 0 {
		return nil
	}
	return []finding.Finding{finding.Unknown("fit.wrap", subject(r, "box", "box.sides"), fmt.Sprintf("The wrap covers %.2f m of %.2f m around the box", covered, around),
		"it is shorter than the box is around: the ties leak light at "+bare+", and how much is not worked out")}
}

// mounts holds a lamp's clamp and adapter to their ratings, of which only a share may be
// used over people.
func mounts(r *rig.Rig) []finding.Finding {
	var found []finding.Finding
	for i := range r.Parts {
		p := &r.Parts[i]
		if p.What != "lamp clamp" && !(p.What == "adapter" && len(p.Joined) > 0) {
			continue
		}
		lamp, ok := r.Part(p.Joined[0])
		if !ok || lamp.What != "lamp" {
			continue
		}
		found = append(found, mount(r, p, lamp))
	}
	return found
}

func mount(r *rig.Rig, p, lamp *rig.Part) finding.Finding {
	entry := r.Kit.Clamp[p.KitID]
	if p.KitKind == "adapter" {
		entry = r.Kit.Adapter[p.KitID]
	}
	rated, mass := math.NaN(), math.NaN()
	if entry.Rated != nil {
		rated = float64(*entry.Rated)
	}
	if lamp.Mass != nil {
		mass = *lamp.Mass
	}
	share := source.WorkingLoadShare()
	if !r.Plan.Rules.PeopleBelow {
		share.Value, share.Name = 1, "share of a working load limit, nobody beneath"
	}
	check := finding.Check{
		ID: "fit.mount." + p.ID, Subject: subject(r, p.ID, p.Path), Statement: fmt.Sprintf("The %s of %s", p.What, lamp.Name), Relation: finding.AtMost, Unit: "N",
		Value: finding.Work{Formula: "G = m*g", Name: "weight of the lamp", Inputs: []finding.Input{
			{Symbol: "m", Name: "mass of the lamp", Value: mass, Unit: "kg", Origin: lamp.MassFrom},
			{Symbol: "g", Name: "standard gravity", Value: 9.80665, Unit: "m/s2", Origin: "definition"}}},
		Limit: finding.Work{Formula: "F = W*s", Name: "what it may carry", Inputs: []finding.Input{
			{Symbol: "W", Name: "working load limit", Value: rated, Unit: "N", Origin: fmt.Sprintf("kit %s %s: %s", p.KitKind, p.KitID, entry.Source.For("rated"))},
			{Symbol: "s", Name: share.Name, Value: share.Value, Origin: share.Citation.String()}}},
		Source: share.Citation,
	}
	if entry.Source.Demo("rated") {
		check.Assumptions = []string{"DEMO: the rating is an invented demo value; it says nothing about real gear"}
	}
	return check.Conclude()
}
