package load

import (
	"errors"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
)

// onFloor refuses a place of rest at which every line ends under the floor: they are
// too long, and slack before the box that is planned above it hangs in them.
func (m *model) onFloor(s *solved) error {
	for _, cable := range m.lines {
		if cable >= 0 && s.Position[m.problem.Cables[cable].I].Z >= 0 {
			return nil
		}
	}
	if !m.plannedClear() {
		return nil
	}
	return errors.New("with these lengths the box lies on the floor and the lines are slack: no line carries it where it is planned")
}

// plannedClear reports whether the box is planned clear of the floor.
func (m *model) plannedClear() bool { return m.rig.ClothAt-m.rig.LowestBy >= clearOfFloor }

// clearOfFloor is how high a box must be planned to count as clear of the floor, in m.
const clearOfFloor = 0.1

// concludeFloor tells a box that hangs in its lines and reaches under the floor.
func (w *work) concludeFloor() {
	low := w.model.lowest(w.built, w.model.poseOf(w.built))
	if low >= 0 || !w.model.plannedClear() {
		return
	}
	w.add(finding.Unknown("load.floor", w.subject("box", "hang"), "The box as it hangs reaches under the floor",
		"it lies on the floor there, and what the lines then carry is not worked out"))
}

// concludeLevel tells a box whose lines all stand in one line as seen from above, or
// at one place: nothing keeps it from swinging about that line.
func (w *work) concludeLevel() {
	var held []r3.Vec
	var names []string
	for i, cable := range w.model.lines {
		if cable >= 0 && !w.built.Cables[cable].Slack {
			held = append(held, w.built.Position[w.model.problem.Cables[cable].I])
			names = append(names, w.rig.Lines[i].Name)
		}
	}
	if len(held) == 0 || len(hull(held)) > 2 {
		return
	}
	about := "the line through " + strings.Join(names, ", ")
	if len(names) == 1 {
		about = "line " + names[0]
	}
	w.add(finding.Unknown("load.level", w.subject("box", "hang"), "Nothing but its own weight holds the box level: it can swing about "+about,
		"how far it swings when it is pushed is not worked out; a line off that line, or tag lines, would hold it"))
}
