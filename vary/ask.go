package vary

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"softloft/document"
	"softloft/plan"
	"softloft/quantity"
)

// Ask is what is varied: a key of the plan and its values.
type Ask struct {
	Key    string   // as a path of the plan, such as box.trim; lamps[].level for every lamp
	Paths  []string // the values of the plan that are changed
	Unit   string   // of Step.Value: SI, degrees for an angle; empty for words and bare numbers
	Number bool     // whether the values are numbers, not words
	Steps  []Step

	kind kind
}

// Step is one value: the text that the plan gets, and its number in Ask.Unit, NaN for a
// word.
type Step struct {
	Text  string
	Value float64
}

// The number of values: of a range that says none, and the most that are answered.
const (
	defaultSteps = 9
	mostSteps    = 200
)

// Parse reads what is to be varied, such as trim=10ft..18ft, lamps[0].above=1ft..3ft/5
// or box.cloth=light,half. Keys of box and a few others may be typed without what stands
// before them. The error says what would be right.
func Parse(text string, file *plan.File) (*Ask, error) {
	name, values, ok := strings.Cut(text, "=")
	name, values = strings.TrimSpace(name), strings.TrimSpace(values)
	if !ok || name == "" {
		return nil, fmt.Errorf("%s is no key with its values; such as trim=10ft..18ft", quoted(text))
	}
	path, k, err := find(name)
	if err != nil {
		return nil, err
	}
	ask := &Ask{Key: path, kind: k, Number: k.number, Unit: k.unit()}
	if ask.Paths, err = everywhere(path, file.Doc); err != nil {
		return nil, err
	}
	if values == "" {
		return nil, fmt.Errorf("no values for %s; such as %s=%s", path, name, k.example())
	}
	if ask.Steps, err = stepsOf(name, values, k); err != nil {
		return nil, err
	}
	return ask, ask.checkCount()
}

func (a *Ask) checkCount() error {
	switch n := len(a.Steps); {
	case n < 2:
		return fmt.Errorf("one value of %s varies nothing; two or more are due, such as %s", a.Key, a.kind.example())
	case n > mostSteps:
		return tooMany(a.Key, fmt.Sprint(n))
	}
	seen := map[string]bool{}
	for _, s := range a.Steps {
		key := s.Text
		if a.Number {
			key = fmt.Sprint(s.Value)
		}
		if seen[key] {
			return fmt.Errorf("%s stands twice among the values of %s", s.Text, a.Key)
		}
		seen[key] = true
	}
	return nil
}

func tooMany(key, count string) error {
	return fmt.Errorf("%s values of %s; %d are the most that are answered at once", count, key, mostSteps)
}

// order returns the indices of the steps along the quantity; of words as they were typed.
func (a *Ask) order() []int {
	order := make([]int, len(a.Steps))
	for i := range order {
		order[i] = i
	}
	if a.Number && !slices.IsSortedFunc(a.Steps, func(s, t Step) int { return compare(t.Value, s.Value) }) {
		slices.SortStableFunc(order, func(i, j int) int { return compare(a.Steps[i].Value, a.Steps[j].Value) })
	}
	return order
}

func compare(x, y float64) int {
	switch {
	case x < y:
		return -1
	case x > y:
		return 1
	}
	return 0
}

// span is how far the values reach.
func (a *Ask) span() float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range a.Steps {
		low, high = math.Min(low, s.Value), math.Max(high, s.Value)
	}
	return high - low
}

// everywhere returns the paths that a key stands for: itself, or one for each item where
// it says [].
func everywhere(path string, doc *document.Document) ([]string, error) {
	before, after, all := strings.Cut(path, "[]")
	if !all {
		if outer, ok := missingItem(path, doc); ok {
			return nil, fmt.Errorf("the plan has no %s; items count from 0, and what is varied must stand in the plan", outer)
		}
		return []string{path}, nil
	}
	var paths []string
	for i := 0; doc.Has(document.Item(before, i)); i++ {
		inner, err := everywhere(document.Item(before, i)+after, doc)
		if err != nil {
			return nil, err
		}
		paths = append(paths, inner...)
	}
	if len(paths) == 0 {
		return nil, fmt.Errorf("the plan has no %s, so there is no %s to vary", before, path)
	}
	return paths, nil
}

// missingItem returns the first list item or kit entry on the way down a path that the
// plan doesn't have: those are not made here.
func missingItem(path string, doc *document.Document) (string, bool) {
	steps, _ := split(path)
	at := ""
	for i, s := range steps {
		if s.item >= 0 {
			at = document.Item(at, s.item)
		} else {
			at = document.Key(at, s.key)
		}
		inKit := i == 2 && steps[0].key == "kit"
		if (s.item >= 0 || inKit) && !doc.Has(at) {
			return at, true
		}
	}
	return "", false
}

// quoted puts a text into a sentence, cut where it is long.
func quoted(text string) string {
	const most = 60
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "…"
	}
	return fmt.Sprintf("%q", text)
}

// text is a number as the plan has it: in SI with its unit, without loss.
func (k kind) text(value float64) string {
	switch {
	case k.whole:
		return fmt.Sprintf("%d", int64(math.Round(value)))
	case !k.measured:
		return fmt.Sprint(value)
	case k.dimension == quantity.OfAngle:
		return fmt.Sprint(value) + " deg"
	case k.dimension == quantity.OfTStop:
		return "T" + fmt.Sprint(value)
	}
	return strings.TrimSpace(fmt.Sprint(value) + " " + k.dimension.Unit())
}

// Share reports whether the values are shares of a whole.
func (a *Ask) Share() bool { return a.kind.measured && a.kind.dimension == quantity.OfShare }
