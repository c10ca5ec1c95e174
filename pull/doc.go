// Package pull makes the pull list: all that must come off the shelf, counted from
// the rig's placed parts alone. Pieces of one kind, one kit entry and one length are
// one row; every row names the parts that it stands for.
//
// Lengths in m, masses in kg. A rope's length has its tails and knots in it where the
// rig's fitting rules place them; splices are not added.
package pull
