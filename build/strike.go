package build

import (
	"softloft/finding"
)

// strike is the build backward: what has parts or something to undo, each before all
// that it needed when it was built. Steps between that undo nothing hand on what they
// needed.
func (w *work) strike() {
	kept, at := w.undone()
	tasks := make([]Task, len(kept))
	for k, i := range kept {
		s := w.steps[i]
		tasks[k] = Task{Seconds: s.seconds * float64(w.rates.Strike), People: 1}
		if people := w.strikers(s); finding.Known(people) {
			tasks[k].People = int(people)
		}
	}
	for k, i := range kept {
		for _, need := range w.reaches(i, at) {
			tasks[at[need]].Needs = append(tasks[at[need]].Needs, k)
		}
	}
	times, circle := CriticalPath(tasks)
	if circle != nil { // not possible: the build has none
		return
	}
	starts, length := w.schedule(tasks, times)
	w.answer.Job.Strike = length
	back := &work{rig: w.rig, crew: w.crew, index: map[string]int{}}
	for k, i := range kept {
		s := *w.steps[i]
		s.title, s.links, s.role, s.knots, s.people = s.undo, nil, "", nil, w.strikers(w.steps[i])
		if s.key == "lift" {
			s.role, s.hold = floorBy, "nobody beneath"
		}
		for _, need := range tasks[k].Needs {
			s.links = append(s.links, link{need, "it went up after it: last up, first down"})
		}
		back.steps = append(back.steps, &s)
	}
	w.answer.Strike = back.told(tasks, times, starts, "strike.")
	w.countBack()
}

// strikers are how many strike a step: as many as built it, and hands on the hauled
// lines while a dead-hung one is let off.
func (w *work) strikers(s *step) float64 {
	if hands, _ := w.liftHands(); s.key == "fast.dead" && finding.Known(hands) {
		return s.people + hands
	}
	return s.people
}

// undone are the steps of the strike, and where each stands among them.
func (w *work) undone() (kept []int, at map[int]int) {
	at = map[int]int{}
	for i, s := range w.steps {
		if len(s.parts) > 0 || s.undo != "" {
			at[i] = len(kept)
			kept = append(kept, i)
		}
	}
	return kept, at
}

// reaches lists the kept steps that a step needs, directly or through steps that
// undo nothing.
func (w *work) reaches(i int, at map[int]int) []int {
	var found []int
	seen := map[int]bool{i: true}
	for next := []int{i}; len(next) > 0; next = next[1:] {
		for _, l := range w.steps[next[0]].links {
			if seen[l.to] {
				continue
			}
			seen[l.to] = true
			if _, kept := at[l.to]; kept {
				found = append(found, l.to)
			} else {
				next = append(next, l.to)
			}
		}
	}
	return found
}

// countBack counts each strike step's parts by the rows of the list that they went out
// on.
func (w *work) countBack() {
	row := map[string]int{}
	for k := range w.list {
		for _, id := range w.list[k].Parts {
			row[id] = k
		}
	}
	for n := range w.answer.Strike {
		s := &w.answer.Strike[n]
		at := map[int]int{}
		for _, id := range s.Parts {
			k, ok := row[id]
			if !ok {
				continue // weighs nothing, is on no list
			}
			if _, there := at[k]; !there {
				at[k] = len(s.Returns)
				s.Returns = append(s.Returns, Return{Row: w.list[k].ID, Item: w.list[k].Item})
			}
			s.Returns[at[k]].Count++
		}
	}
}
