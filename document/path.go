package document

import (
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"
)

// Key returns the path of the value under key in the mapping at path. A key that holds a sign of the
// notation itself is written as ["1.5 in"].
func Key(path, key string) string {
	switch {
	case key == "" || strings.ContainsAny(key, `.[]"\`+"\n"):
		return path + "[" + strconv.Quote(key) + "]"
	case path == "":
		return key
	}
	return path + "." + key
}

// Item returns the path of the list item at index, from 0, in the list at path.
func Item(path string, index int) string { return path + "[" + strconv.Itoa(index) + "]" }

// step is one step down a path: into a mapping by key, or into a list where index is not -1.
type step struct {
	key   string
	index int
}

// steps returns the steps of a path, and whether it is one.
func steps(path string) ([]step, bool) {
	var all []step
	for rest := path; rest != ""; {
		next, after, ok := firstStep(rest, len(all) == 0)
		if !ok {
			return nil, false
		}
		all = append(all, next)
		rest = after
	}
	return all, true
}

// firstStep splits the first step off a path, which begins with a dot or a bracket unless it is whole.
func firstStep(path string, whole bool) (next step, rest string, ok bool) {
	if inner, bracket := strings.CutPrefix(path, "["); bracket {
		return bracketStep(inner)
	}
	if !whole {
		var dotted bool
		if path, dotted = strings.CutPrefix(path, "."); !dotted {
			return step{}, "", false
		}
	}
	end := strings.IndexAny(path, ".[")
	if end < 0 {
		end = len(path)
	}
	return step{path[:end], -1}, path[end:], end > 0
}

// bracketStep reads what follows an opening bracket: an index or a quoted key.
func bracketStep(inner string) (next step, rest string, ok bool) {
	if quoted, err := strconv.QuotedPrefix(inner); err == nil {
		key, err := strconv.Unquote(quoted)
		rest, ok = strings.CutPrefix(inner[len(quoted):], "]")
		return step{key, -1}, rest, ok && err == nil
	}
	number, rest, ok := strings.Cut(inner, "]")
	index, err := strconv.Atoi(number)
	return step{"", index}, rest, ok && err == nil && index >= 0
}

// label returns what a message calls the value at path: its last key, and the item of it.
func label(path string) string {
	all, _ := steps(path)
	last := len(all) - 1
	for last > 0 && all[last].index >= 0 {
		last--
	}
	if last < 0 {
		return ""
	}
	name := clip(all[last].key)
	if all[last].index >= 0 {
		name = itemName(all[last].index)
	}
	for _, item := range all[last+1:] {
		name += " " + itemName(item.index)
	}
	return name
}

// itemName counts from 1, as people do.
func itemName(index int) string { return "item " + strconv.Itoa(index+1) }

// spot is a value in the tree with the key that it stands under; key is nil for list items and the
// whole.
type spot struct {
	key, value *yaml.Node
	path       string
}

// anchor returns the node that a message about the whole value points at: its key, where it has one.
func (s spot) anchor() *yaml.Node {
	if s.key != nil {
		return s.key
	}
	return s.value
}

// down returns the spot one step below s, and whether there is one.
func (s spot) down(to step) (spot, bool) {
	if to.index >= 0 {
		if s.value.Kind != yaml.SequenceNode || to.index >= len(s.value.Content) {
			return spot{}, false
		}
		return spot{nil, s.value.Content[to.index], Item(s.path, to.index)}, true
	}
	if s.value.Kind != yaml.MappingNode {
		return spot{}, false
	}
	for i := 0; i+1 < len(s.value.Content); i += 2 {
		if key := s.value.Content[i]; key.Kind == yaml.ScalarNode && key.Value == to.key {
			return spot{key, s.value.Content[i+1], Key(s.path, to.key)}, true
		}
	}
	return spot{}, false
}

// find returns the spot of path, or the last spot on the way there and the steps that are missing.
func (d *Document) find(path string) (at spot, missing []step, ok bool) {
	at = spot{value: d.root}
	all, ok := steps(path)
	if !ok {
		return at, nil, false
	}
	for i, to := range all {
		next, found := at.down(to)
		if !found {
			return at, all[i:], false
		}
		at = next
	}
	return at, nil, true
}
