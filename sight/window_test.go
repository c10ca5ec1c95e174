package sight

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"softloft/shape"
)

// What is proved to miss the frame over a play of lens and aim does so for lens and aim
// drawn from it, at every pitch tried: by the four planes of the frame alone.
func TestMissesIsAProof(t *testing.T) {
	proved, tried := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		number := func(low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, "x") }
		place := func(far float64) r3.Vec {
			return r3.Vec{X: number(-far, far), Y: number(-far, far), Z: number(-far, far)}
		}
		low := number(-2, 1)
		w := &way{tilt: [2]float64{low, low + number(0, 2)}, frame: frame{number(0.05, 1.5), number(0.05, 1.5)}}
		yaw := number(-3, 3)
		v := w.window(r3.Vec{}, yaw, 0)
		hull := shape.Polygon{place(5), place(5), place(5)}
		by := play{number(0, 0.5), number(0, 1), number(0, 0.3)}
		tried++
		if !v.misses(hull, by) {
			return
		}
		proved++
		for range 8 {
			turned := *w
			tilt := number(-by.pitch, by.pitch)
			turned.tilt = [2]float64{w.tilt[0] + tilt, w.tilt[1] + tilt}
			shift := place(1)
			shift = r3.Scale(number(0, 1)*by.shift/math.Max(r3.Norm(shift), 1e-9), shift)
			other := turned.window(shift, yaw+number(-by.yaw, by.yaw), 0)
			var cutter shape.Cutter
			for k := 0; k <= 10; k++ {
				pitch := other.low + (other.high-other.low)*float64(k)/10
				if piece := other.crop(&cutter, hull, pitch); piece != nil && piece.Area() > 1e-9 {
					t.Fatalf("%v is in frame at pitch %g", hull, pitch)
				}
			}
		}
	})
	if proved*10 < tried {
		t.Errorf("only %d of %d are proved: the test holds little", proved, tried)
	}
}

// What comes into frame at some pitch of a range, by a fine count of pitches, is taken;
// what is taken is in frame at the pitch that is told.
func TestTakesAgainstPitches(t *testing.T) {
	taken := 0
	rapid.Check(t, func(t *rapid.T) {
		number := func(low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, "x") }
		place := func() r3.Vec { return r3.Vec{X: number(0.5, 6), Y: number(-6, 6), Z: number(-6, 6)} }
		low := number(-1.2, 0.6)
		w := &way{tilt: [2]float64{low, low + number(0, 1.2)}, frame: frame{number(0.02, 0.6), number(0.02, 0.6)}}
		v := w.window(r3.Vec{}, 0, 0)
		p := shape.Polygon{place(), place(), place()}
		var cutter shape.Cutter
		counted := false
		for k := 0; k <= 400 && !counted; k++ {
			pitch := v.low + (v.high-v.low)*float64(k)/400
			piece := v.crop(&cutter, p, pitch)
			counted = piece != nil && v.share(piece, pitch) > 1e-9
		}
		pitch, ok := v.takes(&cutter, p)
		if counted && !ok {
			t.Fatalf("%v is in frame and not taken", p)
		}
		if ok {
			taken++
			if piece := v.crop(&cutter, p, pitch); piece == nil {
				t.Fatalf("%v is taken at %g and not in frame there", p, pitch)
			}
		}
	})
	if taken < 10 {
		t.Errorf("only %d are taken", taken)
	}
}
