package plan

import (
	"softloft/kit"
	"softloft/quantity"
)

// Version is the version of the plan file that this package reads.
const Version = 1

// Plan is one plan file.
type Plan struct {
	Softloft  int        `key:"softloft,required" doc:"version of the plan file: 1"`
	Title     string     `key:"title"`
	Revision  string     `key:"revision"`
	Sheet     Sheet      `key:"sheet"`
	Derive    Derive     `key:"derive" default:"all" source:"contract" doc:"none: only what the plan names is placed"`
	Rules     Rules      `key:"rules" doc:"what the answers are held to"`
	Room      *Room      `key:"room"`
	Action    *Action    `key:"action"`
	Cameras   []Camera   `key:"cameras" unused:"sight"`
	Want      *Want      `key:"want"`
	Box       *Box       `key:"box,required"`
	Lamps     []Lamp     `key:"lamps"`
	Provision *Provision `key:"provision" doc:"what may still go up"`
	Added     []Added    `key:"added" doc:"loads that hang besides"`
	Measured  []Measured `key:"measured" doc:"weighed on the day; overrides the kit"`
	Hang      *Hang      `key:"hang"`
	Lift      *Lift      `key:"lift" unused:"lift"`
	Stands    []Stand    `key:"stands" unused:"stands"`
	Power     *Power     `key:"power" unused:"power"`
	Crew      *Crew      `key:"crew" unused:"build"`
	Probes    []Probe    `key:"probes" doc:"meter points"`
	Kit       kit.Kit    `key:"kit" doc:"entries of this plan's own"`
}

// Sheet says how answers are printed.
type Sheet struct {
	Units quantity.System `key:"units" default:"feet" source:"contract"`
	Paper Paper `key:"paper" default:"letter" source:"contract"`
}

// Paper is the size of printed sheets.
type Paper string

// Words lists the sizes.
func (Paper) Words() []string { return []string{"letter", "a4"} }

// Derive says whether parts that the plan doesn't name are derived.
type Derive string

// Words lists the ways.
func (Derive) Words() []string { return []string{"all", "none"} }

// Rules is what the answers are held to.
type Rules struct {
	PeopleBelow bool           `key:"people_below" default:"true" source:"contract"`
	Factor      Factors        `key:"factor" doc:"breaking strength over load; default the strictest cited"`
	LoadCells   bool           `key:"load_cells" default:"false" source:"contract" doc:"false: every line is also held to the diagonal rule"`
	Push        quantity.Force `key:"push" default:"0 N" source:"contract" doc:"horizontal, at a stand's top"`
}

// Factors are design factors: of the rope and of the hardware that holds it.
type Factors struct {
	Rope     *Factor `key:"rope"`
	Hardware *Factor `key:"hardware"`
}

// Factor is a number, or the id of a source that states one.
type Factor struct {
	Number float64
	Source string
}

// Want is what the director of photography asks for.
type Want struct {
	Exposure *Exposure       `key:"exposure"`
	Even     *quantity.Stops `key:"even" doc:"most difference over the area"`
	Spill    []SpillLimit    `key:"spill"`
	Reserve  quantity.Stops  `key:"reserve" default:"0 stop" source:"contract" doc:"to have in hand with all lamps at full level"`
}

// Exposure is the asked stop and how the camera is set. Shutter is the angle in a
// full turn.
type Exposure struct {
	Stop    quantity.TStop `key:"stop,required"`
	ISO     float64        `key:"iso" default:"800" source:"design assumption"`
	FPS     float64        `key:"fps" default:"24" source:"design assumption"`
	Shutter quantity.Angle `key:"shutter" default:"180 deg" source:"common practice"`
	Filter  quantity.Stops `key:"filter" default:"0 stop" source:"contract"`
}

// SpillLimit asks that a surface stay a number of stops under the area's mean.
type SpillLimit struct {
	On    string         `key:"on,required" doc:"north, south, east, west, or a named surface"`
	Under quantity.Stops `key:"under,required"`
}

// Probe is a meter point, or a patch of them.
type Probe struct {
	Name     string              `key:"name,required"`
	At       [3]quantity.Length  `key:"at,required"`
	Size     *[2]quantity.Length `key:"size"`
	N        [2]int              `key:"n" default:"[1, 1]" source:"contract"`
	Facing   Facing              `key:"facing" default:"up" source:"contract"`
	Receptor Receptor            `key:"receptor" default:"flat" source:"contract"`
}

// Facing is the direction that a meter looks: not normalized.
type Facing [3]float64

// Receptor is the shape of a meter's head.
type Receptor string

// Words lists the receptors.
func (Receptor) Words() []string { return []string{"flat", "dome", "cylinder", "scalar"} }

// Power is where current comes from.
type Power struct {
	Volts   quantity.Voltage    `key:"volts" default:"120 V" source:"design assumption"`
	Phases  int                 `key:"phases" default:"1" source:"contract"`
	Circuit quantity.Current    `key:"circuit" default:"20 A" source:"design assumption"`
	TieIn   *[3]quantity.Length `key:"tie_in"`
	Cable   string              `key:"cable"`
}

// Crew is who is there.
type Crew struct {
	People int `key:"people" default:"4" source:"design assumption"`
}
