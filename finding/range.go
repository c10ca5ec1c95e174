package finding

import (
	"fmt"
	"math"
)

// Range is the interval of a symbol in which a formula holds. A value outside
// makes what depends on it not known. An open end is ±Inf; Reason says in words
// where the interval comes from.
type Range struct {
	Symbol    string
	Low, High float64
	Reason    string
}

func (r Range) holds(x float64) bool { return x >= r.Low && x <= r.High }

func (r Range) complaint(in Input) string {
	text := fmt.Sprintf("%s is %s, the formula holds for %s", in.title(), amount(in.Value, in.Unit, significantInText), r.interval(in.Unit))
	if r.Reason != "" {
		text += " (" + r.Reason + ")"
	}
	return text
}

func (r Range) interval(unit string) string {
	switch {
	case math.IsInf(r.Low, -1):
		return "at most " + amount(r.High, unit, significantInText)
	case math.IsInf(r.High, 1):
		return "at least " + amount(r.Low, unit, significantInText)
	default:
		return plain(r.Low, significantInText) + " to " + amount(r.High, unit, significantInText)
	}
}

// fault is what is wrong with the range itself.
func (r Range) fault() error {
	if math.IsNaN(r.Low) || math.IsNaN(r.High) || r.Low > r.High {
		return fmt.Errorf("the range of %s is empty", r.Symbol)
	}
	return nil
}
