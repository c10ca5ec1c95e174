package source

// ID names a publication in the register, such as "dguv-215-313". A plan may
// name it where a rule may be chosen by its source.
type ID string

// Kind tells what weight a publication carries.
type Kind string

// The kinds of publication.
const (
	Standard       Kind = "standard"
	Regulation     Kind = "regulation"
	Handbook       Kind = "handbook"
	Guideline      Kind = "guideline"
	CommonPractice Kind = "common practice" // a habit of the trade that nobody published as a rule
	User           Kind = "user"            // what the crew states: plan, kit entry, measurement
	Demo           Kind = "demo"            // an invented value, for demonstration only
	Derived        Kind = "derived"         // geometry, physics or a design assumption of this program
)

// Publication is one entry of the register. Edition and Year are empty where
// they are not known.
type Publication struct {
	ID      ID     `json:"id"`
	Title   string `json:"title"`
	Edition string `json:"edition"`
	Year    string `json:"year"`
	Kind    Kind   `json:"kind"`
	// Read is true where the values taken from it were read in a copy of it;
	// false where they are from memory or second-hand, as Note says.
	Read bool   `json:"read"`
	Note string `json:"note"`
}

// Citation points into a publication.
type Citation struct {
	Source ID     `json:"id"`
	Clause string `json:"clause"`
	Page   string `json:"page"`
	// FromMemory marks a single value from memory although its publication was
	// read in other parts.
	FromMemory bool `json:"from_memory,omitempty"`
}

// Read reports whether the cited value was read in a copy of its publication:
// the publication is registered and Read, and the row is not from memory.
func (c Citation) Read() bool {
	p, ok := Lookup(c.Source)
	return ok && p.Read && !c.FromMemory
}
