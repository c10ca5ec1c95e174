package pull

import (
	"fmt"
	"math"
	"strings"

	"softloft/finding"
	"softloft/rig"
)

// Row is one row of the list. Shelf and Short wait for the shop's stock.
type Row struct {
	ID     string         `json:"id"`
	Item   string         `json:"item"`
	Kind   string         `json:"kind"`
	Kit    string         `json:"kit"`
	Shelf  *string        `json:"shelf"`
	Count  int            `json:"count"`
	Length finding.Number `json:"length_m"`
	Each   finding.Number `json:"each_kg"`
	Short  *int           `json:"short"`
	Demo   bool           `json:"demo"`
	Parts  []string       `json:"parts"`
}

// List groups the rig's parts into rows, in the order in which the rig places them.
// Parts that are derived without a weight are not on it.
func List(r *rig.Rig) []Row {
	var rows []Row
	index := map[string]int{}
	for i := range r.Parts {
		p := &r.Parts[i]
		if p.Weightless {
			continue
		}
		key := keyOf(p)
		k, ok := index[key]
		if !ok {
			k = len(rows)
			index[key] = k
			rows = append(rows, rowOf(p, key))
		}
		rows[k].Count++
		rows[k].Parts = append(rows[k].Parts, p.ID)
	}
	return rows
}

// keyOf tells apart what a crew would pull from different places or cut to
// different lengths: to the millimetre, and to the gram.
func keyOf(p *rig.Part) string {
	kit := p.KitKind + "." + p.KitID
	if p.KitID == "" {
		kit = p.ID
	}
	key := strings.ReplaceAll(p.What, " ", "-") + "." + kit
	if p.Length > 0 {
		key += fmt.Sprintf(".%.3fm", p.Length)
	}
	if p.Mass != nil && p.Length == 0 {
		key += fmt.Sprintf(".%.3fkg", *p.Mass)
	}
	return key
}

func rowOf(p *rig.Part, key string) Row {
	row := Row{ID: "pull." + key, Item: itemOf(p), Kind: p.KitKind, Kit: p.KitID, Length: finding.Number(math.NaN()),
		Each: finding.Number(math.NaN()), Demo: p.Demo}
	if p.Length > 0 {
		row.Length = finding.Number(p.Length)
	}
	if p.Mass != nil {
		row.Each = finding.Number(*p.Mass)
	}
	return row
}

// itemOf names what is pulled. A lamp's name in the plan is not the shelf's.
func itemOf(p *rig.Part) string {
	name := p.Name
	if i := strings.Index(name, ", "); i >= 0 && (p.What == "lamp" || p.KitKind == "wrap") {
		name = name[i+2:]
	}
	if strings.Contains(strings.ToLower(name), p.What) {
		return name
	}
	return p.What + ": " + name
}
