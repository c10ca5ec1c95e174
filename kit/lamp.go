package kit

import (
	"softloft/document"
	"softloft/photometry"
	"softloft/quantity"
)

// Lamp is a head with its opening. Lumens is nil where nobody gave it.
// CG and Hook are heights behind the opening, along the axis, of the center of
// gravity and of the clamp.
type Lamp struct {
	Entry
	Mass        *quantity.Mass      `key:"mass" doc:"with yoke, without clamp and cable"`
	Power       *quantity.Power     `key:"power" doc:"at full level"`
	PowerFactor float64             `key:"power_factor" default:"1" source:"design assumption" doc:"active power over volts times amps"`
	Inrush      *quantity.Current   `key:"inrush" doc:"current for an instant when it is switched on"`
	Size        [2]quantity.Length  `key:"size,required" doc:"the luminous opening, the first along +x before roll and pan"`
	Lumens      *quantity.Flux      `key:"lumens" doc:"light from the opening at full level"`
	Spread      Spread              `key:"spread" doc:"lambertian, {beam, field} or {file}"`
	Body        *[3]quantity.Length `key:"body" doc:"the housing behind the opening, which shades"`
	CG          quantity.Length     `key:"cg" doc:"center of gravity behind the opening"`
	Hook        quantity.Length     `key:"hook" doc:"clamp behind the opening"`
	Pin         *quantity.Length    `key:"pin" doc:"pin or receiver of its yoke: 16 mm or 28 mm"`
	Control     string              `key:"control" doc:"remote or hand"`
	Supply      Supply              `key:"supply" doc:"inside, or {mass, off_box}"`
	KeepOff     *quantity.Length    `key:"keep_off" doc:"distance to keep to what can burn"`
	Flicker     string              `key:"flicker" doc:"what it does at high frame rates"`
}

// Spread is how a lamp's light leaves its opening: Lambertian where all fields
// are empty, by two angles, or from a photometric file.
type Spread struct {
	Beam, Field *quantity.Angle // full angles at 50 % and 10 % of the peak
	File        string
	// Read is what stands in File, nil until somebody handed it in (Lamp.WithFile).
	Read *photometry.LampFile
}

// Lambertian reports whether the opening shines evenly.
func (s Spread) Lambertian() bool { return s.Beam == nil && s.File == "" }

// ReadFrom takes the word lambertian, {beam, field} or {file}.
func (s *Spread) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		if c.Text() != "lambertian" {
			c.Wrong("no such spread \""+c.Text()+"\"", "lambertian, {beam: 60 deg, field: 90 deg} or {file: name}")
		}
		return
	}
	var form struct {
		Beam  *quantity.Angle `key:"beam"`
		Field *quantity.Angle `key:"field"`
		File  string          `key:"file"`
	}
	if !c.Into(&form) {
		return
	}
	s.Beam, s.Field, s.File = form.Beam, form.Field, form.File
	if form.File == "" && (form.Beam == nil || form.Field == nil) {
		c.Wrong("a spread by angles needs both", "{beam: 60 deg, field: 90 deg}")
	}
}

// Supply is a lamp's power supply: inside the head where OffBox and Mass are
// empty.
type Supply struct {
	Mass   *quantity.Mass
	OffBox bool
}

// ReadFrom takes the word inside, or {mass, off_box}.
func (s *Supply) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		if c.Text() != "inside" {
			c.Wrong("no such supply \""+c.Text()+"\"", "inside or {mass: 2 kg, off_box: true}")
		}
		return
	}
	var form struct {
		Mass   *quantity.Mass `key:"mass"`
		OffBox bool           `key:"off_box"`
	}
	c.Into(&form)
	s.Mass, s.OffBox = form.Mass, form.OffBox
}
