package quantity

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// Error says why a text is not a quantity, and what would be right.
type Error struct {
	Problem string // such as: bare number 14, a length needs its unit
	Hint    string // such as: write 14 ft or 4.27 m
}

// Error returns the problem and the hint in one sentence.
func (e *Error) Error() string {
	if strings.HasPrefix(e.Hint, "such as ") {
		return e.Problem + ", " + e.Hint
	}
	return e.Problem + "; " + e.Hint
}

// suchAs gives examples of d.
func suchAs(d Dimension) string {
	if examples := d.Examples(); len(examples) > 0 {
		return "such as " + strings.Join(examples, " or ")
	}
	return "ask for one of the known dimensions"
}

// bareNumber is the error of a number that needs a unit, with the units that were perhaps meant.
func bareNumber(a amount, d Dimension) *Error {
	number := clip(a.text)
	problem := "bare number " + number + ", " + d.WithArticle() + " needs its unit"
	if d == OfTStop {
		return &Error{problem, "write T" + number}
	}
	w := d.words()
	first := w.feet
	hint := "write " + number + " " + first
	if w.metres == "" {
		return &Error{problem, hint}
	}
	from, _ := unitFor(normalUnit(first), d)
	into, _ := unitFor(normalUnit(w.metres), d)
	ratio := from.scale()
	ratio.Mul(ratio, a.value).Quo(ratio, into.scale())
	same, _ := ratio.Float64()
	return &Error{problem, hint + " or " + strconv.FormatFloat(same, 'g', 3, 64) + " " + w.metres}
}

// noUnit is the error of a number before something that is no unit of d.
func noUnit(a amount, rest string, d Dimension) *Error {
	name := normalUnit(rest)
	if u, ok := anyUnit(name); ok {
		return wrong(a.text+gap(rest)+rest, u.of, d)
	}
	if u, behind, ok := unitBefore(rest); ok {
		return &Error{quoted(behind) + " after " + clip(a.text+gap(rest)+u) + " means nothing here", "write " + d.WithArticle() + " alone, such as " + strings.Join(d.Examples(), " or ")}
	}
	switch strings.ToLower(name) {
	case "ton", "tons":
		return &Error{quoted(rest) + " may mean 2000 lb or 1000 kg", "write it in lb, kg or t, where 1 t is 1000 kg"}
	case "fps":
		return &Error{`"fps" is not a unit`, "write frames per second as a bare number where they are due, and a speed as m/s, ft/s or mph"}
	}
	return &Error{quoted(rest) + " is not a unit of " + d.String(), suchAs(d)}
}

// unitBefore returns the unit at the start of text and the words behind it.
func unitBefore(text string) (name, behind string, ok bool) {
	fields := strings.Fields(text)
	// no unit has more than three words
	for n := min(3, len(fields)-1); n > 0; n-- {
		name = strings.Join(fields[:n], " ")
		if _, ok := anyUnit(normalUnit(name)); ok {
			return name, strings.Join(fields[n:], " "), true
		}
	}
	return "", "", false
}

// wrong is the error of a quantity of another dimension.
func wrong(text string, is, due Dimension) *Error {
	return &Error{clip(text) + " is " + is.WithArticle() + ", " + due.WithArticle() + " is due", suchAs(due)}
}

func tooLarge(number string) *Error { return &Error{clip(number) + " is too large a number", ""} }

func tooSmall(number string) *Error {
	return &Error{clip(number) + " is too small a number, though not 0", ""}
}

// gap returns the blank between a number and a unit: none before marks.
func gap(unit string) string {
	if strings.HasPrefix(unit, "'") || strings.HasPrefix(unit, `"`) || strings.HasPrefix(unit, "°") || strings.HasPrefix(unit, "%") {
		return ""
	}
	return " "
}

// quoted returns the text in quotation marks, clipped.
func quoted(text string) string { return `"` + clip(text) + `"` }

// clip returns at most 40 signs of text, without control signs.
func clip(text string) string {
	// 200 bytes hold more than 40 signs, so that a sign cut in two is not among those shown.
	text = text[:min(len(text), 200)]
	text = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || r == utf8.RuneError {
			return '?'
		}
		return r
	}, text)
	if runes := []rune(text); len(runes) > 40 {
		return string(runes[:37]) + "..."
	}
	return text
}
