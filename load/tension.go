package load

import (
	"fmt"
	"strings"

	"softloft/finding"
)

// tensionWork is the work of the largest load of a piece: the largest of its cases.
// A case that doesn't apply is left out; one that could not be found makes the
// whole not known.
func tensionWork(name, symbol string, cases []finding.Input) finding.Work {
	symbols := make([]string, len(cases))
	for i, c := range cases {
		symbols[i] = c.Symbol
	}
	formula := symbol + " = " + symbols[0]
	if len(symbols) > 1 {
		formula = fmt.Sprintf("%s = max(%s)", symbol, strings.Join(symbols, ", "))
	}
	return finding.Work{Formula: formula, Name: name, Inputs: cases}
}

// mostTension is the work of a line's largest tension.
func mostTension(cases []finding.Input) finding.Work {
	return tensionWork("largest tension", "T", cases)
}

// caseInputs lists a line's tensions by case.
func (w *work) caseInputs(i int) []finding.Input {
	inputs := w.inputs("T", "tension", "N", func(_ group, s *solved) float64 { return w.model.tension(s, i) })
	if c := w.cases(i); finding.Known(float64(c.Diagonal)) {
		inputs = append(inputs, finding.Input{Symbol: "T_diagonal", Name: "half of the weight, because sharing is never even on a real day",
			Value: float64(c.Diagonal), Unit: "N", Origin: diagonalOrigin})
	}
	return inputs
}

const (
	elastic        = "elastic frame and lines at rest, docs/method-load.md#equilibrium"
	diagonalOrigin = "diagonal rule, common practice; rules.load_cells: true lifts it"
)
