package build

import "softloft/finding"

// Step is one step of the build or of the strike, as in the answers JSON: what one
// team does in one go. Times are in s from the start of the work; they are null where
// the crew is too small for some step, or not given.
type Step struct {
	ID       string         `json:"id"`
	Needs    []string       `json:"needs"`
	Step     string         `json:"step"` // what is done
	Number   int            `json:"number"`
	People   finding.Number `json:"people"`
	Seconds  finding.Number `json:"seconds"`
	Hold     *string        `json:"hold"` // what must be signed before work goes on; null where nothing
	SignedBy *string        `json:"signed_by"`
	Parts    []string       `json:"parts"`
	Why      string         `json:"why"`
	Start    finding.Number `json:"start_s"`
	Finish   finding.Number `json:"finish_s"`
	Slack    finding.Number `json:"slack_s"` // with as many people as are wanted
	Critical bool           `json:"critical"`
	Mass     finding.Number `json:"mass_kg"`  // of its parts
	Heavy    finding.Number `json:"heavy_kg"` // of its heaviest part
	Knots    []string       `json:"knots"`
	Returns  []Return       `json:"returns,omitempty"` // of a strike: what is counted back
}

// Return is how many pieces of one row of the pull list come back in a step.
type Return struct {
	Row   string `json:"pull"`
	Item  string `json:"item"`
	Count int    `json:"count"`
}

// Job is the build as a whole, as in the answers JSON.
type Job struct {
	People        finding.Number `json:"people"`       // the crew of the plan
	LeastPeople   finding.Number `json:"least_people"` // for the step that needs most
	LeastStep     string         `json:"least_people_step"`
	Seconds       finding.Number `json:"seconds"` // to lit and signed off, with this crew
	Strike        finding.Number `json:"strike_seconds"`
	Shortest      finding.Number `json:"critical_path_seconds"` // with as many people as are wanted
	PersonSeconds finding.Number `json:"person_seconds"`
	Critical      []string       `json:"critical_path"`
	Demo          bool           `json:"demo"` // a rate that the times rest on is invented
	Signs         []Sign         `json:"signs"`
	Ties          []Tie          `json:"ties"`
	Cards         []Card         `json:"cards"`
	Emergency     *Card          `json:"emergency,omitempty"`
	Unknown       []string       `json:"not_known"`
	Assumptions   []string       `json:"assumptions"`
}

// Sign is a line that somebody signs, with the time, before work goes on.
type Sign struct {
	Step string  `json:"step"`
	What string  `json:"what"`
	Role string  `json:"role"`
	Name *string `json:"name"`
}

// Tie is a knot or end, where it is made, and why that one.
type Tie struct {
	Where string `json:"where"`
	Knot  string `json:"knot"`
	Why   string `json:"why"`
}

// Card is what is done at short notice: what, in how many lines, by how many hands, and
// who clears the floor.
type Card struct {
	ID     string         `json:"id"`
	What   string         `json:"what"`
	Lines  []string       `json:"lines"`
	Hands  finding.Number `json:"hands"`
	Clears *string        `json:"clears_floor"`
}

// Answer is what the build analysis tells. Build is nil where no order exists.
type Answer struct {
	Build  []Step `json:"build"`
	Strike []Step `json:"strike"`
	Job    Job    `json:"job"`
}
