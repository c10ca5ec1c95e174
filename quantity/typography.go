package quantity

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// plain returns text with typographic signs in their typewriter form: one kind of blank, ' for
// feet, " for inches, - for minus, 1/2 for ½, 2 for a superscript ² after a letter, * for a
// multiplication dot. Signs that print as nothing are dropped.
func plain(text string) string {
	var out strings.Builder
	last := ' '
	for _, r := range text {
		part := plainSign(r, last)
		out.WriteString(part)
		if part != "" {
			last, _ = utf8.DecodeLastRuneInString(part)
		}
	}
	joined := strings.ReplaceAll(out.String(), "''", `"`)
	return strings.TrimSpace(joined)
}

// plainSign returns the typewriter form of r, which stands after last.
func plainSign(r, last rune) string {
	switch r {
	case '\u200b', '\u2060', '\ufeff', '\u00ad':
		return ""
	case '\u2032', '\u2018', '\u2019', '\u02b9', '\u02bc', '\u00b4', '`':
		return "'"
	case '\u2033', '\u201c', '\u201d', '\u201e', '\u02ba':
		return `"`
	case '\u2212', '\u2010', '\u2011', '\u2012', '\u2013':
		return "-"
	case '\u2044', '\u2215':
		return "/"
	case '\u00b7', '\u22c5', '\u2219':
		return "*"
	case '\u00ba':
		return "°"
	case '²', '³':
		if unicode.IsLetter(last) {
			return map[rune]string{'²': "2", '³': "3"}[r]
		}
	}
	if unicode.IsSpace(r) {
		return " "
	}
	if fraction := vulgarFraction(r); fraction != "" {
		if '0' <= last && last <= '9' {
			return " " + fraction
		}
		return fraction
	}
	return string(r)
}

// vulgarFraction returns a one-sign fraction in digits; empty for any other sign.
func vulgarFraction(r rune) string {
	const signs = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
	digits := []string{"1/4", "1/2", "3/4", "1/7", "1/9", "1/10", "1/3", "2/3", "1/5", "2/5", "3/5", "4/5", "1/6", "5/6", "1/8", "3/8", "5/8", "7/8"}
	place := strings.IndexRune(signs, r)
	if place < 0 {
		return ""
	}
	return digits[utf8.RuneCountInString(signs[:place])]
}

// normalUnit returns a unit as the table of units writes it: N*m2 for "N m2", "N m^2" and "N * m2",
// lb/ft2 for "lb / ft2." and "lb per ft2".
func normalUnit(text string) string {
	text = strings.ReplaceAll(text, "^", "")
	text = strings.TrimSuffix(text, ".")
	text = strings.ReplaceAll(text, " per ", "/")
	fields := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '*' })
	text = strings.Join(fields, "*")
	return strings.NewReplacer("*/*", "/", "*/", "/", "/*", "/").Replace(text)
}
