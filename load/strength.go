package load

import (
	"fmt"
	"math"

	"softloft/finding"
	"softloft/plan"
	"softloft/source"
)

// rating is what a piece is stated to carry.
type rating struct {
	rated    *float64 // N
	breaking bool     // it breaks at rated; else rated is a working load limit
	kind     source.Hardware
	knot     *float64 // share that its end keeps; nil where it has no knot or nobody said
	knotted  bool
	origin   string
	demo     bool
}

// allowed is the work of the load that a piece may carry: F = B·k/n from a breaking
// strength, F = W·h from a working load limit, of which only half may be used where
// people are beneath.
func (w *work) allowed(r rating, factor *plan.Factor, key string) (finding.Work, source.Citation) {
	value := math.NaN()
	if r.rated != nil {
		value = *r.rated
	}
	if !r.breaking {
		share, cite := w.workingShare()
		return finding.Work{Formula: "F = W * h", Name: "what it may carry", Inputs: []finding.Input{
			{Symbol: "W", Name: "working load limit", Value: value, Unit: "N", Origin: r.origin}, share,
		}}, cite
	}
	n, cite := w.factor(r.kind, factor, key)
	inputs := []finding.Input{{Symbol: "B", Name: "breaking strength", Value: value, Unit: "N", Origin: r.origin}, n}
	if !r.knotted {
		return finding.Work{Formula: "F = B / n", Name: "what it may carry", Inputs: inputs}, cite
	}
	return finding.Work{Formula: "F = B * k / n", Name: "what it may carry", Inputs: append(inputs, knotInput(r))}, cite
}

// workingShare is the share of a working load limit that may be used.
func (w *work) workingShare() (finding.Input, source.Citation) {
	half := source.WorkingLoadShare()
	if w.rig.Plan.Rules.PeopleBelow {
		return finding.Input{Symbol: "h", Name: half.Name, Value: half.Value, Origin: half.Citation.String()}, half.Citation
	}
	return finding.Input{Symbol: "h", Name: "share of a working load limit, nobody beneath", Value: 1, Origin: w.origin("rules.people_below")},
		source.Cite("plan", "")
}

// knotInput is the share of its strength that a rope keeps at its end.
func knotInput(r rating) finding.Input {
	if r.knot != nil {
		return finding.Input{Symbol: "k", Name: "share of the strength that the knot or end keeps", Value: *r.knot, Origin: r.origin}
	}
	worst := source.UnnamedKnot()
	if r.kind == source.WireRope {
		worst, _ = source.WireEnd("clips")
	}
	return finding.Input{Symbol: "k", Name: worst.Name, Value: worst.Share, Origin: worst.Citation.String()}
}

// factor is the design factor in force: the plan's, or the strictest cited one.
func (w *work) factor(kind source.Hardware, own *plan.Factor, key string) (finding.Input, source.Citation) {
	in := finding.Input{Symbol: "n", Name: "design factor of " + string(kind), Value: math.NaN()}
	if own != nil && own.Number > 0 {
		in.Value, in.Origin = own.Number, w.origin(key)
		return in, source.Cite("plan", key)
	}
	found, ok := source.StrictestFactor(kind)
	if !w.rig.Plan.Rules.PeopleBelow {
		found, ok = source.StrictestGeneralFactor(kind)
	}
	if own != nil {
		found, ok = source.FactorOf(source.ID(own.Source), kind)
		in.Name += " after " + own.Source
	}
	if !ok {
		in.Origin = "no source in the register states one"
		return in, source.Cite("plan", key)
	}
	in.Value, in.Origin = found.Value, found.Citation.String()
	return in, found.Citation
}

func (w *work) origin(key string) string { return w.rig.Origin(key) }

// subject is what a finding is about, with its place in the plan.
func (w *work) subject(part, key string) finding.Subject {
	line, column := w.rig.Place(key)
	return finding.On(part, line, column)
}

// kitOrigin names a kit entry and the source of its rating.
func kitOrigin(kind, id, from string) string {
	if from == "" {
		from = "no source given"
	}
	return fmt.Sprintf("kit %s %s: %s", kind, id, from)
}

const demoNote = "DEMO: the rating is an invented demo value; it says nothing about real gear"
