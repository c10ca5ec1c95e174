package source

import "strings"

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
	Derived        Kind = "derived"         // geometry, physics, or an assumption of this program
)

// Publication is one entry of the register. Edition and Year are empty where
// they are not known.
type Publication struct {
	ID      ID     `json:"id"`
	Title   string `json:"title"`
	Edition string `json:"edition"`
	Year    string `json:"year"`
	Kind    Kind   `json:"kind"`
	// Read is true where the values taken from it were read in a copy or an
	// extract of it; false where they are from memory or second-hand, where
	// only the title was read, and where there is nothing to read. Note says
	// which.
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

// Cite is a citation of a clause; clause may be empty.
func Cite(id ID, clause string) Citation { return Citation{Source: id, Clause: clause} }

// remembered is a citation of a clause whose value is from memory.
func remembered(id ID, clause string) Citation {
	return Citation{Source: id, Clause: clause, FromMemory: true}
}

// Read reports whether the cited value was read in a copy of its publication:
// the publication is registered and Read, and the row is not from memory.
func (c Citation) Read() bool {
	p, ok := Lookup(c.Source)
	return ok && p.Read && !c.FromMemory
}

// String names the publication, clause and page in words, and says where the
// value is from memory or was not read in the original. An id that is not in
// the register is printed as it is, and said to be so.
func (c Citation) String() string {
	if c.Source == "" {
		return "no source named"
	}
	p, ok := Lookup(c.Source)
	if !ok {
		return string(c.Source) + " (not in the register)"
	}
	parts := []string{p.Title}
	for _, text := range []string{p.Edition, p.Year, c.Clause, page(c.Page)} {
		if text != "" {
			parts = append(parts, text)
		}
	}
	text := strings.Join(parts, ", ")
	if mark := c.mark(p); mark != "" {
		text += " (" + mark + ")"
	}
	return text
}

// mark is the honest remark behind a citation: empty for what was read, and for
// what the user or this program states.
func (c Citation) mark(p Publication) string {
	switch {
	case p.Kind == User || p.Kind == Derived || p.Kind == CommonPractice || p.Kind == Demo:
		return ""
	case c.FromMemory:
		return "this value is from memory"
	case p.Read:
		return ""
	default:
		return p.Note
	}
}

func page(text string) string {
	if text == "" {
		return ""
	}
	return "p. " + text
}
