// Package kit holds what things are: tubes, cloths, crates, lamps, ropes and
// hardware, with what each weighs, carries and lets through.
//
// Entries come from data files: the ones in this package's data folder are
// embedded, a user's folder and a plan's own `kit:` extend and override them.
// Every value has a source. A published property cites its publication, an
// invented one says "demo value", and a value that nobody gave is absent: what
// depends on it is not known.
//
// Terms: a tube is a frame member; a cloth is diffusion; a wrap is the side and
// roof cloth; a crate is an egg-crate; a rope is anything that a line is made of.
package kit
