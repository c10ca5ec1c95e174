package draw_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"softloft/answer"
	"softloft/draw"
	"softloft/draw/svg"
	"softloft/kit"
	"softloft/plan"
)

const waltz = "../examples/waltz-in-the-old-corn-exchange.yaml"

var answersOf = sync.OnceValue(func() map[string]*answer.Answers { return map[string]*answer.Answers{} })
var lock sync.Mutex

// answers works out a plan once for all tests.
func answers(t testing.TB, name string) *answer.Answers {
	t.Helper()
	lock.Lock()
	defer lock.Unlock()
	if a, ok := answersOf()[name]; ok {
		return a
	}
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	file, mistakes := plan.Read(name, data, base)
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	answersOf()[name] = answer.Of(file)
	return answersOf()[name]
}

func plans(t testing.TB) []string {
	t.Helper()
	names, err := filepath.Glob("testdata/*.yaml")
	if err != nil || len(names) < 3 {
		t.Fatal("the plans of this package's tests are missing", err)
	}
	examples, err := filepath.Glob("../examples/*.yaml")
	if err != nil || len(examples) < 1 {
		t.Fatal("the examples are missing", err)
	}
	return append(names, examples...)
}

// element is one path or text of an SVG, read back.
type element struct {
	name, text string
	attr       map[string]string
}

// readSVG reads what was written with a parser that knows nothing of draw.
func readSVG(t testing.TB, p draw.Picture) (root map[string]string, elements []element) {
	t.Helper()
	var data bytes.Buffer
	if err := svg.Write(&data, p); err != nil {
		t.Fatal(err)
	}
	decoder := xml.NewDecoder(&data)
	for {
		token, err := decoder.Token()
		if err == io.EOF {
			return root, elements
		}
		if err != nil {
			t.Fatalf("%s: %v", p.Name, err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attr: map[string]string{}}
			for _, a := range token.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			if e.name == "svg" {
				root = e.attr
			}
			elements = append(elements, e)
		case xml.CharData:
			if len(elements) > 0 {
				elements[len(elements)-1].text += string(token)
			}
		}
	}
}

// The figures are those that the example's file states, 1 ft being 0.3048 m exactly
// (NIST SP 811): each is measured in the drawing.
func TestDimensions(t *testing.T) {
	const foot = 0.3048
	space := draw.Space{Width: 250, Height: 180}
	a := answers(t, waltz)
	for _, test := range []struct {
		picture draw.Picture
		of      string
		want    []float64 // ft
		text    string
	}{
		{draw.Plan(a, space), "box.size[0]", []float64{16}, `16'-0"`},
		{draw.Plan(a, space), "box.size[1]", []float64{16}, `16'-0"`},
		{draw.Plan(a, space), "box.ribs", []float64{3, 5, 5, 3}, `3'-0"`},
		{draw.Plan(a, space), "hang.lines", []float64{8, 8}, `8'-0"`},
		{draw.Section(a, "x", space), "box.trim", []float64{17}, `lowest edge 17'-0"`},
		{draw.Section(a, "x", space), "box.cloth_at", []float64{17 + 4./12}, `cloth 17'-4"`},
		{draw.Section(a, "x", space), "box.depth", []float64{3}, `depth 3'-0"`},
		{draw.Section(a, "y", space), "room.points", []float64{27}, `points 27'-0"`},
		{draw.RoomPlan(a, space), "room.size[0]", []float64{70}, `70'-0"`},
		{draw.RoomPlan(a, space), "room.size[1]", []float64{60}, `60'-0"`},
	} {
		_, elements := readSVG(t, test.picture)
		var got []float64
		var text string
		for _, e := range elements {
			if e.attr["data-of"] != test.of {
				continue
			}
			value, err := strconv.ParseFloat(e.attr["data-value"], 64)
			if err != nil {
				t.Fatal(err)
			}
			got = append(got, math.Round(value/foot*1e6)/1e6)
			if text == "" {
				text = e.text
			}
		}
		want := append([]float64(nil), test.want...)
		for i := range want {
			want[i] = math.Round(want[i]*1e6) / 1e6
		}
		if diff := cmp.Diff(want, got); diff != "" || strings.TrimSpace(text) != test.text {
			t.Errorf("%s %s: %q, want %q\n%s", test.picture.Name, test.of, text, test.text, diff)
		}
	}
}

// A tube is as long and as wide on paper as its scale says: the pipe is 1-1/4 in schedule
// 40, 1.660 in outside (ASTM B241 by the kit's source), 16 ft between center-lines.
func TestTrueToScale(t *testing.T) {
	p := draw.Plan(answers(t, waltz), draw.Space{Width: 250, Height: 180})
	root, elements := readSVG(t, p)
	ratio, err := strconv.ParseFloat(root["data-ratio"], 64)
	if err != nil {
		t.Fatal(err)
	}
	var wide, high float64
	for _, e := range elements {
		if e.attr["data-part"] != "frame.north" || !strings.Contains(e.attr["class"], "f-paper") {
			continue
		}
		low, top := extent(t, e.attr["d"])
		wide, high = (top[0]-low[0])*ratio/1000, (top[1]-low[1])*ratio/1000
	}
	if math.Abs(wide-16*0.3048) > 1e-3 || math.Abs(high-1.66*0.0254) > 1e-3 {
		t.Errorf("frame.north is %.4f × %.4f m in the drawing, want %.4f × %.4f", wide, high, 16*0.3048, 1.66*0.0254)
	}
}

// extent is the least and greatest coordinates of a path's data.
func extent(t testing.TB, d string) (low, high [2]float64) {
	t.Helper()
	low, high = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, pair := range strings.FieldsFunc(d, func(r rune) bool { return strings.ContainsRune("MLZ", r) }) {
		for i, word := range strings.Fields(pair) {
			x, err := strconv.ParseFloat(word, 64)
			if err != nil {
				t.Fatal(err)
			}
			low[i], high[i] = math.Min(low[i], x), math.Max(high[i], x)
		}
	}
	return low, high
}

// Whatever names a part names one that is there, and each part that has a shape can be
// seen in plan or section.
func TestParts(t *testing.T) {
	for _, name := range plans(t) {
		a := answers(t, name)
		seen := map[string]bool{}
		for _, p := range draw.All(a, draw.Space{Width: 250, Height: 180}) {
			_, elements := readSVG(t, p)
			for _, e := range elements {
				id := e.attr["data-part"]
				if id == "" {
					continue
				}
				if _, ok := a.Model.Part(id); !ok {
					t.Errorf("%s: %s shows a part %q that is not there", name, p.Name, id)
				}
				if e.name == "path" && p.Name != "room" {
					low, high := extent(t, e.attr["d"])
					seen[id] = seen[id] || high[0]-low[0]+high[1]-low[1] > 0.1
				}
			}
		}
		for i := range a.Model.Parts {
			p := &a.Model.Parts[i]
			if !draw.Shapeless(p) && !seen[p.ID] {
				t.Errorf("%s: %s (%s) is in no picture", name, p.ID, p.What)
			}
		}
	}
}

// Texts cover neither each other nor the sheet's edge.
func TestTextsStayClear(t *testing.T) {
	for _, name := range plans(t) {
		for _, space := range []draw.Space{{Width: 250, Height: 180}, {Width: 92, Height: 116}} {
			for _, p := range draw.All(answers(t, name), space) {
				clearTexts(t, name, p)
			}
		}
	}
}

func clearTexts(t *testing.T, name string, p draw.Picture) {
	t.Helper()
	var texts []draw.Item
	for _, item := range p.Items {
		if item.Text != "" {
			texts = append(texts, item)
		}
	}
	sheet := draw.Box{Left: -0.1, Top: -0.1, Right: p.Width + 0.1, Bottom: p.Height + 0.1}
	for i, a := range texts {
		b := a.Bounds()
		if size := (b.Right - b.Left) * (b.Bottom - b.Top); b.Overlap(sheet) < size-1e-6 {
			t.Errorf("%s %s %gmm: %q runs off the sheet", name, p.Name, p.Width, a.Text)
		}
		for _, other := range texts[:i] {
			if a.Angle != 0 && other.Angle != 0 && math.Mod(a.Angle, math.Pi/2) != 0 {
				continue // oblique: their upright boxes overlap though they don't
			}
			if area := b.Overlap(other.Bounds()); area > 0.3 {
				t.Errorf("%s %s %gmm: %q and %q overlap by %.2f mm²", name, p.Name, p.Width, a.Text, other.Text, area)
			}
		}
	}
}

// A scale's ratio follows from its name: 1/4 in for 1 ft is 1 to 48.
func TestScales(t *testing.T) {
	for _, test := range []struct {
		width, height float64 // m
		want          string
		ratio         float64
	}{
		{16 * 0.3048, 1, `1/4" = 1'-0"`, 48}, // 4 in of 6 in; at 3/8 in it takes 6 in and a bit
		{16*0.3048 + .02, 1, `1/4" = 1'-0"`, 48},
		{15.9 * 0.3048, 1, `3/8" = 1'-0"`, 32},
		{1, 40 * 0.3048, `1/8" = 1'-0"`, 96},
	} {
		width := 152.3 // a little under 6 in
		got := draw.FitScale("feet", test.width, test.height, width, width)
		if got.Name != test.want || got.Ratio != test.ratio {
			t.Errorf("%g × %g m: %v, want %s", test.width, test.height, got, test.want)
		}
	}
	if got := draw.FitScale("metres", 5, 3, 101, 100); got.Name != "1:50" {
		t.Errorf("5 m on 101 mm: %v, want 1:50", got)
	}
}

// The same plan gives the same bytes.
func TestSameBytes(t *testing.T) {
	a := answers(t, waltz)
	var one, two bytes.Buffer
	for _, to := range []*bytes.Buffer{&one, &two} {
		for _, p := range draw.Drawings(a, "letter") {
			if err := svg.Write(to, p); err != nil {
				t.Fatal(err)
			}
		}
	}
	if !bytes.Equal(one.Bytes(), two.Bytes()) {
		t.Error("two runs of one plan gave different SVG")
	}
}
