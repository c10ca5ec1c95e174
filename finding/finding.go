package finding

import "softloft/source"

// Input is one symbol of a formula: its value in SI (NaN where not known), its
// unit and where it came from in words (plan line, kit entry, publication,
// derived). Angles are given in degrees, unit "deg", and written x° in the
// formula.
type Input struct {
	Symbol string
	Name   string
	Value  float64
	Unit   string
	Origin string
	// Finding is the id of the finding that the value comes from, if one.
	Finding string
}

// Step is one formula of a working. A caller gives Formula and, in Result, name
// and unit; Conclude fills in the value and the formula with numbers put in.
type Step struct {
	Formula     string
	Result      Input
	Substituted string
}

// Place is a line and a column of the plan, from 1; zero where there is none.
type Place struct {
	Line   int
	Column int
}

// Subject is what a finding is about: the path of a part, and where the plan
// asks for it.
type Subject struct {
	Part  string
	Place Place
}

// Finding is one check, concluded. Value, Limit and Slack are in Unit, Margin is
// a ratio; NaN where not known or not meaningful (see Judge).
type Finding struct {
	ID        string
	Subject   Subject
	Statement string
	Case      string // the case that governs
	Relation  Relation
	Value     float64
	Limit     float64
	Unit      string
	Margin    float64 // limit/value for AtMost, value/limit for AtLeast
	Slack     float64 // how far inside the limit; negative when over
	Result    Result
	Formula   string // "T = max(T_1, T_2) ≤ F = B · k / n"
	Inputs    []Input
	// Steps are all formulas that were worked, in order: the value's steps and
	// its formula, then the limit's.
	Steps       []Step
	Assumptions []string
	// Causes are the ids of findings that this one follows from; after Silence
	// the root causes that explain it.
	Causes []string
	Source source.Citation
	// Why says in words why the result is not known, or why it is refused.
	Why string
}

// Unknown is a finding that is not known as a whole, and why. It has no working
// and no source; its relation is AtMost until the caller sets another.
func Unknown(id string, subject Subject, statement, why string) Finding {
	return Finding{ID: id, Subject: subject, Statement: statement, Relation: AtMost, Result: NotKnown, Why: why,
		Value: unknown(), Limit: unknown(), Margin: unknown(), Slack: unknown()}
}

// Refused is a finding that is over without a number, such as a loss that
// tumbles the box, and why.
func Refused(id string, subject Subject, statement, why string) Finding {
	f := Unknown(id, subject, statement, why)
	f.Result = Over
	return f
}

// Input is the finding's value as the input of another check.
func (f Finding) Input(symbol, name string) Input {
	return Input{Symbol: symbol, Name: name, Value: f.Value, Unit: f.Unit, Origin: "finding " + f.ID, Finding: f.ID}
}

// Overall is the worst result of the findings; NotKnown where there are none.
func Overall(findings []Finding) Result {
	results := make([]Result, len(findings))
	for i, f := range findings {
		results[i] = f.Result
	}
	return Worst(results...)
}
