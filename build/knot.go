package build

import (
	"fmt"
	"strings"

	"softloft/rig"
	"softloft/source"
)

// knots tells the end of each line, guy, cable and cloth, and why that one, in one line
// each. What a knot leaves of a rope's strength is published; which knot goes where is
// common practice.
func (w *work) knots() {
	for i := range w.rig.Lines {
		w.lineEnds(&w.rig.Lines[i])
	}
	w.kindTies(guys, "guys.set", "each guy", "bowline at the box, round turn and two half hitches at the stake", "the bowline does not slip and opens again; the hitches are set and let off under load")
	w.kindTies(loom, "cable.box", "the loom, on its pick", "clove hitch around the bundle, above every connector", "it grips a bundle and no connector carries")
	w.actTies("tag", "tag lines", "bowline on each corner", "it does not slip and does not jam")
	for _, i := range w.of(sheets) {
		s := w.steps[i]
		for _, p := range s.parts {
			if p.What == "tie" {
				w.tie(i, "ties of "+w.name(i), "around the tube and back to its grommet: corners first, then middles, opposite sides in turn", "the cloth stays square, and one pull opens a tie")
				break
			}
		}
	}
}

// tie tells one tie; several lines that end alike are one.
func (w *work) tie(i int, where, knot, why string) {
	ties := w.answer.Job.Ties
	line, place, isLine := strings.Cut(strings.TrimPrefix(where, "line "), " at ")
	for k := range ties {
		if isLine && ties[k].Knot == knot && ties[k].Why == why && strings.HasSuffix(ties[k].Where, " at "+place) {
			before := strings.TrimPrefix(strings.TrimPrefix(strings.TrimSuffix(ties[k].Where, " at "+place), "lines "), "line ")
			ties[k].Where = "lines " + before + ", " + line + " at " + place
			return
		}
	}
	w.answer.Job.Ties = append(ties, Tie{Where: where, Knot: knot, Why: why})
	w.steps[i].knots = append(w.steps[i].knots, knot+": "+why)
}

// kindTies tells one tie for a kind of step, at the step in which it is made.
func (w *work) kindTies(k kind, key, where, knot, why string) {
	if len(w.of(k)) == 0 {
		return
	}
	if i, ok := w.index[key]; ok {
		w.tie(i, where, knot, why)
	}
}

func (w *work) actTies(key, where, knot, why string) {
	if i, ok := w.index[key]; ok {
		w.tie(i, where, knot, why)
	}
}

// lineEnds tells a line's end at the box and, where it is hauled, at its tie-off.
func (w *work) lineEnds(l *rig.Line) {
	if l.Rope == nil {
		return
	}
	key := "fast.dead"
	if w.lifts(l) {
		key = "fast.hauled"
	}
	i, ok := w.index[key]
	if !ok {
		return
	}
	where := "line " + l.Name + " at the box"
	if l.Rope.Kind != source.FiberRope {
		w.tie(i, where, "the end it was made with, in a shackle or its own hook", fmt.Sprintf("a %s is never knotted", l.Rope.Kind))
		return
	}
	knot, why := w.endKnot(l.Rope, "bowline", "it does not slip and opens again after load")
	w.tie(i, where, knot, why)
	if tied, ok := w.index["tieoff"]; ok && l.Pulley != nil {
		knot, why := w.endKnot(l.Rope, "two half hitches", "with a round turn first it is taken and let off under load")
		w.tie(tied, "line "+l.Name+" at its tie-off", "round turn and "+knot, why)
	}
}

// endKnot is a knot that leaves at least the share of strength on which the loads
// count: the usual one, else an eye splice; where neither does, it is said.
func (w *work) endKnot(rope *rig.Rope, usual, habit string) (name, why string) {
	counts := source.UnnamedKnot().Share
	if rope.Knot != nil {
		counts = *rope.Knot
	}
	for _, each := range []struct{ knot, why string }{{usual, habit}, {"eye splice", "the loads count on more than a knot leaves"}} {
		if k, ok := source.Knot(each.knot); ok && k.Share >= counts {
			return each.knot, fmt.Sprintf("%s; leaves %.0f %% of the rope (%s), the loads count on %.0f %%", each.why, 100*k.Share, k.Citation.String(), 100*counts)
		}
	}
	return "none known", fmt.Sprintf("the loads count on %.0f %% of the rope, and no end in the table leaves as much: lower the kit's knot", 100*counts)
}

// clearer is who clears the floor.
func (w *work) clearer() *string { return w.nameOf(floorBy) }
