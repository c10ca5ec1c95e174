package frame

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// hungMass is a mass on two ropes; one of them goes.
func hungMass(t *testing.T, p Problem, weight float64) (*State, Loads) {
	t.Helper()
	loads := Loads{Nodal: []NodalLoad{{Node: 0, Force: r3.Vec{Z: -weight}}}}
	s, err := p.Equilibrium(loads, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s, loads
}

// Two equal vertical ropes share a weight; one lets go. The other, which has W/2 already,
// swings about W: its peak is 3/2 W. With the first rope m times as stiff it has W/(m+1)
// and peaks at 2W − W/(m+1): a spring's closed form.
func TestSuddenLossOnASpring(t *testing.T) {
	for _, m := range []float64{1, 3, 1000} {
		p := Problem{
			Nodes: []Node{{Name: "load"}},
			Cables: []Cable{
				{Name: "gone", I: 0, J: Anchored, Anchor: r3.Vec{Z: 3}, EA: m * 60e3, Unstretched: 3},
				{Name: "left", I: 0, J: Anchored, Anchor: r3.Vec{Z: 3}, EA: 60e3, Unstretched: 3},
			},
		}
		const weight = 200.0
		s, loads := hungMass(t, p, weight)
		course, err := p.Integrate(loads, s, Motion{Cut: []int{0}})
		if err != nil {
			t.Fatal(err)
		}
		want := 2*weight - weight/(m+1)
		if math.Abs(course.Peak[1]/want-1) > 2e-3 {
			t.Errorf("m = %g: peak %.3f N, want %.3f", m, course.Peak[1], want)
		}
	}
}

// A pendulum let go at an angle θ from the vertical: T = W·(3 − 2·cos θ) at its lowest point,
// energy and Newton's second law. The rope is stiff; another holds the mass square to it, so
// that the rope has W·cos θ before and after the cut and does not ring.
func TestPendulum(t *testing.T) {
	const weight, length = 100.0, 2.0
	for _, degrees := range []float64{10, 45, 70} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		p := Problem{
			Nodes: []Node{{Name: "load"}},
			Cables: []Cable{
				{Name: "left", I: 0, J: Anchored, Anchor: r3.Vec{X: -length * sin, Z: length * cos}, EA: 2e6, Unstretched: length},
				{Name: "gone", I: 0, J: Anchored, Anchor: r3.Vec{X: 5 * cos, Z: 5 * sin}, EA: 2e6, Unstretched: 5},
			},
		}
		s, loads := hungMass(t, p, weight)
		course, err := p.Integrate(loads, s, Motion{Cut: []int{1}, Duration: 1.2})
		if err != nil {
			t.Fatal(err)
		}
		want := weight * (3 - 2*cos)
		if math.Abs(course.Peak[0]/want-1) > 1e-3 {
			t.Errorf("%g°: peak %.3f N at %.3f s, want %.3f", degrees, course.Peak[0], course.When[0], want)
		}
		t.Logf("%g°: peak %.3f N, want %.3f; energy lost %.3g J in %d steps", degrees, course.Peak[0], want, course.Lost, course.Steps)
	}
}

// A mass on a rigid arm under a pinned beam is a pendulum as well: its period is that of its
// length, 2π·√(l/g), for small swings.
func TestArmSwings(t *testing.T) {
	p := Problem{
		Nodes:    []Node{{Name: "a"}, {Name: "b", At: r3.Vec{X: 1}}},
		Members:  []Member{{Name: "bar", I: 0, J: 1, Section: RoundTube(0.042, 0.0036), Material: Material{Young: 69e9, Shear: 26e9}}},
		Supports: []Support{{Node: 0, Fixed: [6]bool{true, true, true, false, true, true}}, {Node: 1, Fixed: [6]bool{false, true, true, false, true, true}}},
		Cables:   []Cable{{Name: "gone", I: 0, J: Anchored, Anchor: r3.Vec{Z: 1}, EA: 1, Unstretched: 2}},
	}
	const arm = 0.5
	loads := Loads{Offset: []OffsetLoad{{Node: 0, Offset: r3.Vec{Y: arm * math.Sin(0.1), Z: -arm * math.Cos(0.1)}, Force: r3.Vec{Z: -98.0665}}}}
	m, err := newModel(&p, &loads)
	if err != nil {
		t.Fatal(err)
	}
	x := newMotion(newSystem(m, newLoading(m, &loads), m.unloaded()), &loads, Motion{})
	// Half a period later the arm is on the other side.
	half := math.Pi * math.Sqrt(arm/9.80665)
	x.duration = half
	if _, err := x.run(); err != nil {
		t.Fatal(err)
	}
	r := x.q.axes[0].of(loads.Offset[0].Offset)
	if angle := math.Atan2(r.Y, -r.Z); math.Abs(angle+0.1) > 1e-3 {
		t.Errorf("after half a period the arm stands at %.5f rad, want -0.1", angle)
	}
}

func TestNoMotionWithoutStart(t *testing.T) {
	p := Problem{Nodes: []Node{{}}, Cables: []Cable{{J: Anchored, Anchor: r3.Vec{Z: 1}, EA: 1, Unstretched: 1}}}
	if _, err := p.Integrate(Loads{}, nil, Motion{}); err == nil {
		t.Error("a motion without a start")
	}
}
