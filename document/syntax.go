package document

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"go.yaml.in/yaml/v4"
)

// parse builds the tree of the one document in the text.
func (d *Document) parse() *Mistake {
	text, versioned := d.withoutVersion()
	nodes, err := loadAll(text)
	if err != nil {
		return d.syntaxMistake(err)
	}
	if len(nodes) == 0 || len(nodes[0].Content) == 0 || isEmpty(nodes[0].Content[0]) && len(nodes) == 1 {
		return d.emptyMistake(versioned)
	}
	if len(nodes) > 1 {
		second := nodes[1]
		return d.at(second.Line, second.Column, "", "a second document begins here, one is read", "leave out the line --- or ... before it")
	}
	d.root = nodes[0].Content[0]
	if d.root.Kind != yaml.MappingNode {
		return d.at(d.root.Line, d.root.Column, "", kindName(d.root)+" stands here, keys with values are due", "write lines such as title: Kitchen, day")
	}
	return nil
}

// withoutVersion returns the text with the directive of YAML 1.2 made a comment, which moves
// nothing: the parser refuses all versions but 1.1.
func (d *Document) withoutVersion() (text string, found bool) {
	text = d.text
	for line := 1; line <= len(d.line); line++ {
		from := d.line[line-1]
		whole := strings.TrimRight(d.text[from:d.lineEnd(line)], " \t\r\n")
		if isVersion(whole) {
			return text[:from] + "#" + text[from+1:], true
		}
		if whole != "" && !strings.HasPrefix(strings.TrimLeft(whole, " \t"), "#") {
			break
		}
	}
	return text, false
}

// isEmpty tells whether a node is an empty value, not even the word null.
func isEmpty(node *yaml.Node) bool {
	return node.Kind == yaml.ScalarNode && node.Value == "" && node.Style == 0
}

// emptyMistake is the mistake of a document that holds no value.
func (d *Document) emptyMistake(versioned bool) *Mistake {
	problem := "the document is empty"
	if strings.Contains(d.text, "#") || versioned {
		problem = "the document holds comments alone"
	}
	return d.at(1, 1, "", problem, "write lines such as title: Kitchen, day")
}

// errDeep is what the parser returns beyond MaxDepth.
var errDeep = errors.New("nested too deep")

// depthLimit refuses depth while parsing; aliases are refused afterwards, and never expanded.
type depthLimit struct{}

func (depthLimit) CheckDepth(depth int, _ *yaml.DepthContext) error {
	if depth > MaxDepth {
		return errDeep
	}
	return nil
}

func (depthLimit) CheckAlias(int, int) error { return nil }

// loadAll returns the first two documents of text.
func loadAll(text string) (nodes []*yaml.Node, err error) {
	// The parser panics in states that it holds impossible. Whoever wrote the text needs a sentence.
	defer func() {
		if failure := recover(); failure != nil {
			nodes, err = nil, fmt.Errorf("%v", failure)
		}
	}()
	loader, err := yaml.NewLoader(strings.NewReader(text), yaml.WithPlugin(depthLimit{}))
	if err != nil {
		return nil, err
	}
	for len(nodes) < 2 {
		node := new(yaml.Node)
		if err := loader.Load(node); err == io.EOF {
			break
		} else if err != nil {
			return nil, err
		}
		nodes = append(nodes, node)
	}
	return nodes, nil
}

// syntaxMistake says in a user's words what the parser found.
func (d *Document) syntaxMistake(err error) *Mistake {
	var found *yaml.LoadError
	if !errors.As(err, &found) {
		return d.at(1, 1, "", "this cannot be read as YAML: "+clip(err.Error()), "check the quotation marks, brackets and indentation")
	}
	here, began := found.Mark, found.ContextMark
	if began.Line == 0 {
		began = here
	}
	words := explain(found.Message, found.ContextMsg, d.signAt(here.Line, here.Column))
	if words.atStart {
		here = began
	}
	problem := strings.ReplaceAll(words.problem, "LINE", fmt.Sprintf("line %d", began.Line))
	line, column := here.Line, here.Column
	if line > len(d.line) { // the parser counts a line after the last
		line, column = len(d.line), d.width(len(d.line))+1
	}
	return d.at(max(line, 1), max(1, min(column, d.width(line)+1)), "", problem, words.hint)
}

// signAt returns the sign at a place, or 0 at the end of a line.
func (d *Document) signAt(line, column int) rune {
	if line < 1 || line > len(d.line) {
		return 0
	}
	for _, r := range d.text[d.offset(line, column):d.lineEnd(line)] {
		return r
	}
	return 0
}

// width returns how many characters a line has.
func (d *Document) width(line int) int {
	if line < 1 || line > len(d.line) {
		return 0
	}
	return len([]rune(strings.TrimRight(d.text[d.line[line-1]:d.lineEnd(line)], "\r\n")))
}
