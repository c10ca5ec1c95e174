package document

import (
	"sort"
	"strings"
	"unicode/utf8"
)

// lineStarts returns where each line of text begins. Lines end at \n, \r\n or \r, as in YAML.
func lineStarts(text string) []int {
	starts := []int{0}
	for i := 0; i < len(text); i++ {
		if text[i] == '\n' || text[i] == '\r' && !strings.HasPrefix(text[i+1:], "\n") {
			starts = append(starts, i+1)
		}
	}
	return starts
}

// lineText returns a line, counted from 1, without its end and cut to 400 bytes; empty outside the document.
func (d *Document) lineText(line int) string {
	if line < 1 || line > len(d.line) {
		return ""
	}
	text := strings.TrimRight(d.text[d.line[line-1]:d.lineEnd(line)], "\r\n")
	if len(text) <= 400 {
		return strings.ToValidUTF8(text, "?")
	}
	cut := 400
	for cut > 0 && !utf8.RuneStart(text[cut]) {
		cut--
	}
	return strings.ToValidUTF8(text[:cut], "?")
}

// lineEnd returns where the line after line begins.
func (d *Document) lineEnd(line int) int {
	if line < len(d.line) {
		return d.line[line]
	}
	return len(d.text)
}

// offset returns the byte at a line and a column, which counts characters.
func (d *Document) offset(line, column int) int {
	at := d.line[min(max(line, 1), len(d.line))-1]
	for ; column > 1 && at < len(d.text); column-- {
		_, size := utf8.DecodeRuneInString(d.text[at:])
		at += size
	}
	return at
}

// position returns the line and the column of a byte.
func (d *Document) position(at int) (line, column int) {
	line = sort.SearchInts(d.line, at+1)
	return line, utf8.RuneCountInString(d.text[d.line[line-1]:at]) + 1
}

// clip returns at most 60 signs of text on one line, for messages.
func clip(text string) string {
	text = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || r == utf8.RuneError {
			return '?'
		}
		return r
	}, text[:min(len(text), 300)])
	if signs := []rune(text); len(signs) > 60 {
		return string(signs[:57]) + "..."
	}
	return text
}
