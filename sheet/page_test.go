package sheet

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"softloft/answer"
	"softloft/draw"
	"softloft/finding"
	"softloft/kit"
	"softloft/load"
	"softloft/plan"
	"softloft/pull"
)

const example = "../examples/waltz-in-the-old-corn-exchange.yaml"

func answersOf(t testing.TB) *answer.Answers {
	t.Helper()
	data, err := os.ReadFile(example)
	if err != nil {
		t.Fatal(err)
	}
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	file, mistakes := plan.Read(example, data, base)
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	return answer.Of(file)
}

func texts(p draw.Picture) string {
	var all []string
	for _, item := range p.Items {
		if item.Text != "" {
			all = append(all, item.Text)
		}
	}
	return strings.Join(all, "\n")
}

// The page says what every load page has to say, and a result as shape and word.
func TestPageSays(t *testing.T) {
	a := answersOf(t)
	for _, paper := range []string{"letter", "a4"} {
		told := texts(Page(a, paper))
		for _, want := range append([]string{"building: not checked", "DEMO", a.Title, a.PlanDigest[:12],
			shapes[a.Result] + " " + strings.ToUpper(string(a.Result)), "Loads on points, rounded up", "Pull list", "W1", "scale "}, a.Cautions...) {
			if !strings.Contains(strings.Join(strings.Fields(told), " "), strings.Join(strings.Fields(want), " ")) {
				t.Errorf("%s: the page doesn't say %q", paper, want)
			}
		}
		for _, word := range []string{"approved", " OK", "safe to", "certified"} {
			if strings.Contains(told, word) {
				t.Errorf("%s: the page says %q", paper, word)
			}
		}
	}
}

// However long the lists are, there is one page on which no text leaves the margins or
// covers another, and what isn't shown is counted.
func TestPageHoldsAnyLength(t *testing.T) {
	a := answersOf(t)
	rapid.Check(t, func(t *rapid.T) {
		b := *a
		length := func(name string) int {
			return rapid.SampledFrom([]int{0, 1, 2, 9, 17, 18, 19, 20, 21, 60, 300}).Draw(t, name)
		}
		word := func(name string) string {
			return rapid.SampledFrom([]string{"W", "a name of some length", strings.Repeat("long ", 30), strings.Repeat("x", 150), "你好"}).Draw(t, name)
		}
		b.Title, b.Revision = word("title"), word("revision")
		b.Findings, b.Pull, b.Load.Points = nil, nil, nil
		for i := range length("findings") {
			f := finding.Refused(fmt.Sprintf("load.x%d.y", i), finding.Subject{}, word("statement"), word("why"))
			b.Findings = append(b.Findings, f)
		}
		for range length("pull") {
			b.Pull = append(b.Pull, pull.Row{Item: word("item"), Count: 3, Length: finding.Number(math.NaN()), Each: 1.5})
		}
		for i := range length("points") {
			down := load.Vec{0, 0, finding.Number(-100 * (i + 1))}
			b.Load.Points = append(b.Load.Points, load.Point{Name: fmt.Sprint(word("point"), i), Cases: load.PointCases{Built: &down}})
		}
		p := Page(&b, rapid.SampledFrom([]string{"letter", "a4"}).Draw(t, "paper"))
		laidOut(t, p)
		if !shownOrCounted(texts(p), len(b.Pull), "rows more: softloft pull") {
			t.Fatalf("%d rows of the pull list are neither shown nor counted", len(b.Pull))
		}
	})
}

// shownOrCounted tells whether a page that leaves out rows counts two or more of them.
func shownOrCounted(told string, n int, more string) bool {
	for _, line := range strings.Split(told, "\n") {
		if number, ok := strings.CutSuffix(line, " "+more); ok {
			var left int
			_, err := fmt.Sscan(number, &left)
			return err == nil && left >= 2 && left <= n
		}
	}
	return n <= 60
}

type failer interface{ Fatalf(string, ...any) }

// laidOut fails where a text of the page's own leaves the margins or covers another.
func laidOut(t failer, p draw.Picture) {
	sheet := draw.Box{Left: draw.PaperMargin - 0.2, Top: draw.PaperMargin - 0.2, Right: p.Width - draw.PaperMargin + 0.2, Bottom: p.Height - draw.PaperMargin + 0.6}
	var texts []draw.Item
	for _, item := range p.Items {
		if item.Text != "" && item.Text != "DEMO" && item.Layer == draw.Notes {
			texts = append(texts, item)
		}
	}
	for i, item := range texts {
		b := item.Bounds()
		if size := (b.Right - b.Left) * (b.Bottom - b.Top); b.Overlap(sheet) < size-1e-6 {
			t.Fatalf("%q leaves the page: %+v", item.Text, b)
		}
		for _, other := range texts[:i] {
			if area := b.Overlap(other.Bounds()); area > 0.2 {
				t.Fatalf("%q and %q overlap by %.2f mm²", item.Text, other.Text, area)
			}
		}
	}
}

// A row that counts the rest stands for two or more; else the last row stands itself.
func TestFits(t *testing.T) {
	for _, test := range []struct{ n, room, want int }{{0, 5, 0}, {5, 5, 5}, {6, 5, 4}, {7, 5, 4}, {3, 1, 0}, {3, 0, 0}} {
		if got := fits(test.n, test.room); got != test.want {
			t.Errorf("%d rows in room for %d: %d shown, want %d", test.n, test.room, got, test.want)
		}
	}
}
