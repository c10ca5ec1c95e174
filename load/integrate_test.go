package load

import (
	"testing"

	"softloft/finding"
)

// A sudden cut, undamped: an independent corotational solver peaks at 618 N in the first
// second for the elastic frame with its center of gravity in the plane of the attachments
// (L3). Two meshes and steps of this program differ by 3 % among themselves: the first
// peak is sharp. Twice the largest new static tension bounds both.
func TestSuddenCut(t *testing.T) {
	r := derive(t, hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: onRibs}.text())
	got, found := RunWith(r, Options{Integrate: true})
	for k, gone := range []string{"L1", "L2", "L3", "L4"} {
		l := got.Lost[k]
		most := 0.0
		for name, p := range l.Integrated {
			if name == gone {
				t.Errorf("%s: a peak on the line that is gone", gone)
			}
			most = max(most, float64(p))
		}
		near(t, gone+" gone, peak", most, 618, 0.03)
		if most > float64(l.Estimate) {
			t.Errorf("%s: the peak %g N is over the estimate %g N", gone, most, float64(l.Estimate))
		}
		f := named(found, "load.sudden.line."+gone)
		if f.Value < most || f.Value < float64(l.Estimate) {
			t.Errorf("%s: the finding %g N is under the peak %g N or the estimate", gone, f.Value, most)
		}
		if f.Result != finding.Within { // of 120 kN less the knot
			t.Errorf("%+v", f)
		}
	}
}

// BenchmarkMotion follows one cut for one second. Limit: 500 ms.
func BenchmarkMotion(b *testing.B) {
	m, err := build(derive(b, hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: onRibs}.text()))
	if err != nil {
		b.Fatal(err)
	}
	loads, err := m.built()
	if err != nil {
		b.Fatal(err)
	}
	s, err := m.rest(loads)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if p := m.integrate(s, 3); p.why != "" {
			b.Fatal(p.why)
		}
	}
}
