// Package document reads a YAML document into typed Go values, tells every mistake with its
// place, and changes the document by splicing bytes so that nothing else moves.
//
// The document is what a person typed: one YAML 1.2 document (JSON is YAML) whose top is a mapping,
// without anchors, aliases, merge keys and tags, of bounded size. Words such as on, off, yes and
// no are text; only true and false are truth values. What was typed for a value is kept.
//
// Places are lines and columns counted from 1, columns in characters. Paths name a
// value: box.trim, lamps[0].at[1], kit.tube["1.5 in"].wall; Key and Item build them.
//
// Source: YAML Ain't Markup Language, version 1.2.2 (2021), core schema in chapter 10.
package document
