package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
	"softloft/rig"
)

// LooksAnswer are the three looks of one overhead: the performer under its middle,
// before it (the source is ahead of the face), and beyond it (behind the head).
type LooksAnswer struct {
	Under  LookAnswer `json:"under"`
	Ahead  LookAnswer `json:"ahead"`
	Behind LookAnswer `json:"behind"`
}

// LookAnswer is the light on a head, flat receptors: upright at the eyes the way the
// face looks, upward on the crown, upright at the eyes the other way.
type LookAnswer struct {
	Face  Number `json:"face_lux"`
	Crown Number `json:"crown_lux"`
	Back  Number `json:"back_lux"`
}

// Stance is where a performer stands and looks, in the room: Eyes is the place between
// the eyes, Faces a level unit vector.
type Stance struct {
	Name  string // "", under, ahead, behind
	Eyes  r3.Vec
	Faces r3.Vec
}

// beyondEdge is how far past the box's edge the middle is in the looks ahead and
// behind, m.
const beyondEdge = 1.0

// crownUp is the top of the head over the eyes (m): common practice.
const crownUp = 0.11

// StanceOf is a mark as it is planned.
func StanceOf(m *plan.Mark) Stance {
	sin, cos := math.Sincos(float64(m.Faces))
	return Stance{"", r3.Vec{X: float64(m.At[0]), Y: float64(m.At[1]), Z: float64(m.Eyes)}, r3.Vec{X: cos, Y: sin}}
}

// Looks are the three stances of a mark's performer, eyes and facing kept: under the
// middle of the cloth plane, and so far before and beyond it that it is half the box's
// width in the direction of facing, and 1 m, away.
func Looks(r *rig.Rig, m *plan.Mark) [3]Stance {
	mark := StanceOf(m)
	at := r3.Vec{X: r.Pose.Origin.X, Y: r.Pose.Origin.Y, Z: mark.Eyes.Z}
	half := math.Abs(r3.Dot(mark.Faces, r.Pose.X))*r.Optics.Size[0]/2 + math.Abs(r3.Dot(mark.Faces, r.Pose.Y))*r.Optics.Size[1]/2
	step := r3.Scale(half+beyondEdge, mark.Faces)
	return [3]Stance{{"under", at, mark.Faces}, {"ahead", r3.Sub(at, step), mark.Faces}, {"behind", r3.Add(at, step), mark.Faces}}
}

// reading is what a meter shows at a place in the room, lx.
type reading func(at, facing r3.Vec, receptor Receptor) float64

// looksAt reads the three looks. Where a look's place is not in the room it is not known.
func looksAt(read reading, holds func(r3.Vec) bool, stances [3]Stance) *LooksAnswer {
	var told [3]LookAnswer
	for i, s := range stances {
		told[i] = lookAt(read, s)
		if !holds(s.Eyes) {
			nan := Number(math.NaN())
			told[i] = LookAnswer{nan, nan, nan}
		}
	}
	return &LooksAnswer{told[0], told[1], told[2]}
}

func lookAt(read reading, s Stance) LookAnswer {
	crown := r3.Add(s.Eyes, r3.Vec{Z: crownUp})
	return LookAnswer{
		Face:  Number(read(s.Eyes, s.Faces, Flat)),
		Crown: Number(read(crown, r3.Vec{Z: 1}, Flat)),
		Back:  Number(read(s.Eyes, r3.Scale(-1, s.Faces), Flat)),
	}
}

// face tells what a mark's face gets: its looks, and how soft.
func (w *work) face(m *plan.Mark, told *MarkAnswer) {
	read := func(at, facing r3.Vec, receptor Receptor) float64 { return w.lux(w.now, at, facing, receptor) }
	told.Looks = looksAt(read, w.inRoom, Looks(w.rig, m))
	s := StanceOf(m)
	pose := &w.rig.Pose
	at, forward, upward := pose.In(s.Eyes), pose.InDirection(s.Faces), pose.InDirection(r3.Vec{Z: 1})
	told.Edges = w.now.engine.softnessAt(at, forward, upward).told()
	told.SourceSeen = Number(w.now.engine.seenByEye(at, forward, upward))
}

// inRoom tells whether a place is in the room; with no room, everywhere is.
func (w *work) inRoom(at r3.Vec) bool {
	room, indoors := RoomOf(w.rig)
	return !indoors || room.holds(at)
}
