package source

// Calibration is the constant of an exposure meter with the range that the
// standard allows.
type Calibration struct {
	Limit
	Low, High float64
}

// FlatReceptor is C of N²/t = E S/C for a flat (cosine) receptor, in lx s.
func FlatReceptor() Calibration {
	return Calibration{Limit{"incident-light constant C, flat receptor", 250, "lx s", Cite("iso-2720", "")}, 240, 400}
}

// DomeReceptor is C for a hemispherical (cardioid) receptor, in lx s; in
// practice 320 to 340 of its range.
func DomeReceptor() Calibration {
	return Calibration{Limit{"incident-light constant C, dome", 340, "lx s", Cite("iso-2720", "")}, 320, 540}
}

// Reflected is K of N²/t = L S/K, in cd s/m².
func Reflected() Calibration {
	return Calibration{Limit{"reflected-light constant K", 12.5, "cd s/m2", Cite("iso-2720", "")}, 10.6, 13.4}
}

func exposureLimits() []Limit {
	return []Limit{FlatReceptor().Limit, DomeReceptor().Limit, Reflected().Limit}
}
