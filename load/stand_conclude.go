package load

import (
	"fmt"
	"math"
	"strings"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// concludeStands holds the stands to their ratings, to the ratio against tipping, and to
// what their heads take.
func (w *work) concludeStands() {
	f := &w.floor
	if f.why != "" {
		unknown := finding.Unknown("load.stands", w.subject("box", "stands"), "What each stand carries of the box", f.why)
		unknown.Causes = w.massCauses()
		w.add(unknown)
	} else if len(f.ears) > 0 && f.sharing == "" {
		w.add(finding.Unknown("load.stands", w.subject("box", "stands"), "What each stand carries of the box",
			"how more than three ears share follows from the frame on its ears: "+f.frameWhy))
	}
	if f.why == "" && f.sharing != "" && f.frameWhy != "" {
		w.add(finding.Unknown("load.frame", w.subject("box", "box"), "Bending of the tubes of the box on its ears", f.frameWhy))
	}
	if f.lead.two {
		w.concludeHinge()
	}
	for i := range f.standing {
		w.concludeRating(i)
		w.concludeGear(i)
		w.concludeTip(i)
		w.concludeHead(i)
		w.concludeUplift(i)
		w.concludeFeet(i)
	}
	if f.frame != nil && f.why == "" {
		w.concludeFrame()
	}
}

// massCauses are the findings that a part's mass is not known.
func (w *work) massCauses() []string {
	var ids []string
	for _, f := range w.findings {
		if strings.HasPrefix(f.ID, "load.mass.") {
			ids = append(ids, f.ID)
		}
	}
	return ids
}

// standCauses is what a stand's findings follow from where its share is not known.
func (w *work) standCauses(s *rig.Stand) []string {
	if s.Ear != nil && (w.floor.why != "" || w.floor.sharing == "") {
		return []string{"load.stands"}
	}
	return nil
}

func indexed(symbol string, k int) string { return fmt.Sprintf("%s%d", symbol, k+1) }

func (w *work) standSubject(s *rig.Stand) finding.Subject { return w.subject(s.Part, s.Path) }

// concludeHinge looks at a box on two ears, a mechanism about their line: with its
// center of gravity below the line it hangs, above it only the heads hold it, and
// nobody states what moment they hold.
func (w *work) concludeHinge() {
	lead := w.floor.lead
	statement := "The box on two ears, which are a hinge about their line"
	if lead.below <= 0 {
		w.add(finding.Unknown("load.hinge", w.subject("box", "stands"), statement, fmt.Sprintf(
			"its center of gravity lies %.3f m over the line of the ears: only the heads hold it, and nobody states the moment that they hold", -lead.below)))
		return
	}
	if turn := math.Atan2(lead.beside, lead.below) / degree; turn > levelWithin {
		w.add(finding.Unknown("load.hinge", w.subject("box", "stands"), statement, fmt.Sprintf(
			"its center of gravity lies %.3f m beside the line of the ears: the heads must hold it, or it hangs %.1f° out of level", lead.beside, turn)))
		return
	}
	w.add(finding.Check{
		ID: "load.hinge", Subject: w.subject("box", "stands"), Statement: statement, Relation: finding.AtLeast, Unit: "m",
		Value:  finding.Given(finding.Input{Symbol: "h", Name: "center of gravity below the ears' line", Value: lead.below, Unit: "m", Origin: "parts and places"}),
		Limit:  finding.Given(finding.Input{Symbol: "h_0", Name: "on the line itself it would rest at any tilt", Value: 0, Unit: "m", Origin: "statics"}),
		Source: source.Cite("definition", "a body on a hinge rests with its center of gravity below it"),
	}.Conclude())
}

// levelWithin is the lean in degrees that a head's friction is taken to hold. Design
// assumption.
const levelWithin = 1.0

// concludeRating holds what is on a stand's top to its rating at that height: the load
// of the next higher row of its table, never one between two rows.
func (w *work) concludeRating(i int) {
	s, c := &w.rig.Stands[i], &w.floor.standing[i]
	built, _ := topLoad(c.built)
	grown, _ := topLoad(c.grown)
	if s.Ear == nil && s.Arm == nil {
		return
	}
	cases := w.loadCases(s, "on its top", built, grown)
	limit, row := ratedAt(s)
	check := finding.Check{
		ID: "load.stand." + s.Name, Subject: w.standSubject(s), Statement: fmt.Sprintf("Stand %s, what its top carries at a rise of %.2f m", s.Name, s.Rise),
		Relation: finding.AtMost, Unit: "N", Value: tensionWork("largest load on its top", "P", cases),
		Limit:       finding.Given(finding.Input{Symbol: "F", Name: "what it is rated for" + row, Value: limit, Unit: "N", Origin: kitOrigin("stand", s.KitID, s.RatedSource)}),
		Source:      source.Cite("kit", "rating by height"),
		Assumptions: append([]string{"between two rows of the table the load of the next higher row holds: nothing is read in between"}, demoOf(s.Demo)...),
	}
	check.Causes = w.standCauses(s)
	w.add(check.Conclude())
}

// loadCases lists a load by case; of a stand of four the diagonal is one.
func (w *work) loadCases(s *rig.Stand, where string, built, grown float64) []finding.Input {
	cases := []finding.Input{{Symbol: "P_built", Name: where + " as built", Value: built, Unit: "N", Origin: w.floor.shareOrigin()}}
	if w.rig.Plan.Provision != nil {
		cases = append(cases, finding.Input{Symbol: "P_grown", Name: where + " with the provision up", Value: grown, Unit: "N", Origin: w.floor.shareOrigin()})
	}
	if d := w.diagonal(); s.Ear != nil && finding.Known(d) {
		cases = append(cases, finding.Input{Symbol: "P_diagonal", Name: "half of the box, because on a real floor a diagonal carries most", Value: d, Unit: "N",
			Origin: source.DiagonalShare().Citation.String()})
	}
	return cases
}

// ratedAt is the load of the row at or next above a stand's rise, in N, and which row
// that is; NaN over the highest row.
func ratedAt(s *rig.Stand) (load float64, row string) {
	load, at := math.NaN(), math.Inf(1)
	for _, r := range s.Rated {
		if h := float64(r.At); h >= s.Rise-1e-9 && h < at {
			load, at = float64(r.Load), h
		}
	}
	if math.IsInf(at, 1) {
		return load, ": no row of its table is as high"
	}
	return load, fmt.Sprintf(": the row at %.2f m", at)
}

// concludeTip holds a stand's ratio against tipping to the one that is asked for.
func (w *work) concludeTip(i int) {
	s, c := &w.rig.Stands[i], &w.floor.standing[i]
	t, loads, name := c.tip, c.built, "built"
	if w.rig.Plan.Provision != nil && c.tipMore.margin < t.margin {
		t, loads, name = c.tipMore, c.grown, "grown"
	}
	if math.IsInf(t.margin, 1) {
		return
	}
	ratio := source.TipRatio()
	work := tipWork(s, t, loads, float64(w.rig.Plan.Rules.Push), w.origin("rules.push"))
	w.add(finding.Check{
		ID: "load.tip." + s.Name, Subject: w.standSubject(s), Case: name, Relation: finding.AtLeast,
		Statement: fmt.Sprintf("Stand %s, against tipping over its edge %s", s.Name, t.edgeName()),
		Value:     work, Limit: finding.Given(finding.Input{Symbol: "n", Name: ratio.Name, Value: ratio.Value, Origin: ratio.Citation.String()}),
		Source: ratio.Citation, Causes: w.standCauses(s),
		Assumptions: []string{"level floor, edges between neighboring feet; a bag on a leg counts at that leg's foot",
			w.bagsTold(i, ratio.Value)},
	}.Conclude())
}

// bagText counts the bags of the size that the plan uses, else of the kit's first size.
func (w *work) bagText(i int) string {
	told := &w.answer.Stands[i]
	for _, b := range told.BagCounts {
		own := w.rig.Stands[i].Bags
		if own == nil || math.Abs(float64(b.Each)-own.Mass) < 1e-3*own.Mass {
			return fmt.Sprintf(": %.0f and %.0f bags of %.1f kg", float64(b.Needed), float64(b.ForOne), float64(b.Each))
		}
	}
	return ""
}

// tipWork writes out the moments about an edge: r = M_r / M_o.
func tipWork(s *rig.Stand, t tipping, loads []onStand, push float64, pushOrigin string) finding.Work {
	var inputs []finding.Input
	var holds, tips []string
	for k, l := range loads {
		lever := indexed("x_", k)
		term := fmt.Sprintf("%s*g*%s", l.symbol, lever)
		inputs = append(inputs, finding.Input{Symbol: l.symbol, Name: l.name, Value: l.mass, Unit: "kg", Origin: l.origin},
			finding.Input{Symbol: lever, Name: "its distance from the edge", Value: math.Abs(t.levers[k]), Unit: "m", Origin: "places, edge at r*cos(180°/legs)"})
		if t.levers[k] < 0 {
			tips = append(tips, term)
		} else {
			holds = append(holds, term)
		}
	}
	inputs = append(inputs, finding.Input{Symbol: "g", Name: "standard gravity", Value: gravity, Unit: "m/s2", Origin: "definition"})
	if push > 0 {
		tips = append(tips, "F*h")
		inputs = append(inputs, finding.Input{Symbol: "F", Name: "push at its top", Value: push, Unit: "N", Origin: pushOrigin},
			finding.Input{Symbol: "h", Name: "rise", Value: s.Rise, Unit: "m", Origin: s.Path + ".rise"})
	}
	return finding.Work{Formula: "r = M_r / M_o", Name: "restoring over overturning moment", Inputs: inputs, Steps: []finding.Step{
		{Formula: "M_r = " + strings.Join(holds, " + "), Result: finding.Input{Symbol: "M_r", Name: "restoring moment", Unit: "N m"}},
		{Formula: "M_o = " + strings.Join(tips, " + "), Result: finding.Input{Symbol: "M_o", Name: "overturning moment", Unit: "N m"}},
	}}
}

// concludeHead refuses an arm whose load opens its head.
func (w *work) concludeHead(i int) {
	s := &w.rig.Stands[i]
	if t := tightens(s); t != nil && !*t {
		w.add(finding.Refused("load.head."+s.Name, w.subject(s.Arm.Part, s.Path+".holds"), fmt.Sprintf("Stand %s, its head", s.Name),
			"the arm leaves it on the left as seen from behind the clamp, so its load opens the head: a head takes an off-center load on the side where the load tightens it (common practice)"))
	}
}

// concludeUplift refuses an ear that the box pulls up.
func (w *work) concludeUplift(i int) {
	s, k := &w.rig.Stands[i], w.earIndex(i)
	if k < 0 {
		return
	}
	if least := math.Min(w.floor.built[k], w.floor.grown[k]); least < 0 {
		w.add(finding.Refused("load.ear."+s.Name, w.standSubject(s), fmt.Sprintf("Stand %s, the ear that it holds", s.Name),
			fmt.Sprintf("the box pulls it up with %.0f N: its center of gravity lies outside of its stands", -least)))
	}
}

// concludeFeet tells what a stand's feet put on the floor, where the owner states what
// that bears: a pressure, and nobody gives the feet's pads.
func (w *work) concludeFeet(i int) {
	room := w.rig.Plan.Room
	if room == nil || room.Floor == nil || room.Floor.Allows == nil {
		return
	}
	s := &w.rig.Stands[i]
	foot := mostOnFoot(s, w.floor.standing[i].built)
	if !finding.Known(foot) {
		w.add(finding.Unknown("load.feet."+s.Name, w.standSubject(s), fmt.Sprintf("Stand %s on the floor", s.Name), "what it carries is not known"))
		return
	}
	w.add(finding.Unknown("load.feet."+s.Name, w.standSubject(s), fmt.Sprintf("Stand %s on the floor", s.Name), fmt.Sprintf(
		"its heaviest foot puts %.0f N on the floor, which allows %.0f Pa; the kit gives no pad, and a foot needs %.4f m² of board under it",
		foot, float64(*room.Floor.Allows), foot/float64(*room.Floor.Allows))))
}

// bagsTold says what a stand wants at its base for a ratio, and for 1.0.
func (w *work) bagsTold(i int, ratio float64) string {
	most, least := w.bagsFor(i, ratio), w.bagsFor(i, 1)
	if !finding.Known(most) || !finding.Known(least) {
		return "how many bags it needs is not known: what it carries is not"
	}
	return fmt.Sprintf("a ratio of %.1f needs %.1f kg of bags at the base, of 1.0 %.1f kg%s", ratio, most, least, w.bagText(i))
}
