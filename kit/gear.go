package kit

import "softloft/quantity"

// Rope is what a line is made of: fiber rope or wire. Stiffness is EA in N. Knot
// is the share of the breaking strength that its end keeps; nil where nobody
// gave it.
type Rope struct {
	Entry
	Kind      string             `key:"kind" doc:"manila, nylon, polyester, wire, …"`
	Diameter  *quantity.Length   `key:"diameter"`
	Breaks    *quantity.Force    `key:"breaks" doc:"breaking strength without a knot"`
	Stiffness *quantity.Force    `key:"stiffness" doc:"EA: force for a doubling of length"`
	Mass      *quantity.LineMass `key:"mass"`
	Knot      *float64           `key:"knot" doc:"share of the strength that the knot or the end keeps"`
	Melts     string             `key:"melts"`
	Lengths   []quantity.Length  `key:"lengths"`
}

// Pulley is a block with its sheave. Efficiency is the tension of one side over
// the other while the rope runs.
type Pulley struct {
	Entry
	Rated      *quantity.Force  `key:"rated"`
	Kind       RatingKind       `key:"kind" default:"WLL" source:"contract"`
	Efficiency *float64         `key:"efficiency"`
	Sheave     *quantity.Length `key:"sheave"`
	Mass       *quantity.Mass   `key:"mass"`
	Fits       []string         `key:"fits"`
}

// Rating is a stand's limit with its top at a height.
type Rating struct {
	At   quantity.Length `key:"at,required"`
	Load quantity.Force  `key:"load,required"`
}

// Stand is a rolling or folding stand.
type Stand struct {
	Entry
	Mass     *quantity.Mass     `key:"mass"`
	Base     quantity.Length    `key:"base,required" doc:"diameter through the feet"`
	Legs     int                `key:"legs,required"`
	Rises    [2]quantity.Length `key:"rises,required" doc:"lowest and highest top"`
	Rated    []Rating           `key:"rated"`
	Castors  bool               `key:"castors"`
	Receiver *quantity.Length   `key:"receiver"`
	Bending  *quantity.Rigidity `key:"bending" doc:"EI of the mast"`
}

// Hardware is any fitting, clamp, shackle, sling, safety, tie, bag or cable.
// Rated is nil where nobody gave it. Stiffness is EA in N for what stretches.
type Hardware struct {
	Entry
	Mass      Weight           `key:"mass" doc:"mass of a piece, or mass per length"`
	Fits      []string         `key:"fits"`
	Rated     *quantity.Force  `key:"rated"`
	Kind      RatingKind       `key:"kind" default:"WLL" source:"contract"`
	Welded    bool             `key:"welded"`
	Stiffness *quantity.Force  `key:"stiffness"`
	Slip      *quantity.Force  `key:"slip" doc:"load at which a fitting that holds by friction slips"`
	Length    *quantity.Length `key:"length"`
	Material  string           `key:"material" doc:"polyester, steel, chain, …: what heat does to it"`
}
