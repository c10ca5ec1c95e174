package light

import (
	"fmt"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// ballroom is 70 x 60 x 30 ft with a box of 12 x 12 ft in it, and a set wall where
// asked for.
func ballroom(walls bool) (Room, Scene, shape.Pose) {
	const foot = 0.3048
	room := roomOf(70*foot, 60*foot, 30*foot, 0.2, 0.3, 0.1)
	if walls {
		room.Surfaces = []SetWall{{shape.Polygon{{X: -8 * foot, Y: 26 * foot}, {X: 8 * foot, Y: 26 * foot}, {X: 8 * foot, Y: 26 * foot, Z: 8 * foot}, {X: -8 * foot, Y: 26 * foot, Z: 8 * foot}}, 0.4}}
	}
	return room, planScene(2), shape.At(r3.Vec{Z: 14 * foot}).Rotated(r3.Vec{Z: 1}, 0.2)
}

// The exchange by its parts and its size, on one core: form factors and what is in
// the way; then direct light on the patches (the engine's time); then the solution.
func BenchmarkRoom(b *testing.B) {
	for _, walls := range []bool{false, true} {
		room, scene, pose := ballroom(walls)
		e := prepared(b, scene)
		for _, along := range []int{8, 12, 16, 24} {
			h := hallOf(b, room, &scene, pose, along)
			l := h.Light(e)
			name := fmt.Sprintf("walls=%v/patches=%d/", walls, h.count)
			b.Run(name+"factors", func(b *testing.B) {
				for i := 0; b.Loop(); i++ { // every turn another trim
					pose.Origin.Z = 4 + 0.01*float64(i%20)
					hallOf(b, room, &scene, pose, along)
				}
			})
			b.Run(name+"direct", func(b *testing.B) {
				for b.Loop() {
					h.directOn(e)
				}
			})
			b.Run(name+"solve", func(b *testing.B) {
				for b.Loop() {
					l.solve()
				}
			})
			b.Run(name+"receiver", func(b *testing.B) {
				for i := 0; b.Loop(); i++ {
					sink += l.At(r3.Vec{X: 0.01 * float64(i%100), Y: 1, Z: 1.5}, up, Flat)
				}
			})
		}
	}
}
