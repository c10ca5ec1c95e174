package source

// ContinuousShare is the share of a circuit's rating that a load of three hours
// or more may take.
func ContinuousShare() Limit {
	return Limit{"share of a circuit for a continuous load", 0.8, "", remembered("nfpa-70", "210.20, 215.3")}
}

// BranchDrop and TotalDrop are the shares of the voltage that may be lost on a
// branch, and in all; the code's notes advise them, they are no rule.
func BranchDrop() Limit {
	return Limit{"voltage drop of a branch", 0.03, "", remembered("nfpa-70", "210.19, note")}
}

// TotalDrop is described with BranchDrop.
func TotalDrop() Limit {
	return Limit{"voltage drop in all", 0.05, "", remembered("nfpa-70", "215.2, note")}
}

// LightingDrop is the share of the voltage that may be lost to lighting.
func LightingDrop() Limit {
	return Limit{"voltage drop to lighting", 0.03, "", Cite("bs-7671", "")}
}

// OtherDrop is the share of the voltage that may be lost to what is no
// lighting.
func OtherDrop() Limit {
	return Limit{"voltage drop to other loads", 0.05, "", Cite("bs-7671", "")}
}

func powerLimits() []Limit {
	return []Limit{ContinuousShare(), BranchDrop(), TotalDrop(), LightingDrop(), OtherDrop()}
}
