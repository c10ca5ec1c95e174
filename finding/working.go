package finding

import (
	"fmt"
	"strings"
)

// Depth is how much of a working is told.
type Depth int

// The three depths.
const (
	Brief   Depth = iota // the line
	Numbers              // symbols, numbers, result
	Sources              // all, with where each number came from
)

// significantInLine is the number of digits of a line; the working has more.
const significantInLine = 4

// Line tells the finding in one line, in SI, at four significant digits, or at
// as many as tell value and limit apart.
func (f Finding) Line() string {
	text := string(f.Result) + ": " + f.Statement
	if comparison := f.comparison(); comparison != "" {
		text += ": " + comparison
	}
	if f.Case != "" {
		text += ", case " + f.Case
	}
	if f.Why != "" {
		text += " (" + f.Why + ")"
	}
	return text
}

// comparison is "328.2 N, at most 636.5 N, margin 1.94", as far as it is known.
func (f Finding) comparison() string {
	if !Known(f.Value) && !Known(f.Limit) {
		return ""
	}
	significant := f.apart()
	text := amount(f.Value, f.Unit, significant) + ", " + f.Relation.String() + " " + amount(f.Limit, f.Unit, significant)
	switch {
	case Known(f.Margin):
		return text + ", margin " + plain(f.Margin, apart(f.Margin, 1, 3))
	case f.Unit == Stop && Known(f.Slack):
		return text + ", slack " + amount(f.Slack, f.Unit, 3)
	default:
		return text
	}
}

func (f Finding) apart() int { return apart(f.Value, f.Limit, significantInLine) }

// apart is how many digits, at least so many, tell two numbers apart.
func apart(a, b float64, significant int) int {
	for significant < digitsOfAnswers && a != b && plain(a, significant) == plain(b, significant) {
		significant++
	}
	return significant
}

// Working tells the finding at a depth, one text line per element, in SI and
// plain text.
func (f Finding) Working(depth Depth) []string {
	lines := []string{f.Line()}
	if depth >= Numbers {
		for _, step := range f.Steps {
			lines = append(lines, step.lines()...)
		}
		if comparison := f.comparison(); comparison != "" {
			lines = append(lines, "  "+comparison+": "+string(f.Result))
		}
	}
	if depth >= Sources {
		lines = append(lines, f.origins()...)
	}
	return lines
}

// lines are the formula, the formula with numbers put in, and the result.
func (s Step) lines() []string {
	title := "  " + s.Formula
	if s.Result.Name != "" {
		title += "   " + s.Result.Name
	}
	result := "    = " + amount(s.Result.Value, s.Result.Unit, significantInText)
	if !Known(s.Result.Value) {
		result = "    not known"
	}
	return []string{title, "    = " + s.Substituted, result}
}

// origins tell where everything came from.
func (f Finding) origins() []string {
	var lines []string
	for _, in := range f.Inputs {
		text := fmt.Sprintf("  %s = %s", in.Symbol, amount(in.Value, in.Unit, significantInText))
		lines = append(lines, strings.TrimRight(text+"   "+joined(in.Name, in.Origin), " "))
	}
	for _, assumption := range f.Assumptions {
		lines = append(lines, "  assumed: "+assumption)
	}
	for _, cause := range f.Causes {
		lines = append(lines, "  follows from: "+cause)
	}
	return append(lines, "  source: "+f.Source.String())
}

// amount is a number with its unit, or "not known".
func amount(x float64, unit string, significant int) string {
	switch {
	case !Known(x):
		return "not known"
	case unit == "":
		return plain(x, significant)
	default:
		return plain(x, significant) + " " + unit
	}
}
