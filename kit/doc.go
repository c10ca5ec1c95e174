// Package kit holds what things are: tubes, cloths, crates, lamps, ropes and
// hardware, with what each weighs, carries and lets through.
//
// Entries come from data files: the ones in this package's data folder are
// embedded (Standard), a user's folder (ReadFolder) and a plan's own `kit:` extend
// and override them (Kit.With). Every value of the embedded ones has a source. A
// published property cites its publication, an invented one says "demo value", and
// a value that nobody gave is absent: what depends on it is not known.
//
// Terms: a tube is a frame member; a cloth is diffusion; a wrap is the side and
// roof cloth; a crate is an egg-crate; a rope is anything that a line is made of.
//
// The sources of the data stand in the data, value by value; data/README.md says
// how they are written and how ids are made. The form of an entry is version 1 of
// softloft's own contract.
package kit
