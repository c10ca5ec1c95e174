// Package plan holds what a crew asks for: the plan file, read with every mistake
// in its place, filled with defaults that are listed, checked, changed and written
// back with comments kept.
//
// The types here are the file's one description: the reader, the defaults, the
// JSON Schema (package schema) and the tables of docs/plan.md all come from their
// tags, which package key explains.
//
// A mistake is what leaves the plan without a meaning: a name that nothing has, a
// size of 0, two values for one thing. What can be built but should not is no
// mistake here: the analyses find it. Sizes have wide limits against slips of the
// pen, and lists have limits against plans that would take hours; both stand in
// bounds.go.
//
// The file's form is version 1 of softloft's own contract; see docs/plan.md.
package plan
