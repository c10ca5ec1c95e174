package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// onPoint is the force on one point in one case.
type onPoint struct {
	symbol, name string
	force        r3.Vec
}

// pointCases lists the forces on a point by case. known is false where a case that
// applies was not found.
func (w *work) pointCases(name string) (cases []onPoint, used bool) {
	built, used := w.model.pointForces(w.built)[name]
	if !used {
		return nil, false
	}
	cases = append(cases, onPoint{"built", "as built", built})
	if w.rig.Plan.Provision != nil {
		force := r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
		if w.grown != nil {
			force = w.model.pointForces(w.grown)[name]
		}
		cases = append(cases, onPoint{"grown", "with the provision up", force})
	}
	return append(cases, w.worstLoss(name)...), true
}

// worstLoss is the loss that pulls a point down most; unknown where a loss could
// not be worked out, none where no loss rests.
func (w *work) worstLoss(name string) []onPoint {
	var worst []onPoint
	for _, l := range w.losses {
		if l.unknown {
			return []onPoint{{"lost", "after the loss of " + l.label() + ", which was not worked out", r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}}}
		}
		f, ok := w.model.pointForces(l.state)[name]
		if ok && (worst == nil || f.Z < worst[0].force.Z) {
			worst = []onPoint{{"lost", "at rest after the loss of " + l.label(), f}}
		}
	}
	return worst
}

// concludePoint holds a point to what its owner allows, and one that may only be
// pulled straight down to the angle that counts as vertical.
func (w *work) concludePoint(p *rig.Point) {
	cases, used := w.pointCases(p.Name)
	if !used {
		return
	}
	statement := "Point " + p.Name
	if p.Allows == nil {
		w.add(finding.Unknown("load.point."+p.Name, w.subject("point."+p.Name, p.Path), statement, "its owner has not stated what it allows"))
	} else {
		w.add(finding.Check{
			ID: "load.point." + p.Name, Subject: w.subject("point."+p.Name, p.Path), Statement: statement,
			Relation: finding.AtMost, Unit: "N", Value: tensionWork("largest pull", "P", magnitudes(cases)),
			Limit:  finding.Given(finding.Input{Symbol: "F", Name: "what its owner allows" + statedBy(p), Value: *p.Allows, Unit: "N", Origin: w.origin(p.Path + ".allows")}),
			Source: source.Cite("plan", p.Path), Assumptions: []string{"the building is not checked: the point is its owner's statement"},
		}.Conclude())
	}
	if p.VerticalOnly {
		w.concludeSide(p, cases)
	}
}

func statedBy(p *rig.Point) string {
	switch {
	case p.StatedBy != "" && p.StatedOn != "":
		return fmt.Sprintf(" (stated by %s on %s)", p.StatedBy, p.StatedOn)
	case p.StatedBy != "":
		return fmt.Sprintf(" (stated by %s)", p.StatedBy)
	}
	return " (who stated it is not given)"
}

func magnitudes(cases []onPoint) []finding.Input {
	var inputs []finding.Input
	for _, c := range cases {
		inputs = append(inputs, finding.Input{Symbol: "P_" + c.symbol, Name: "pull of all lines on it " + c.name, Value: r3.Norm(c.force), Unit: "N", Origin: elastic})
	}
	return inputs
}

// concludeSide checks the angle at which a point is pulled, as built and grown.
func (w *work) concludeSide(p *rig.Point, cases []onPoint) {
	limit := source.CountsAsVertical()
	var inputs []finding.Input
	for _, c := range cases {
		if c.symbol != "lost" {
			angle := math.Atan2(math.Hypot(c.force.X, c.force.Y), -c.force.Z) / degree
			inputs = append(inputs, finding.Input{Symbol: "α_" + c.symbol, Name: "angle off the vertical " + c.name, Value: angle, Unit: "deg", Origin: elastic})
		}
	}
	w.add(finding.Check{
		ID: "load.side." + p.Name, Subject: w.subject("point."+p.Name, p.Path), Statement: fmt.Sprintf("Side pull on point %s, which may only be pulled straight down", p.Name),
		Relation: finding.AtMost, Unit: "deg", Value: tensionWork("largest angle off the vertical", "α", inputs),
		Limit:  finding.Given(finding.Input{Symbol: "α_max", Name: limit.Name, Value: limit.Value / degree, Unit: "deg", Origin: limit.Citation.String()}),
		Source: limit.Citation, Assumptions: []string{"as built and grown; after a loss the pull may lean further"},
	}.Conclude())
}

// concludeBeam holds a beam to its limit for all points on it together.
func (w *work) concludeBeam(b *rig.Beam) {
	var sums []onPoint
	for i := range w.rig.Points {
		if w.rig.Points[i].Beam != b.Name {
			continue
		}
		cases, used := w.pointCases(w.rig.Points[i].Name)
		if used && len(sums) == 0 {
			sums = append(sums, cases...)
			continue
		}
		for k := range cases {
			for j := range sums {
				if sums[j].symbol == cases[k].symbol {
					sums[j].force = r3.Add(sums[j].force, cases[k].force)
				}
			}
		}
	}
	if len(sums) == 0 {
		return
	}
	statement := "Beam " + b.Name + ", all points on it together"
	if b.Allows == nil {
		w.add(finding.Unknown("load.beam."+b.Name, w.subject("beam."+b.Name, b.Path), statement, "its owner has not stated what it allows"))
		return
	}
	w.add(finding.Check{
		ID: "load.beam." + b.Name, Subject: w.subject("beam."+b.Name, b.Path), Statement: statement,
		Relation: finding.AtMost, Unit: "N", Value: tensionWork("largest pull", "P", w.beamLoads(sums, b)),
		Limit:  finding.Given(finding.Input{Symbol: "F", Name: "what its owner allows for all points together", Value: *b.Allows, Unit: "N", Origin: w.origin(b.Path + ".allows")}),
		Source: source.Cite("plan", b.Path), Assumptions: []string{"the building is not checked: the limit is its owner's statement"},
	}.Conclude())
}

// beamLoads lists what a beam gets by case; the worst loss is the one worst for the
// beam as a whole, not the sum of each point's own worst.
func (w *work) beamLoads(sums []onPoint, b *rig.Beam) []finding.Input {
	var inputs []finding.Input
	for _, c := range sums {
		if c.symbol != "lost" {
			inputs = append(inputs, finding.Input{Symbol: "P_" + c.symbol, Name: "pull of all its points " + c.name, Value: r3.Norm(c.force), Unit: "N", Origin: elastic})
		}
	}
	worst := finding.Input{Symbol: "P_lost", Unit: "N", Value: math.NaN(), Origin: elastic}
	for _, l := range w.losses {
		if l.unknown {
			worst.Value, worst.Name = math.NaN(), "after the loss of "+l.label()+", which was not worked out"
			return append(inputs, worst)
		}
		if l.state == nil {
			continue
		}
		var sum r3.Vec
		forces := w.model.pointForces(l.state)
		for i := range w.rig.Points {
			if w.rig.Points[i].Beam == b.Name {
				sum = r3.Add(sum, forces[w.rig.Points[i].Name])
			}
		}
		if math.IsNaN(worst.Value) || r3.Norm(sum) > worst.Value {
			worst.Value, worst.Name = r3.Norm(sum), "pull of all its points at rest after the loss of "+l.label()
		}
	}
	if math.IsNaN(worst.Value) {
		return inputs
	}
	return append(inputs, worst)
}
