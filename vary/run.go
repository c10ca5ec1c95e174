package vary

import (
	"errors"
	"strings"
	"sync"

	"softloft/answer"
	"softloft/document"
	"softloft/finding"
	"softloft/plan"
)

// Options says how to vary. The zero Options keeps the cloth plane and works one plan at
// a time.
type Options struct {
	Keep    Keep
	Workers int // how many plans at once
	// Progress is told how many plans are done of how many that are known to be due. It
	// is never called twice at once.
	Progress func(done, due int)
}

// Answer is how a plan's answers go with one quantity.
type Answer struct {
	Softloft   int      `json:"softloft"`
	Title      string   `json:"title"`
	Revision   string   `json:"revision"`
	PlanDigest string   `json:"plan_digest"`
	Demo       bool     `json:"demo"`
	Key        string   `json:"key"`
	Paths      []string `json:"paths"`
	Unit       string   `json:"unit"`
	Keeps      string   `json:"keeps"`
	Planned    string   `json:"planned"` // what the plan has; empty where it has nothing typed
	Plan       Row      `json:"plan"`    // the plan as it is
	Rows       []Row    `json:"rows"`    // in the order in which the values were asked for
	Changes    []Change `json:"changes"` // along the quantity
	Cautions   []string `json:"cautions"`

	// Base is what the plan as it is gives, for sheets.
	Base *answer.Answers `json:"-"`
	// Ask is what was asked.
	Ask *Ask `json:"-"`
}

// Of works out a plan at every value of ask and narrows down where results change. An
// error means that the key cannot be changed in this plan, or that it refuses every
// value.
func Of(file *plan.File, ask *Ask, options Options) (*Answer, error) {
	base := answer.Of(file)
	a := &Answer{Softloft: answer.Version, Title: base.Title, Revision: base.Revision, PlanDigest: base.PlanDigest, Demo: base.Demo, Key: ask.Key, Paths: ask.Paths,
		Unit: ask.Unit, Changes: []Change{}, Cautions: base.Cautions, Base: base, Ask: ask, Keeps: keeps(ask, options.Keep)}
	a.Planned, _ = file.Doc.Typed(ask.Paths[0])
	a.Plan = rowOf(Step{Text: a.Planned, Value: float64(unknownNumber)}, base)
	w := &work{stepper: newStepper(file, ask, options.Keep), options: options}
	tried := w.all(ask.Steps)
	for i := range tried {
		a.Rows = append(a.Rows, tried[i].row)
	}
	if err := allRefused(tried); err != nil {
		return nil, err
	}
	a.Changes = append(a.Changes, w.changes(tried)...)
	return a, nil
}

func keeps(ask *Ask, keep Keep) string {
	switch {
	case ask.Key == "box.trim" || ask.Key == "box.cloth_at":
		return ""
	case keep == KeepTrim:
		return "trim"
	}
	return "cloth plane"
}

// tried is one value, worked out.
type tried struct {
	step Step
	row  Row
	err  error
	over map[string]finding.Finding // findings that are over, by id
}

// result is the row's result, refused for a plan that is.
func (t *tried) result() string {
	if t.err != nil {
		return "refused"
	}
	return string(t.row.Result)
}

// allRefused returns why no value has an answer, nil where one has. What is no mistake of
// a plan is the key's own fault.
func allRefused(all []tried) error {
	for i := range all {
		var mistakes document.Mistakes
		if all[i].err == nil {
			return nil
		}
		if !errors.As(all[i].err, &mistakes) {
			return all[i].err
		}
	}
	return errors.New("the plan refuses every value; the first: " + all[0].row.Refused)
}

type work struct {
	*stepper
	options Options

	mutex     sync.Mutex
	done, due int
}

// all works out steps side by side, in their order.
func (w *work) all(steps []Step) []tried {
	found := make([]tried, len(steps))
	w.tell(0, len(steps))
	next := make(chan int)
	var wait sync.WaitGroup
	for range max(1, min(w.options.Workers, len(steps))) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for i := range next {
				found[i] = w.one(steps[i])
				w.tell(1, 0)
			}
		}()
	}
	for i := range steps {
		next <- i
	}
	close(next)
	wait.Wait()
	return found
}

func (w *work) tell(done, due int) {
	w.mutex.Lock()
	defer w.mutex.Unlock()
	w.done, w.due = w.done+done, w.due+due
	if w.options.Progress != nil {
		w.options.Progress(w.done, w.due)
	}
}

func (w *work) one(step Step) tried {
	t := tried{step: step, row: emptyRow(step), over: map[string]finding.Finding{}}
	file, err := w.plan(step.Text)
	if err != nil {
		t.err, t.row.Refused = err, sentence(err)
		return t
	}
	a := answer.Of(file)
	t.row = rowOf(step, a)
	for _, f := range a.Findings {
		if f.Result == finding.Over {
			t.over[f.ID] = f
		}
	}
	return t
}

// sentence is the first mistake of a plan that is refused, without its place: the value
// is not in the file.
func sentence(err error) string {
	var mistakes document.Mistakes
	if !errors.As(err, &mistakes) || len(mistakes) == 0 {
		return err.Error()
	}
	text := mistakes[0].Error()
	text = strings.TrimPrefix(text, mistakes[0].Place.String()+": ")
	return text
}
