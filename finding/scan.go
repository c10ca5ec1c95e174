package finding

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

type tokenKind byte

const (
	endToken tokenKind = iota
	numberToken
	nameToken
	signToken
	superscriptToken // its text is in plain digits
)

type token struct {
	kind tokenKind
	text string
}

func (t token) is(sign string) bool { return t.kind == signToken && t.text == sign }

// String is the token as an error names it.
func (t token) String() string {
	if t.kind == endToken {
		return "the end"
	}
	return fmt.Sprintf("%q", t.text)
}

// plainSigns are the signs a formula may use, each with its plain form.
var plainSigns = map[rune]string{
	'+': "+", '-': "-", '−': "-", '*': "*", '·': "*", '×': "*", '⋅': "*", '/': "/", '÷': "/",
	'^': "^", '(': "(", ')': ")", ',': ",", '=': "=", '°': "°", '√': "√",
}

const (
	superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹"
	subscripts   = "₀₁₂₃₄₅₆₇₈₉"
)

// scan cuts a formula into tokens; the last one is the end.
func scan(text string) ([]token, error) {
	if !utf8.ValidString(text) {
		return nil, fmt.Errorf("the text is not valid UTF-8")
	}
	var tokens []token
	for rest := strings.TrimLeftFunc(text, unicode.IsSpace); rest != ""; rest = strings.TrimLeftFunc(rest, unicode.IsSpace) {
		t, size := first(rest)
		if size == 0 {
			r, _ := utf8.DecodeRuneInString(rest)
			return nil, fmt.Errorf("%q has no place in a formula", r)
		}
		tokens = append(tokens, t)
		rest = rest[size:]
	}
	return append(tokens, token{}), nil
}

// first is the token at the start of a text that is not empty, and its length
// in bytes; 0 where there is none.
func first(text string) (token, int) {
	r, size := utf8.DecodeRuneInString(text)
	if sign, ok := plainSigns[r]; ok {
		return token{signToken, sign}, size
	}
	if n := span(text, isSuperscript); n > 0 {
		return token{superscriptToken, digits(text[:n])}, n
	}
	if n := numberLength(text); n > 0 {
		return token{numberToken, text[:n]}, n
	}
	if startsName(r) {
		n := span(text, inName)
		return token{nameToken, text[:n]}, n
	}
	return token{}, 0
}

// span is the length in bytes of the longest start of a text whose runes fit.
func span(text string, fits func(rune) bool) int {
	for i, r := range text {
		if !fits(r) {
			return i
		}
	}
	return len(text)
}

// numberLength is the length of a number such as 12, .5, 1.25e-3 at the start;
// an e that no digit follows does not belong to it.
func numberLength(text string) int {
	whole := span(text, isDigit)
	n := whole
	if strings.HasPrefix(text[n:], ".") {
		part := span(text[n+1:], isDigit)
		if whole+part == 0 {
			return 0
		}
		n += 1 + part
	}
	if n == 0 {
		return 0
	}
	if n < len(text) && (text[n] == 'e' || text[n] == 'E') {
		sign := 0
		if n+1 < len(text) && (text[n+1] == '+' || text[n+1] == '-') {
			sign = 1
		}
		if exponent := span(text[n+1+sign:], isDigit); exponent > 0 {
			n += 1 + sign + exponent
		}
	}
	return n
}

// digits turns superscript digits into plain ones.
func digits(text string) string {
	return strings.Map(func(r rune) rune {
		return '0' + rune(len([]rune(superscripts[:strings.IndexRune(superscripts, r)])))
	}, text)
}

func isDigit(r rune) bool       { return r >= '0' && r <= '9' }
func isSuperscript(r rune) bool { return strings.ContainsRune(superscripts, r) }
func startsName(r rune) bool    { return unicode.IsLetter(r) || r == '_' }
func inName(r rune) bool {
	return startsName(r) || isDigit(r) || strings.ContainsRune(subscripts, r)
}

// isSymbol tells whether a name may stand for a value in a formula.
func isSymbol(name string) bool {
	r, _ := utf8.DecodeRuneInString(name)
	return utf8.ValidString(name) && startsName(r) && span(name, inName) == len(name) && !reserved(name)
}
