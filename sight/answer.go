package sight

import "softloft/finding"

// Number is a number of the answers: null where not known.
type Number = finding.Number

// Answer is the sight part of the answers.
type Answer struct {
	Cameras []CameraAnswer `json:"cameras"`
	Missing []string       `json:"missing,omitempty"`
}

// CameraAnswer is what one camera sees and hides. ClearTrim is the lowest trim at and
// above which nothing of the box comes into frame, null where no trim helps or it isn't
// known. WidestClear is the shortest lens with which nothing of the rig is in shot, null
// where no lens helps; AnyLensClears is true where even the widest considered does.
type CameraAnswer struct {
	Name          string   `json:"name"`
	Swept         string   `json:"swept"`         // stands, pan, track or orbit: what from and to count
	Way           []Number `json:"way,omitempty"` // from and to of the whole way: degrees, or shares of the track
	FieldOfView   *Field   `json:"field_of_view_deg"`
	Sees          []Seen   `json:"sees"`
	ErrorDeg      Number   `json:"error_deg"` // of from_deg and to_deg
	ClearTrim     Number   `json:"clear_trim_m"`
	WidestClear   Number   `json:"widest_clear_lens_mm"`
	AnyLensClears bool     `json:"any_lens_clears,omitempty"`
	Hides         []Hidden `json:"hides"`
	Missing       []string `json:"missing,omitempty"`
}

// Field is a field of view in degrees: full angles.
type Field struct {
	Horizontal Number `json:"horizontal"`
	Vertical   Number `json:"vertical"`
	Diagonal   Number `json:"diagonal"`
}

// Seen is one stretch of a camera's way over which a part is in shot. Share is the
// largest share of the frame that it was found to fill there. FromDeg and ToDeg are the
// orbit's angle or the pan about the look; null for a camera that stands still or runs on
// a track, which has shares of its track instead.
type Seen struct {
	Part      string  `json:"part"`
	Share     Number  `json:"share"`
	FromDeg   Number  `json:"from_deg"`
	ToDeg     Number  `json:"to_deg"`
	FromShare *Number `json:"from_share,omitempty"`
	ToShare   *Number `json:"to_share,omitempty"`
}

// Hidden is the share of the cloth's clear area that a camera and its operator hide from
// a mark's eyes, at worst over the camera's way.
type Hidden struct {
	Mark        string `json:"mark"`
	SourceShare Number `json:"source_share"`
}
