package build

import (
	"slices"
	"strings"

	"softloft/rig"
)

// kind is what a step handles: what the rules of order speak of.
type kind int

const (
	act     kind = iota // no part of its own kind: a bump, a hold
	bones               // tubes with their fittings, what joins two bodies
	lamps               // lamps on the box with what holds, catches and feeds them
	loom                // cable on the box
	sheets              // cloth, crate, sides, roof, skirts
	burden              // what hangs on the box besides
	ears                // by which stands hold the box
	seat                // what keeps the box on its stands
	stand               // mast and legs
	bags                // weights on a stand
	onStand             // arm, head, lamp and cable on a stand
	tops                // what is rigged at points: clamps, pads, pulleys
	ropes               // lines, run out
	fast                // lines, made fast to the box
	catches             // second means of the box
	guys                // ropes against the wind
	ground              // cable on the floor
)

// step is one step under way. Parts are in the rig's order.
type step struct {
	key, title, undo string
	kind             kind
	parts            []*rig.Part
	links            []link
	people           float64 // NaN where not known
	peopleWhy        string
	seconds          float64
	role, hold       string
	knots            []string
	heavy            *piece
}

// link says that a step needs another, and why.
type link struct {
	to  int
	why string
}

// step returns the index of a step, making it where it is not there yet.
func (w *work) step(key string, k kind) int {
	if i, ok := w.index[key]; ok {
		return i
	}
	w.steps = append(w.steps, &step{key: key, kind: k})
	w.index[key] = len(w.steps) - 1
	return len(w.steps) - 1
}

// group gives every part of the rig a step of its own kind and place.
func (w *work) group() {
	for i := range w.rig.Lines {
		for _, id := range w.rig.Lines[i].Parts {
			w.line[id] = i
		}
	}
	for i := range w.rig.Parts {
		p := &w.rig.Parts[i]
		at := w.step(w.homeOf(p, 0))
		w.home[p.ID] = at
		w.steps[at].parts = append(w.steps[at].parts, p)
	}
}

// deepest is how far a fitting's home is looked for along what it is joined to.
const deepest = 8

// homeOf is the step in which a part is put up: key and kind. Fittings go with what
// they fit, what holds a lamp goes with the lamp, ties with their cloth.
func (w *work) homeOf(p *rig.Part, depth int) (string, kind) {
	switch p.What {
	case "bottom frame tube":
		return "frame", bones
	case "upper frame tube":
		return "upper", bones
	case "upright tube":
		return "uprights", bones
	case "rib tube", "bar tube":
		return p.ID, bones
	case "drop":
		return "drops", bones
	case "corner fitting", "tee", "tie", "lamp clamp", "adapter", "retainer", "safety", "power supply":
		return w.with(p, depth)
	case "lamp":
		return w.lampHome(p)
	case "cable":
		return cableHome(p)
	case "cloth", "roof", "egg-crate":
		return p.ID, sheets
	case "wrap", "side":
		return "sides", sheets
	case "skirt":
		return "skirts", sheets
	case "added load":
		return p.ID, burden
	case "ear":
		return "ears", ears
	case "stand", "stand leg":
		return p.Body, stand
	case "bag":
		return "bags." + p.Body, bags
	case "arm", "head":
		return "arm." + p.Body, onStand
	case "guy":
		return "guys", guys
	}
	if i, ok := w.line[p.ID]; ok {
		return w.lineHome(p, &w.rig.Lines[i])
	}
	if strings.HasPrefix(p.Body, "stand.") {
		return "more." + p.Body, onStand
	}
	return slug(p.What) + "." + slug(p.Body), burden
}

// with is the home of what a part is first joined to.
func (w *work) with(p *rig.Part, depth int) (string, kind) {
	for _, id := range p.Joined {
		to, ok := w.part[id]
		if !ok || depth >= deepest {
			continue
		}
		key, k := w.homeOf(to, depth+1)
		if k == ears {
			return "seat", seat
		}
		return key, k
	}
	return slug(p.What) + "." + slug(p.Body), burden
}

func (w *work) lampHome(p *rig.Part) (string, kind) {
	if strings.HasPrefix(p.Body, "stand.") {
		return "lamps." + p.Body, onStand
	}
	for _, id := range p.Joined {
		if _, ok := w.tube[id]; ok {
			return "lamps." + id, lamps
		}
	}
	return "lamps", lamps
}

func cableHome(p *rig.Part) (string, kind) {
	switch {
	case p.Body == "floor":
		return "cable.floor", ground
	case strings.HasPrefix(p.Body, "stand."):
		return "cable." + p.Body, onStand
	}
	return "cable.box", loom
}

// lineHome sorts a line's parts by where they are in its load path, lines that lift
// from those that don't, and both by the beam that carries them.
func (w *work) lineHome(p *rig.Part, l *rig.Line) (string, kind) {
	way := "hauled"
	if !w.lifts(l) {
		way = "dead"
	}
	beam := w.beamOf(l)
	switch p.What {
	case "secondary":
		return "secondaries" + beam, catches
	case "shackle":
		return "fast." + way, fast
	case "line":
		return "ropes." + way + beam, ropes
	}
	return "points" + beam, tops
}

// beamOf is the beam that a line's point is on, with a dot before it; empty where none
// is named.
func (w *work) beamOf(l *rig.Line) string {
	name := l.Point
	if l.Bridle != nil {
		name = l.Bridle.Points[0]
	}
	if p, ok := w.rig.PointNamed(name); ok && p.Beam != "" {
		return "." + slug(p.Beam)
	}
	return ""
}

// lifts reports whether a line lifts: one of lift.lines, or, where the plan names
// none, one with a pulley.
func (w *work) lifts(l *rig.Line) bool {
	if lift := w.rig.Plan.Lift; lift != nil && len(lift.Lines) > 0 {
		return slices.Contains(lift.Lines, l.Name)
	}
	return l.Pulley != nil
}

// slug makes a name fit for an id.
func slug(name string) string { return strings.ReplaceAll(name, " ", "-") }

// of returns the indices of the steps of some kinds, in order.
func (w *work) of(kinds ...kind) []int {
	var found []int
	for i, s := range w.steps {
		if slices.Contains(kinds, s.kind) {
			found = append(found, i)
		}
	}
	return found
}
