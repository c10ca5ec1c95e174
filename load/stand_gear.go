package load

import (
	"fmt"

	"softloft/finding"
	"softloft/kit"
	"softloft/rig"
	"softloft/source"
)

// concludeGear holds the ear, the arm and the head that a stand holds to their ratings.
// What nobody rated is not known; what is not placed is not asked.
func (w *work) concludeGear(i int) {
	s, c := &w.rig.Stands[i], &w.floor.standing[i]
	built, _ := topLoad(c.built)
	grown, _ := topLoad(c.grown)
	if s.Ear != nil {
		w.concludePiece(s, s.Ear.Part, "ear", w.rig.Kit.Ear, w.loadCases(s, "on the ear", built, grown))
	}
	if s.Arm == nil {
		return
	}
	w.concludePiece(s, s.Part+".head", "head", w.rig.Kit.Head, w.loadCases(s, "on the head", built, grown))
	w.concludePiece(s, s.Arm.Part, "arm", w.rig.Kit.Arm, w.loadCases(s, "at the arm's end", endLoad(w, s, false), endLoad(w, s, true)))
}

// endLoad is what hangs at an arm's end, in N.
func endLoad(w *work, s *rig.Stand, grown bool) float64 {
	var sum float64
	for _, on := range w.armLoads(s, grown)[len(s.Arm.Pieces):] {
		sum += on.mass * gravity
	}
	return sum
}

func (w *work) concludePiece(s *rig.Stand, id, what string, set map[string]kit.Hardware, cases []finding.Input) {
	part, ok := w.rig.Part(id)
	if !ok {
		return
	}
	entry, ok := set[part.KitID]
	if !ok {
		return
	}
	r := rating{breaking: entry.Kind == "breaking", kind: source.MetalPart, origin: kitOrigin(what, part.KitID, entry.Source.For("rated"))}
	if entry.Rated != nil {
		rated := float64(*entry.Rated)
		r.rated = &rated
	}
	limit, cite := w.allowed(r, w.rig.Plan.Rules.Factor.Hardware, "rules.factor.hardware")
	w.add(finding.Check{
		ID: "load.rated." + what + "." + s.Name, Subject: w.subject(id, s.Path+".holds"), Statement: fmt.Sprintf("Stand %s, its %s", s.Name, what),
		Relation: finding.AtMost, Unit: "N", Value: tensionWork("largest load", "P", cases), Limit: limit, Source: cite,
		Causes: w.standCauses(s), Assumptions: demoOf(entry.Rated != nil && entry.Source.Demo("rated")),
	}.Conclude())
}
