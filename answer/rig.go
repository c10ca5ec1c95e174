package answer

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
)

// Vec is a place in the room: x, y, z in m.
type Vec [3]finding.Number

// Rig is every placed part, in the planned pose.
type Rig struct {
	Bodies    []string    `json:"bodies"`
	NotPlaced []NotPlaced `json:"not_placed"`
	Parts     []Part      `json:"parts"`
}

// NotPlaced is something that no part stands for yet.
type NotPlaced struct {
	What string `json:"what"`
	Why  string `json:"why"`
}

// Part is one placed part. Its mass is null where nobody gave it.
type Part struct {
	ID         string         `json:"id"`
	What       string         `json:"what"`
	Name       string         `json:"name"`
	Kit        string         `json:"kit"`
	Body       string         `json:"body"`
	Mass       finding.Number `json:"mass_kg"`
	MassFrom   string         `json:"mass_from"`
	Measured   bool           `json:"measured"`
	Weightless bool           `json:"weightless"`
	Demo       bool           `json:"demo"`
	Center     Vec            `json:"centre_m"`
	From       *Vec           `json:"from_m"`
	To         *Vec           `json:"to_m"`
	Length     finding.Number `json:"length_m"`
	Joined     []string       `json:"joined"`
	Why        string         `json:"why"`
}

// rigOf tells the parts of a rig.
func rigOf(r *rig.Rig) Rig {
	told := Rig{NotPlaced: []NotPlaced{}}
	for _, n := range r.NotPlaced {
		told.NotPlaced = append(told.NotPlaced, NotPlaced(n))
	}
	for i := range r.Parts {
		p := &r.Parts[i]
		told.Parts = append(told.Parts, partOf(r, p))
		if !slices.Contains(told.Bodies, p.Body) {
			told.Bodies = append(told.Bodies, p.Body)
		}
	}
	return told
}

func partOf(r *rig.Rig, p *rig.Part) Part {
	told := Part{ID: p.ID, What: p.What, Name: p.Name, Kit: p.KitID, Body: p.Body, Mass: unknown, MassFrom: p.MassFrom, Measured: p.Measured,
		Weightless: p.Weightless, Demo: p.Demo, Center: vec(r.CenterInRoom(p)), Length: unknown, Joined: p.Joined, Why: p.Why}
	if p.Mass != nil {
		told.Mass = finding.Number(*p.Mass)
	}
	if from, to, ok := r.EndsInRoom(p); ok {
		a, b := vec(from), vec(to)
		told.From, told.To = &a, &b
	}
	if p.Length > 0 {
		told.Length = finding.Number(p.Length)
	}
	if told.Joined == nil {
		told.Joined = []string{}
	}
	return told
}

func vec(v r3.Vec) Vec { return Vec{finding.Number(v.X), finding.Number(v.Y), finding.Number(v.Z)} }
