package source

// StartFactor is what a load is multiplied by when a hoist or a crew starts it:
// the lower end of 1.25 to 1.4.
func StartFactor() Limit {
	return Limit{"start factor of a lift", 1.25, "", Cite("common-practice", "")}
}

// LoadConstant is the mass in kilograms that one person may lift under the best
// conditions (LC of the lifting equation, metric set; the US set has 51 lb =
// 23.13 kg: choose one system). It does not hold for team, one-hand or overhead
// lifts from a ladder.
func LoadConstant() Limit {
	return Limit{"load constant of the lifting equation", 23, "kg", Cite("niosh-1991", "")}
}

// LiftingIndexGoal is the lifting index (load over recommended weight) that is
// aimed at.
func LiftingIndexGoal() Limit {
	return Limit{"lifting index", 1, "", Citation{Source: "niosh-1991", Page: "20"}}
}

// LiftingIndexHigh is the lifting index above which nearly everybody is at
// risk.
func LiftingIndexHigh() Limit {
	return Limit{"lifting index, nearly everybody at risk above", 3, "", Citation{Source: "niosh-1991", Page: "20"}}
}

// TeamShare is the share of the sum of what its members may lift that a team
// may lift: all for one, 2/3 for two, 1/2 for three. False for other numbers:
// the figures end there, and more than four is advised against.
func TeamShare(people int) (Limit, bool) {
	share := Limit{Name: "share of the sum that a team lifts", Citation: Cite("hse-team-lift", "")}
	switch people {
	case 1:
		share.Value = 1
	case 2:
		share.Value = 2.0 / 3
	case 3:
		share.Value = 0.5
	default:
		return Limit{}, false
	}
	return share, true
}

func liftLimits() []Limit {
	return []Limit{StartFactor(), LoadConstant(), LiftingIndexGoal(), LiftingIndexHigh()}
}
