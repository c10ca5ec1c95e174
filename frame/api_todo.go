package frame

import (
	"errors"

	"gonum.org/v1/gonum/spatial/r3"
)

var errTodo = errors.New("frame: not built yet")

type solved struct{}

// Result is the answer of a linear analysis to one load case.
type Result struct {
	Displacement []Displacement
	Cables       []CableState // Tension may be negative
	Reaction     []Reaction
}

// Displacement of a node: translation in m and small rotation in rad, world axes.
type Displacement struct{ Move, Turn r3.Vec }

// Factored is a factorized linear problem.
type Factored struct{}

// Linear factorizes the problem for small displacements.
func (p *Problem) Linear() (*Factored, error) { return nil, errTodo }

// Solve answers one load case.
func (f *Factored) Solve(l Loads) (*Result, error) { return nil, errTodo }

// Along gives the internal forces of a member at the fraction xi of its length.
func (r *Result) Along(member int, xi float64) Station { return Station{} }

// Worst gives the station of a member where the normal stress is largest.
func (r *Result) Worst(member int) Station { return Station{} }

// Equilibrium finds the place of rest under large rotations.
func (p *Problem) Equilibrium(l Loads, o Options) (*State, error) { return nil, errTodo }

// Along gives the internal forces of a member at the fraction xi of its length.
func (s *State) Along(member int, xi float64) Station { return Station{} }

// Worst gives the station of a member where the normal stress is largest.
func (s *State) Worst(member int) Station { return Station{} }

// Balance sums all cable forces, reactions and loads at their deformed places: force in N, moment about the origin in N·m.
func (s *State) Balance(l Loads) (force, moment r3.Vec) { return }

// Centre gives the center of the weights (vertical forces) in the deformed state; false where there is none.
func (s *State) Centre(l Loads) (r3.Vec, bool) { return r3.Vec{}, false }
