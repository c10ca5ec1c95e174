package light

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
	"softloft/shape"
)

// wholePlan is all light of one plan, everything new: the scene, the room's exchange
// where it is asked for, an area of 33 x 33 and 8 marks with dome, mean sphere and
// light vector.
func wholePlan(b *testing.B, s Scene, pose shape.Pose, indoors bool) {
	w := &work{rig: &rig.Rig{Pose: pose}, now: lighting{engine: prepared(b, s)}}
	if indoors {
		room := roomOf(14, 12, 8, 0.2, 0.3, 0.1)
		w.hall = hallOf(b, room, &s, pose, patchesAlong)
		w.now.room = w.hall.Light(w.now.engine)
	}
	points := nodes(r3.Vec{Z: 1.5}, r3.Vec{X: 6}, r3.Vec{Y: 6}, [2]int{areaNodes, areaNodes})
	for _, lux := range w.grid(w.now, points, areaNodes, up) {
		sink += lux
	}
	for i := range 8 {
		sin, cos := math.Sincos(float64(i))
		at := r3.Vec{X: 2.5 * cos, Y: 2.5 * sin, Z: 1.6}
		sink += w.lux(w.now, at, r3.Vec{X: -cos, Y: -sin}, Dome) + w.lux(w.now, at, up, Scalar) + r3.Norm(w.vector(w.now, at))
	}
}

// edited changes trim, aim and one cloth value, so that nothing can be remembered.
func edited(s Scene, i int) (Scene, shape.Pose) {
	step := float64(i%97) / 97
	s.Cloths = append([]Cloth(nil), s.Cloths...)
	s.Cloths[0].Diffuse += 0.01 * step
	s.Lamps = append([]Lamp(nil), s.Lamps...)
	l := &s.Lamps[0]
	aim := shape.Identity().Rotated(r3.Vec{X: 1}, 0.05*step)
	l.Axis, l.V = aim.OutDirection(l.Axis), aim.OutDirection(l.V)
	return s, shape.At(r3.Vec{Z: 4 + 0.2*step})
}

// speedScenes are the plans that are timed: 4 lamps each.
func speedScenes(b testing.TB) (names []string, scenes []Scene) {
	add := func(name string, edit func(*Scene)) {
		s := planScene(2)
		edit(&s)
		names, scenes = append(names, name), append(scenes, s)
	}
	lobe := Cloth{Diffuse: 0.2, ForwardPart: 0.3, ForwardSigma: 0.15, Through: 0.05, Back: 0.3}
	white := func(s *Scene) {
		for i := range s.Sides {
			s.Sides[i].Inner = 0.8
		}
	}
	add("diffuse", func(*Scene) {})
	add("diffuse-white-sides", white)
	add("lobe", func(s *Scene) { s.Cloths = []Cloth{lobe} })
	add("lobe-white-sides", func(s *Scene) { s.Cloths = []Cloth{lobe}; white(s) })
	add("beam-8-deg", func(s *Scene) {
		for i := range s.Lamps {
			s.Lamps[i].Distribution = beamOf(b, 8, 16)
		}
	})
	return names, scenes
}

func BenchmarkWholePlan(b *testing.B) {
	names, scenes := speedScenes(b)
	for _, indoors := range []bool{false, true} {
		for k, name := range names {
			b.Run(fmt.Sprintf("indoors=%v/%s", indoors, name), func(b *testing.B) {
				for i := 0; b.Loop(); i++ {
					s, pose := edited(scenes[k], i)
					wholePlan(b, s, pose, indoors)
				}
			})
		}
	}
}

// The sum over the cloth for one receiver, as it is, with its interpolation of the
// sheet: per term of receiver times point.
func BenchmarkKernel(b *testing.B) {
	for _, points := range []int{24, 48, 96, 192} {
		lines := even(-1.8, 1.8, points/order)
		s := newSheet(lines, lines)
		g := glow{sheet: &s, value: s.value, u: 0, v: 1, normal: 2, toward: -1}
		for i := range s.value {
			g.value[i] = 1 + float64(i%7)/7
		}
		b.Run(fmt.Sprint("points", points*points), func(b *testing.B) {
			w := new(sight)
			for i := 0; b.Loop(); i++ {
				k := kernel{a: float64(i%33)/16 - 1, b: 0.5, c: 3, glow: &g, meter: meter{Flat, up}}
				w.u.fill(lines, k.a, k.c, -1.8, 1.8, false)
				w.v.fill(lines, k.b, k.c, -1.8, 1.8, false)
				sink += k.tensor(w, false).vector.Z
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(w.u.at)*len(w.v.at)), "ns/term")
		})
	}
}

// The cost of an area by its receivers: linear is the same for each.
func BenchmarkReceivers(b *testing.B) {
	e := prepared(b, planScene(2))
	for _, n := range []int{9, 17, 33, 65} {
		b.Run(fmt.Sprint("receivers", n*n), func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				sink += area(e, n, trim+0.01*float64(i%50))
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n*n), "ns/receiver")
		})
	}
}

// The exchange in the box by its patches, one to four cloths: form factors, what is in
// the way and the solution.
func BenchmarkExchange(b *testing.B) {
	for cloths := 1; cloths <= 4; cloths++ {
		s := planScene(2)
		for i := range s.Lamps {
			s.Lamps[i].Centre.Z = 1.5
		}
		s.Depth, s.Cloths = 2, nil
		for range cloths {
			s.Cloths = append(s.Cloths, Cloth{Diffuse: 0.4, Back: 0.35, Through: 0.1, Gap: 0.3})
		}
		e := prepared(b, s)
		b.Run(fmt.Sprint("patches", e.patchCount), func(b *testing.B) {
			for b.Loop() {
				c := *e
				c.exchange = exchange{}
				c.settle()
				c.patchDirect(&c.exchange)
				c.exchange.iterate()
				sink += c.exchange.leaves[0]
			}
			n := float64(e.patchCount)
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/n/n, "ns/N2")
		})
	}
}
