package plan

import (
	"fmt"
	"strconv"

	"softloft/document"
	"softloft/quantity"
)

// Rules is what the answers are held to.
type Rules struct {
	PeopleBelow   bool           `key:"people_below" default:"true" source:"contract" doc:"whether people are under the box while it is up"`
	Factor        Factors        `key:"factor" doc:"breaking strength over load; the strictest cited one where absent"`
	LoadCells     bool           `key:"load_cells" default:"false" source:"contract" doc:"whether the share of each line is read on the day; false: every line is also held to the diagonal rule, half of the weight"`
	MassTolerance quantity.Share `key:"mass_tolerance" default:"5%" source:"common practice" doc:"how far a mass that nobody weighed may be off, as a share of it"`
	Push          quantity.Force `key:"push" default:"0 N" source:"contract" doc:"horizontal force at a stand's top"`
}

// Factors are design factors: of the rope and of the hardware that holds it. Nil
// is the strictest cited one for its kind.
type Factors struct {
	Rope     *Factor `key:"rope" doc:"of ropes, wires and slings: a number, or the id of a source that states one"`
	Hardware *Factor `key:"hardware" doc:"of clamps, shackles and pulleys: a number, or the id of a source that states one"`
}

// Factor is a number, or the id of a source that states one.
type Factor struct {
	Number float64
	Source string
}

// ReadFrom takes a number or a source's id.
func (f *Factor) ReadFrom(c *document.Cursor) {
	if !c.IsText() {
		c.Wrong("a factor is one value", "a number such as 10, or the id of a source")
		return
	}
	number, err := strconv.ParseFloat(c.Text(), 64)
	if err != nil {
		f.Source = c.Text()
		return
	}
	if !(number >= 1 && number <= 1000) {
		c.Wrong(fmt.Sprintf("a design factor of %s", c.Text()), "breaking strength over load, from 1 to 1000, such as 10")
		return
	}
	f.Number = number
}
