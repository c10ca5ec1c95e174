package source

// SprinklerClear is the free height in meters (18 in) under a sprinkler's
// deflector; the fire authority decides.
func SprinklerClear() Limit {
	return Limit{"free height under a sprinkler's deflector", 18 * inch, "m", Cite("common-practice", "")}
}

// SprinklerShadow is the width in meters (4 ft) above which what hangs under
// sprinklers shadows them.
func SprinklerShadow() Limit {
	return Limit{"width that shadows sprinklers", 48 * inch, "m", Cite("common-practice", "")}
}

func clearanceLimits() []Limit { return []Limit{SprinklerClear(), SprinklerShadow()} }
