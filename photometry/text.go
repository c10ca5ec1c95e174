package photometry

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"
)

// text refuses what is no text and cuts off a byte order mark and the end mark of old
// systems. It notes line breaks that are not those of the forms.
func (f *LampFile) text(name string, data []byte) ([]byte, error) {
	if len(data) == 0 {
		return nil, fmt.Errorf("%s: the file is empty", name)
	}
	if bytes.HasPrefix(data, []byte{0xFF, 0xFE}) || bytes.HasPrefix(data, []byte{0xFE, 0xFF}) {
		return nil, fmt.Errorf("%s: text in UTF-16; save it as plain text (UTF-8 or ISO 8859-1)", name)
	}
	if rest, ok := bytes.CutPrefix(data, []byte("\xEF\xBB\xBF")); ok {
		f.odd("begins with a byte order mark")
		data = rest
	}
	if end := bytes.TrimRight(data, "\x00\x1A \t\r\n"); bytes.ContainsAny(data[len(end):], "\x00\x1A") {
		f.odd("ends with an end mark of old systems")
		data = end
	}
	if at := bytes.IndexByte(data, 0); at >= 0 {
		return nil, fmt.Errorf("%s, line %d: a zero byte; a lamp file is plain text", name, 1+bytes.Count(data[:at], []byte("\n")))
	}
	f.lineBreaks(data)
	return data, nil
}

func (f *LampFile) lineBreaks(data []byte) {
	doubled := bytes.Count(data, []byte("\r\r\n"))
	pairs := bytes.Count(data, []byte("\r\n"))
	alone := bytes.Count(data, []byte("\r")) - pairs - doubled
	feeds := bytes.Count(data, []byte("\n")) - pairs
	switch {
	case doubled > 0:
		f.odd("line breaks are doubled (CR CR LF)")
	case alone > 0 && pairs+feeds == 0:
		f.odd("lines end with CR alone")
	case alone > 0, pairs > 0 && feeds > 0:
		f.odd("lines end in more than one way")
	}
}

// words turns a text of the file into a string: UTF-8 where it is that, else
// ISO 8859-1. Signs that print nothing are left out.
func words(raw []byte) (text string, latin bool) {
	raw = bytes.TrimSpace(raw)
	if utf8.Valid(raw) {
		return strings.Map(printing, string(raw)), false
	}
	var out strings.Builder
	for _, b := range raw {
		if r := printing(rune(b)); r >= 0 {
			out.WriteRune(r)
		}
	}
	return out.String(), true
}

func printing(r rune) rune {
	if r == '\t' {
		return ' '
	}
	if !unicode.IsPrint(r) {
		return -1
	}
	return r
}

// shorten keeps what a message shows of a file's text short.
func shorten(raw []byte) string {
	const longest = 40
	text, _ := words(raw[:min(len(raw), 4*longest)])
	if runes := []rune(text); len(runes) > longest {
		text = string(runes[:longest]) + "…"
	}
	return text
}

func known(value float64) *float64 {
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return nil
	}
	return &value
}
