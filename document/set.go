package document

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"
)

// Set returns a document in which the value at path is text, which is a scalar or a flow value as one
// would type it on one line after the colon; Quote makes one of any string. The value in the
// document must be a scalar or a flow value as well. A key that is absent from an
// existing mapping is added as its last, also with mappings around it that are absent too; the
// index after a list's last item adds an item. Every other byte stays.
//
// The changed document is read again and must differ in nothing but the value; otherwise
// Set returns an error and no document.
func (d *Document) Set(path, text string) (*Document, error) {
	value, err := flowValue(text)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	text = strings.TrimSpace(text)
	changed, err := d.splice(path, text, value)
	if err != nil && value.Kind == yaml.ScalarNode && value.Style == 0 {
		// A comma that is plain after a key ends the text within brackets.
		if quoted, again := d.splice(path, quoteAlways(value.Value), value); again == nil {
			return quoted, nil
		}
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return changed, nil
}

// quoteAlways returns a text in single quotation marks, in which nothing is escaped but they.
func quoteAlways(text string) string { return "'" + strings.ReplaceAll(text, "'", "''") + "'" }

// flowValue reads a text that is to become a value.
func flowValue(text string) (*yaml.Node, error) {
	text = strings.TrimSpace(text)
	if text == "" || strings.ContainsAny(text, "\r\n") {
		return nil, fmt.Errorf("a value on one line is due, such as 3 ft or [1 ft, 2 ft]")
	}
	d, mistake := open("", []byte("value: "+text))
	if mistake != nil {
		return nil, fmt.Errorf("%s is no value: %s", quoted(text), mistake.Problem)
	}
	r := newReader(d, nil)
	r.inspect(d.root, "", 1)
	if len(r.mistakes) > 0 {
		return nil, fmt.Errorf("%s is no value: %s", quoted(text), r.mistakes[0].Problem)
	}
	node := d.root.Content[1]
	if end, ok := d.end(node); !ok || isNull(node) || len(d.root.Content) != 2 || end != len(d.text) {
		return nil, fmt.Errorf("%s is more or less than one value", quoted(text))
	}
	return node, nil
}

// splice puts text, which reads as value, in place of the value at path.
func (d *Document) splice(path, text string, value *yaml.Node) (*Document, error) {
	edit, err := d.plan(path, text)
	if err != nil {
		return nil, err
	}
	skip := len(d.data) - len(d.text)
	data := slices.Concat(d.data[:skip+edit.from], []byte(edit.text), d.data[skip+edit.to:])
	changed, mistake := open(d.file, data)
	if mistake != nil {
		return nil, fmt.Errorf("the value does not fit in its place: %s", mistake.Problem)
	}
	want := d.with(path, value)
	if want == nil || !same(changed.root, want) {
		return nil, fmt.Errorf("the value cannot be changed in its place, change the document by hand")
	}
	return changed, nil
}

// edit is a piece of the text and what replaces it.
type edit struct {
	from, to int
	text     string
}

// plan returns the edit that puts text at path.
func (d *Document) plan(path, text string) (edit, error) {
	all, ok := steps(path)
	if !ok || len(all) == 0 {
		return edit{}, fmt.Errorf("this is not the path of a value, such as box.trim or lamps[0].at")
	}
	at, missing, found := d.find(path)
	if !found {
		return d.planNew(at, missing, text)
	}
	start := d.offset(at.value.Line, at.value.Column)
	if isEmpty(at.value) {
		return d.planEmpty(start, text), nil
	}
	end, ok := d.end(at.value)
	if !ok {
		return edit{}, fmt.Errorf("the value is written over several lines; change the values in it, or the document by hand")
	}
	return edit{start, end, text}, nil
}

// planEmpty puts text where no value stands after a colon or a hyphen.
func (d *Document) planEmpty(at int, text string) edit {
	if at > 0 && d.text[at-1] != ' ' {
		text = " " + text
	}
	return edit{at, at, text}
}

// planNew adds what is missing below the spot that exists.
func (d *Document) planNew(at spot, missing []step, text string) (edit, error) {
	for i := len(missing) - 1; i > 0; i-- {
		if missing[i].index >= 0 {
			return edit{}, fmt.Errorf("there is no %s to put an item in", label(Key("", missing[i-1].key)))
		}
		text = "{" + Quote(missing[i].key) + ": " + text + "}"
	}
	first := missing[0]
	node := at.value
	switch {
	case first.index < 0 && node.Kind == yaml.MappingNode:
		text = Quote(first.key) + ": " + text
	case first.index >= 0 && node.Kind == yaml.SequenceNode && first.index == len(node.Content):
		if node.Style&yaml.FlowStyle == 0 {
			text = "- " + text
		}
	case first.index >= 0 && node.Kind == yaml.SequenceNode:
		return edit{}, fmt.Errorf("the list has %d items", len(node.Content))
	default:
		return edit{}, fmt.Errorf("%s stands there, which has nothing below it", kindName(node))
	}
	if node.Style&yaml.FlowStyle != 0 {
		return d.planFlow(node, text)
	}
	return d.planLine(node, text), nil
}

// planFlow adds an entry before the closing bracket.
func (d *Document) planFlow(node *yaml.Node, text string) (edit, error) {
	end, ok := d.end(node)
	if !ok {
		return edit{}, fmt.Errorf("the value has no brackets to put another one in")
	}
	last := d.lastEnd(node)
	if last < 0 {
		return edit{end - 1, end - 1, text}, nil
	}
	return edit{last, last, ", " + text}, nil
}

// planLine adds a line after the last line of a block mapping or list.
func (d *Document) planLine(node *yaml.Node, text string) edit {
	line := d.lastLine(node)
	at := d.lineEnd(line)
	indent := strings.Repeat(" ", node.Column-1)
	ending := lineBreak(d.text[d.line[line-1]:at])
	if ending == "" {
		ending = lineBreak(d.text)
		if ending == "" {
			ending = "\n"
		}
		return edit{at, at, ending + indent + text}
	}
	return edit{at, at, indent + text + ending}
}

// lineBreak returns the first line break in text; empty where there is none.
func lineBreak(text string) string {
	at := strings.IndexAny(text, "\r\n")
	switch {
	case at < 0:
		return ""
	case strings.HasPrefix(text[at:], "\r\n"):
		return "\r\n"
	}
	return text[at : at+1]
}
