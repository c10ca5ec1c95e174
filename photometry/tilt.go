package photometry

import "sort"

// Tilt is how a lamp's output changes when the luminaire is tilted. Geometry is 1 for
// a lamp upright, 2 for one that stays level, 3 for a level one that tilts with the
// luminaire. Angles are in rad.
type Tilt struct {
	Geometry        int
	Angles, Factors []float64
}

// Factor is the share of the output at a tilt (rad), linear between the file's
// angles; nil outside of them.
func (t *Tilt) Factor(angle float64) *float64 {
	last := len(t.Angles) - 1
	if last < 0 || !(angle >= t.Angles[0] && angle <= t.Angles[last]) {
		return nil
	}
	i := sort.SearchFloat64s(t.Angles, angle)
	if t.Angles[i] == angle {
		return known(t.Factors[i])
	}
	share := (angle - t.Angles[i-1]) / (t.Angles[i] - t.Angles[i-1])
	return known(t.Factors[i-1] + share*(t.Factors[i]-t.Factors[i-1]))
}

// readTilt reads the four records behind TILT=INCLUDE.
func readTilt(s *scanner) (*Tilt, error) {
	geometry, err := s.whole("the lamp's position for tilting")
	if err != nil {
		return nil, err
	}
	if geometry < 1 || geometry > 3 {
		return nil, s.errorAt(s.line, "%d as the lamp's position for tilting; 1, 2 or 3 is due", geometry)
	}
	n, err := s.whole("the number of tilt angles")
	if err != nil {
		return nil, err
	}
	if n < 1 || n > s.room()/2+1 {
		return nil, s.errorAt(s.line, "%d tilt angles; as many as stand in the file are due, at least 1", n)
	}
	t := &Tilt{Geometry: geometry}
	if t.Angles, err = s.numbers(n, "a tilt angle"); err != nil {
		return nil, err
	}
	if err := ascending(t.Angles, "tilt angles"); err != nil {
		return nil, s.errorAt(s.line, "%v", err)
	}
	if t.Factors, err = s.numbers(n, "a tilt factor"); err != nil {
		return nil, err
	}
	for i := range t.Angles {
		t.Angles[i] *= degree
		if t.Factors[i] < 0 {
			return nil, s.errorAt(s.line, "a tilt factor of %g; 0 or more is due", t.Factors[i])
		}
	}
	return t, nil
}
