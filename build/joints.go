package build

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
)

// after says that a step needs another one, and why: once for each pair.
func (w *work) after(i, need int, why string) {
	if i == need || slices.ContainsFunc(w.steps[i].links, func(l link) bool { return l.to == need }) {
		return
	}
	w.steps[i].links = append(w.steps[i].links, link{need, why})
}

// afterAll is after for several.
func (w *work) afterAll(i int, needs []int, why string) {
	for _, need := range needs {
		w.after(i, need, why)
	}
}

// afterKey is after where a step of that key is there.
func (w *work) afterKey(i int, key, why string) {
	if need, ok := w.index[key]; ok {
		w.after(i, need, why)
	}
}

// joints lets nothing go up before what it is joined to.
func (w *work) joints() {
	for i := range w.rig.Parts {
		p := &w.rig.Parts[i]
		for _, id := range p.Joined {
			if to, ok := w.part[id]; ok && w.home[p.ID] != w.home[id] {
				w.joint(p, to)
			}
		}
		if part, ok := w.part[p.Body]; ok && w.home[p.ID] != w.home[part.ID] {
			w.after(w.home[p.ID], w.home[part.ID], "it stands on it")
		}
	}
}

func (w *work) joint(p, to *rig.Part) {
	one, other := w.home[p.ID], w.home[to.ID]
	a, okA := w.tube[p.ID]
	b, okB := w.tube[to.ID]
	switch {
	case okB && (p.What == "tee" || p.What == "corner fitting"):
		// It lies where two tubes meet; which of them is first, they say themselves.
	case okA && okB:
		if carriedBy(a, b) {
			w.after(one, other, "joined to "+w.name(other))
		} else {
			w.after(other, one, "joined to "+w.name(one))
		}
	case p.Body == rig.LinesBody && to.Body == rig.LinesBody:
		if pathRank(p) < pathRank(to) {
			one, other = other, one
		}
		w.after(one, other, "a line is rigged from its point down")
	case p.What == "line" && okB:
		made := w.fastOf(p)
		w.after(made, one, "a line is made fast when it has been run")
		w.after(made, other, "it is made fast to "+w.name(other))
	default:
		w.after(one, other, "joined to "+w.name(other))
	}
}

// fastOf is the step in which a line is made fast to the box.
func (w *work) fastOf(p *rig.Part) int {
	way := "dead"
	if i, ok := w.line[p.ID]; ok && w.lifts(&w.rig.Lines[i]) {
		way = "hauled"
	}
	return w.step("fast."+way, fast)
}

// pathRank is where a part is in a line's load path, from the building down.
func pathRank(p *rig.Part) int {
	return slices.Index([]string{"shackle", "line", "pulley", "clamp", "softener"}, p.What)*-1 + 5
}

// sameLevel is how near two heights count as one, in m: the rig's own.
const sameLevel = 2e-3

// carriedBy reports whether a tube is put onto another that it meets: the lower one is
// there first; at one level the one that meets the other with its end is carried.
func carriedBy(a, b *rig.Tube) bool {
	if za, zb := middle(a).Z, middle(b).Z; math.Abs(za-zb) > sameLevel {
		return za > zb
	}
	if endA, endB := endsOn(a, b), endsOn(b, a); endA != endB {
		return endA
	}
	return a.Part > b.Part
}

func middle(t *rig.Tube) r3.Vec { return r3.Scale(0.5, r3.Add(t.From, t.To)) }

// endsOn reports whether an end of a tube lies on another's length, away from that
// one's own ends.
func endsOn(a, b *rig.Tube) bool {
	along := r3.Sub(b.To, b.From)
	for _, end := range [2]r3.Vec{a.From, a.To} {
		t := r3.Dot(r3.Sub(end, b.From), along) / r3.Norm2(along)
		foot := r3.Add(b.From, r3.Scale(t, along))
		inside := t*r3.Norm(along) > sameLevel && (1-t)*r3.Norm(along) > sameLevel
		if inside && r3.Norm(r3.Sub(end, foot)) < sameLevel {
			return true
		}
	}
	return false
}

// name is what a crew calls a step's parts.
func (w *work) name(i int) string {
	key := w.steps[i].key
	if words, ok := spokenKeys[key]; ok {
		return words
	}
	if tube, ok := strings.CutPrefix(key, "lamps."); ok {
		return "lamps on " + spokenPart(tube)
	}
	return spokenPart(key)
}

var spokenKeys = map[string]string{
	"frame": "bottom frame", "upper": "upper frame", "sides": "side wraps", "cable.box": "cable on the box",
	"cable.floor": "cable on the floor", "crate": "egg-crate", "seat": "pins in the stands", "fast.hauled": "hauled lines made fast", "fast.dead": "dead-hung lines made fast",
	"lamps": "lamps", "light": "lamps lit", "floor": "floor marked", "guys.set": "guys set", "tieoff": "lines tied off", "torque": "set screws torqued",
}

// spokenPart makes an id readable: rib.1 is rib 1.
func spokenPart(id string) string { return strings.NewReplacer(".", " ", "-", " ").Replace(id) }

// list tells a few names and counts the rest.
func list(names []string, few int) string {
	if len(names) <= few {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:few], ", "), len(names)-few)
}
