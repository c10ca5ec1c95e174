package kit

import (
	"strings"

	"softloft/quantity"
)

// Row is one entry in a list. Summary holds its main values, Source where the one comes
// from that matters most. Demo is true where any of its values is invented.
type Row struct {
	Kind, ID, Name, Summary, Source string
	Demo                            bool
}

// List lists the entries of a kind by id, or, with kind "", of all kinds in the order
// of Kinds. There is none for a kind that isn't one.
func (k Kit) List(kind string, units quantity.System) []Row {
	var rows []Row
	for _, it := range k.items(kind) {
		row := Row{Kind: it.Kind, ID: it.ID, Name: it.Entry.Label(it.ID), Summary: k.summary(it, units)}
		values := properties(it.Value)
		row.Source = it.Entry.Source.For(mainKey(values))
		for _, p := range values {
			row.Demo = row.Demo || it.Entry.Source.Demo(p.Key)
		}
		rows = append(rows, row)
	}
	return rows
}

// mainKey is the key of the value that matters most: what carries before what shines
// before what weighs; "" where it has none of them.
func mainKey(values []property) string {
	for _, key := range []string{"breaks", "rated", "slip", "outer", "yield", "lumens", "diffuse", "through", "mass"} {
		if has(values, key) {
			return key
		}
	}
	return ""
}

// summaryKeys are the values that a summary shows, by kind; hardware shows those under
// "". Derived ones go by their keys as well. Never written to.
var summaryKeys = map[string][]string{
	"alloy": {"E", "yield", "welded_yield"},
	"tube":  {"shape", "outer", "wall", "alloy", "mass"},
	"cloth": {"passes", "loss", "mass"},
	"crate": {"cell", "depth", "cut-off"},
	"wrap":  {"color", "mass"},
	"lamp":  {"mass", "power", "lumens", "size"},
	"rope":  {"breaks", "knot", "mass"},
	"stand": {"mass", "rises", "rated"},
	"":      {"mass", "rated", "kind", "slip", "efficiency", "length", "fits"},
}

// summary shows the main values of an item in one line.
func (k Kit) summary(it item, units quantity.System) string {
	keys, ok := summaryKeys[it.Kind]
	if !ok {
		keys = summaryKeys[""]
	}
	lines := k.lines(it, units)
	var parts []string
	for _, key := range keys {
		for _, line := range lines {
			if line.Key == key {
				parts = append(parts, worded(key, line.Value))
			}
		}
	}
	return strings.Join(parts, ", ")
}

// worded puts a word to a value that doesn't explain itself.
func worded(key, value string) string {
	switch key {
	case "shape", "alloy", "color", "mass", "power", "lumens", "size", "length", "kind", "rises":
		return value
	case "cell":
		return value + " cells"
	case "loss":
		return "loses " + value
	case "knot":
		return "knot keeps " + value
	case "welded_yield":
		return "beside a weld " + value
	}
	return strings.ReplaceAll(key, "_", " ") + " " + value
}
