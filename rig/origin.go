package rig

import "fmt"

// Place returns the line and column of a key in the plan, zero where the user
// did not type it.
func (r *Rig) Place(key string) (line, column int) {
	if r.Doc == nil || key == "" {
		return 0, 0
	}
	place, ok := r.Doc.Place(key)
	if !ok {
		return 0, 0
	}
	return place.Line, place.Column
}

// Origin names a key of the plan for a working: with its line where the user typed
// it, as a default where not.
func (r *Rig) Origin(key string) string {
	if r.Doc != nil && r.Doc.Has(key) {
		line, _ := r.Place(key)
		return fmt.Sprintf("plan line %d, %s", line, key)
	}
	return "default of " + key
}
