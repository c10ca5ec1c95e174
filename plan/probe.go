package plan

import (
	"softloft/document"
	"softloft/quantity"
)

// Probe is a meter point, or a patch of them.
type Probe struct {
	Name     string              `key:"name,required" doc:"what the meter point is called"`
	At       [3]quantity.Length  `key:"at,required" doc:"middle of the patch, in the room"`
	Size     *[2]quantity.Length `key:"size" doc:"of the patch, x and y; may be absent for one point"`
	N        [2]int              `key:"n" default:"[1, 1]" source:"contract" doc:"points along x and y, edges included; 1: the middle"`
	Facing   Facing              `key:"facing" default:"up" source:"contract" doc:"where the meter looks: up, down, or a direction of any length"`
	Receptor Receptor            `key:"receptor" default:"flat" source:"contract" doc:"shape of the meter's head"`
}

// Facing is the direction that a meter looks: not normalized.
type Facing [3]float64

// ReadFrom takes up, down or three bare numbers.
func (f *Facing) ReadFrom(c *document.Cursor) {
	const forms = "up, down or three numbers such as [1, 0, 0]"
	if c.IsText() {
		switch c.Text() {
		case "up":
			*f = Facing{0, 0, 1}
		case "down":
			*f = Facing{0, 0, -1}
		default:
			c.Wrong("no such direction "+quoted(c.Text()), forms)
		}
		return
	}
	var direction [3]float64
	if !c.Into(&direction) {
		return
	}
	if direction == ([3]float64{}) {
		c.Wrong("a direction of [0, 0, 0] looks nowhere", forms)
		return
	}
	*f = direction
}

// Receptor is the shape of a meter's head.
type Receptor string

// Words lists the receptors.
func (Receptor) Words() []string { return []string{"flat", "dome", "cylinder", "scalar"} }
