// Package frame solves three-dimensional frames of straight members that stand on supports or hang on
// tension-only elastic cables. It knows bars, cables, weights and places, and no word of any trade.
//
// Two analyses share one member:
//
//   - [Problem.Linear]: small displacements, one factorization, many load cases. Cables are springs along their
//     line and may come out with a negative tension.
//   - [Problem.Equilibrium]: the place of rest under large rotations, with cables that go slack and taut. It is a
//     minimum of the total potential energy; a state that is not one is reported as such.
//
// # Units and axes
//
// SI throughout: meters, newtons, newton meters, radians. World axes are right-handed with z up. A member's own
// axes are x from node I to node J, z the part of Up that is square to x, and y = z × x. InertiaY resists bending
// in the x–z plane, InertiaZ in the x–y plane.
//
// # Member
//
// The member is the two-node beam of matrix structural analysis (Przemieniecki, Theory of Matrix Structural
// Analysis, 1968, chapter 5) written in its basic system: simply supported on its chord, six deformations
// (stretch, twist, two end rotations in each of two planes). End springs, releases and the free end rotations
// under distributed load are flexibilities of that system, so that releases are condensed exactly. In large
// rotations the basic system rides on the chord (Crisfield, Non-linear Finite Element Analysis of Solids and
// Structures, vol. 2, 1997, chapter 17); the deformations are angles between the chord and the axes carried by the
// end nodes, and the stretch holds the shortening of a bent chord, so that thrust bends and tension straightens
// within one member.
//
// # Loads
//
// A load on a member is taken on its chord: the force at the fraction ξ of the length acts at X_I + ξ(X_J−X_I) of
// the deformed nodes. What it does between the nodes enters as the member's free end rotations. All sums
// ([State.Balance], [State.Center]) use that same place.
//
// # What is said about a state
//
// A direction in which nothing resists is told by the pivots of the LDLᵀ factorization against the diagonal they
// started from, and named by node and direction ([Mechanism]); a condition number is never used. NaN, infinite and
// empty input is refused with the thing's name.
package frame
