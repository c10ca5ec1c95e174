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
	Title     string     `key:"title" doc:"what the job is called on the sheets"`
	Revision  string     `key:"revision" doc:"which issue of the plan this is"`
	Sheet     Sheet      `key:"sheet" doc:"how answers are printed"`
	Derive    Derive     `key:"derive" default:"all" source:"contract" doc:"all: what a box needs and the plan does not name is added; none: only what the plan names is placed, the rest is listed as not placed and is not known"`
	Rules     Rules      `key:"rules" doc:"what the answers are held to"`
	Room      *Room      `key:"room" doc:"where it happens"`
	Action    *Action    `key:"action" doc:"what is lit: the area and the marks"`
	Cameras   []Camera   `key:"cameras" doc:"what must not see the box"`
	Want      *Want      `key:"want" doc:"what the director of photography asks for"`
	Box       *Box       `key:"box,required" doc:"the source: frames, sides, cloth, crate"`
	Lamps     []Lamp     `key:"lamps" doc:"the lamps, in box axes"`
	Provision *Provision `key:"provision" doc:"what may still go up"`
	Added     []Added    `key:"added" doc:"loads that hang besides"`
	Measured  []Measured `key:"measured" doc:"masses weighed on the day; each overrides the kit's, visibly"`
	Hang      *Hang      `key:"hang" doc:"how the box hangs from points"`
	Lift      *Lift      `key:"lift" doc:"the box on its way up"`
	Stands    []Stand    `key:"stands" doc:"stands under the box or beside it"`
	Power     *Power     `key:"power" doc:"where current comes from"`
	Crew      *Crew      `key:"crew" doc:"who is there, how fast they work, who says go"`
	Probes    []Probe    `key:"probes" doc:"meter points"`
	Kit       kit.Kit    `key:"kit" doc:"kit entries of this plan's own; one with the id of another replaces it"`
}

// Sheet says how answers are printed.
type Sheet struct {
	Units quantity.System `key:"units" default:"feet" source:"contract" doc:"feet, pounds and foot-candles, or metres, kilograms and lux"`
	Paper Paper           `key:"paper" default:"letter" source:"contract" unused:"print" doc:"size of a printed sheet"`
}

// Paper is the size of printed sheets.
type Paper string

// Words lists the sizes.
func (Paper) Words() []string { return []string{"letter", "a4"} }

// Derive says whether parts that the plan doesn't name are derived.
type Derive string

// Words lists the ways.
func (Derive) Words() []string { return []string{"all", "none"} }

// Power is where current comes from.
type Power struct {
	Volts   quantity.Voltage    `key:"volts" default:"120 V" source:"design assumption" doc:"at the tie-in, between a leg and neutral"`
	Phases  int                 `key:"phases" default:"1" source:"contract" doc:"1 or 3"`
	Circuit quantity.Current    `key:"circuit" default:"20 A" source:"design assumption" doc:"rating of one circuit's breaker"`
	TieIn   *[3]quantity.Length `key:"tie_in" doc:"where the feed starts, in the room"`
	Cable   string              `key:"cable" doc:"cable from the tie-in to the box"`
}
