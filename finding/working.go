package finding

// Depth is how much of a working is told.
type Depth int

// The three depths.
const (
	Brief   Depth = iota // the line
	Numbers              // symbols, numbers, result
	Sources              // all, with where each number came from
)

// Line tells the finding in one line, in SI.
func (f Finding) Line() string { return f.Statement }

// Working tells the finding at a depth, one text line per element.
func (f Finding) Working(depth Depth) []string { return []string{f.Line()} }
