package source

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
}

// StrictestFactor is the largest cited design factor for this kind of hardware
// where people are beneath; false where the kind is not in the table.
func StrictestFactor(kind Hardware) (Factor, bool) { return Factor{}, false }

// FactorOf is the design factor that one publication asks of this kind of
// hardware, the larger one where it has several; false where it has none.
func FactorOf(id ID, kind Hardware) (Factor, bool) { return Factor{}, false }
