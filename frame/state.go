package frame

import "gonum.org/v1/gonum/spatial/r3"

// Held asks for the unstretched length of a cable with which its node I stands at a height.
type Held struct {
	Cable  int
	Height float64 // m, world z of the cable's node I
}

// Options steer [Problem.Equilibrium]. The zero value is fine.
type Options struct {
	Held  []Held
	Cut   []int  // indices of cables that are gone
	Start *State // where the search starts; nil starts at the unloaded places
	// Iterations is the most Newton steps that are tried; zero means 400.
	Iterations int
}

// CableState is what a cable does in a state.
type CableState struct {
	Tension     float64 // N, zero if slack
	Length      float64 // m between its ends
	Unstretched float64 // m, found for a held cable
	Slack       bool
	Cut         bool
	ForceOnI    r3.Vec // N; node J or the anchor gets the opposite
}

// State is a place of rest.
type State struct {
	Position []r3.Vec      // m, of each node
	Rotation []r3.Rotation // of each node from the unloaded place, unit quaternions
	Cables   []CableState
	Reaction []Reaction
	// Residual is the largest force (or moment over the frame's mean member length) that is out of balance at a
	// node, N: within 1e-11 of the loads, or of what rounding of the places makes in the stiffest member. The sum
	// over the frame, [State.Balance], is within 1e-9 of the loads and tensions, or no state is given.
	Residual float64
	Energy   float64 // J, strain energy plus potential of the loads from the unloaded places
	Stable   bool    // a minimum of the energy: no motion lowers it
	// Neutral names motions that neither gain nor lose energy, such as the turning of a weight on one line.
	Neutral    []Mechanism
	Iterations int

	solved
}

// Reaction is what a support does to its node.
type Reaction struct {
	Node   int
	Force  r3.Vec // N
	Moment r3.Vec // N·m
}

// Station is one place along a member with the internal forces there, in the member's own axes on the deformed
// chord: what the part towards J does to the part towards I.
type Station struct {
	Xi        float64 // fraction of the length from I
	At        r3.Vec  // m, deformed place with the bending between the nodes
	N, Vy, Vz float64 // N, tension is positive
	T, My, Mz float64 // N·m
	Stress    float64 // Pa, see Section.Stress; NaN where the section's moduli are unknown
}
