package light

import (
	"math"
	"testing"
)

// spread gathers relative differences from a reference.
type spread struct {
	reference  string // what it is, for the line that is told
	sum, worst float64
	n          int
}

func (s *spread) add(got, want float64) {
	d := got/want - 1
	if want == 0 { // such as a receiver that faces away
		d = got
	}
	s.sum += d * d
	s.n++
	if math.Abs(d) > math.Abs(s.worst) || math.IsNaN(d) {
		s.worst = d
	}
}

// beyond is what a difference exceeds the reference's own standard error by.
func (s *spread) beyond(got, want, standardError float64) {
	d := got - want
	s.add(want+math.Copysign(math.Max(0, math.Abs(d)-2*standardError), d), want)
}

// rel adds a value and fails where it is off by more than the tolerance, relative.
func (s *spread) rel(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	rel(t, what, got, want, tolerance)
	s.add(got, want)
}

func (s *spread) rms() float64 { return math.Sqrt(s.sum / float64(s.n)) }

// told logs one line of the same shape for every comparison, so that they can be
// collected.
func (s *spread) told(t *testing.T, what string) {
	t.Helper()
	reference := s.reference
	if reference == "" {
		reference = "the reference that the test names"
	}
	t.Logf("accuracy\t%s\t%d points\trms %.2g %%\tworst %.2g %%\t%s", what, s.n, 100*s.rms(), 100*s.worst, reference)
}

func (s *spread) check(t *testing.T, what string, rms, worst float64) {
	t.Helper()
	s.told(t, what)
	if r := s.rms(); !(r <= rms) || !(math.Abs(s.worst) <= worst) {
		t.Errorf("%s: rms %.3g %% (at most %.3g), worst %.3g %% (at most %.3g)", what, 100*r, 100*rms, 100*s.worst, 100*worst)
	}
}

// The references that several tests share.
const (
	handbook   = "Siegel and Howell, Thermal Radiation Heat Transfer, p. 842"
	catalog    = "catalog of configuration factors, closed forms"
	closedForm = "closed form (Lambert's edge formula)"
	tracer     = "an unbiased path tracer"
	radiosity  = "an independent fine radiosity"
	cellMesh   = "an exact mesh of the cells"
	walked     = "random walks of this test, by their own standard error"
	fineSum    = "the plain sum over the opening"
)
