package stock

import (
	"fmt"

	"softloft/document"
	"softloft/kit"
	"softloft/quantity"
)

// Odd tells the rows whose id the kit doesn't have, with their lines: a shop has things
// that this plan's kit has not met, and a typing error looks the same. They serve no need.
func (s *Shop) Odd(of kit.Kit) []string {
	told := []string{}
	known := map[string][]string{}
	for i, item := range s.Items {
		ids, met := known[item.Kind]
		if !met {
			for _, row := range of.List(item.Kind, quantity.InMetres) {
				ids = append(ids, row.ID)
			}
			known[item.Kind] = ids
		}
		if contains(ids, item.Kit) {
			continue
		}
		text := fmt.Sprintf("the kit has no %s %s", item.Kind, item.Kit)
		if place, ok := s.doc.Place(document.Item("items", i) + ".kit"); ok {
			text = fmt.Sprintf("line %d: %s", place.Line, text)
		}
		if near := kit.Nearest(item.Kit, ids); near != "" {
			text += "; did you mean " + near + "?"
		}
		told = append(told, text)
	}
	return told
}

func contains(ids []string, id string) bool {
	for _, other := range ids {
		if other == id {
			return true
		}
	}
	return false
}
