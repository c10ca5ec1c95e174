package sight

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// hit is where a ray from an eye first meets a solid, in lengths of d; ok is false where
// it doesn't. It is written apart from what it tests: planes, slabs, a quadratic.
func hit(s *solid, eye, d r3.Vec) (t float64, ok bool) {
	switch b := s.solid.(type) {
	case nil:
		n := s.polygon.Normal()
		t = r3.Dot(n, r3.Sub(s.polygon[0], eye)) / r3.Dot(n, d)
		return t, t > 0 && s.polygon.Covers(r3.Add(eye, r3.Scale(t, d)))
	case shape.Box:
		return hitSlabs(b, eye, d)
	case shape.Cylinder:
		axis := r3.Unit(r3.Sub(b.To, b.From))
		o := r3.Sub(eye, b.From)
		across := func(v r3.Vec) r3.Vec { return r3.Sub(v, r3.Scale(r3.Dot(v, axis), axis)) }
		ox, dx := across(o), across(d)
		p, q, c := r3.Norm2(dx), r3.Dot(ox, dx), r3.Norm2(ox)-b.Radius*b.Radius
		if q*q-p*c < 0 {
			return 0, false
		}
		t = (-q - math.Sqrt(q*q-p*c)) / p
		along := r3.Dot(r3.Add(o, r3.Scale(t, d)), axis)
		return t, t > 0 && along >= 0 && along <= r3.Norm(r3.Sub(b.To, b.From))
	}
	return 0, false
}

func hitSlabs(b shape.Box, eye, d r3.Vec) (t float64, ok bool) {
	o, v := b.Pose.In(eye), b.Pose.InDirection(d)
	enter, leave := math.Inf(-1), math.Inf(1)
	for i, pair := range [3][2]float64{{o.X, v.X}, {o.Y, v.Y}, {o.Z, v.Z}} {
		s, e := (-b.Half[i]-pair[0])/pair[1], (b.Half[i]-pair[0])/pair[1]
		enter, leave = math.Max(enter, math.Min(s, e)), math.Min(leave, math.Max(s, e))
	}
	return enter, enter > 0 && leave > enter
}

// counted are the shares of the frame of each body by a count of rays, n × n.
func counted(s *scene, v *window, pitch float64, n int) []float64 {
	forward, up := v.axes(pitch)
	shares := make([]float64, len(s.bodies))
	for i := range n * n {
		x := (2*(float64(i%n)+0.5)/float64(n) - 1) * v.frame.across
		y := (2*(float64(i/n)+0.5)/float64(n) - 1) * v.frame.up
		d := r3.Add(forward, r3.Add(r3.Scale(x, v.right), r3.Scale(y, up)))
		first, which := math.Inf(1), -1
		for j := range s.set {
			if t, ok := hit(&s.set[j], v.eye, d); ok && t < first {
				first = t
			}
		}
		for j := range s.bodies {
			for k := range s.bodies[j].solids {
				if t, ok := hit(&s.bodies[j].solids[k], v.eye, d); ok && t < first {
					first, which = t, j
				}
			}
		}
		if which >= 0 {
			shares[which] += 1 / float64(n*n)
		}
	}
	return shares
}

// clipped are the same by clipping.
func clipped(s *scene, w *way, v *window, pitch float64) []float64 {
	l := &looker{scene: s, way: w}
	shares := make([]float64, len(s.bodies))
	for j := range s.bodies {
		for k := range s.bodies[j].solids {
			l.cutter.Reset()
			for _, piece := range l.visible(&s.bodies[j].solids[k], v.eye) {
				if piece = v.crop(&l.cutter, piece, pitch); piece != nil {
					shares[j] += v.share(piece, pitch)
				}
			}
		}
	}
	return shares
}

// Shares by clipping against a brute-force count of rays, on the example at a low trim
// with its tie-offs on the floor, from around and from above. A count of n × n cells is
// off by at most about an outline's length in cells: a part's outline crosses the frame a
// few times, 6/n; thin parts are held to the same.
func TestSharesAgainstRays(t *testing.T) {
	text := strings.ReplaceAll(strings.ReplaceAll(example(t), "trim: 17 ft", "trim: 9 ft"), ", 21 ft], allows", ", 3 ft], allows")
	s := newScene(derive(t, text), 0)
	s.bodies = slices.DeleteFunc(s.bodies, func(b body) bool { // they lie in lines or in each other: which is first is chance
		return strings.HasPrefix(b.part, "secondary.") || strings.HasPrefix(b.part, feedPrefix)
	})
	for i := range s.bodies { // lumps and ropes hide nothing in the clipping: nor here
		for j := range s.bodies[i].solids {
			s.bodies[i].solids[j].hides = true
		}
	}
	s.hiders, s.walls = nil, nil
	s.index()
	const n = 240
	for _, c := range []struct {
		eye   r3.Vec
		frame frame
	}{{r3.Vec{X: 7, Y: 2, Z: 1.5}, frame{0.6, 0.45}}, {r3.Vec{X: -5, Y: -6.3, Z: 6}, frame{0.5, 0.4}}, {r3.Vec{X: 0.7, Y: 0.4, Z: 0.4}, frame{1.1, 1}}, {r3.Vec{X: 2, Y: 4.1, Z: 8}, frame{0.9, 0.7}}} {
		w := &way{kind: "stands", at: c.eye, looks: r3.Vec{X: 0.1, Y: -0.2, Z: 2.8}, frame: c.frame}
		yaw, pitch := w.aim(c.eye)
		v := w.window(c.eye, yaw, pitch)
		want, got := counted(s, &v, pitch, n), clipped(s, w, &v, pitch)
		seen := 0
		for j := range s.bodies {
			if want[j] > 0 {
				seen++
			}
			if math.Abs(got[j]-want[j]) > 6.0/n*math.Sqrt(math.Max(want[j], 1.0/n)) {
				t.Errorf("from %v: %s fills %.6f, the rays say %.6f", c.eye, s.bodies[j].part, got[j], want[j])
			}
		}
		if seen < 8 {
			t.Errorf("from %v only %d parts are seen: the test holds little", c.eye, seen)
		}
	}
}

// A rectangle across the axis at a distance D fills a·b/(4·D²·tan·tan) of the frame.
func TestShareOfARectangle(t *testing.T) {
	s := sceneOf(flat(shape.Rectangle(r3.Vec{X: 8}, r3.Vec{Y: 0.5}, r3.Vec{Z: 0.3})))
	w := &way{kind: "stands", looks: r3.Vec{X: 1}, frame: frame{0.3, 0.2}}
	l := &looker{scene: s, way: w}
	spans := l.ranges(&s.bodies[0])
	if len(spans) != 1 {
		t.Fatal(spans)
	}
	if got, want := l.share(&s.bodies[0], spans[0]), 1*0.6/(4*8*8*0.3*0.2); math.Abs(got-want) > 1e-12 {
		t.Errorf("%g, %g is due", got, want)
	}
}

// What is proved to stay hidden or out of frame is so at every place of the stretch: by
// the count of rays at places drawn from it.
func TestProofsHold(t *testing.T) {
	text := strings.ReplaceAll(example(t), "trim: 17 ft", "trim: 11 ft")
	r := derive(t, text)
	s := newScene(r, 0)
	w, err := wayOf(&r.Plan.Cameras[0])
	if err != nil {
		t.Fatal(err)
	}
	l := &looker{scene: s, way: w}
	proved := 0
	for i := range s.bodies {
		for k := range 24 {
			low, high := float64(k)*math.Pi/12, float64(k)*math.Pi/12+math.Pi/40
			if len(l.remain(s.bodies[i].all(), low, high)) > 0 {
				continue
			}
			proved++
			for _, share := range [3]float64{0, 0.37, 1} {
				main := low + share*(high-low)
				eye := w.eye(main, 0)
				for j := range s.bodies[i].solids {
					l.cutter.Reset()
					for _, piece := range l.visible(&s.bodies[i].solids[j], eye) {
						if _, ok := l.taken(piece, eye, main, 0); ok && piece.Area() > 1e-9 {
							t.Fatalf("%s is seen at %g rad", s.bodies[i].part, main)
						}
					}
				}
			}
		}
	}
	if proved < 500 {
		t.Errorf("only %d stretches are proved: the test holds little", proved)
	}
}
