package source

// LampFall is the longest fall, in meters, that a lamp's safety may leave where
// a fall cannot be ruled out because the lamp is adjusted. The rule itself asks
// for none.
func LampFall() Limit {
	return Limit{"fall of an adjustable lamp onto its safety", 0.20, "m", Cite("dguv-215-313", "")}
}

// IndependentMeans is how many independent means hold what hangs over people.
func IndependentMeans() Limit {
	return Limit{"independent means against falling", 2, "", Cite("dguv-215-314", "4.1")}
}

func fallLimits() []Limit { return []Limit{LampFall(), IndependentMeans()} }
