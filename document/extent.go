package document

import (
	"strings"

	"go.yaml.in/yaml/v4"
)

// end returns where a scalar on one line or a flow value ends in the text. The parser tells only
// where values begin. Block values, and plain scalars over several lines, have no end here.
func (d *Document) end(node *yaml.Node) (int, bool) {
	start := d.offset(node.Line, node.Column)
	switch {
	case start >= len(d.text):
		return start, isEmpty(node)
	case node.Kind == yaml.ScalarNode && node.Style&yaml.DoubleQuotedStyle != 0:
		return d.quoteEnd(start, '"')
	case node.Kind == yaml.ScalarNode && node.Style&yaml.SingleQuotedStyle != 0:
		return d.quoteEnd(start, '\'')
	case node.Kind == yaml.ScalarNode && node.Style == 0:
		// A plain scalar on one line stands for itself.
		return start + len(node.Value), strings.HasPrefix(d.text[start:], node.Value)
	case node.Style&yaml.FlowStyle != 0 && (d.text[start] == '[' || d.text[start] == '{'):
		return d.bracketEnd(node, start)
	}
	return 0, false
}

// quoteEnd returns where a quoted scalar ends.
func (d *Document) quoteEnd(start int, mark byte) (int, bool) {
	if d.text[start] != mark {
		return 0, false
	}
	for i := start + 1; i < len(d.text); i++ {
		switch {
		case mark == '"' && d.text[i] == '\\':
			i++
		case d.text[i] == mark && mark == '\'' && strings.HasPrefix(d.text[i+1:], "'"):
			i++
		case d.text[i] == mark:
			return i + 1, true
		}
	}
	return 0, false
}

// bracketEnd returns where a flow value ends: after its last part stand blanks, commas, colons and
// comments alone before the bracket.
func (d *Document) bracketEnd(node *yaml.Node, start int) (int, bool) {
	at := max(start+1, d.lastEnd(node))
	for at < len(d.text) {
		switch d.text[at] {
		case ']', '}':
			return at + 1, true
		case '#':
			line, _ := d.position(at)
			at = d.lineEnd(line)
		case ' ', '\t', '\r', '\n', ',', ':':
			at++
		default:
			return 0, false
		}
	}
	return 0, false
}

// lastEnd returns where the last part of a flow value ends that is not empty, or -1. A part without brackets, as
// in [a: b], ends where its own last part does.
func (d *Document) lastEnd(node *yaml.Node) int {
	for i := len(node.Content) - 1; i >= 0; i-- {
		part := node.Content[i]
		if isEmpty(part) {
			continue
		}
		if end, ok := d.end(part); ok {
			return end
		}
		return d.lastEnd(part)
	}
	return -1
}

// lastLine returns the last line of a block mapping or list, without the blank lines and
// comments that follow it.
func (d *Document) lastLine(node *yaml.Node) int {
	if len(node.Content) == 0 { // an alias
		return node.Line
	}
	last := node.Content[len(node.Content)-1]
	if last.Kind != yaml.ScalarNode && last.Style&yaml.FlowStyle == 0 {
		return d.lastLine(last)
	}
	if end, ok := d.end(last); ok {
		line, _ := d.position(end)
		return line
	}
	return d.lastIndented(last, node.Column-1)
}

// lastIndented returns the last line of a scalar over several lines in a collection that is indented by
// indent: plain, or after | or >.
func (d *Document) lastIndented(scalar *yaml.Node, indent int) int {
	last := scalar.Line
	for line := last + 1; line <= len(d.line); line++ {
		text := strings.TrimRight(d.text[d.line[line-1]:d.lineEnd(line)], " \t\r\n")
		words := strings.TrimLeft(text, " ")
		if words == "" {
			continue
		}
		if len(text)-len(words) <= indent || scalar.Style == 0 && strings.HasPrefix(words, "#") {
			break
		}
		last = line
	}
	return last
}
