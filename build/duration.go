package build

import (
	"math"

	"softloft/rig"
)

// partsTime is the time of a step's parts, one after the other, and of getting to
// places overhead.
func (w *work) partsTime(s *step) float64 {
	var sum float64
	lines := map[int]bool{}
	for _, p := range s.parts {
		sum += w.partTime(p)
		if i, ok := w.line[p.ID]; ok {
			lines[i] = true
		}
	}
	if s.kind == tops || s.kind == catches || s.key == "fast.dead" {
		sum += float64(len(lines)) * float64(w.rates.Overhead)
	}
	return sum
}

func (w *work) partTime(p *rig.Part) float64 {
	r := w.rates
	switch p.What {
	case "lamp":
		return float64(r.Lamp)
	case "cloth", "egg-crate", "wrap", "roof", "skirt":
		return float64(r.Sheet)
	case "side":
		if p.Weightless {
			return 0 // a stretch of a wrap
		}
		return float64(r.Sheet)
	case "tie":
		return float64(r.Tie)
	case "line", "guy", "secondary":
		return float64(r.Line)
	case "cable":
		return p.Length / float64(r.Cable)
	case "stand", "arm":
		return float64(r.Stand)
	case "stand leg":
		return 0 // with its stand
	case "bag":
		return float64(r.Bag)
	case "corner fitting", "tee", "lamp clamp", "clamp", "shackle", "pulley", "retainer", "safety", "adapter", "softener", "ear", "head", "drop":
		return float64(r.Fitting)
	}
	return float64(r.Piece)
}

// actTime is the time of what has no part.
func (w *work) actTime(s *step) {
	r := w.rates
	switch s.key {
	case "floor", "owner", "clear", "beneath", "open", "horses":
		s.seconds += float64(r.Hold)
	case "torque", "again":
		s.seconds += float64(r.Hold) + float64(r.Tie)*float64(w.fittings())
	case "light":
		s.seconds += float64(r.Address) * float64(len(w.rig.Plan.Lamps))
	case "power":
		s.seconds += float64(r.Hold) + float64(r.Level)*math.Max(1, float64(w.circuits()))
	case "bump", "lock", "tag", "guys.set":
		s.seconds += float64(r.Hold)
	case "tieoff":
		s.seconds += float64(r.Level) + float64(r.Line)
	case "lift":
		s.seconds += w.rise()/float64(r.Haul) + float64(stops(w.rise()))*float64(r.Level)
	case "fast.hauled", "fast.dead":
		s.seconds += float64(r.Line) * float64(w.linesIn(s.key))
	case "seat":
		s.seconds += float64(r.Piece) * float64(w.holdingStands())
	}
	if s.kind == act && s.seconds == 0 {
		s.seconds = float64(r.Stand) // a stand raised
	}
}

func (w *work) fittings() int {
	n := 0
	for _, i := range w.of(bones, ears) {
		for _, p := range w.steps[i].parts {
			if p.What == "corner fitting" || p.What == "tee" || p.What == "ear" {
				n++
			}
		}
	}
	return n
}

func (w *work) circuits() int {
	if w.rig.Loom == nil {
		return 0
	}
	return len(w.rig.Loom.Feeds)
}

// linesIn is how many lines are made fast in one go.
func (w *work) linesIn(key string) int {
	n := 0
	for i := range w.rig.Lines {
		if w.lifts(&w.rig.Lines[i]) == (key == "fast.hauled") {
			n++
		}
	}
	return n
}
