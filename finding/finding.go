package finding

import "softloft/source"

// Input is one symbol of a formula: its value in SI (NaN where not known), its
// unit and where it came from (plan line, kit entry, publication, derived).
type Input struct {
	Symbol string
	Name   string
	Value  float64
	Unit   string
	Origin string
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
	Line   int `json:"line"`
	Column int `json:"column"`
}

// Subject is what a finding is about: the path of a part, and where the plan
// asks for it.
type Subject struct {
	Part  string
	Place Place
}

// Finding is one check, concluded. Value, Limit, Margin and Slack are in Unit
// (margin: a ratio) and NaN where not known or not meaningful.
type Finding struct {
	ID        string
	Subject   Subject
	Statement string
	Case      string
	Relation  Relation
	Value     float64
	Limit     float64
	Unit      string
	// Margin is limit/value for AtMost and value/limit for AtLeast.
	Margin float64
	// Slack is the distance to the limit in Unit, negative when over.
	Slack       float64
	Result      Result
	Formula     string
	Inputs      []Input
	Steps       []Step
	Assumptions []string
	// Causes are the ids of findings that this one follows from.
	Causes []string
	Source source.Citation
	// Why says in words why the result is not known, or why it is refused.
	Why string
}
