// Package fit tells what of a rig does not mate, does not fit or should not be built:
// findings that rest on shapes and ratings alone, and on no load that is shared.
//
// What package rig noticed while placing; lamps beside their box, in each other's
// place, on clamps that are not rated for them, too near to cloth or to a textile drop;
// box, lines and stands against obstacles, sprinklers, set walls and the room; stands
// out of their range, in the light, beside their ear, on wheels; arms without bags.
// What can be built but should not be is a finding and never stops anything.
//
// Sources: habits of the trade are cited as common practice, the play of pins and ears
// as design assumptions. Whether two blocks meet by separating axes, Gottschalk, Lin and
// Manocha (1996).
package fit
