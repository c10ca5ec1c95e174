package sight

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"softloft/shape"
)

// sceneOf holds one body a solid, each with the name of its place.
func sceneOf(solids ...solid) *scene {
	s := &scene{}
	for i, each := range solids {
		s.bodies = append(s.bodies, body{part: string(rune('a' + i)), ofRig: true, solids: []solid{each}})
	}
	s.index()
	return s
}

func (s *scene) rangesOf(w *way, i int) []span {
	l := &looker{scene: s, way: w}
	return l.ranges(&s.bodies[i])
}

// A camera pans past an upright bar: it comes into frame where the angle between the
// axis and the bar's middle is half the horizontal field and asin(radius/distance), the
// half angle under which a cylinder is seen (closed form). Level lens, bar long beyond
// the frame.
func TestPanPastABar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		distance := rapid.Float64Range(1, 60).Draw(t, "distance")
		radius := rapid.Float64Range(1e-3, 0.1).Draw(t, "radius")
		bearing := rapid.Float64Range(-2, 2).Draw(t, "bearing")
		w := &way{kind: "pan", low: -2.6, high: 2.6, looks: r3.Vec{X: 1}, frame: frame{math.Exp(rapid.Float64Range(-7, -1).Draw(t, "field")), 0.2}}
		sin, cos := math.Sincos(bearing)
		at := r3.Vec{X: distance * cos, Y: distance * sin}
		got := sceneOf(bar(r3.Sub(at, r3.Vec{Z: 50}), r3.Add(at, r3.Vec{Z: 50}), radius)).rangesOf(w, 0)
		half := math.Atan(w.frame.across) + math.Asin(radius/distance)
		if len(got) != 1 {
			t.Fatalf("%d ranges of %g rad, one is due", len(got), 2*half)
		}
		// A bar's upright edge may slant out at the frame's far corner: level lens, none.
		if math.Abs(got[0].low-(bearing-half)) > 1e-8 || math.Abs(got[0].high-(bearing+half)) > 1e-8 {
			t.Errorf("from %.12g to %.12g, %.12g to %.12g is due", got[0].low, got[0].high, bearing-half, bearing+half)
		}
	})
}

// On an orbit about a middle, an upright bar at p from it is at the angle
// atan2(p·sin φ, R - p·cos φ) from the axis, φ being the lens's angle from the bar's
// bearing. The distances follow from the law of cosines. Every end of a range satisfies
// angle = half field + asin(radius/distance), and the sum of what is seen agrees with a
// count over a million places.
func TestOrbitPastABar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		orbit := rapid.Float64Range(3, 15).Draw(t, "orbit")
		p := orbit * rapid.Float64Range(0.1, 0.9).Draw(t, "place")
		radius := rapid.Float64Range(2e-3, 0.05).Draw(t, "radius")
		w := &way{kind: "orbit", low: 0, high: 2 * math.Pi, middle: r3.Vec{Z: 1}, looks: r3.Vec{Z: 1}, radius: orbit,
			frame: frame{rapid.Float64Range(1e-3, 0.3).Draw(t, "field"), 0.2}}
		bearing := rapid.Float64Range(0.1, 6).Draw(t, "bearing")
		sin, cos := math.Sincos(bearing)
		at := r3.Vec{X: p * cos, Y: p * sin}
		spans := sceneOf(bar(r3.Sub(at, r3.Vec{Z: 40}), r3.Add(at, r3.Vec{Z: 40}), radius)).rangesOf(w, 0)
		over := func(main float64) float64 { // over 0: out of frame
			sin, cos := math.Sincos(main - bearing)
			distance := math.Sqrt(orbit*orbit + p*p - 2*orbit*p*cos)
			return math.Abs(math.Atan2(p*sin, orbit-p*cos)) - math.Atan(w.frame.across) - math.Asin(radius/distance)
		}
		var sum float64
		for _, s := range spans {
			sum += s.high - s.low
			for _, end := range [2]float64{s.low, s.high} {
				if end != w.low && end != w.high && math.Abs(over(end)) > 1e-8 {
					t.Errorf("at %.9g the bar is %g rad from the frame's edge", end, over(end))
				}
			}
		}
		const places = 100_000
		count := 0
		for i := range places {
			if over(2*math.Pi*(float64(i)+0.5)/places) <= 0 {
				count++
			}
		}
		if want := 2 * math.Pi * float64(count) / places; math.Abs(sum-want) > 6*2*math.Pi/places {
			t.Errorf("%d ranges of %g rad in all, the count says %g", len(spans), sum, want)
		}
	})
}

// A bar that a whole turn shows for a two-hundredth of a degree only is found: 1 mm at
// 60 m, through a lens of 0.003 degrees.
func TestGlimpseIsNotMissed(t *testing.T) {
	for bearing := -3.0; bearing < 3; bearing += 0.0907 {
		sin, cos := math.Sincos(bearing)
		at := r3.Vec{X: 60 * cos, Y: 60 * sin}
		w := &way{kind: "pan", low: -3.1, high: 3.1, looks: r3.Vec{X: 1}, frame: frame{2.5e-5, 0.01}}
		got := sceneOf(bar(r3.Sub(at, r3.Vec{Z: 5}), r3.Add(at, r3.Vec{Z: 5}), 5e-4)).rangesOf(w, 0)
		if len(got) != 1 || got[0].high-got[0].low > 1e-4 || got[0].high <= got[0].low {
			t.Errorf("at %g: %v", bearing, got)
		}
	}
}

// A wall between lens and bar hides it over the angle that the wall fills; the bar is
// seen before and behind. The wall's ends are at the bearings ±atan(1/5).
func TestWallHides(t *testing.T) {
	wall := flat(shape.Rectangle(r3.Vec{X: 5}, r3.Vec{Y: 1}, r3.Vec{Z: 5}))
	w := &way{kind: "track", low: 0, high: 1, looks: r3.Vec{X: 10}, track: []r3.Vec{{Y: -4}, {Y: 4}}, lengths: []float64{0, 8}, frame: frame{1, 1}}
	got := sceneOf(wall, bar(r3.Vec{X: 10, Z: -1}, r3.Vec{X: 10, Z: 1}, 0.02)).rangesOf(w, 1)
	if len(got) != 2 {
		t.Fatalf("%d ranges, 2 are due", len(got))
	}
	// The lens at (0, y) sees the bar's near side past the wall's end (5, ∓1): the line
	// through the end that touches a circle of radius r about (10, 0).
	touches := func(y float64) float64 {
		dx, dy := 5.0, -1-y
		return math.Abs(dx*(0-y)-dy*10)/math.Hypot(dx, dy) - 0.02
	}
	if y := -4 + 8*got[0].high; got[0].low != 0 || got[1].high != 1 || math.Abs(touches(y)) > 1e-8 || math.Abs(got[0].high+got[1].low-1) > 1e-9 {
		t.Errorf("%v: off by %g", got, touches(y))
	}
}

// While a lens tilts, a bar is in frame at some pitch of the range: a level bar across
// the axis at an elevation of e, seen whole, is taken where the range's ends and half the
// vertical field reach e ± asin(radius/distance).
func TestTiltReachesABar(t *testing.T) {
	for _, c := range []struct {
		tilt [2]float64
		want bool
	}{{[2]float64{0, 0.1}, false}, {[2]float64{0, 0.3}, true}, {[2]float64{-0.5, 0.2}, false}, {[2]float64{0.2, 1.2}, true}, {[2]float64{0.85, 1.2}, false}} {
		elevation := 0.5
		sin, cos := math.Sincos(elevation)
		at := r3.Vec{X: 10 * cos, Z: 10 * sin}
		w := &way{kind: "stands", looks: r3.Vec{X: 1}, tilt: c.tilt, frame: frame{0.4, math.Tan(0.25)}}
		got := sceneOf(bar(r3.Sub(at, r3.Vec{Y: 3}), r3.Add(at, r3.Vec{Y: 3}), 0.01)).rangesOf(w, 0)
		if (len(got) == 1) != c.want {
			t.Errorf("tilt %v: %v", c.tilt, got)
		}
	}
}
