package build

import (
	"fmt"
	"math"

	"softloft/finding"
	"softloft/quantity"
	"softloft/rig"
	"softloft/source"
)

// piece is the part of a step that is hardest on a back: its lift, how many take it,
// and what so many may lift. Beyond is true where no figure is published for so many.
type piece struct {
	part    *rig.Part
	lift    Lifting
	people  int
	allowed float64 // kg
	beyond  bool
	high    bool
}

// longPiece is from which length on a piece takes two, whatever its mass, in m: 10 ft,
// common practice.
const longPiece = 10 * 0.3048

// lightest is the mass in kg from which on handling counts as lifting (ISO 11228-1, from
// memory); what is less takes one.
const lightest = 3

// cart is the height at which pieces wait, in m: hands at the knuckles, a design
// assumption.
const cart = 0.75

// rare is how often a piece is lifted a minute, at most: the first row of the table.
const rare = 0.2

// pieceOf works out how many people lift a part: the fewest for whom it is within the
// lifting equation, a team's share being what is published for two and three. Beyond
// three, the share of three is carried on and said to be so.
func (w *work) pieceOf(p *rig.Part) *piece {
	if p.Mass == nil || p.Weightless || *p.Mass < lightest && longest(p) <= longPiece {
		return nil
	}
	to := cart
	if !p.InRoom && !w.isOverhead(p) {
		to = horses + math.Max(0, p.Center.Z)
	} else if w.isOverhead(p) {
		to = horses // onto the rail of a lift or the rung of a ladder
	}
	at := &piece{part: p, high: to > metric.Highest}
	to = math.Min(to, metric.Highest)
	at.lift = Lifting{Hands: w.handsOf(p), From: to, Way: math.Abs(to - cart), PerMinute: rare, Grip: Fair}
	each := metric.Recommended(at.lift)
	least := 1
	if at.high || longest(p) > longPiece {
		least = 2
	}
	for n := least; ; n++ {
		share, known := source.TeamShare(n)
		if !known {
			share, _ = source.TeamShare(mostTeam)
		}
		at.people, at.allowed, at.beyond = n, float64(n)*share.Value*each, !known
		if *p.Mass <= at.allowed || n >= mostOnOnePiece {
			return at
		}
	}
}

const (
	// mostTeam is the largest team that a share is published for.
	mostTeam = 3
	// mostOnOnePiece ends the search: nobody puts more on one piece.
	mostOnOnePiece = 40
)

func (w *work) isOverhead(p *rig.Part) bool { return p.Body == rig.LinesBody }

// longest is a part's length where it is stiff: a rope's length is no burden.
func longest(p *rig.Part) float64 {
	if p.KitKind == "tube" || p.What == "arm" {
		return p.Length
	}
	return 0
}

// handsOf is how far the hands are from between the ankles: 20 cm and half of what a
// lamp is deep, never nearer than the equation has it (NIOSH 1991, from memory).
func (w *work) handsOf(p *rig.Part) float64 {
	if p.What != "lamp" {
		return metric.Near
	}
	body := w.rig.Kit.Lamp[p.KitID].Body
	if body == nil {
		return metric.Near
	}
	least := math.Min(float64(body[0]), math.Min(float64(body[1]), float64(body[2])))
	return math.Max(metric.Near, 0.20+least/2)
}

// effort works out people, time and titles of every step.
func (w *work) effort() {
	for i, s := range w.steps {
		w.hands(s)
		s.seconds += w.partsTime(s)
		w.actTime(s)
		if s.title == "" {
			s.title, s.undo = w.titleOf(i)
		}
		s.seconds *= 1 + float64(w.rates.Slack)
	}
}

// hands sets how many people a step takes.
func (w *work) hands(s *step) {
	s.people = math.Max(s.people, 1)
	for _, p := range s.parts {
		if p.Mass == nil && finding.Known(s.people) {
			s.people, s.peopleWhy = math.NaN(), "the mass of "+p.Name+" is not known"
		}
		at := w.pieceOf(p)
		if at == nil {
			continue
		}
		if s.heavy == nil || harder(at, s.heavy) {
			s.heavy = at
		}
		if float64(at.people) > s.people {
			s.people, s.peopleWhy = float64(at.people), fmt.Sprintf("%d on one piece: %s", at.people, w.pieceWords(at))
		}
	}
	switch {
	case s.kind == tops || s.kind == catches || s.key == "fast.dead":
		w.atLeast(s, 2, "one up there, one below")
	case s.kind == sheets && w.wide():
		w.atLeast(s, 2, "one on either side")
	}
	w.lifting(s)
}

func harder(a, b *piece) bool { return *a.part.Mass/a.allowed > *b.part.Mass/b.allowed }

func (w *work) pieceWords(at *piece) string {
	text := w.units().Mass(quantity.Mass(*at.part.Mass))
	if l := longest(at.part); l > 0 {
		text += ", " + w.units().Length(quantity.Length(l))
	}
	if at.high {
		text += ", over reach: from ladders"
	}
	return text
}

func (w *work) atLeast(s *step, people float64, why string) {
	if s.people < people {
		s.people, s.peopleWhy = people, why
	}
}

func (w *work) wide() bool {
	return w.rig.Plan.Box != nil && math.Max(float64(w.rig.Plan.Box.Size[0]), float64(w.rig.Plan.Box.Size[1])) > longPiece
}

// lifting sets the people of bump, hold, lift and tie-off: hands on every line or
// stand, and the caller.
func (w *work) lifting(s *step) {
	if !finding.Known(s.people) {
		return
	}
	hands, words := w.liftHands()
	switch s.key {
	case "bump", "lift", "tieoff":
		s.people, s.peopleWhy = hands+1, words
		if finding.Known(hands) {
			s.peopleWhy += ", and the caller"
		}
	case "again":
		s.people, s.peopleWhy = 2, "the caller, and one who looks"
		if w.hung() {
			s.people, s.peopleWhy = hands+2, words+", the caller, and one who looks"
		}
	case "seat":
		w.seatHands(s)
	}
}

// liftHands is how many hold the lines, or wind the stands up; NaN where nothing lifts.
func (w *work) liftHands() (float64, string) {
	if w.hung() {
		n := len(w.lifters())
		if n == 0 {
			return math.NaN(), "no line hauls"
		}
		each := 1
		if l := w.rig.Plan.Lift; l != nil {
			each = max(1, l.PeoplePerLine)
		}
		return float64(n * each), fmt.Sprintf("%d on each of %d lines", each, n)
	}
	var hands float64
	count := 0
	for _, s := range w.load.Stands {
		if s.Holds != "ear" {
			continue
		}
		count++
		each := w.teamFor(float64(s.Load) / float64(quantity.StandardGravity))
		hands += each
	}
	if count == 0 {
		return math.NaN(), "no stand holds an ear"
	}
	if !finding.Known(hands) {
		return hands, "what the stands carry is not known"
	}
	return hands, fmt.Sprintf("hands on %d stands for what each carries", count)
}

// teamFor is how many lift a mass at best, by the shares of a team; NaN where it is
// not known.
func (w *work) teamFor(mass float64) float64 {
	if math.IsNaN(mass) {
		return math.NaN()
	}
	for n := 1; n <= mostTeam; n++ {
		if share, ok := source.TeamShare(n); ok && mass <= float64(n)*share.Value*metric.Load {
			return float64(n)
		}
	}
	share, _ := source.TeamShare(mostTeam)
	return math.Ceil(mass / (share.Value * metric.Load))
}

// seatHands are those who lift the bare frame from the horses onto its stands, and at
// least one at each stand.
func (w *work) seatHands(s *step) {
	var mass float64
	for _, i := range w.of(bones, ears) {
		for _, p := range w.steps[i].parts {
			if p.Mass == nil {
				s.people, s.peopleWhy = math.NaN(), "the mass of "+p.Name+" is not known"
				return
			}
			mass += *p.Mass
		}
	}
	n := math.Max(w.teamFor(mass), float64(w.holdingStands()))
	if !finding.Known(s.people) {
		return
	}
	w.atLeast(s, n, fmt.Sprintf("the bare frame, %s, lifted onto its stands, one at each", w.units().Mass(quantity.Mass(mass))))
}

func (w *work) holdingStands() int {
	n := 0
	for i := range w.rig.Stands {
		if w.rig.Stands[i].Ear != nil {
			n++
		}
	}
	return n
}
