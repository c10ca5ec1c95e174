package fit

import (
	"fmt"
	"math"

	"softloft/finding"
	"softloft/quantity"
	"softloft/rig"
	"softloft/source"
)

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
			{Symbol: "g", Name: "standard gravity", Value: float64(quantity.StandardGravity), Unit: "m/s2", Origin: "definition"}}},
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
