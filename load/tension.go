package load

import (
	"fmt"
	"math"
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

// caseInputs lists a line's tensions by case.
func (w *work) caseInputs(i int) []finding.Input {
	c := w.cases(i)
	inputs := []finding.Input{{Symbol: "T_built", Name: "tension as built", Value: float64(c.Built), Unit: "N", Origin: elastic}}
	if w.rig.Plan.Provision != nil {
		inputs = append(inputs, finding.Input{Symbol: "T_grown", Name: "tension with the provision up", Value: float64(c.Grown), Unit: "N", Origin: elastic})
	}
	if in, ok := w.lostInput(i, float64(c.LostWorst)); ok {
		inputs = append(inputs, in)
	}
	if finding.Known(float64(c.Diagonal)) {
		inputs = append(inputs, finding.Input{Symbol: "T_diagonal", Name: "half of the weight, because sharing is never even on a real day",
			Value: float64(c.Diagonal), Unit: "N", Origin: "diagonal rule, common practice; rules.load_cells: true lifts it"})
	}
	return inputs
}

const elastic = "elastic frame and lines at rest, docs/method.md#equilibrium"

// lostInput is the largest tension at rest after any loss. A loss that was not
// worked out leaves it unknown; without a loss that rests there is none.
func (w *work) lostInput(i int, worst float64) (finding.Input, bool) {
	in := finding.Input{Symbol: "T_lost", Name: "largest tension at rest after a loss", Value: worst, Unit: "N", Origin: elastic}
	largest := math.Inf(-1)
	for _, l := range w.losses {
		if l.unknown {
			in.Value = math.NaN()
			in.Origin = "the loss of " + l.what + " " + l.name + " was not worked out"
			return in, true
		}
		if t := w.model.tension(l.state, i); t > largest {
			largest = t
			in.Name = "largest tension at rest after a loss, that of " + l.what + " " + l.name
		}
	}
	return in, finding.Known(worst)
}
