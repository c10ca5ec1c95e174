package light

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/head"
	"softloft/plan"
	"softloft/rig"
	"softloft/shape"
	"softloft/source"
)

// Portrait is what arrives on a plain sculpted head (package head) at a mark or in one
// of its three looks, seen from where the face looks.
type Portrait struct {
	Mark, Look    string // Look is empty at the mark itself; under, ahead, behind
	Width, Height int
	// Lux on the surface, x fastest from the top; NaN where there is no head. Cover is
	// how much of an element the head covers, 0 to 1.
	Lux, Cover []float64
	// Asked is the illuminance (lx) that the asked stop needs on a flat receptor, or
	// what a dome at the eyes shows where no stop is asked; ByDome tells which.
	Asked  float64
	ByDome bool
	// Dome is what a dome at the eyes shows that looks where the face does, lx.
	Dome float64
}

// Ask is what portraits are asked for: also of the three looks, seen from so far (rad)
// to the performer's left, and so many elements.
type Ask struct {
	Looks         bool
	Turn          float64
	Width, Height int
}

// Portraits lights a head at every mark. What throws light from one part of the head on
// another, hair and clothes are left out. An error says why there is no light to show.
func Portraits(r *rig.Rig, ask Ask) ([]Portrait, error) {
	if r.Plan.Action == nil || len(r.Plan.Action.Marks) == 0 {
		return nil, errors.New("the plan names no mark; add action: {marks: [{name: A, at: [x, y], eyes: 5 ft 4 in, faces: 90 deg}]}")
	}
	if len(r.Optics.Lamps) == 0 {
		return nil, errors.New("no lamp is placed, so there is no light to compute")
	}
	w := &work{rig: r}
	if err := w.prepare(); err != nil {
		return nil, err
	}
	s := newStudio(ask)
	var all []Portrait
	for i := range r.Plan.Action.Marks {
		m := &r.Plan.Action.Marks[i]
		stances := []Stance{StanceOf(m)}
		if ask.Looks {
			looks := Looks(r, m)
			stances = append(stances, looks[:]...)
		}
		for _, stance := range stances {
			if stance.Name != "" && !w.inRoom(stance.Eyes) {
				continue
			}
			p, err := w.portrait(s, stance)
			if err != nil {
				return nil, err
			}
			p.Mark = m.Name
			all = append(all, p)
		}
	}
	return all, nil
}

// studio is the head that all portraits share, and how it is seen.
type studio struct {
	mesh   *head.Mesh
	blocks *head.Blocks
	view   *head.View
	seen   []int
}

// The picture holds the head and the neck: so high, about such a place of the head.
const pictureHeight = 0.32

func newStudio(ask Ask) *studio {
	s := &studio{mesh: head.Sculpt()}
	s.blocks = head.BlocksOf(s.mesh)
	s.view = head.FromBefore(s.mesh, ask.Turn, r3.Vec{X: -0.06, Z: -0.042}, pictureHeight, ask.Width, ask.Height)
	s.seen = s.view.Seen()
	return s
}

// portrait lights the head in a stance.
func (w *work) portrait(s *studio, stance Stance) (Portrait, error) {
	inRoom := shape.Pose{Origin: stance.Eyes, X: stance.Faces, Y: r3.Cross(r3.Vec{Z: 1}, stance.Faces), Z: r3.Vec{Z: 1}}
	box := &w.rig.Pose
	inBox := shape.Pose{Origin: box.In(inRoom.Origin), X: box.InDirection(inRoom.X), Y: box.InDirection(inRoom.Y), Z: box.InDirection(inRoom.Z)}
	var back func(r3.Vec) float64
	if room := w.now.room; room != nil {
		back = func(facing r3.Vec) float64 { return room.At(stance.Eyes, inRoom.OutDirection(facing), Flat) }
	}
	all, err := w.now.engine.sendersTo(inBox, back)
	if err != nil {
		return Portrait{}, err
	}
	p := Portrait{Look: stance.Name, Width: s.view.Width, Height: s.view.Height, Dome: w.lux(w.now, stance.Eyes, stance.Faces, Dome)}
	p.Lux, p.Cover = s.view.Spread(s.lit(all))
	p.Asked, p.ByDome = askedOf(w.exposure(), p.Dome)
	return p, nil
}

// askedOf is the level that a portrait is shown about, lx.
func askedOf(x *plan.Exposure, dome float64) (lux float64, byDome bool) {
	if x == nil {
		return dome, true
	}
	return luxFor(x, source.FlatReceptor()), false
}

// lit is what arrives at the vertices that are seen, lx; NaN at the others.
func (s *studio) lit(by *senders) []float64 {
	value := make([]float64, len(s.mesh.Vertices))
	for i := range value {
		value[i] = math.NaN()
	}
	overCores(len(s.seen), func(k int) {
		value[s.seen[k]] = s.litAt(by, s.seen[k])
	})
	return value
}

// litAt is what arrives at one vertex, lx. No ray is followed where nothing of the head
// stands before the place.
func (s *studio) litAt(by *senders, i int) float64 {
	at, normal := s.mesh.Vertices[i], s.mesh.Normals[i]
	blocked := s.blocks.Blocked
	if s.blocks.Free(r3.Add(at, r3.Scale(offSurface, normal)), normal) {
		blocked = nothing
	}
	return by.arriving(at, normal, blocked)
}

func nothing(_, _ r3.Vec) bool { return false }

// offSurface is how far (m) off the head a place is looked from.
const offSurface = 0.0008

// arriving is the illuminance (lx) at a place with a unit normal, in the head's axes.
// Each pane counts from its middle, seen whole or not at all.
func (s *senders) arriving(at, normal r3.Vec, blocked func(from, way r3.Vec) bool) float64 {
	from := r3.Add(at, r3.Scale(offSurface, normal))
	weights := s.quad.weights(at)
	sum := 0.0
	for i := range s.panes {
		p := &s.panes[i]
		d := r3.Sub(p.center, from)
		cos := r3.Dot(d, normal)
		if cos <= 0 {
			continue
		}
		luminance := s.quad.between(&p.luminance, &weights)
		sent := -r3.Dot(d, p.faces)
		if luminance <= 0 || sent <= 0 || blocked(from, d) {
			continue
		}
		r2 := r3.Norm2(d)
		sum += luminance * cos * sent / (r2 * r2) * p.area()
	}
	for i := range s.ambients {
		a := &s.ambients[i]
		cos := r3.Dot(a.from, normal)
		if cos <= 0 {
			continue
		}
		if lux := s.quad.between(&a.lux, &weights); lux > 0 && !blocked(from, a.from) {
			sum += lux * cos
		}
	}
	return sum
}
