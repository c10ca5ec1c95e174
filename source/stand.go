package source

// TipRatio is the least ratio of restoring to overturning moment that is asked
// of what may be pushed or blown over.
func TipRatio() Limit {
	return Limit{"restoring over overturning moment", 1.5, "", Cite("istructe-demountable", "")}
}

// HeightOverBase is the largest height over least base width at which a tower
// may stand free.
func HeightOverBase() Limit {
	return Limit{"height over base of a free-standing tower", 4, "", Cite("osha-scaffold-guidance", "1926.451(c)(1)")}
}

func standLimits() []Limit { return []Limit{TipRatio(), HeightOverBase()} }
