package build

import (
	"fmt"
	"math"
	"slices"

	"softloft/finding"
	"softloft/load"
	"softloft/plan"
	"softloft/quantity"
)

// cards are the changes that come on the day, as far as the answers have numbers for
// them, and the emergency.
func (w *work) cards() {
	w.skirtCards()
	w.clothCards()
	w.tiltCard()
	w.emergency()
}

func (w *work) card(c Card) { w.answer.Job.Cards = append(w.answer.Job.Cards, c) }

// skirtCards roll each skirt up to the cloth.
func (w *work) skirtCards() {
	for i, side := range plan.SideNames {
		drop := w.rig.Optics.Skirts[i]
		if drop <= 0 {
			continue
		}
		hands := 1.0
		if w.rig.Optics.Size[i/2] > longPiece {
			hands = 2
		}
		w.card(Card{ID: "card.skirt." + side, What: "Roll the " + side + " skirt", Hands: finding.Number(hands), Clears: w.clearer(), Lines: []string{
			"roll it up " + w.units().Length(quantity.Length(drop)) + " and clip it",
			"from the side, off a lift or ladder; nobody beneath that side",
			"the box's weight stays as it is; the light does not: ask for vary over box.skirt." + side}})
	}
}

// clothCards swap each cloth at trim: what comes off, what the lines then carry less.
func (w *work) clothCards() {
	for i := range w.rig.Plan.Box.Cloth {
		id := fmt.Sprintf("cloth.%d", i+1)
		p, ok := w.part[id]
		if !ok || p.Mass == nil {
			continue
		}
		ties := 0
		for _, each := range w.steps[w.home[id]].parts {
			if each.What == "tie" {
				ties++
			}
		}
		s := w.steps[w.home[id]]
		lines := []string{fmt.Sprintf("%s of cloth, %s; nobody beneath", w.units().Mass(quantity.Mass(*p.Mass)), counted(ties, "tie"))}
		if len(w.of(sheets)) > 1 {
			lines = append(lines, "first off: "+w.covering(w.home[id]))
		}
		lines = append(lines, "another cloth weighs something else: change box.cloth and check again before it goes up")
		w.card(Card{ID: "card." + id, What: "Swap " + p.Name + " at trim", Lines: lines, Hands: finding.Number(s.people), Clears: w.clearer()})
	}
}

// covering names the sheets that went on after one and lie over it.
func (w *work) covering(i int) string {
	var names []string
	for _, j := range w.of(sheets) {
		if slices.ContainsFunc(w.steps[j].links, func(l link) bool { return l.to == i }) {
			names = append(names, w.name(j))
		}
	}
	if len(names) == 0 {
		return "nothing"
	}
	return list(names, 6)
}

// tiltCard tells each rope's inches to the tilt whose path was worked out, and what it
// then carries. Without a path there is no card.
func (w *work) tiltCard() {
	path := w.load.TiltPath
	if len(path) < 2 || path[len(path)-1].Why != "" || path[0].Why != "" {
		return
	}
	first, last := path[0], path[len(path)-1]
	lines, moved := w.ropeMoves(first, last)
	if moved == 0 {
		return
	}
	hands := unknown
	if n, _ := w.liftHands(); finding.Known(n) {
		hands = finding.Number(n + 1)
	}
	w.card(Card{ID: "card.tilt", What: fmt.Sprintf("Tilt to %.1f° about %s", float64(last.Degrees), last.About), Hands: hands, Clears: w.clearer(),
		Lines: append(lines, "all lines together, in as many steps as the path has: "+fmt.Sprint(len(path)-1), "nobody beneath while it moves; secondaries follow")})
}

func (w *work) ropeMoves(first, last load.TiltStep) (lines []string, moved int) {
	for i := range w.rig.Lines {
		name := w.rig.Lines[i].Name
		before, okBefore := first.Lengths[name]
		after, okAfter := last.Lengths[name]
		carries, okForce := last.Tension[name]
		change := float64(after - before)
		if !okBefore || !okAfter || !okForce || !finding.Known(change) || !finding.Known(float64(carries)) || math.Abs(change) < 1e-3 {
			continue
		}
		way := "pay out"
		if change < 0 {
			way = "take in"
		}
		moved++
		lines = append(lines, fmt.Sprintf("%s: %s %s, then carries %s", name, way, w.units().Length(quantity.Length(math.Abs(change))), quantity.LoadUp(w.units(), quantity.Force(carries))))
	}
	return lines, moved
}

// clearIn is the time in s in which a box must be down or the floor clear: common
// practice.
const clearIn = 60.0

// emergency says whether the box can be down in a minute, and what is done else.
func (w *work) emergency() {
	if !w.hung() && !w.standing() {
		return
	}
	down := w.rise() / float64(w.rates.Haul)
	c := &Card{ID: "card.emergency", What: "Emergency: down or clear in 60 s", Hands: unknown, Clears: w.clearer()}
	if n, _ := w.liftHands(); finding.Known(n) {
		c.Hands = finding.Number(n + 1)
	}
	var first []string
	if _, ok := w.index["fast.dead"]; ok {
		first = append(first, "dead-hung lines")
	}
	if len(w.of(catches)) > 0 {
		first = append(first, "the secondary")
	}
	if len(w.of(guys)) > 0 {
		first = append(first, "the guys")
	}
	rate := fmt.Sprintf("%.0f s at the plan's rate, hands on every line or stand", math.Ceil(down))
	switch {
	case len(first) > 0:
		c.Lines = append(c.Lines, "clear the floor: it does not come down in 60 s, "+list(first, 3)+" would have to come off first")
	case down <= clearIn:
		c.Lines = append(c.Lines, "clear the floor, then down: "+rate)
	default:
		c.Lines = append(c.Lines, "clear the floor: down takes "+rate)
	}
	killer := w.nameOf(power)
	if w.rig.Plan.Power != nil {
		who := "whoever tied in"
		if killer != nil {
			who = *killer
		}
		c.Lines = append(c.Lines, who+" kills power at the tie-in, at once")
	}
	c.Lines = append(c.Lines, "count everybody outside the barricade")
	w.answer.Job.Emergency = c
}
