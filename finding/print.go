package finding

import (
	"strconv"
	"strings"
)

// String prints the formula with its symbols, in a notation that Parse reads to
// the same tree: "F_allow = B · k / n".
func (e Expression) String() string { return e.print(symbolic{}) }

// Substituted prints the right side with numbers put in, rounded to significant
// digits (17 keep every value exactly): "10609 × 0.6 / 10". A value that is not
// known is printed as "?".
func (e Expression) Substituted(values map[string]float64, significant int) string {
	return Expression{root: e.root}.print(numeric{values, significant})
}

func (e Expression) print(s style) string {
	if e.root == nil {
		return ""
	}
	if e.symbol == "" {
		return e.root.print(s)
	}
	return e.symbol + " = " + e.root.print(s)
}

// style is how symbols and the sign of a product are printed.
type style interface {
	symbol(name string) string
	times() string
}

type symbolic struct{}

func (symbolic) symbol(name string) string { return name }
func (symbolic) times() string             { return " · " }

type numeric struct {
	values      map[string]float64
	significant int
}

func (s numeric) times() string { return " × " }

func (s numeric) symbol(name string) string {
	x, ok := s.values[name]
	if !ok || !Known(x) {
		return "?"
	}
	text := plain(x, s.significant)
	if strings.HasPrefix(text, "-") {
		return "(" + text + ")"
	}
	return text
}

// plain prints a number to significant digits, without an exponent where that
// stays readable.
func plain(x float64, significant int) string {
	if !Known(x) {
		return "?"
	}
	if x == 0 {
		return "0"
	}
	text := strconv.FormatFloat(x, 'e', significant-1, 64)
	rounded, err := strconv.ParseFloat(text, 64)
	if err != nil {
		rounded = x // rounding up the largest number there is
	}
	if size := max(rounded, -rounded); size >= 1e-4 && size < 1e9 {
		return strconv.FormatFloat(rounded, 'f', -1, 64)
	}
	return strconv.FormatFloat(rounded, 'e', -1, 64)
}

// Binding strengths, weakest first.
const (
	bindsSum = iota
	bindsProduct
	bindsSign
	bindsPower
	bindsAtom
)

func (n *node) binding() int {
	switch n.operation {
	case plus, minus:
		return bindsSum
	case times, over:
		return bindsProduct
	case negative:
		return bindsSign
	case power, degrees:
		return bindsPower
	default:
		return bindsAtom
	}
}

func (n *node) print(s style) string {
	switch n.operation {
	case literal:
		return n.text
	case circle:
		return "π"
	case variable:
		return s.symbol(n.text)
	case plus:
		return n.infix(s, " + ")
	case minus:
		return n.infix(s, " - ")
	case times:
		return n.infix(s, s.times())
	case over:
		return n.infix(s, " / ")
	case negative:
		return "-" + n.arguments[0].within(s, bindsPower)
	case degrees:
		return n.arguments[0].within(s, bindsAtom) + "°"
	case power:
		return n.raised(s)
	default:
		return n.called(s)
	}
}

// within prints a node, in parentheses where it binds weaker than asked.
func (n *node) within(s style, binding int) string {
	text := n.print(s)
	if n.binding() < binding {
		return "(" + text + ")"
	}
	return text
}

// infix keeps the tree: on the right, what binds equally gets parentheses, so
// that a sum is added in the same order when it is read again.
func (n *node) infix(s style, sign string) string {
	right := n.arguments[1].within(s, n.binding()+1)
	if strings.HasPrefix(right, "-") {
		right = "(" + right + ")"
	}
	return n.arguments[0].within(s, n.binding()) + sign + right
}

func (n *node) raised(s style) string {
	base, exponent := n.arguments[0].within(s, bindsAtom), n.arguments[1]
	if n.arguments[0].operation == call && n.arguments[0].text == "sqrt" {
		base = "(" + base + ")"
	}
	if exponent.operation == literal && span(exponent.text, isDigit) == len(exponent.text) {
		return base + superscript(exponent.text)
	}
	return base + "^" + exponent.within(s, bindsAtom)
}

func (n *node) called(s style) string {
	name := n.text
	if name == "sqrt" {
		name = "√"
	}
	arguments := make([]string, len(n.arguments))
	for i, argument := range n.arguments {
		arguments[i] = argument.print(s)
	}
	return name + "(" + strings.Join(arguments, ", ") + ")"
}

// superscript turns plain digits into superscript ones.
func superscript(digits string) string {
	runes := []rune(superscripts)
	return strings.Map(func(r rune) rune { return runes[r-'0'] }, digits)
}
