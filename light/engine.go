package light

import (
	"errors"

	"gonum.org/v1/gonum/spatial/r3"
)

// Engine is a scene worked out so far that any receiver can be asked. It does
// not change after Prepare and may be used from many goroutines.
type Engine struct {
	scene   Scene
	missing []string
}

// ClothReport is what arrives on the lamp side of the lowest cloth and what
// leaves it below.
type ClothReport struct {
	MeanLux, MinLux, MaxLux float64
	X, Y                    []float64   // grid places in the clear area, m: cell centers
	Lux                     [][]float64 // [row of y][x], arriving
	Exitance                [][]float64 // [row of y][x], leaving below by diffusion, lm/m2
}

// FluxReport is the tally of one scene, lm.
type FluxReport struct {
	LampsLm float64 // leaves the lamps
	OutLm   float64 // leaves below through the clear area (before crate and skirts)
	// AbsorbedLm stays in cloth, sides, roof, rim and lamp backs.
	AbsorbedLm float64
	// LostLm leaves over the sides, through an open roof or a side that is not there.
	LostLm float64
	// ClosureBeforeCorrection is the largest deviation of a patch's form
	// factors, with the openings, from 1. Nothing is corrected afterwards.
	ClosureBeforeCorrection float64
}

// Prepare works out a scene. An error says what of it cannot be computed.
func Prepare(scene Scene) (*Engine, error) {
	return nil, errors.New("light is not computed yet")
}

// At is the illuminance (lx) at p in box axes. Facing need not be a unit vector.
func (e *Engine) At(p, facing r3.Vec, receptor Receptor) float64 { return 0 }

// Vector is the light vector (lx) at p: it points to where the light comes
// from, and for any direction n the illuminances from before and from behind
// differ by Vector . n.
func (e *Engine) Vector(p r3.Vec) r3.Vec { return r3.Vec{} }

// Cloth reports the lowest cloth; empty where there is none.
func (e *Engine) Cloth() ClothReport { return ClothReport{} }

// Flux reports the tally.
func (e *Engine) Flux() FluxReport { return FluxReport{} }

// Missing lists what the scene asks for and the answers leave out, in plain words.
func (e *Engine) Missing() []string { return e.missing }
