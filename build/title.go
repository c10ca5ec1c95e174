package build

import (
	"fmt"
	"strings"
)

// titleOf says in a crew's words what a step with parts does, and how it is undone.
func (w *work) titleOf(i int) (do, undo string) {
	s := w.steps[i]
	what := w.contents(s)
	name := w.name(i)
	switch s.kind {
	case bones:
		return "Put up " + name + ": " + what, "Take apart " + name
	case lamps:
		return "Hang " + name + ": " + what, "Lamps off: " + name
	case loom:
		return "Run cable on the box, loom on its own pick: " + what, "Cable off the box"
	case sheets:
		return "Put on " + name + ": " + what, "Take off " + name
	case burden:
		return "Hang " + what, "Take off " + what
	case ears:
		return "Set " + what, "Ears off"
	case seat:
		return strings.TrimSuffix("Box onto its stands, ears in the receivers: "+what, ": "), "Box off its stands, onto the horses"
	case stand:
		return "Place " + w.standName(s) + ", legs out, castors locked", "Strike " + w.standName(s)
	case bags:
		return "Bag " + w.standName(s) + ": " + what, "Bags off " + w.standName(s)
	case onStand:
		return "On " + w.standName(s) + ": " + what, "Off " + w.standName(s) + ": " + what
	case tops:
		return "Rig " + w.pointNames(s) + ": " + what, "Strike " + w.pointNames(s)
	case ropes:
		return "Run lines " + w.lineNames(s) + ": " + what, "Pull lines " + w.lineNames(s)
	case fast:
		return "Make fast " + w.fastNames(s.key) + strings.TrimSuffix(": "+what, ": "), w.lettingOff(s.key)
	case catches:
		return "Secondary on beside " + w.lineNames(s) + ": " + what, "Secondary off beside " + w.lineNames(s)
	case guys:
		return "Guys on, slack: " + what, "Guys off"
	case ground:
		return "Lay cable from the tie-in, out of ways and exits: " + what, "Pick up the cable on the floor"
	}
	return "Do " + what, "Undo " + what
}

// contents counts a step's parts by what they are, in the rig's order.
func (w *work) contents(s *step) string {
	var words []string
	counts := map[string]int{}
	for _, p := range s.parts {
		if p.What == "stand leg" || p.What == "side" && p.Weightless {
			continue
		}
		word := p.What
		if word == "added load" {
			word = p.Name
		}
		if counts[word]++; counts[word] == 1 {
			words = append(words, word)
		}
	}
	for k, word := range words {
		if s.kind != burden {
			words[k] = counted(counts[word], word)
		}
	}
	return strings.Join(words, ", ")
}

// counted is a count and its noun.
func counted(n int, noun string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case noun == "person":
		return fmt.Sprintf("%d people", n)
	case strings.HasSuffix(noun, "ty") || strings.HasSuffix(noun, "ry"):
		return fmt.Sprintf("%d %sies", n, strings.TrimSuffix(noun, "y"))
	case strings.HasSuffix(noun, "s"):
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// standName is the name of the stand that a step's parts are on.
func (w *work) standName(s *step) string {
	return "stand " + strings.TrimPrefix(s.parts[0].Body, "stand.")
}

func (w *work) pointNames(s *step) string {
	var names []string
	seen := map[string]bool{}
	for _, p := range s.parts {
		l := &w.rig.Lines[w.line[p.ID]]
		points := []string{l.Point}
		if l.Bridle != nil {
			points = l.Bridle.Points[:]
		}
		for _, name := range points {
			if !seen[name] {
				seen[name] = true
				names = append(names, name)
			}
		}
	}
	return "points " + list(names, 9)
}

func (w *work) lineNames(s *step) string {
	var names []string
	for _, p := range s.parts {
		names = append(names, w.rig.Lines[w.line[p.ID]].Name)
	}
	return list(names, 9)
}

// lettingOff undoes what was made fast; a dead-hung line is let off when it is slack.
func (w *work) lettingOff(key string) string {
	if key == "fast.dead" && len(w.lifters()) > 0 {
		return "Bump up on the hauled lines until they are slack, let off " + w.fastNames(key)
	}
	return "Let off " + w.fastNames(key)
}

func (w *work) fastNames(key string) string {
	var names []string
	for i := range w.rig.Lines {
		if l := &w.rig.Lines[i]; w.lifts(l) == (key == "fast.hauled") {
			names = append(names, l.Name)
		}
	}
	return list(names, 9)
}
