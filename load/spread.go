package load

import (
	"math"

	"softloft/rig"
)

// Spread is how far the take-off may be off: every mass that nobody weighed by a share
// of it. Line is the one that carries most with all of them heavier, as built.
type Spread struct {
	Share   Number `json:"share"`
	Weighed Number `json:"weighed_kg"`
	Least   Number `json:"least_kg"`
	Most    Number `json:"most_kg"`
	Line    string `json:"line,omitempty"`
	Tension Number `json:"tension_n"`
}

// tellSpread works out the spread of the total and of the line that carries most.
func (w *work) tellSpread() {
	share := float64(w.rig.Plan.Rules.MassTolerance)
	var weighed, rest float64
	for i := range w.rig.Parts {
		p := &w.rig.Parts[i]
		switch {
		case p.Mass == nil || p.Weightless || !OnBox(w.rig, p):
		case p.Measured:
			weighed += *p.Mass
		default:
			rest += *p.Mass
		}
	}
	told := &Spread{Share: Number(share), Weighed: Number(weighed), Least: Number(weighed + (1-share)*rest), Most: Number(weighed + (1+share)*rest), Tension: Number(math.NaN())}
	if math.IsNaN(float64(w.answer.Mass)) {
		told.Least, told.Most = w.answer.Mass, w.answer.Mass
	}
	if s := w.heavier(share); s != nil {
		for i := range w.rig.Lines {
			if t := w.model.tension(s, i); t > float64(told.Tension) || math.IsNaN(float64(told.Tension)) && !math.IsNaN(t) {
				told.Line, told.Tension = w.rig.Lines[i].Name, Number(t)
			}
		}
	}
	w.answer.Spread = told
}

// heavier is the built rig with every mass that nobody weighed heavier by a share; nil
// where it does not come to rest.
func (w *work) heavier(share float64) *solved {
	if w.built == nil {
		return nil
	}
	scale := func(id string) float64 {
		if p, ok := w.rig.Part(id); ok && p.Measured {
			return 1
		}
		return 1 + share
	}
	r := *w.rig
	r.Weights = append([]rig.Weight(nil), r.Weights...)
	for i := range r.Weights {
		r.Weights[i].Mass *= scale(r.Weights[i].Part)
	}
	r.Tubes = append([]rig.Tube(nil), r.Tubes...)
	for i := range r.Tubes {
		r.Tubes[i].MassPerLength *= scale(r.Tubes[i].Part)
	}
	r.EdgeLoads = append([]rig.EdgeLoad(nil), r.EdgeLoads...)
	for i := range r.EdgeLoads {
		e := &r.EdgeLoads[i]
		e.Stations = append([]rig.Station(nil), e.Stations...)
		for k := range e.Stations {
			e.Stations[k].PerLength *= scale(e.Part)
		}
	}
	m := *w.model
	m.rig = &r
	loads, err := m.built()
	if err != nil {
		return nil
	}
	s, err := m.restFrom(loads, w.built)
	if err != nil {
		return nil
	}
	return s
}
