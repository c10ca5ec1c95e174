package document

import (
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

// seeds returns the documents of testdata.
func seeds(f *testing.F) []string {
	all := []string{samplePlanText}
	files, err := filepath.Glob("testdata/*.txt")
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range files {
		archive, err := txtar.ParseFile(file)
		if err != nil {
			f.Fatal(err)
		}
		for i := 0; i < len(archive.Files); i += 2 {
			all = append(all, string(archive.Files[i].Data))
		}
	}
	return all
}

// Whatever the bytes: values, or mistakes that stand within the document and say something.
func FuzzRead(f *testing.F) {
	for _, text := range seeds(f) {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var first, second samplePlan
		d, mistakes := Read("plan.yaml", data, &first)
		_, again := Read("plan.yaml", data, &second)
		if diff := cmp.Diff(mistakes, again) + cmp.Diff(first, second, cmp.AllowUnexported(sampleBox{})); diff != "" {
			t.Fatalf("a second reading differs: %s", diff)
		}
		if d == nil && len(mistakes) != 1 {
			t.Fatalf("no document, and %d mistakes", len(mistakes))
		}
		lines := lineStarts(strings.TrimPrefix(string(data), byteOrderMark))
		for _, m := range mistakes {
			message := m.Error()
			if m.Problem == "" || m.Place.Line < 1 || m.Place.Line > len(lines) || m.Place.Column < 1 || !utf8.ValidString(message) || strings.ContainsAny(message, "\r\n\x00") || len(message) > 1000 {
				t.Fatalf("%+v", m)
			}
			if m.Place.Column > utf8.RuneCountInString(m.Text)+1 && len(m.Text) < 390 {
				t.Fatalf("beyond the line's end: %+v", m)
			}
			if d != nil && m.Path != "" {
				if _, ok := steps(m.Path); !ok {
					t.Fatalf("%q is no path", m.Path)
				}
			}
		}
	})
}

// Whatever is set: a document that differs in that value alone, or an error.
func FuzzSet(f *testing.F) {
	for _, text := range seeds(f) {
		f.Add([]byte(text), "box.trim", "14 ft")
		f.Add([]byte(text), "box.size[1]", "a, b")
		f.Add([]byte(text), "lamps[0].kit", "[1, {b: c}]")
		f.Add([]byte(text), "new.key", "'x'")
	}
	f.Fuzz(func(t *testing.T, data []byte, path, text string) {
		d, mistake := open("plan.yaml", data)
		if mistake != nil {
			return
		}
		changed, err := d.Set(path, text)
		if err != nil {
			return
		}
		value, err := flowValue(text)
		if err != nil {
			t.Fatalf("%q was set, but %v", text, err)
		}
		if at, _, ok := changed.find(path); !ok || !same(at.value, value) {
			t.Fatalf("%q at %s is not there in %q", text, path, changed.Bytes())
		}
		if !same(changed.root, d.with(path, value)) {
			t.Fatalf("another value changed in %q", changed.Bytes())
		}
		if typed := Quote(text); typed != "" {
			if _, err := flowValue(typed); err != nil && utf8.ValidString(text) && !strings.ContainsAny(text, "\ufeff\u2028\u2029") {
				t.Fatalf("%q is quoted as %s: %v", text, typed, err)
			}
		}
	})
}
