package load

import (
	"fmt"
	"math"

	"softloft/finding"
	"softloft/source"
)

// Hands is something that people lift: what each pair of hands gets of it, and how many
// people it takes. Index is the lifting index with the people that are there, Each over
// what each may lift as one of them.
type Hands struct {
	What   string `json:"what"`
	Part   string `json:"part"`
	Mass   Number `json:"mass_kg"`
	People int    `json:"people"` // that it takes
	There  int    `json:"there"`  // that are at it
	Each   Number `json:"each_kg"`
	Index  Number `json:"index"`
}

// liftingSet is the revised equation of 1991 in one set of units: the mass that a person may
// lift is constant·(reach/H)·(1−perHeight·|V−height|)·(0.82+travel/D)·(1−0.0032·A)·F·C.
type liftingSet struct{ constant, reach, height, perHeight, travel float64 }

// metric is the set in kg and cm.
func metric() liftingSet {
	return liftingSet{constant: source.LoadConstant().Value, reach: 25, height: 75, perHeight: 0.003, travel: 4.5}
}

// grip is how something is lifted: hands so far in front of the ankles and so high at the
// start, the way up (cm or in), the turn in degrees, and the factors for how often and how
// well it is held.
type grip struct{ far, high, way, turn, often, held float64 }

// recommended is the mass that one person may lift; 0 beyond the equation's reach.
func (s liftingSet) recommended(g grip) float64 {
	if g.far > 2.5*s.reach || g.turn > 135 {
		return 0
	}
	clip := func(x float64) float64 { return math.Max(0, math.Min(1, x)) }
	return s.constant * clip(s.reach/g.far) * clip(1-s.perHeight*math.Abs(g.high-s.height)) * clip(0.82+s.travel/g.way) * (1 - 0.0032*g.turn) * g.often * g.held
}

// carrying is how a frame is picked up and carried: off horses at knuckle height, close
// before the body, 30 cm up to the chest, both hands around a tube (held fairly), once in
// a while. Design assumption.
var carrying = grip{far: 30, high: 75, way: 30, turn: 0, often: 1, held: 0.95}

// raising is how a stand's stage is pushed up: close to the mast, from the waist to the
// shoulder. Design assumption.
var raising = grip{far: 25, high: 100, way: 50, turn: 0, often: 1, held: 0.95}

// onePerson is what one person may carry of a frame, kg.
func onePerson(g grip) float64 { return metric().recommended(g) }

// mostCarriers is how many people are looked at.
const mostCarriers = 1000

// Carry is how many people it takes to carry a mass in kg: as many as may lift it with the
// team's share of what each may lift alone; of more than three, for whom no share is
// published, half is taken. 0 where the mass is not known or is nothing to carry.
func Carry(mass float64) (people int) { return carriers(mass, onePerson(carrying)) }

func carriers(mass, each float64) int {
	if !(mass > 0) || !(each > 0) {
		return 0
	}
	for n := 1; n < mostCarriers; n++ {
		if mass <= each*teamOf(n)*float64(n)*(1+1e-12) {
			return n
		}
	}
	return mostCarriers
}

// teamOf is the share of what each may lift alone that a member of a team lifts.
func teamOf(people int) float64 {
	if share, ok := source.TeamShare(people); ok {
		return share.Value
	}
	share, _ := source.TeamShare(3)
	return share.Value
}

// hands tells what people lift: the box assembled, the bare frame, each stand up, each line.
func (w *work) hands() {
	w.answer.Hands = []Hands{}
	there := 0
	if c := w.rig.Plan.Crew; c != nil {
		there = c.People
	}
	w.tellHands("the box with all that is on it, should it be carried", "box", float64(w.answer.Mass), there, carrying)
	w.carried("the bare frame, carried around its edge", "frame", "load.hands.frame", "box.frame", w.tubesMass(), there, carrying)
	for i := range w.floor.standing {
		s := &w.rig.Stands[i]
		if s.Ear == nil {
			continue
		}
		top, _ := topLoad(w.floor.standing[i].built)
		w.carried("stand "+s.Name+" raised with its share of the box", s.Part, "load.hands.raise."+s.Name, s.Path, top/gravity, min(there, raisers), raising)
	}
	if w.answer.Lift != nil {
		for _, l := range w.answer.Lift.Lines {
			each := float64(l.Haul) / gravity / float64(l.People)
			w.answer.Hands = append(w.answer.Hands, Hands{What: "line " + l.Name + " hauled", Part: "line." + l.Name + ".rope", Mass: Number(float64(l.Haul) / gravity),
				People: carriers(float64(l.Haul)/gravity, source.LoadConstant().Value), There: l.People, Each: Number(each), Index: Number(each / source.LoadConstant().Value)})
		}
	}
}

// raisers is how many people fit around one stand. Design assumption.
const raisers = 2

// tubesMass is what the tubes alone weigh, kg.
func (w *work) tubesMass() (sum float64) {
	for i := range w.rig.Tubes {
		if p, ok := w.rig.Part(w.rig.Tubes[i].Part); ok {
			sum += optional(p.Mass)
		}
	}
	return sum
}

// tellHands tells one row; people there 0 where nobody says.
func (w *work) tellHands(what, part string, mass float64, there int, how grip) Hands {
	alone := onePerson(how)
	row := Hands{What: what, Part: part, Mass: Number(mass), People: carriers(mass, alone), There: there, Each: Number(math.NaN()), Index: Number(math.NaN())}
	if there > 0 {
		row.Each = Number(mass / float64(there))
		row.Index = Number(float64(row.Each) / (alone * teamOf(there)))
	}
	w.answer.Hands = append(w.answer.Hands, row)
	return row
}

// carried tells one row, and holds it to what each pair of hands may lift where the plan
// says who is there. Of a team of more than three it speaks only where half and the whole
// of what one may lift say the same.
func (w *work) carried(what, part, id, path string, mass float64, there int, how grip) {
	if mass == 0 {
		return
	}
	row := w.tellHands(what, part, mass, there, how)
	if there == 0 {
		return
	}
	alone := onePerson(how)
	if each := mass / float64(there); there > 3 && each > alone*teamOf(there) && each <= alone {
		w.add(finding.Unknown(id, w.subject(part, path), "Hands: "+what, fmt.Sprintf(
			"each of %d gets %.1f kg: one alone may lift %.1f kg, each of three half of that, and no share is published of more than three; with half it takes %d",
			there, each, alone, row.People)))
		return
	}
	constant := source.LoadConstant()
	note := fmt.Sprintf("it takes %d", row.People)
	if there > 3 {
		note += "; no share is published of more than three, half is taken, and more than four are advised against"
	}
	w.add(finding.Check{
		ID: id, Subject: w.subject(part, path), Statement: "Hands: " + what, Relation: finding.AtMost, Unit: "kg",
		Value: finding.Work{Formula: "m_1 = m / n", Name: "mass on each pair of hands", Inputs: []finding.Input{
			{Symbol: "m", Name: "what is lifted", Value: mass, Unit: "kg", Origin: "take-off"},
			{Symbol: "n", Name: "people at it", Value: float64(there), Origin: w.origin("crew.people")},
		}},
		Limit: finding.Work{Formula: "m_max = LC * r * t", Name: "what each may lift as one of them", Inputs: []finding.Input{
			{Symbol: "LC", Name: constant.Name, Value: constant.Value, Unit: "kg", Origin: constant.Citation.String()},
			{Symbol: "r", Name: fmt.Sprintf("hands %.0f cm before the ankles, from %.0f cm up by %.0f cm, held fairly", how.far, how.high, how.way), Value: alone / constant.Value, Origin: "lifting equation; the geometry is an assumption"},
			{Symbol: "t", Name: "share of that in a team", Value: teamOf(there), Origin: source.Cite("hse-team-lift", "").String()},
		}},
		Source: constant.Citation, Assumptions: []string{note, "the equation is one for one person: its use for a team is an assumption"},
	}.Conclude())
}
