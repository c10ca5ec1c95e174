package load

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/source"
)

// besides works out what rests on the rig at rest: wind, wet cloth, second means, hands.
func (w *work) besides() {
	w.wind()
	w.wet()
	w.safeties()
	w.hands()
}

// clothMass is the dry mass of all cloth on the box, kg, and its middle in the room.
func (w *work) clothMass() (mass float64, at r3.Vec) {
	for i := range w.rig.Parts {
		p := &w.rig.Parts[i]
		switch p.What {
		case "cloth", "side", "roof", "skirt", "wrap":
			if p.Mass != nil {
				mass += *p.Mass
				at = r3.Add(at, r3.Scale(*p.Mass, w.rig.CenterInRoom(p)))
			}
		}
	}
	if mass > 0 {
		at = r3.Scale(1/mass, at)
	}
	return mass, at
}

// wet holds stands and lines to their limits with all cloth wet through: a weight case of
// its own, outdoors.
func (w *work) wet() {
	room := w.rig.Plan.Room
	mass, at := w.clothMass()
	if room == nil || room.Outdoors == nil || mass == 0 {
		return
	}
	g := &gale{work: w}
	if g.findHolders(); g.none != "" || len(g.holders) == 0 {
		return
	}
	places := make([]r3.Vec, len(g.holders))
	for i, h := range g.holders {
		places[i] = h.at
	}
	water := mass * source.WetCloth().Value
	more, _ := handOn(places, []force{{down(water), at}})
	for i, h := range g.holders {
		w.concludeWet(h, more[i], water)
	}
}

// concludeWet holds one stand or line, with its share of the water.
func (w *work) concludeWet(h holder, more, water float64) {
	wet := source.WetCloth()
	check := finding.Check{
		Case: "wet", Relation: finding.AtMost, Unit: "N",
		Value: finding.Work{Formula: "P = P_0 + P_w", Name: "with wet cloth", Inputs: []finding.Input{
			{Symbol: "P_0", Name: "as built, dry", Value: h.now, Unit: "N", Origin: w.floor.shareOrigin()},
			{Symbol: "P_w", Name: fmt.Sprintf("its share of %.1f kg of water", water), Value: more, Unit: "N", Origin: wet.Name + ": " + wet.Citation.String()},
		}},
		Source: wet.Citation, Assumptions: []string{"all cloth takes up its own dry mass in water, the upper end of 50 to 100 %; no pools stand in it"},
	}
	if s := h.stand; s != nil {
		limit, row := ratedAt(s)
		check.ID, check.Subject, check.Statement = "load.wet."+s.Name, w.standSubject(s), fmt.Sprintf("Stand %s, what its top carries with the cloth wet through", s.Name)
		check.Limit = finding.Given(finding.Input{Symbol: "F", Name: "what it is rated for" + row, Value: limit, Unit: "N", Origin: kitOrigin("stand", s.KitID, s.RatedSource)})
		check.Assumptions = append(check.Assumptions, demoOf(s.Demo)...)
	} else {
		l := &w.rig.Lines[h.index]
		check.ID, check.Subject, check.Statement = "load.wet."+l.Name, w.subject("line."+l.Name+".rope", l.Path), fmt.Sprintf("Line %s, its rope, with the cloth wet through", l.Name)
		check.Limit, check.Source = w.ropeLimit(l)
		check.Value.Inputs[0].Origin = elastic
		check.Assumptions = append(check.Assumptions, demoOf(l.Rope.Demo)...)
	}
	w.add(check.Conclude())
}
