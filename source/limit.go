package source

// Limit is a published or customary number that decides something, with its
// unit (SI; angles in radians; empty for a ratio) and its source.
type Limit struct {
	Name  string
	Value float64
	Unit  string
	Citation
}
