package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// onPoint is the force that a case puts on a point; NaN where no line pulls there.
func (w *work) onPoint(name string) func(group, *solved) r3.Vec {
	return func(g group, s *solved) r3.Vec {
		if f, ok := w.model.pointForces(s, g.raising)[name]; ok {
			return f
		}
		return r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
	}
}

// used tells whether any line pulls on a point.
func (w *work) used(name string) bool {
	_, ok := w.model.pointForces(w.built, false)[name]
	return ok
}

// points tells what each building point gets from all lines on it. Of a case with
// several states it is the one that pulls it down most.
func (w *work) points() []Point {
	var told []Point
	groups := w.groups()
	for _, p := range w.rig.Points {
		row := Point{Name: p.Name}
		for _, g := range groups {
			worst := g.worstDown(func(s *solved) r3.Vec { return w.model.pointForces(s, g.raising)[p.Name] })
			switch g.symbol {
			case "built":
				row.Cases.Built = worst
			case "grown":
				row.Cases.Grown = worst
			case "lift":
				row.Cases.Lift = worst
			case "tilt":
				row.Cases.TiltWorst = worst
			case "lost":
				row.Cases.LostWorst = worst
			}
		}
		if w.rig.Plan.Provision == nil {
			row.Cases.Grown = row.Cases.Built
		}
		told = append(told, row)
	}
	return told
}

// concludePoint holds a point to what its owner allows, and one that may only be
// pulled straight down to the angle that counts as vertical.
func (w *work) concludePoint(p *rig.Point) {
	if !w.used(p.Name) {
		return
	}
	force := w.onPoint(p.Name)
	statement := "Point " + p.Name
	if p.Allows == nil {
		w.add(finding.Unknown("load.point."+p.Name, w.subject("point."+p.Name, p.Path), statement, "its owner has not stated what it allows"))
	} else {
		w.addLargest(finding.Check{
			ID: "load.point." + p.Name, Subject: w.subject("point."+p.Name, p.Path), Statement: statement,
			Relation: finding.AtMost, Unit: "N",
			Limit:  finding.Given(finding.Input{Symbol: "F", Name: "what its owner allows" + statedBy(p), Value: *p.Allows, Unit: "N", Origin: w.origin(p.Path + ".allows")}),
			Source: source.Cite("plan", p.Path), Assumptions: []string{"the building is not checked: the point is its owner's statement"},
		}, w.inputs("P", "pull of all lines on it", "N", func(g group, s *solved) float64 { return r3.Norm(force(g, s)) }), largestPull)
	}
	if p.VerticalOnly {
		w.concludeSide(p, force)
	}
}

func largestPull(cases []finding.Input) finding.Work { return tensionWork("largest pull", "P", cases) }

func statedBy(p *rig.Point) string {
	switch {
	case p.StatedBy != "" && p.StatedOn != "":
		return fmt.Sprintf(" (stated by %s on %s)", p.StatedBy, p.StatedOn)
	case p.StatedBy != "":
		return fmt.Sprintf(" (stated by %s)", p.StatedBy)
	}
	return " (who stated it is not given)"
}

// concludeSide checks the angle at which a point is pulled, in every case but a loss.
func (w *work) concludeSide(p *rig.Point, force func(group, *solved) r3.Vec) {
	limit := source.CountsAsVertical()
	var inputs []finding.Input
	for _, g := range w.groups() {
		if g.symbol == "lost" {
			continue
		}
		g.factor = 1 // no factor turns a force
		angle, label := g.largest(func(s *solved) float64 {
			f := force(g, s)
			return math.Atan2(math.Hypot(f.X, f.Y), -f.Z) / degree
		})
		in := finding.Input{Symbol: "α_" + g.symbol, Name: join("angle off the vertical "+g.name, label), Value: angle, Unit: "deg", Origin: elastic}
		if g.missing != "" {
			in.Origin = g.missing + " was not worked out"
		}
		inputs = append(inputs, in)
	}
	w.addLargest(finding.Check{
		ID: "load.side." + p.Name, Subject: w.subject("point."+p.Name, p.Path), Statement: fmt.Sprintf("Side pull on point %s, which may only be pulled straight down", p.Name),
		Relation: finding.AtMost, Unit: "deg",
		Limit:  finding.Given(finding.Input{Symbol: "α_max", Name: limit.Name, Value: limit.Value / degree, Unit: "deg", Origin: limit.Citation.String()}),
		Source: limit.Citation, Assumptions: []string{"in every case but a loss, after which the pull may lean further"},
	}, inputs, func(cases []finding.Input) finding.Work {
		return tensionWork("largest angle off the vertical", "α", cases)
	})
}

// concludeBeam holds a beam to its limit for all points on it together. The worst
// state of a case is the one worst for the beam as a whole, not the sum of each
// point's own worst.
func (w *work) concludeBeam(b *rig.Beam) {
	var names []string
	for _, p := range w.rig.Points {
		if p.Beam == b.Name && w.used(p.Name) {
			names = append(names, p.Name)
		}
	}
	if len(names) == 0 {
		return
	}
	statement := "Beam " + b.Name + ", all points on it together"
	if b.Allows == nil {
		w.add(finding.Unknown("load.beam."+b.Name, w.subject("beam."+b.Name, b.Path), statement, "its owner has not stated what it allows"))
		return
	}
	w.addLargest(finding.Check{
		ID: "load.beam." + b.Name, Subject: w.subject("beam."+b.Name, b.Path), Statement: statement,
		Relation: finding.AtMost, Unit: "N",
		Limit:  finding.Given(finding.Input{Symbol: "F", Name: "what its owner allows for all points together", Value: *b.Allows, Unit: "N", Origin: w.origin(b.Path + ".allows")}),
		Source: source.Cite("plan", b.Path), Assumptions: []string{"the building is not checked: the limit is its owner's statement"},
	}, w.inputs("P", "pull of all its points", "N", func(g group, s *solved) float64 {
		forces := w.model.pointForces(s, g.raising)
		var sum r3.Vec
		for _, name := range names {
			sum = r3.Add(sum, forces[name])
		}
		return r3.Norm(sum)
	}), largestPull)
}
