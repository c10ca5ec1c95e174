// Package build orders the work: from an empty floor to a light that is lit and
// signed off, and back. Nothing here is a list written by hand: steps are groups of
// the rig's parts, and what must come before what follows from how the parts are
// joined, from where they can be reached, and from a few rules of the trade, each of
// which is printed where it holds.
//
// Terms: a step is what one team does in one go; an act is a step without parts (a
// bump, a hold); a hold is where work stops until a named person says go; a step is
// critical where any delay of it delays the end.
//
// Sources: the lifting equation (NIOSH 1991); shares of a team (published guidance);
// the critical path method (Kelley and Walker 1959) and serial scheduling under a
// limit of people (Kelley 1963), both from memory; everything else common practice.
// The rates are invented, and the plan sets them.
package build
