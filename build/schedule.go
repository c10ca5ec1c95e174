package build

import (
	"slices"
	"sort"
)

// Schedule starts each task as early as what it needs and the people allow, in the
// order of the critical path times: the serial method, whose schedule no single task
// can shorten by starting earlier, and which need not be the shortest of all. It is
// in s from the start, with its length. False where a task needs more people than
// there are.
func Schedule(tasks []Task, times Times, people int) (starts []float64, length float64, ok bool) {
	if slices.ContainsFunc(tasks, func(t Task) bool { return t.People > people }) {
		return nil, 0, false
	}
	starts = make([]float64, len(tasks))
	used := profile{{0, 0}}
	for _, i := range times.Order {
		var from float64
		for _, need := range tasks[i].Needs {
			from = max(from, starts[need]+tasks[need].Seconds)
		}
		starts[i] = used.place(from, tasks[i].Seconds, tasks[i].People, people)
		length = max(length, starts[i]+tasks[i].Seconds)
	}
	return starts, length, true
}

// profile is how many people are busy from each time on until the next; sorted.
type profile []busy

type busy struct {
	from   float64
	people int
}

// place takes people for a while, at the first time not before from at which they
// are free, and returns that time.
func (p *profile) place(from, seconds float64, people, all int) float64 {
	if seconds <= 0 || people <= 0 {
		return from
	}
	first := p.cut(from)
	for k := first; k < len(*p) && (*p)[k].from < (*p)[first].from+seconds; k++ {
		if (*p)[k].people+people > all {
			first = k + 1
		}
	}
	start := (*p)[first].from
	last := p.cut(start + seconds)
	for k := first; k < last; k++ {
		(*p)[k].people += people
	}
	return start
}

// cut makes a time one of the profile's own and returns its index.
func (p *profile) cut(at float64) int {
	k := sort.Search(len(*p), func(i int) bool { return (*p)[i].from >= at })
	if k < len(*p) && (*p)[k].from == at {
		return k
	}
	*p = slices.Insert(*p, k, busy{at, (*p)[k-1].people})
	return k
}
