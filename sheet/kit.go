package sheet

import (
	"io"

	"softloft/kit"
)

// KitRows writes the kit as a table, a block for each kind.
func KitRows(to io.Writer, rows []kit.Row, style Style) error {
	p := &printer{to: to, style: style}
	for start := 0; start < len(rows); {
		end := start
		table := [][]string{{"id", "name", "values"}}
		for ; end < len(rows) && rows[end].Kind == rows[start].Kind; end++ {
			name := rows[end].Name
			if rows[end].Demo {
				name += " (DEMO)"
			}
			table = append(table, []string{clean(rows[end].ID), clean(name), clean(rows[end].Summary)})
		}
		p.heading(rows[start].Kind)
		p.tableLeft(table)
		start = end
	}
	return p.err
}

// KitEntry writes one entry with every value's source.
func KitEntry(to io.Writer, entry kit.Described, style Style) error {
	p := &printer{to: to, style: style}
	p.line("%s", p.bold(clean(entry.Kind+" "+entry.ID+": "+entry.Name)))
	table := [][]string{{"key", "value", "source"}}
	for _, l := range entry.Lines {
		source := l.Source
		if l.Derived {
			source = "derived"
		}
		if source == "" {
			source = "no source given"
		}
		table = append(table, []string{l.Key, clean(l.Value), clean(source)})
	}
	p.tableLeft(table)
	if entry.Note != "" {
		p.wrapped("  ", clean(entry.Note))
	}
	return p.err
}
