// Package power turns a rig into circuits: what the lamps draw, which circuit and which
// leg each is on, what the neutral carries, how much voltage the cable loses, and how
// large a supply has to be.
//
// Every lamp is taken at full level: what a level saves depends on the lamp's own
// supply, which nobody states. Lamps stand between a leg and neutral.
//
// Terms: a leg is one of the supply's phases; a circuit is one breaker on a leg; the
// inrush is a lamp's current for an instant when it is switched on.
//
// Sources: NFPA 70 (National Electrical Code), chapter 9 table 8 for conductors, 210.20
// and 215.3 for continuous load, 520.44 for cords; BS 7671, tables 4F2B and 4F3B. What
// of them is from memory says so in package source.
package power
