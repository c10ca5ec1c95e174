package source

// BridleQuestioned is the included angle of a bridle's two legs, in radians,
// above which it is questioned.
func BridleQuestioned() Limit {
	return Limit{"included angle of a bridle, questioned above", 90 * degree, "rad", Cite("common-practice", "")}
}

// BridleRefused is the included angle of a bridle's two legs, in radians, above
// which it is refused.
func BridleRefused() Limit {
	return Limit{"included angle of a bridle, refused above", 120 * degree, "rad", Cite("rigging-mathematics-primer", "")}
}

// SlingFromHorizontal is the least angle of a sling's leg from the horizontal,
// in radians. Mind the convention: US texts count from the horizontal, EN and
// DGUV from the vertical.
func SlingFromHorizontal() Limit {
	return Limit{"angle of a sling from the horizontal, not below", 30 * degree, "rad", Cite("asme-b30.9", "")}
}

// SlingFromVertical is the largest angle of a sling's leg from the vertical, in
// radians.
func SlingFromVertical() Limit {
	return Limit{"angle of a sling from the vertical, not above", 60 * degree, "rad", Cite("en-818-6", "")}
}

// CountsAsVertical is the angle from the vertical, in radians, within which a
// leg may be called vertical.
func CountsAsVertical() Limit {
	return Limit{"angle from the vertical that counts as vertical", 5 * degree, "rad", Cite("osha-1910.184", "(b)")}
}

// ChokeKeeps is the share of its working load limit that a choked sling keeps:
// the lower end of 75 to 80 %.
func ChokeKeeps() Limit {
	return Limit{"share of a sling's working load limit kept in a choke", 0.75, "", Cite("common-practice", "")}
}

// DiagonalShare is the share of the weight that each line or stand of four is
// held to where nothing proves an even share: two lines on a diagonal carry all.
func DiagonalShare() Limit {
	return Limit{"share of the weight on a line of four", 0.5, "", Cite("common-practice", "")}
}

// FleetAngle is the largest angle of a rope off its sheave's plane, in radians.
func FleetAngle() Limit {
	return Limit{"fleet angle", 1.5 * degree, "rad", Cite("rigging-mathematics-primer", "")}
}

// LegsCounted is how many legs of a sling may be counted as carrying: all where
// an even share is proved, else one of two unequal legs and two of more. False
// for less than one leg.
func LegsCounted(legs int, evenShareProved bool) (Limit, bool) {
	count := Limit{Name: "legs that count", Citation: Cite("en-818-6", "")}
	switch {
	case legs < 1:
		return Limit{}, false
	case legs == 1 || evenShareProved:
		count.Value = float64(legs)
	case legs == 2:
		count.Value = 1
	default:
		count.Value = 2
	}
	return count, true
}

// ModeFactor is what a textile sling's working load limit is multiplied by for
// one, two, or three and four legs at the largest angle from the vertical in
// radians. False beyond 60°, above four legs, and for what is not a number.
func ModeFactor(legs int, fromVertical float64) (Limit, bool) {
	mode := Limit{Name: "mode factor of a sling", Citation: Cite("en-1492", "")}
	steep := fromVertical >= 0 && fromVertical <= 45*degree
	flat := fromVertical > 45*degree && fromVertical <= 60*degree
	switch {
	case legs == 1 && fromVertical == 0:
		mode.Value = 1
	case legs == 2 && steep:
		mode.Value = 1.4
	case legs == 2 && flat:
		mode.Value = 1.0
	case (legs == 3 || legs == 4) && steep:
		mode.Value = 2.1
	case (legs == 3 || legs == 4) && flat:
		mode.Value = 1.5
	default:
		return Limit{}, false
	}
	return mode, true
}

func slingLimits() []Limit {
	return []Limit{BridleQuestioned(), BridleRefused(), SlingFromHorizontal(), SlingFromVertical(),
		CountsAsVertical(), ChokeKeeps(), DiagonalShare(), FleetAngle()}
}
