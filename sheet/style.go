package sheet

import (
	"fmt"
	"io"

	"softloft/finding"
)

// Style says how to print: Color only where the reader is a terminal.
type Style struct {
	Color   bool
	Working bool // the working of every finding
	Width   int  // characters; 0 is 100
}

// printer writes and keeps the first error.
type printer struct {
	to    io.Writer
	style Style
	err   error
}

func (p *printer) line(format string, values ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.to, format+"\n", values...)
	}
}

// marks are the results' shapes.
var shapes = map[finding.Result]string{finding.Over: "■", finding.NotKnown: "?", finding.Tight: "▲", finding.Within: "·"}

// tones are the results' colors: none for what needs no eye.
var tones = map[finding.Result]string{finding.Over: "1;31", finding.NotKnown: "1;35", finding.Tight: "1;33"}

// result is a result as a word and a shape.
func (p *printer) result(r finding.Result) string {
	return p.tone(tones[r], fmt.Sprintf("%s %-9s", shapes[r], string(r)))
}

func (p *printer) bold(text string) string { return p.tone("1", text) }

func (p *printer) tone(code, text string) string {
	if !p.style.Color || code == "" {
		return text
	}
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}

// heading opens a block.
func (p *printer) heading(text string) {
	p.line("")
	p.line("%s", p.bold(text))
}

// wrapped prints a text broken at blanks, with an indent for all lines and two
// blanks more from the second on.
func (p *printer) wrapped(indent, text string) {
	width := p.style.Width
	if width == 0 {
		width = 100
	}
	for i, l := range wrap(text, width-len(indent)-2) {
		if i == 1 {
			indent += "  "
		}
		p.line("%s%s", indent, l)
	}
}

// wrap breaks a text at blanks into lines of at most width characters, where no
// word is longer.
func wrap(text string, width int) []string {
	var lines []string
	current := ""
	for _, word := range fields(text) {
		if current != "" && len([]rune(current))+1+len([]rune(word)) > width {
			lines, current = append(lines, current), ""
		}
		if current != "" {
			current += " "
		}
		current += word
	}
	return append(lines, current)
}
