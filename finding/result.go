package finding

// Result is what a finding concludes. The empty Result counts as NotKnown.
type Result string

// The four results.
const (
	Within   Result = "within"
	Tight    Result = "tight"
	Over     Result = "over"
	NotKnown Result = "not known"
)

// Relation says on which side of its limit a value has to stay.
type Relation string

// The two relations.
const (
	AtMost  Relation = "at_most"
	AtLeast Relation = "at_least"
)

// severity orders results: over, not known, tight, within, worst first.
func (r Result) severity() int {
	switch r {
	case Within:
		return 0
	case Tight:
		return 1
	case Over:
		return 3
	default:
		return 2
	}
}

// Worst is the worst of the results: over, not known, tight, within. Of none
// it is NotKnown, because nothing was checked.
func Worst(results ...Result) Result {
	if len(results) == 0 {
		return NotKnown
	}
	worst := Within
	for _, r := range results {
		if r.severity() == NotKnown.severity() {
			r = NotKnown
		}
		if r.severity() > worst.severity() {
			worst = r
		}
	}
	return worst
}

// sign is the relation in a formula.
func (r Relation) sign() string {
	if r == AtLeast {
		return " ≥ "
	}
	return " ≤ "
}

// String is the relation in words.
func (r Relation) String() string {
	switch r {
	case AtMost:
		return "at most"
	case AtLeast:
		return "at least"
	default:
		return string(r)
	}
}
