// Package plan holds what a crew asks for: the plan file, read with every mistake
// in its place, filled with defaults that are listed, checked, changed and written
// back with comments kept.
//
// The types here are the file's one description: the reader, the defaults, the
// JSON Schema and docs/plan.md all come from their tags. `key` names a key,
// `default` and `source` give the value taken when the key is absent and where it
// comes from, `doc` says what a key means, `unused` marks a key that no analysis
// uses yet.
//
// The file's form is version 1 of softloft's own contract; see docs/plan.md.
package plan
