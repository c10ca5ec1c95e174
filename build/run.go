package build

import (
	"math"
	"slices"
	"strings"

	"softloft/finding"
	"softloft/load"
	"softloft/plan"
	"softloft/pull"
	"softloft/rig"
)

// Run orders the work on a rig. What the load analysis found says how many hands a
// standing box takes and what a change card costs. list is the pull list that the
// strike is counted against. Run never fails; where no order exists Build is nil.
// Findings come only where the plan names a crew, but for a circle.
func Run(r *rig.Rig, loads load.Answer, list []pull.Row) (Answer, []finding.Finding) {
	w := &work{rig: r, load: loads, list: list, crew: r.Plan.Crew, rates: plan.StandardRates(),
		index: map[string]int{}, home: map[string]int{}, line: map[string]int{}, part: map[string]*rig.Part{}, tube: map[string]*rig.Tube{}}
	if w.crew != nil {
		w.rates = w.crew.Rates
	}
	for i := range r.Parts {
		w.part[r.Parts[i].ID] = &r.Parts[i]
	}
	for i := range r.Tubes {
		w.tube[r.Tubes[i].Part] = &r.Tubes[i]
	}
	w.group()
	w.joints()
	w.acts()
	w.reach()
	w.effort()
	w.tell()
	return w.answer, w.findings
}

// work is a build under way.
type work struct {
	rig      *rig.Rig
	load     load.Answer
	list     []pull.Row
	crew     *plan.Crew // nil where the plan names none
	rates    plan.Rates
	steps    []*step
	index    map[string]int // of a step by its key
	home     map[string]int // of a part's step by its id
	line     map[string]int // of the line that a part belongs to
	part     map[string]*rig.Part
	tube     map[string]*rig.Tube
	answer   Answer
	findings []finding.Finding
}

// tell settles order and times, and concludes.
func (w *work) tell() {
	tasks := w.tasks()
	times, circle := CriticalPath(tasks)
	w.answer.Job = Job{People: unknown, LeastPeople: unknown, Seconds: unknown, Strike: unknown, Shortest: unknown, PersonSeconds: unknown,
		Signs: []Sign{}, Ties: []Tie{}, Cards: []Card{}, Critical: []string{}, Unknown: []string{}, Assumptions: assumptions(), Demo: w.invented()}
	if w.crew != nil {
		w.answer.Job.People = finding.Number(w.crew.People)
	}
	if circle != nil {
		w.concludeCircle(circle)
		return
	}
	w.knots()
	starts, length := w.schedule(tasks, times)
	w.answer.Build = w.told(tasks, times, starts, "build.")
	w.job(tasks, times, length)
	w.strike()
	w.signs()
	w.cards()
	w.conclude()
}

var unknown = finding.Number(math.NaN())

// tasks is the network of the steps. A step whose people are not known counts with one
// for the order; its times are then not told.
func (w *work) tasks() []Task {
	tasks := make([]Task, len(w.steps))
	for i, s := range w.steps {
		tasks[i] = Task{Seconds: s.seconds, People: 1}
		if finding.Known(s.people) {
			tasks[i].People = int(s.people)
		}
		for _, l := range s.links {
			tasks[i].Needs = append(tasks[i].Needs, l.to)
		}
	}
	return tasks
}

// schedule is when the crew starts each step; nil where there is no crew, where it is
// too small, or where nobody knows how many a step takes.
func (w *work) schedule(tasks []Task, times Times) (starts []float64, length finding.Number) {
	if w.crew == nil || len(w.unknownPeople()) > 0 {
		return nil, unknown
	}
	starts, seconds, ok := Schedule(tasks, times, w.crew.People)
	if !ok {
		return nil, unknown
	}
	return starts, finding.Number(seconds)
}

func (w *work) unknownPeople() []*step {
	var found []*step
	for _, s := range w.steps {
		if !finding.Known(s.people) {
			found = append(found, s)
		}
	}
	return found
}

// told are the steps in the order in which they start; by the critical path where no
// times are known.
func (w *work) told(tasks []Task, times Times, starts []float64, prefix string) []Step {
	order := slices.Clone(times.Order)
	if starts != nil {
		slices.SortStableFunc(order, func(a, b int) int {
			switch {
			case starts[a] < starts[b]:
				return -1
			case starts[a] > starts[b]:
				return 1
			}
			return 0
		})
	}
	steps := make([]Step, 0, len(order))
	for n, i := range order {
		steps = append(steps, w.toldStep(i, n+1, tasks[i], times, starts, prefix))
	}
	return steps
}

func (w *work) toldStep(i, number int, task Task, times Times, starts []float64, prefix string) Step {
	s := w.steps[i]
	told := Step{ID: prefix + s.key, Needs: []string{}, Step: s.title, Number: number, People: finding.Number(s.people), Seconds: finding.Number(task.Seconds),
		Parts: []string{}, Why: s.why(), Start: unknown, Finish: unknown, Slack: finding.Number(times.Slack[i]), Critical: times.Slack[i] <= 1e-9*(1+times.Length),
		Mass: 0, Heavy: unknown, Knots: []string{}}
	for _, l := range s.links {
		told.Needs = append(told.Needs, prefix+w.steps[l.to].key)
	}
	for _, p := range s.parts {
		told.Parts = append(told.Parts, p.ID)
		if p.Mass == nil {
			told.Mass = unknown
		} else {
			told.Mass += finding.Number(*p.Mass)
		}
	}
	if s.heavy != nil {
		told.Heavy = finding.Number(*s.heavy.part.Mass)
	}
	if starts != nil {
		told.Start, told.Finish = finding.Number(starts[i]), finding.Number(starts[i]+task.Seconds)
	}
	if s.role != "" {
		hold := s.hold
		told.Hold, told.SignedBy = &hold, w.nameOf(s.role)
	}
	told.Knots = append(told.Knots, s.knots...)
	return told
}

// why gathers the reasons of a step's place, each once, and of its people.
func (s *step) why() string {
	var reasons []string
	for _, l := range s.links {
		if !slices.Contains(reasons, l.why) {
			reasons = append(reasons, l.why)
		}
	}
	if s.peopleWhy != "" {
		reasons = append(reasons, s.peopleWhy)
	}
	if len(reasons) == 0 {
		return "nothing needs to be there before it"
	}
	return strings.Join(reasons, "; ")
}

// nameOf is who signs in a role; nil where the plan names nobody.
func (w *work) nameOf(role string) *string {
	if w.crew == nil {
		return nil
	}
	for _, n := range w.crew.Names.All() {
		if n[0] == role && n[1] != "" {
			name := n[1]
			return &name
		}
	}
	return nil
}

// job sums up.
func (w *work) job(tasks []Task, times Times, length finding.Number) {
	j := &w.answer.Job
	j.Seconds, j.Shortest = length, finding.Number(times.Length)
	var work, most float64
	for i, s := range w.steps {
		work += tasks[i].Seconds * s.people
		if s.people > most {
			most, j.LeastStep = s.people, "build."+s.key
		}
	}
	j.PersonSeconds = finding.Number(work)
	j.LeastPeople = finding.Number(most)
	for _, s := range w.unknownPeople() {
		j.LeastPeople, j.PersonSeconds = unknown, unknown
		j.Unknown = append(j.Unknown, "how many people it takes: "+s.title+" ("+s.peopleWhy+")")
	}
	for _, step := range w.answer.Build {
		if step.Critical {
			j.Critical = append(j.Critical, step.ID)
		}
	}
}

// signs are the lines that are signed, in the order of the work.
func (w *work) signs() {
	for _, told := range w.answer.Build {
		if told.Hold == nil {
			continue
		}
		s := w.steps[w.index[strings.TrimPrefix(told.ID, "build.")]]
		w.answer.Job.Signs = append(w.answer.Job.Signs, Sign{Step: told.ID, What: s.hold, Role: s.role, Name: w.nameOf(s.role)})
	}
}

// invented reports whether a rate is still the demo value.
func (w *work) invented() bool {
	if w.crew == nil || w.rig.Doc == nil {
		return true
	}
	for _, key := range rateKeys {
		if !w.rig.Doc.Has("crew.rates." + key) {
			return true
		}
	}
	return false
}

var rateKeys = []string{"piece", "fitting", "lamp", "address", "sheet", "tie", "line", "overhead", "stand", "bag", "cable", "haul", "level", "hold", "slack", "strike"}

func assumptions() []string {
	return []string{
		"pieces wait waist-low on a cart (0.75 m) and go to horses 1.0 m high; the lifting equation holds for one person with two hands, standing, not for teams, ladders or one hand",
		"a team of two lifts 2/3 of the sum, of three 1/2; beyond three no figure is published",
		"a piece longer than 10 ft (3 m) takes two whatever it weighs (common practice)",
		"within a step pieces go up one after the other; times are rates of the plan with the plan's slack on top",
		"no walking, trucks, doors, meals or waiting for others is in the times",
	}
}
