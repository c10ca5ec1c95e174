package schema

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	checker "github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v4"

	"softloft/document"
	"softloft/kit"
	"softloft/plan"
	"softloft/plan/key"
	"softloft/quantity"
)

var update = flag.Bool("update", false, "write plan/schema.json and the tables of docs/plan.md")

const (
	schemaFile = "../schema.json"
	pageFile   = "../../docs/plan.md"
)

// TestCurrent: plan/schema.json is what the types say.
func TestCurrent(t *testing.T) {
	want, err := JSON()
	if err != nil {
		t.Fatal(err)
	}
	again, _ := JSON()
	if !bytes.Equal(want, again) {
		t.Error("two calls give two schemas")
	}
	if *update {
		if err := os.WriteFile(schemaFile, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(schemaFile)
	if err != nil || !bytes.Equal(got, want) {
		t.Errorf("plan/schema.json is not current (%v): go test ./plan/schema -update; %s", err, cmp.Diff(string(got), string(want)))
	}
}

// TestPage: the tables of docs/plan.md are what the types say, and no mapping lacks one.
func TestPage(t *testing.T) {
	page, err := os.ReadFile(pageFile)
	if err != nil {
		t.Fatal(err)
	}
	want, err := Page(page)
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile(pageFile, want, 0o644); err != nil {
			t.Fatal(err)
		}
		page = want
	}
	if !bytes.Equal(page, want) {
		t.Errorf("docs/plan.md is not current: go test ./plan/schema -update; %s", cmp.Diff(string(page), string(want)))
	}
	for _, link := range regexp.MustCompile(`\]\(#([^)]*)\)`).FindAllSubmatch(page, -1) {
		heading := "\n### " + strings.ReplaceAll(string(link[1]), "-", " ") + "\n"
		if !bytes.Contains(page, []byte(heading)) {
			t.Errorf("a link to %s and no heading of that name", link[1])
		}
	}
}

func TestPageMistakes(t *testing.T) {
	for page, want := range map[string]string{
		"":                                  "no table of the keys",
		"<!-- keys: boxes -->\n":            `no keys of "boxes"`,
		"<!-- keys: box -->\n| a table |\n": "has no line <!-- end -->",
	} {
		if _, err := Page([]byte(page)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", page, err)
		}
	}
}

// TestPageExample: the plan that the page opens with can be read with no kit but its own.
func TestPageExample(t *testing.T) {
	text := pageExample(t)
	if _, mistakes := plan.Read("docs/plan.md", text, kit.Kit{}); len(mistakes) > 0 {
		t.Error(mistakes)
	}
	if err := compiled(t).Validate(tree(t, text)); err != nil {
		t.Error(err)
	}
}

func pageExample(t *testing.T) []byte {
	t.Helper()
	page, err := os.ReadFile(pageFile)
	if err != nil {
		t.Fatal(err)
	}
	_, after, _ := bytes.Cut(page, []byte("```yaml\n"))
	text, _, ok := bytes.Cut(after, []byte("```\n"))
	if !ok {
		t.Fatal("the page has no plan")
	}
	return text
}

func compiled(t *testing.T) *checker.Schema {
	t.Helper()
	text, err := JSON()
	if err != nil {
		t.Fatal(err)
	}
	parsed, err := checker.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := checker.NewCompiler()
	if err := c.AddResource("plan.json", parsed); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("plan.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// tree reads YAML as an editor does, into maps, lists and scalars of JSON.
func tree(t testing.TB, text []byte) any {
	t.Helper()
	var parsed any
	if err := yaml.Unmarshal(text, &parsed); err != nil {
		t.Fatal(err)
	}
	asJSON, err := json.Marshal(parsed)
	if err != nil {
		t.Fatal(err)
	}
	parsed, err = checker.UnmarshalJSON(bytes.NewReader(asJSON))
	if err != nil {
		t.Fatal(err)
	}
	return parsed
}

// TestPlansAreValid: what softloft reads, the schema takes.
func TestPlansAreValid(t *testing.T) {
	schema := compiled(t)
	count := 0
	for _, pattern := range []string{"../../examples/*.yaml", "../testdata/*.yaml", "../../cmd/softloft/*.yaml"} {
		files, _ := filepath.Glob(pattern)
		for _, file := range files {
			if filepath.Base(file) == "kit.yaml" {
				continue
			}
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if err := schema.Validate(tree(t, text)); err != nil {
				t.Errorf("%s: %v", file, err)
			}
			count++
		}
	}
	if count < 4 {
		t.Errorf("only %d plans were found", count)
	}
}

// TestSchemaRefuses: the schema knows keys, words, units and forms.
func TestSchemaRefuses(t *testing.T) {
	schema := compiled(t)
	good := string(pageExample(t))
	for _, c := range []struct{ from, to string }{
		{"title:", "titel:"}, {"softloft: 1", "softloft: 2"}, {"trim: 14 ft", "trim: 14"}, {"trim: 14 ft", "trim: ft"},
		{"trim: 14 ft", "cloth_at: 14 ft\n  trim: 14 ft"}, {"  trim: 14 ft\n", ""}, {"stop: T4", "stop: 4"},
		{"at: [-3 ft, 3 ft]}", "at: [-3 ft, 3 ft], count: 2}"}, {"drops: {kit: chain, count: 4}", "drop: {kit: chain, count: 4}"},
		{"on: {rib: 1}", "on: {rib: 1, arm: 1}"}, {"on: {rib: 1}", "on: {}"}, {"north: white", "north: open"}, {"north: white", "up: white"},
		{"from: nw", "from: no"}, {"from: nw", "from: [1 ft]"}, {"level: 50%", "level: half"}, {"size: [12 ft, 12 ft]", "size: [12 ft]"},
		{"size: [12 ft, 12 ft]", "size: 12 ft"}, {"count: 4", "count: 4.5"}, {"name: NW, ", ""}, {"diffuse: 0.3", "diffuse: 30"},
		{"mass: 22 lb", "mas: 22 lb"}, {"skirt: {south: 1 ft}", "skirt: all"}, {"kit:  ", "kit: []\nx:  "},
	} {
		if !strings.Contains(good, c.from) {
			t.Fatalf("the page's plan has no %q", c.from)
		}
		text := strings.Replace(good, c.from, c.to, 1)
		refused := schema.Validate(tree(t, []byte(text))) != nil
		if c.to == "diffuse: 30" { // the schema is looser than reading
			refused = !refused
		}
		if !refused {
			t.Errorf("%q in place of %q is taken", c.to, c.from)
		}
		if _, mistakes := plan.Read("p", []byte(text), kit.Kit{}); len(mistakes) == 0 {
			t.Errorf("plan.Read takes %q in place of %q", c.to, c.from)
		}
	}
}

// TestForms: every type that reads itself has its forms here, so that the schema and the page
// tell them.
func TestForms(t *testing.T) {
	reader := reflect.TypeFor[document.Reader]()
	seen := map[reflect.Type]bool{}
	var look func(reflect.Type)
	look = func(ty reflect.Type) {
		if seen[ty] {
			return
		}
		seen[ty] = true
		if reflect.PointerTo(ty).Implements(reader) {
			if u, ok := formsOf(ty); !ok || u.text == "" || len(u.forms) == 0 {
				t.Errorf("%s reads itself and its forms are not told", ty)
			}
		}
		switch ty.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
			look(ty.Elem())
		}
		for _, f := range key.Fields(ty) {
			look(f.Type)
		}
	}
	look(reflect.TypeFor[plan.Plan]())
	for _, told := range []int{len(planForms()), len(kitForms())} {
		if told == 0 {
			t.Error("no forms")
		}
	}
	for ty := range planForms() {
		if !seen[ty] && ty != reflect.TypeFor[plan.Face]() {
			t.Errorf("forms of %s, which the plan doesn't have", ty)
		}
	}
}

// TestPatterns: each pattern takes what reading takes and refuses bare numbers.
func TestPatterns(t *testing.T) {
	texts := []string{"12 ft", `12'6"`, "12'", `6-1/2 in`, "3.66 m", "-3 mm", "+1e3 N", "0,5 m", "15°", "15 deg", "250 lb", "5 µm", "100 lb/ft2", "T2.8", "t 4", "60%", "0.5", "12′6″", "1.2kW", "30 kN/m", ".5 m", "5. m"}
	for _, d := range quantity.Dimensions() {
		s := quantitySchema(d)
		if s.Pattern == "" {
			continue
		}
		pattern := regexp.MustCompile(s.Pattern)
		for _, text := range slices.Concat(texts, d.Examples()) {
			if _, err := quantity.Parse(text, d); err == nil && !pattern.MatchString(text) {
				t.Errorf("%s: %q can be read and the pattern refuses it", d, text)
			}
		}
		for _, text := range []string{"", "12", "-1.5", "1e3", "ft"} {
			if pattern.MatchString(text) {
				t.Errorf("%s: the pattern takes %q", d, text)
			}
		}
	}
}
