// Package schema describes the plan file from the tags of package plan's types: as
// a JSON Schema for editors, and as tables for docs/plan.md. Nothing in the engine
// needs it.
//
// Source: JSON Schema draft 2020-12 (core and validation).
package schema
