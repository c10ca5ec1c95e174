// Package source is the register of publications that softloft leans on, and
// the constants and limits that cite them.
//
// A row of a table names its publication on its own line. A publication is
// marked Read when the values taken from it were read in a copy of it; what is
// from memory, or was read second-hand, is not Read, and its Note says which.
// A single row from a publication that was read only in part can still be from
// memory: Citation.FromMemory says so.
//
// An edition or a year that is not known is empty. Nothing here is advice: a
// limit that a publication states is what a finding is held to, no more.
package source
