package load

import (
	"fmt"

	"softloft/finding"
)

// concludeDrop checks a drop between two bodies.
func (w *work) concludeDrop(i int) {
	d := &w.rig.Drops[i]
	subject := w.subject(d.Part, "box.join")
	if w.model.drops[i] < 0 {
		w.add(finding.Unknown("load."+d.Part, subject, "Drop "+fmt.Sprint(i+1), "it has no tube above or below it"))
		return
	}
	cases := w.inputs("T", "tension", "N", func(_ group, s *solved) float64 { return s.Cables[w.model.drops[i]].Tension })
	part, _ := w.rig.Part(d.Part)
	limit, cite := w.allowed(rating{rated: d.Rated, breaking: d.Breaking, kind: d.Kind, origin: kitOrigin(part.KitKind, part.KitID, d.RatedSource)},
		w.rig.Plan.Rules.Factor.Hardware, "rules.factor.hardware")
	w.addLargest(finding.Check{ID: "load." + d.Part, Subject: subject, Statement: "D" + d.Name[1:] + ", which holds the bottom frame",
		Relation: finding.AtMost, Unit: "N", Limit: limit, Source: cite, Assumptions: demoOf(d.Demo)}, cases, mostTension)
}
