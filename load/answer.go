package load

import (
	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
)

// Number is a number of the answers: null where it is not known.
type Number = finding.Number

// Vec is a vector of the answers, in the room: x, y, z.
type Vec [3]Number

func vec(v r3.Vec) Vec { return Vec{Number(v.X), Number(v.Y), Number(v.Z)} }

// Answer is what the load analysis tells, as in the answers JSON: SI, degrees.
type Answer struct {
	Mass        Number       `json:"mass_kg"`
	Center      *Vec         `json:"centre_m"`
	TakeOff     []TakeOff    `json:"take_off"`
	Spread      *Spread      `json:"spread,omitempty"`
	Pose        *Pose        `json:"pose"`
	Lines       []Line       `json:"lines"`
	Points      []Point      `json:"points"`
	TiltPath    []TiltStep   `json:"tilt_path,omitempty"`
	Lift        *Lift        `json:"lift,omitempty"`
	Frame       *Frame       `json:"frame"`
	Cloth       *Cloth       `json:"cloth,omitempty"`
	Lost        []Lost       `json:"lost"`
	Stands      []Stand      `json:"stands"`
	Assumptions []string     `json:"assumptions"`
	Unknown     []string     `json:"not_known"`
	RoomToGrow  *RoomToGrow  `json:"room_to_grow,omitempty"`
	Safety      []Arrest     `json:"safety"`
	Wind        *Wind        `json:"wind,omitempty"`
	Hands       []Hands      `json:"hands"`
	Residual    *ResidualSum `json:"balance"`
}

// RoomToGrow is how much more mass could go up, spread like today's lamps, and the
// finding whose limit that reaches first.
type RoomToGrow struct {
	Mass       Number `json:"mass_kg"`
	FirstLimit string `json:"first_limit"`
}

// ResidualSum is what is left of forces and moments when the reported lines are
// set against the reported weight: a check of the working, near 0.
type ResidualSum struct {
	ForceN   Number `json:"force_n"`
	MomentNm Number `json:"moment_nm"`
}

// TakeOff is one row of the take-off: what the box weighs.
type TakeOff struct {
	What  string `json:"what"`
	Count int    `json:"count"`
	Mass  Number `json:"mass_kg"`
	Note  string `json:"note,omitempty"`
}

// Pose is how the box hangs. At is the box's origin; Lowest is the lowest edge.
type Pose struct {
	At     Vec       `json:"at_m"`
	Turn   Number    `json:"turn_deg"`
	Tilt   [2]Number `json:"tilt_deg"`
	Lowest Number    `json:"lowest_m"`
}

// Cases are the tensions of one line by case, in N.
type Cases struct {
	Built     Number `json:"built"`
	Grown     Number `json:"grown"`
	Lift      Number `json:"lift"`
	TiltWorst Number `json:"tilt_worst"`
	LostWorst Number `json:"lost_worst"`
	Diagonal  Number `json:"diagonal"`
}

// Line is what one line carries as built, and its cases.
type Line struct {
	Name       string `json:"name"`
	To         string `json:"to"`
	Length     Number `json:"length_m"`
	HaulLength Number `json:"haul_length_m"`
	At         *Vec   `json:"at_m"`
	Point      *Vec   `json:"point_m"`
	ForceOnBox *Vec   `json:"force_on_box_n"`
	Haul       Number `json:"haul_n"`
	Slack      bool   `json:"slack"`
	Cases      Cases  `json:"cases"`
	Governs    string `json:"governs"`
	// HaulRange is between which pulls the pulley's friction may leave the haul side at
	// rest: e·T to T/e. Haul is the load side's tension, which the tie-off must carry.
	HaulRange *[2]Number `json:"haul_range_n,omitempty"`
	Bridle    *Bridle    `json:"bridle,omitempty"`
}

// PointCases are the forces on one point by case, in N; negative z pulls the
// building down.
type PointCases struct {
	Built     *Vec `json:"built"`
	Grown     *Vec `json:"grown"`
	Lift      *Vec `json:"lift"`
	TiltWorst *Vec `json:"tilt_worst"`
	LostWorst *Vec `json:"lost_worst"`
}

// Point is what one building point gets from all lines on it.
type Point struct {
	Name  string     `json:"name"`
	Cases PointCases `json:"cases"`
}

// Frame is how the tubes bear it. Sag and Stress are as built; Use is the largest
// over built and grown.
type Frame struct {
	Sag     Number   `json:"sag_m"`
	Stress  Number   `json:"stress_pa"`
	Use     Number   `json:"use"`
	Members []Member `json:"members"`
}

// Member is one tube in its governing case, at the place where that is worst.
type Member struct {
	ID     string `json:"id"`
	Part   string `json:"part"`
	Case   string `json:"case"`
	N      Number `json:"n"`
	V      Number `json:"v"`
	M      Number `json:"m"`
	T      Number `json:"t"`
	Stress Number `json:"stress_pa"`
	Use    Number `json:"use"`
	Sag    Number `json:"sag_m"`
}

// Lost is what happens when one line or drop is gone.
type Lost struct {
	What       string            `json:"what"`
	Name       string            `json:"name"`
	Outcome    string            `json:"outcome"`
	Why        string            `json:"why,omitempty"`
	Tension    map[string]Number `json:"tension_n"`
	ForceOnBox map[string]Vec    `json:"force_on_box_n"`
	At         map[string]Vec    `json:"at_m"`
	Center     *Vec              `json:"centre_m"`
	Pose       *Pose             `json:"pose"`
	Estimate   Number            `json:"estimate_n"`
	Integrated map[string]Number `json:"integrated_n"`
	Tilt       Number            `json:"tilt_deg"`
	Drop       Number            `json:"drop_m"`
	// Stress is the largest normal stress of any tube at rest; Use the largest use.
	Stress Number `json:"stress_pa"`
	Use    Number `json:"use"`
}
