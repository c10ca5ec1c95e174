package vary

import (
	"math"

	"softloft/plan"
	"softloft/quantity"
	"softloft/rig"
)

// Keep is what stays where it is when something that hangs below the cloth changes.
type Keep string

// What may be kept. KeepCloth is the default.
const (
	KeepCloth Keep = "cloth"
	KeepTrim  Keep = "trim"
)

// stepper makes the plan of each value.
type stepper struct {
	file *plan.File
	ask  *Ask
	keep Keep

	cloth, below float64 // height of the cloth plane as planned, and of what hangs below it
}

func newStepper(file *plan.File, ask *Ask, keep Keep) *stepper {
	model := rig.Derive(file.Plan, file.Doc, file.Kit)
	return &stepper{file: file, ask: ask, keep: keep, cloth: model.ClothAt, below: model.LowestBy}
}

// plan returns the plan with the value in it.
func (s *stepper) plan(text string) (*plan.File, error) {
	bare := s.ask.Key == "box.crate" && text == "none"
	file, err := s.set(text, bare)
	if err != nil || s.ask.Key == "box.trim" || s.ask.Key == "box.cloth_at" {
		return file, err
	}
	file, err = s.kept(file)
	if err == nil && bare {
		file = uncrated(file)
	}
	return file, err
}

func (s *stepper) set(text string, bare bool) (*plan.File, error) {
	if bare {
		return uncrated(s.file), nil
	}
	file := s.file
	for _, path := range s.ask.Paths {
		var err error
		if file, err = file.Set(path, text); err != nil {
			return nil, err
		}
	}
	return file, nil
}

// uncrated is a plan without its crate, which has no word for none: the key is left out.
func uncrated(file *plan.File) *plan.File {
	changed, all, box := *file, *file.Plan, *file.Plan.Box
	box.Crate, all.Box, changed.Plan = "", &box, &all
	return &changed
}

// kept moves the trim or the cloth so that the other stays, where crate or skirt now
// reach less or more far below.
func (s *stepper) kept(file *plan.File) (*plan.File, error) {
	model := rig.Derive(file.Plan, file.Doc, file.Kit)
	if math.Abs(model.LowestBy-s.below) < 1e-12 {
		return file, nil
	}
	box := file.Plan.Box
	switch {
	case s.keep == KeepTrim && box.ClothAt != nil:
		return file.Set("box.cloth_at", quantity.Length(s.cloth-s.below+model.LowestBy).String())
	case s.keep != KeepTrim && box.Trim != nil:
		return file.Set("box.trim", quantity.Length(s.cloth-model.LowestBy).String())
	}
	return file, nil
}
