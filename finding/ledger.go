package finding

import (
	"fmt"
	"strings"
)

// significantInText is the number of digits of numbers put into a formula.
const significantInText = 6

// ledger is what is known while a check is worked: the symbols that were given
// or computed, and why a symbol is not known.
type ledger struct {
	inputs  []Input
	ranges  []Range
	values  map[string]float64
	reasons map[string]string
	steps   []Step
}

// open enters the inputs of both works. It refuses a symbol that is given twice
// with different values, and a range of nothing.
func open(works ...Work) (*ledger, error) {
	l := &ledger{values: map[string]float64{}, reasons: map[string]string{}}
	for _, work := range works {
		l.ranges = append(l.ranges, work.Ranges...)
	}
	var first error
	for _, work := range works {
		for _, in := range work.Inputs {
			if err := l.enter(in); err != nil && first == nil {
				first = err
			}
		}
	}
	return l, first
}

func (l *ledger) enter(in Input) error {
	if _, twice := l.values[in.Symbol]; twice {
		return l.same(in)
	}
	l.inputs = append(l.inputs, in)
	if !isSymbol(in.Symbol) {
		return fmt.Errorf("%q is no symbol; a letter and then letters, digits or _ are due", in.Symbol)
	}
	l.set(in)
	return nil
}

// same tells whether a symbol that is given again is the same input.
func (l *ledger) same(in Input) error {
	for _, earlier := range l.inputs {
		if earlier.Symbol != in.Symbol {
			continue
		}
		alike := earlier.Value == in.Value || !Known(earlier.Value) && !Known(in.Value)
		if alike && earlier.Unit == in.Unit {
			return nil
		}
	}
	return fmt.Errorf("%s is given twice with different values; use two symbols", in.Symbol)
}

// set keeps the value of a symbol, or the reason why there is none.
func (l *ledger) set(in Input) {
	l.values[in.Symbol] = in.Value
	if !Known(in.Value) {
		l.values[in.Symbol] = unknown()
		if l.reasons[in.Symbol] == "" {
			l.reasons[in.Symbol] = in.title() + " is not known"
		}
		return
	}
	for _, r := range l.ranges {
		if r.Symbol == in.Symbol && !r.holds(in.Value) {
			l.values[in.Symbol] = unknown()
			l.reasons[in.Symbol] = r.complaint(in)
		}
	}
}

// evaluate works one formula, files it as a step and keeps its result. The
// error is one of the formula itself; that its value is not known is none.
func (l *ledger) evaluate(step Step) (float64, string, error) {
	e, err := Parse(step.Formula)
	if err != nil {
		return unknown(), "", err
	}
	why, err := l.missing(e)
	if err != nil {
		return unknown(), "", err
	}
	if _, twice := l.values[e.Symbol()]; twice {
		return unknown(), "", fmt.Errorf("%s is given and computed; use two symbols", e.Symbol())
	}
	result := step.Result
	result.Symbol = e.Symbol()
	result.Value, err = e.Evaluate(l.values)
	if err != nil && why == "" {
		why = err.Error()
	}
	l.steps = append(l.steps, Step{e.String(), result, e.Substituted(l.values, significantInText)})
	if result.Symbol == "" {
		return result.Value, why, nil
	}
	l.reasons[result.Symbol] = why
	l.set(result)
	return l.values[result.Symbol], l.reasons[result.Symbol], nil
}

// missing says why symbols of a formula are not known, empty where all are. A
// symbol that nobody gave is an error.
func (l *ledger) missing(e Expression) (string, error) {
	var reasons []string
	for _, symbol := range e.Symbols() {
		x, given := l.values[symbol]
		if !given {
			return "", fmt.Errorf("%s in %q is given by no input and no step before it", symbol, e.String())
		}
		if !Known(x) {
			reasons = append(reasons, l.reasons[symbol])
		}
	}
	return joined(reasons...), nil
}

// run works the steps and the formula of a work.
func (l *ledger) run(work Work, unit string) (float64, string, error) {
	if work.Formula == "" {
		return l.given(work)
	}
	for _, step := range work.Steps {
		if _, _, err := l.evaluate(step); err != nil {
			return unknown(), "", err
		}
		if l.steps[len(l.steps)-1].Result.Symbol == "" {
			return unknown(), "", fmt.Errorf("the step %q defines no symbol; write x = …", step.Formula)
		}
	}
	return l.evaluate(Step{Formula: work.Formula, Result: Input{Name: work.Name, Unit: unit}})
}

func (l *ledger) given(work Work) (float64, string, error) {
	if len(work.Inputs) != 1 || len(work.Steps) > 0 {
		return unknown(), "", fmt.Errorf("a work without a formula has %d inputs and %d steps; exactly one input is due", len(work.Inputs), len(work.Steps))
	}
	symbol := work.Inputs[0].Symbol
	return l.values[symbol], l.reasons[symbol], nil
}

// joined joins reasons, each once.
func joined(reasons ...string) string {
	var kept []string
	for _, reason := range reasons {
		for _, part := range strings.Split(reason, "; ") {
			if part != "" && !contains(kept, part) {
				kept = append(kept, part)
			}
		}
	}
	return strings.Join(kept, "; ")
}

func contains(list []string, text string) bool {
	for _, item := range list {
		if item == text {
			return true
		}
	}
	return false
}

// title is an input's name with its symbol: "knot share k".
func (in Input) title() string {
	if in.Name == "" {
		return in.Symbol
	}
	return in.Name + " " + in.Symbol
}
