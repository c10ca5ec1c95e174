package document

import (
	"fmt"

	"go.yaml.in/yaml/v4"
)

// inspect tells what is wrong in the tree whatever its values mean: anchors, aliases, tags, merge
// keys, keys that are no text, keys that stand twice.
func (r *reader) inspect(node *yaml.Node, path string, depth int) {
	switch {
	case depth > MaxDepth:
		r.tell(node, path, fmt.Sprintf("lists and mappings are nested more than %d deep", MaxDepth), "a plan needs fewer than 10")
		r.refused[node] = true
		return
	case node.Kind == yaml.AliasNode || node.Anchor != "":
		r.tell(node, path, "names with * or & that stand for other values are not taken", aliasHint)
		r.refused[node] = true
	case node.Style&yaml.TaggedStyle != 0:
		r.tell(node, path, "tags with ! are not taken", "leave "+clip(node.Tag)+" out, or put the text in quotation marks")
		r.refused[node] = true
	}
	switch node.Kind {
	case yaml.SequenceNode:
		for i, item := range node.Content {
			r.inspect(item, Item(path, i), depth+1)
		}
	case yaml.MappingNode:
		r.inspectKeys(node, path)
		for i := 0; i+1 < len(node.Content); i += 2 {
			r.inspect(node.Content[i+1], Key(path, node.Content[i].Value), depth+1)
		}
	}
}

// inspectKeys tells what is wrong with the keys of a mapping. A refused key's value is not read.
func (r *reader) inspectKeys(node *yaml.Node, path string) {
	first := make(map[string]*yaml.Node, len(node.Content)/2)
	for i := 0; i+1 < len(node.Content); i += 2 {
		key := node.Content[i]
		problem, hint := keyProblem(key)
		earlier := first[key.Value]
		switch {
		case problem != "":
			r.tell(key, path, problem, hint)
		case earlier != nil:
			r.tell(key, Key(path, key.Value), fmt.Sprintf("stands twice: on line %d and on line %d", earlier.Line, key.Line), "leave one out")
		default:
			first[key.Value] = key
			continue
		}
		r.refused[key] = true
	}
}

// keyProblem says why a node cannot be a key; empty where it can.
func keyProblem(key *yaml.Node) (problem, hint string) {
	switch {
	case key.Kind == yaml.AliasNode || key.Anchor != "":
		return "names with * or & that stand for other values are not taken", aliasHint
	case key.Kind != yaml.ScalarNode:
		return kindName(key) + " stands where a key is due", "write a word before the colon"
	case key.Style&yaml.TaggedStyle != 0:
		return "tags with ! are not taken", "leave " + clip(key.Tag) + " out, or put the text in quotation marks"
	case key.Value == "<<" && key.Style == 0:
		return "merge keys are not taken", "write the keys out where they are needed"
	case isEmpty(key):
		return "no key stands before the colon", "write a word before it"
	}
	return "", ""
}

// kindName says what a node is, with an article.
func kindName(node *yaml.Node) string {
	switch node.Kind {
	case yaml.SequenceNode:
		return "a list"
	case yaml.MappingNode:
		return "a mapping"
	case yaml.ScalarNode:
		return `"` + clip(node.Value) + `"`
	}
	return "an alias"
}
