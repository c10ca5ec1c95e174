package finding

import (
	"errors"
	"fmt"
	"slices"

	"softloft/source"
)

// Work is how one number comes about: steps in order, then the formula, such as
// "F_allow = B * k / n". A step may use inputs and what was computed before it.
// The formula may be left out where there is exactly one input and no step:
// then that input is the number.
type Work struct {
	Formula string
	Name    string // what the number is, in words
	Steps   []Step // Formula, and of Result the name and the unit
	Inputs  []Input
	Ranges  []Range
}

// Given is the work of a number that is simply stated.
func Given(in Input) Work { return Work{Name: in.Name, Inputs: []Input{in}} }

// Check is a check before it is concluded. Value and Limit share one set of
// symbols: the limit may use inputs and steps of the value's work. Causes are
// the ids of findings that this one depends on; the findings that its inputs
// come from are added to them.
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

// Conclude evaluates the check. A symbol that is not known, a value outside its
// range, a division by zero, and also a fault of the check itself (see Err)
// make the finding NotKnown and say why.
func (c Check) Conclude() Finding {
	f, err := c.work()
	if err != nil {
		f.Value, f.Limit, f.Why = unknown(), unknown(), err.Error()
	}
	f.Margin, f.Slack, f.Result = Judge(f.Relation, f.Value, f.Limit, f.Unit)
	return f
}

// Err tells what is wrong with the check itself: a formula that cannot be read,
// a symbol that nobody gives or that two give, a source that is not in the
// register. It does not depend on the values of the inputs.
func (c Check) Err() error {
	_, err := c.work()
	return err
}

// work evaluates both sides; what is wrong with the check is the error.
func (c Check) work() (Finding, error) {
	f := Finding{
		ID: c.ID, Subject: c.Subject, Statement: c.Statement, Case: c.Case, Relation: c.Relation, Unit: c.Unit,
		Value: unknown(), Limit: unknown(),
		Assumptions: c.Assumptions, Causes: c.causes(), Source: c.Source,
	}
	l, err := open(c.Value, c.Limit)
	f.Inputs = l.inputs
	if err == nil {
		err = c.fault(l)
	}
	if err != nil {
		return f, fmt.Errorf("%s: %w", c.ID, err)
	}
	value, whyValue, err := l.run(c.Value, c.Unit)
	if err != nil {
		return f, fmt.Errorf("%s: %w", c.ID, err)
	}
	between := len(l.steps)
	limit, whyLimit, err := l.run(c.Limit, c.Unit)
	if err != nil {
		return f, fmt.Errorf("%s: %w", c.ID, err)
	}
	f.Value, f.Limit, f.Why = value, limit, joined(whyValue, whyLimit)
	f.Steps = l.steps
	f.Formula = side(c.Value, l.steps[:between]) + c.Relation.sign() + side(c.Limit, l.steps[between:])
	return f, nil
}

// side is how one side of the relation is written.
func side(work Work, steps []Step) string {
	if work.Formula == "" {
		return work.Inputs[0].Symbol
	}
	return steps[len(steps)-1].Formula
}

// fault is what is wrong with the check apart from its formulas.
func (c Check) fault(l *ledger) error {
	if c.ID == "" {
		return errors.New("a check without an id")
	}
	if c.Relation != AtMost && c.Relation != AtLeast {
		return fmt.Errorf("the relation is %q; at_most or at_least is due", string(c.Relation))
	}
	if _, ok := source.Lookup(c.Source.Source); !ok {
		return fmt.Errorf("the source %q is not in the register", c.Source.Source)
	}
	for _, r := range l.ranges {
		if err := r.fault(); err != nil {
			return err
		}
		if !c.mentions(r.Symbol) {
			return fmt.Errorf("a range is stated for %s, which is no input and no step", r.Symbol)
		}
	}
	return nil
}

// mentions tells whether a symbol is an input or what a formula defines.
func (c Check) mentions(symbol string) bool {
	for _, work := range []Work{c.Value, c.Limit} {
		formulas := []string{work.Formula}
		for _, step := range work.Steps {
			formulas = append(formulas, step.Formula)
		}
		for _, formula := range formulas {
			if e, err := Parse(formula); err == nil && e.Symbol() == symbol {
				return true
			}
		}
		if slices.ContainsFunc(work.Inputs, func(in Input) bool { return in.Symbol == symbol }) {
			return true
		}
	}
	return false
}

// causes are the stated ones, then those that inputs come from, each once.
func (c Check) causes() []string {
	causes := slices.Clone(c.Causes)
	for _, work := range []Work{c.Value, c.Limit} {
		for _, in := range work.Inputs {
			if in.Finding != "" && !slices.Contains(causes, in.Finding) {
				causes = append(causes, in.Finding)
			}
		}
	}
	return causes
}
