package source

import "slices"

// Hardware is the kind of a part that carries, as the design-factor tables
// divide them.
type Hardware string

// The kinds of hardware.
const (
	WireRope       Hardware = "wire rope"
	SteelCoreSling Hardware = "round sling with steel core"
	RoundSling     Hardware = "round sling" // textile
	FiberRope      Hardware = "fiber rope"
	Chain          Hardware = "chain"
	Shackle        Hardware = "shackle"
	MetalPart      Hardware = "other metal part"
)

// Factor is a design factor: breaking strength over load, dimensionless.
type Factor struct {
	Value float64
	Citation
	Kind Hardware
	// PeopleBeneath marks a factor that is asked where people are beneath the
	// load (or, as Note says, where life depends on it); the others are for
	// lifting in general.
	PeopleBeneath bool
	Note          string
}

// factors is the table. Never written to.
var factors = []Factor{
	// Loads over people. DGUV 215-313 Table 1 was read.
	{10, Cite("dguv-215-313", "Table 1"), WireRope, true, ""},
	{10, Cite("dguv-215-313", "Table 1"), SteelCoreSling, true, ""},
	{14, Cite("dguv-215-313", "Table 1"), RoundSling, true, ""},
	{14, Cite("dguv-215-313", "Table 1"), FiberRope, true, "its row is fiber slings; taken for any fiber rope that carries"},
	{8, Cite("dguv-215-313", "Table 1"), Chain, true, ""},
	{10, Cite("dguv-215-313", "Table 1"), Shackle, true, "shackles to EN 13889"},
	{8, Cite("dguv-215-313", "Table 1"), MetalPart, true, "other metal parts in the load path"},
	{12, Cite("ci-1401", ""), FiberRope, true, "upper end of its range 5 to 12: risk to life, knots, shock, unknown loads"},
	{10, Cite("uk-stage-rigging-guidance", ""), FiberRope, true, "usual over people"},
	{10, Cite("uk-stage-rigging-guidance", ""), WireRope, true, "upper end of 8 to 10, usual over people"},
	{8, Cite("ansi-e1.4-1", ""), WireRope, true, "lift lines that stand still"},
	{10, Cite("ansi-e1.6-1", ""), WireRope, true, "lift lines that move"},

	// Lifting in general.
	{5, Cite("machinery-directive", "Annex I 4.1.2.5"), WireRope, false, "usual value, with its ends"},
	{4, Cite("machinery-directive", "Annex I 4.1.2.5"), Chain, false, "usual value"},
	{7, Cite("machinery-directive", "Annex I 4.1.2.5"), RoundSling, false, "usual value, textile"},
	{7, Cite("machinery-directive", "Annex I 4.1.2.5"), FiberRope, false, "usual value, textile"},
	{4, Cite("machinery-directive", "Annex I 4.1.2.5"), MetalPart, false, "usual value, metal parts of slings"},
	{5, Cite("ci-1401", ""), FiberRope, false, "lower end of its range, only with expert knowledge"},
	{5, Cite("asme-b30.9", ""), WireRope, false, ""},
	{5, Cite("asme-b30.9", ""), RoundSling, false, ""},
	{5, Cite("asme-b30.9", ""), FiberRope, false, ""},
	{4, Cite("asme-b30.9", ""), Chain, false, ""},
	{5, remembered("asme-b30.26", "26-1.2"), Shackle, false, "up to 150 short tons; 4 above"},
}

// Factors lists the table of design factors. The slice is the caller's own.
func Factors() []Factor { return slices.Clone(factors) }

// StrictestFactor is the largest cited design factor for this kind of hardware
// where people are beneath; false where the kind is not in the table.
func StrictestFactor(kind Hardware) (Factor, bool) {
	return largest(func(f Factor) bool { return f.Kind == kind && f.PeopleBeneath })
}

// StrictestGeneralFactor is the largest cited design factor for lifting in
// general, nobody beneath; false where the kind has none.
func StrictestGeneralFactor(kind Hardware) (Factor, bool) {
	return largest(func(f Factor) bool { return f.Kind == kind && !f.PeopleBeneath })
}

// FactorOf is the design factor that one publication asks of this kind of
// hardware, the larger one where it has several; false where it has none.
func FactorOf(id ID, kind Hardware) (Factor, bool) {
	return largest(func(f Factor) bool { return f.Kind == kind && f.Source == id })
}

// largest is the first of the largest among the rows that match.
func largest(match func(Factor) bool) (best Factor, found bool) {
	for _, f := range factors {
		if match(f) && (!found || f.Value > best.Value) {
			best, found = f, true
		}
	}
	return best, found
}

// Limit is the factor as a limit, with its name.
func (f Factor) Limit() Limit {
	return Limit{"design factor, " + string(f.Kind), f.Value, "", f.Citation}
}

// WorkingLoadShare is the share of a working load limit that may be used where
// people are beneath and only that limit is given, not the breaking strength.
func WorkingLoadShare() Limit {
	return Limit{"share of a working load limit over people", 0.5, "", Cite("dguv-215-313", "1.4")}
}

// PersonsMultiplier is what the usual factors of the Machinery Directive are
// multiplied by where persons are lifted.
func PersonsMultiplier() Limit {
	return Limit{"multiplier of usual factors where persons are lifted", 2, "", Cite("machinery-directive", "Annex I 6.1.1")}
}

// ShackleSideLoad is the share of its working load limit that a shackle keeps
// when pulled sideways by an angle in radians off its line: the full load in
// line, the row of 45° up to 45°, the row of 90° up to 90°. False beyond, and
// for an angle that is not a number.
func ShackleSideLoad(angle float64) (Limit, bool) {
	share := Limit{Name: "share of a shackle's working load limit kept", Citation: Cite("asme-b30.26", "ch. 1")}
	switch {
	case angle == 0:
		share.Value = 1
	case angle > 0 && angle <= 45*degree:
		share.Value = 0.7
	case angle > 0 && angle <= 90*degree:
		share.Value = 0.5
	default:
		return Limit{}, false
	}
	return share, true
}
