package load

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/kit"
	"softloft/rig"
	"softloft/source"
)

// Arrest is how a second means catches what it holds: Force at the end of a fall through
// its slack.
type Arrest struct {
	Part   string `json:"part"`
	Slack  Number `json:"slack_m"`
	Force  Number `json:"arrest_n"`
	Weight Number `json:"weight_n"`
	Length Number `json:"length_m"`
}

// caught is one second means with what it catches.
type caught struct {
	part         *rig.Part
	id           string
	statement    string
	weight       finding.Input
	slack        float64
	slackFrom    string
	length       float64
	lengthFrom   string
	rope         *rig.Rope
	kind         string
	force, limit float64
}

// safeties works out every lamp's safety and the box's secondary.
func (w *work) safeties() {
	w.answer.Safety = []Arrest{}
	for i := range w.rig.Parts {
		p := &w.rig.Parts[i]
		if c, ok := w.lampCaught(p); ok {
			w.concludeCaught(&c)
			w.concludeFall(&c)
			w.concludeAnchorTube(&c)
		}
	}
	for i := range w.rig.Seconds {
		if c, ok := w.boxCaught(&w.rig.Seconds[i]); ok {
			w.concludeCaught(&c)
			w.concludeAnchorPoint(&w.rig.Seconds[i], &c)
		}
	}
}

// lampCaught reads a lamp's safety off the rig.
func (w *work) lampCaught(p *rig.Part) (caught, bool) {
	lamp, ok := w.rig.Part(strings.TrimSuffix(p.ID, ".safety"))
	piece, okKit := w.rig.Kit.Suspender(p.KitID)
	if p.What != "safety" || !ok || !okKit {
		return caught{}, false
	}
	c := caught{part: p, id: "load.safety." + strings.TrimPrefix(lamp.ID, "lamp."), kind: piece.Kind, rope: rig.RopeOf(piece),
		statement: "The safety of " + strings.TrimPrefix(lamp.ID, "lamp.") + ", when it catches the lamp",
		weight:    finding.Input{Symbol: "m", Name: "mass of the lamp", Value: optional(lamp.Mass), Unit: "kg", Origin: lamp.MassFrom}, slackFrom: "no slack is stated: none is taken"}
	if h := w.rig.Plan.Hang; h != nil && h.Safety != nil {
		c.slack, c.slackFrom = float64(h.Safety.Slack), w.origin("hang.safety.slack")
	}
	c.ropeLength(piece, r3.Norm(r3.Sub(p.Center, lamp.Center))+c.slack, "from lamp to tube, and the slack")
	return c, true
}

// ropeLength is the length that stretches: the kit's, else the way.
func (c *caught) ropeLength(piece kit.Suspender, way float64, from string) {
	c.length, c.lengthFrom = way, from
	if piece.Rope == nil && piece.Hardware.Length != nil {
		c.length, c.lengthFrom = float64(*piece.Hardware.Length), "kit "+piece.Kind+" "+piece.ID
	}
}

// boxCaught reads one secondary off the rig. Slack is never even: the whole weight comes
// on the fewest, one of up to three, two of more.
func (w *work) boxCaught(s *rig.Second) (caught, bool) {
	p, ok := w.rig.Part(s.Part)
	if !ok {
		return caught{}, false
	}
	piece, okKit := w.rig.Kit.Suspender(p.KitID)
	if !okKit {
		return caught{}, false
	}
	fewest := 1
	if len(w.rig.Seconds) > 3 {
		fewest = 2
	}
	c := caught{part: p, id: "load.secondary." + s.Line, kind: piece.Kind, rope: rig.RopeOf(piece), statement: "The secondary beside line " + s.Line + ", when it catches the box",
		weight: finding.Input{Symbol: "m", Name: fmt.Sprintf("mass of the box over the fewest that catch it first: %d of %d", fewest, len(w.rig.Seconds)),
			Value: float64(w.answer.Mass) / float64(fewest), Unit: "kg", Origin: "take-off; slack is never even, common practice"},
		slack: s.Slack, slackFrom: w.origin("hang.secondary.slack")}
	c.ropeLength(piece, p.Length, "from its point to the box, and the slack")
	return c, true
}

// work is the largest force with which a rope of stiffness EA and length L stops a weight
// G that falls by d: P = G(1+√(1+2cd/G)), c = EA/L (the standard impact equation). What
// holds its other end is taken as rigid; no damping.
func (c *caught) work() finding.Work {
	ea := c.rope.EA
	if !(ea > 0) {
		ea = math.NaN()
	}
	return finding.Work{Formula: "P = G * (1 + sqrt(1 + 2*c*d/G))", Name: "force at the end of the fall",
		Steps: []finding.Step{
			{Formula: "G = m * g", Result: finding.Input{Symbol: "G", Name: "weight", Unit: "N"}},
			{Formula: "c = EA / L", Result: finding.Input{Symbol: "c", Name: "stiffness", Unit: "N/m"}},
		},
		Inputs: []finding.Input{c.weight,
			{Symbol: "g", Name: "standard gravity", Value: gravity, Unit: "m/s2", Origin: "definition"},
			{Symbol: "EA", Name: "stiffness of its rope", Value: ea, Unit: "N", Origin: kitOrigin(c.kind, c.part.KitID, "stiffness")},
			{Symbol: "L", Name: "length that stretches", Value: c.length, Unit: "m", Origin: c.lengthFrom},
			{Symbol: "d", Name: "fall before it is taut", Value: c.slack, Unit: "m", Origin: c.slackFrom},
		}}
}

// concludeCaught holds the arrest to the second means' own rating, and tells it.
func (w *work) concludeCaught(c *caught) {
	limit, cite := w.ropeLimit(&rig.Line{Rope: c.rope})
	f := finding.Check{
		ID: c.id, Subject: w.subject(c.part.ID, c.part.Path), Statement: c.statement, Case: "caught", Relation: finding.AtMost, Unit: "N",
		Value: c.work(), Limit: limit, Source: cite,
		Assumptions: append([]string{"what holds its other end is taken as rigid and the rope as straight elastic, undamped: it is caught no harder than that", "once it has caught something it is scrap"}, demoOf(c.rope.Demo)...),
	}.Conclude()
	c.force, c.limit = f.Value, f.Limit
	w.add(f)
	w.answer.Safety = append(w.answer.Safety, Arrest{Part: c.part.ID, Slack: Number(c.slack), Force: Number(f.Value), Weight: Number(c.weight.Value * gravity), Length: Number(c.length)})
}

// concludeFall holds the fall to the longest that is cited.
func (w *work) concludeFall(c *caught) {
	limit := source.LampFall()
	w.add(finding.Check{
		ID: strings.Replace(c.id, "load.safety.", "load.fall.", 1), Subject: w.subject(c.part.ID, c.part.Path), Statement: c.statement + ": how far it has fallen", Relation: finding.AtMost, Unit: "m",
		Value:  finding.Given(finding.Input{Symbol: "h", Name: "fall before the safety is taut", Value: c.slack, Unit: "m", Origin: c.slackFrom}),
		Limit:  finding.Given(finding.Cited("h_max", limit)),
		Source: limit.Citation, Assumptions: []string{"the rule asks for no fall at all; this is the most where a lamp must be adjusted"},
	}.Conclude())
}

// arrestInput is a catch as the load of what holds the other end.
func (c *caught) arrestInput() finding.Work {
	return finding.Given(finding.Input{Symbol: "P", Name: "force at the end of the fall", Value: c.force, Unit: "N", Origin: "see there", Finding: c.id})
}

// concludeAnchorTube bends the tube that the safety goes around, as a beam that is free to
// turn at its ends: M = P·a·b/L, the force softened by the tube itself, which gives way
// like a spring of 3·E·I·L/(a²b²) in line with the safety. What else is on the tube is
// added as built.
func (w *work) concludeAnchorTube(c *caught) {
	t, at, ok := w.anchorTube(c.part)
	if !ok {
		return
	}
	part, _ := w.rig.Part(t.Part)
	section, material, _ := properties(t)
	length := r3.Norm(r3.Sub(t.To, t.From))
	in := func(symbol, name string, value float64, unit, origin string) finding.Input {
		return finding.Input{Symbol: symbol, Name: name, Value: value, Unit: unit, Origin: origin}
	}
	work := c.work()
	work.Steps[1] = finding.Step{Formula: "c = 1 / (L/EA + a^2*(B-a)^2/(3*E*I*B))", Result: in("c", "stiffness of safety and tube in line", 0, "N/m", "")}
	work.Steps = append(work.Steps, finding.Step{Formula: work.Formula, Result: in("P", "force at the end of the fall", 0, "N", "")})
	work.Formula, work.Name = "σ = σ_0 + P*a*(B-a)/(B*Z)", "bending stress"
	work.Inputs = append(work.Inputs, in("σ_0", "largest stress of the tube as built", w.stressOf(t.Part), "Pa", elastic),
		in("a", "place along the tube", at, "m", "places"), in("B", "length of the tube", length, "m", "places"),
		in("E", "Young's modulus", material.Young, "Pa", "alloy of "+part.KitID), in("I", "second moment of area", section.InertiaZ, "m4", "section of "+part.KitID),
		in("Z", "section modulus", section.ModulusZ, "m3", "section of "+part.KitID))
	w.add(finding.Check{
		ID: strings.Replace(c.id, "load.safety.", "load.anchor.", 1), Subject: w.subject(t.Part, part.Path), Statement: c.statement + ": " + t.Part + ", around which it goes", Relation: finding.AtMost, Unit: "Pa",
		Value: work, Limit: finding.Given(in("f", "allowed stress", allowedStress(t), "Pa", fmt.Sprintf("yield strength over %.2f", yieldFactor))),
		Source: source.Cite(yieldSource, ""), Assumptions: []string{"the tube is free to turn at its ends; its own mass is left out"},
	}.Conclude())
}

// anchorTube is the tube that a lamp's safety goes around, and where.
func (w *work) anchorTube(p *rig.Part) (*rig.Tube, float64, bool) {
	for _, v := range w.rig.Weights {
		if v.Part != p.ID || v.OnTube == "" {
			continue
		}
		if t, ok := w.rig.Tube(v.OnTube); ok {
			at, on := along(t, v.Station)
			return t, at, on
		}
	}
	return nil, 0, false
}

// stressOf is a tube's largest stress as built or grown, Pa; NaN where it is not known.
func (w *work) stressOf(part string) float64 {
	if w.answer.Frame != nil {
		for _, m := range w.answer.Frame.Members {
			if m.Part == part {
				return float64(m.Stress)
			}
		}
	}
	return math.NaN()
}

// concludeAnchorPoint holds the arrest to what the owner allows of the point above.
func (w *work) concludeAnchorPoint(s *rig.Second, c *caught) {
	p := w.pointAt(s.Top)
	if p == nil {
		return
	}
	statement := fmt.Sprintf("%s: point %s, on which it hangs", c.statement, p.Name)
	id := strings.Replace(c.id, "load.secondary.", "load.anchor.", 1)
	if p.Allows == nil {
		w.add(finding.Unknown(id, w.subject("point."+p.Name, p.Path), statement, "its owner has not stated what it allows"))
		return
	}
	w.add(finding.Check{
		ID: id, Subject: w.subject("point."+p.Name, p.Path), Statement: statement, Case: "caught", Relation: finding.AtMost, Unit: "N",
		Value: c.arrestInput(), Limit: finding.Given(finding.Input{Symbol: "F_max", Name: "what its owner allows" + statedBy(p), Value: *p.Allows, Unit: "N", Origin: w.origin(p.Path + ".allows")}),
		Source: source.Cite("plan", p.Path), Assumptions: []string{"the building is not checked: the point is its owner's statement"},
	}.Conclude())
}

func (w *work) pointAt(at r3.Vec) *rig.Point {
	for i := range w.rig.Points {
		if r3.Norm(r3.Sub(w.rig.Points[i].InRoom, at)) < touching {
			return &w.rig.Points[i]
		}
	}
	return nil
}
