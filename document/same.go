package document

import "go.yaml.in/yaml/v4"

// with returns the tree with value at path, added where it is absent; nil where path leads nowhere.
// The tree of d stays as it is.
func (d *Document) with(path string, value *yaml.Node) *yaml.Node {
	all, ok := steps(path)
	if !ok {
		return nil
	}
	return replaced(d.root, all, value)
}

// replaced returns node with value at the end of the steps.
func replaced(node *yaml.Node, way []step, value *yaml.Node) *yaml.Node {
	if len(way) == 0 {
		return value
	}
	at, found := spot{value: node}.down(way[0])
	if !found {
		return appended(node, way, value)
	}
	changed := *node
	changed.Content = append([]*yaml.Node(nil), node.Content...)
	for i, part := range changed.Content {
		if part == at.value {
			changed.Content[i] = replaced(part, way[1:], value)
		}
	}
	return &changed
}

// appended returns node with a last entry or item more, around which mappings are made for the steps
// that follow the first.
func appended(node *yaml.Node, way []step, value *yaml.Node) *yaml.Node {
	for i := len(way) - 1; i > 0; i-- {
		value = &yaml.Node{Kind: yaml.MappingNode, Content: []*yaml.Node{{Kind: yaml.ScalarNode, Value: way[i].key}, value}}
	}
	changed := *node
	changed.Content = append([]*yaml.Node(nil), node.Content...)
	if way[0].index < 0 {
		changed.Content = append(changed.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: way[0].key})
	}
	changed.Content = append(changed.Content, value)
	return &changed
}

// same tells whether two trees hold the same values, whatever their places, styles and comments; a
// null is not the text that spells it.
func same(a, b *yaml.Node) bool {
	if a.Kind != b.Kind || a.Value != b.Value || len(a.Content) != len(b.Content) || isNull(a) != isNull(b) || a.Anchor != b.Anchor {
		return false
	}
	for i, part := range a.Content {
		if !same(part, b.Content[i]) {
			return false
		}
	}
	return true
}
