package frame

import "gonum.org/v1/gonum/spatial/r3"

// cable is an elastic line that pulls and never pushes. Energy ½·EA/L0·(l−L0)² for l > L0, else zero.
type cable struct {
	i, j    int
	anchor  r3.Vec // from the model's origin
	ea      float64
	natural float64 // unstretched length
	gone    bool
	always  bool // pulls and pushes; linear analysis only
}

func newCable(c *Cable, origin r3.Vec) cable {
	return cable{i: c.I, j: c.J, anchor: r3.Sub(c.Anchor, origin), ea: c.EA, natural: c.Unstretched}
}

// pulled is a cable in a place.
type pulled struct {
	length  float64
	e       r3.Vec // from node I to the other end
	tension float64
	rate    float64 // EA/L0 if it pulls
	cost    float64
}

func (c *cable) pull(at []r3.Vec) (s pulled) {
	far := c.anchor
	if c.j != Anchored {
		far = at[c.j]
	}
	d := r3.Sub(far, at[c.i])
	s.length = norm(d)
	if s.length > 0 {
		s.e = r3.Scale(1/s.length, d)
	}
	stretch := s.length - c.natural
	if c.gone || stretch <= 0 && !c.always {
		return s
	}
	s.rate = c.ea / c.natural
	s.tension = s.rate * stretch
	s.cost = s.tension * stretch / 2
	return s
}

// tangent is T/l·(1−eeᵀ) + EA/L0·eeᵀ, entry (a, b).
func (s *pulled) tangent(a, b int) float64 {
	across := s.tension / s.length
	v := (s.rate - across) * component(s.e, a) * component(s.e, b)
	if a == b {
		v += across
	}
	return v
}
