package kit

import "softloft/quantity"

// Rope is what a line is made of: fiber rope or wire. Stiffness is EA in N. Knot
// is the share of the breaking strength that its end keeps; nil where nobody
// gave it.
type Rope struct {
	Entry
	Kind      string             `key:"kind" doc:"manila, nylon, polyester, wire, …"`
	Diameter  *quantity.Length   `key:"diameter" doc:"nominal diameter"`
	Breaks    *quantity.Force    `key:"breaks" doc:"breaking strength without a knot"`
	Stiffness *quantity.Force    `key:"stiffness" doc:"EA: force for a doubling of length"`
	Mass      *quantity.LineMass `key:"mass" doc:"mass per length"`
	Knot      *float64           `key:"knot" doc:"share of the strength that the knot or the end keeps"`
	Melts     string             `key:"melts" doc:"what heat does to it"`
	Lengths   []quantity.Length  `key:"lengths" doc:"lengths that stand on the shelf"`
}

// Pulley is a block with its sheave. Efficiency is the tension of one side over
// the other while the rope runs.
type Pulley struct {
	Entry
	Rated      *quantity.Force  `key:"rated" doc:"what its eye may hold: both sides of the rope together"`
	Kind       RatingKind       `key:"kind" default:"WLL" source:"contract" when:"rated" doc:"what rated means: a working load limit or the breaking load"`
	Efficiency *float64         `key:"efficiency" doc:"tension of one side over the other while the rope runs"`
	Sheave     *quantity.Length `key:"sheave" doc:"diameter of the sheave"`
	Mass       *quantity.Mass   `key:"mass" doc:"mass of a piece"`
	Fits       []string         `key:"fits" doc:"what it fits"`
}

// Rating is a stand's limit with its top at a height.
type Rating struct {
	At   quantity.Length `key:"at,required" doc:"height of the top"`
	Load quantity.Force  `key:"load,required" doc:"what it may carry there"`
}

// Stand is a rolling or folding stand.
type Stand struct {
	Entry
	Mass     *quantity.Mass     `key:"mass" doc:"mass without bags"`
	Base     quantity.Length    `key:"base,required" doc:"diameter through the feet"`
	Legs     int                `key:"legs,required" doc:"number of legs"`
	Rises    [2]quantity.Length `key:"rises,required" doc:"lowest and highest top"`
	Rated    []Rating           `key:"rated" doc:"limits by height of the top"`
	Castors  bool               `key:"castors" doc:"true where it rolls"`
	Receiver *quantity.Length   `key:"receiver" doc:"pin that its top takes: 16 mm or 28 mm"`
	Bending  *quantity.Rigidity `key:"bending" doc:"EI of the mast"`
}

// Hardware is any fitting, clamp, shackle, sling, safety, tie, bag or cable.
// Rated is nil where nobody gave it. Stiffness is EA in N for what stretches.
type Hardware struct {
	Entry
	Mass      Weight           `key:"mass" doc:"mass of a piece, or mass per length"`
	Fits      []string         `key:"fits" doc:"ids of what it fits: tubes for a corner or a tee"`
	Rated     *quantity.Force  `key:"rated" doc:"absent where nobody rated it: what depends on it is not known"`
	Kind      RatingKind       `key:"kind" default:"WLL" source:"contract" when:"rated" doc:"what rated means: a working load limit or the breaking load"`
	Welded    bool             `key:"welded" doc:"true where it is welded to the tube"`
	Stiffness *quantity.Force  `key:"stiffness" doc:"EA: force for a doubling of length"`
	Slip      *quantity.Force  `key:"slip" doc:"load at which a fitting that holds by friction slips"`
	Length    *quantity.Length `key:"length" doc:"length of a piece"`
	Material  string           `key:"material" doc:"polyester, steel, chain, …: what heat does to it"`
}
