package load

import (
	"errors"
	"fmt"
	"math"
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

// turnedAway refuses a place of rest at which the box has turned away from the pose in
// which it is planned by more than steepestRest: it hangs on its side or upside down,
// and nothing that is told of it would hold.
func (m *model) turnedAway(s *solved) error {
	if m.corners == nil || r3.Dot(m.poseOf(s).Z, m.rig.Pose.Z) > math.Cos(steepestRest) {
		return nil
	}
	return fmt.Errorf("the box turns over as it hangs, by %.0f° from its planned pose: its lines do not hold it there",
		math.Acos(math.Max(-1, r3.Dot(m.poseOf(s).Z, m.rig.Pose.Z)))/degree)
}

// steepestRest is the angle from the planned pose from which a box counts as turned
// over: more than half a right angle, beyond what any crew would level.
const steepestRest = 60 * degree

// concludePose tells a box that comes to rest elsewhere than planned: light and sight
// are worked out for the planned place.
func (w *work) concludePose() {
	if w.model.corners == nil {
		return
	}
	found, planned := w.model.poseOf(w.built), w.rig.Pose
	away := r3.Norm(r3.Sub(found.Origin, planned.Origin))
	turned := math.Max(angleBetween(found.X, planned.X), angleBetween(found.Z, planned.Z))
	if away <= apartBy && turned <= turnedBy {
		return
	}
	w.add(finding.Unknown("load.pose", w.subject("box", "box"),
		fmt.Sprintf("The box comes to rest %.2f m and %.1f° from where it is planned", away, turned/degree),
		"light, sight and the drawings are worked out for the planned place; give points or lengths that hold it there"))
}

// A box counts as elsewhere from this far on, in m and radians: more than lines stretch
// and a hand levels.
const (
	apartBy  = 0.1
	turnedBy = 2 * degree
)

func angleBetween(a, b r3.Vec) float64 {
	return math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b))
}
