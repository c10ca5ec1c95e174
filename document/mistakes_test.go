package document

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "write the messages that come into testdata, to be read by a person")

// Each file of testdata holds documents and, below each, the messages that it must give.
func TestMistakes(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatalf("no test files: %v", err)
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) { checkMistakes(t, file) })
	}
}

func checkMistakes(t *testing.T, file string) {
	archive, err := txtar.ParseFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i+1 < len(archive.Files); i += 2 {
		plan, want := archive.Files[i], &archive.Files[i+1]
		if !strings.HasSuffix(plan.Name, ".yaml") || want.Name != "want" {
			t.Fatalf("%s stands before %s", plan.Name, want.Name)
		}
		// What a text editor would not keep is spelled out.
		data := strings.NewReplacer(`<TAB>`, "\t", `<CR>`, "\r", `<NUL>`, "\x00", `<FF>`, "\xff", `<BOM>`, "\ufeff", `<LS>`, "\u2028").Replace(string(plan.Data))
		_, mistakes := Read(plan.Name, []byte(data), new(samplePlan))
		got := mistakes.Error()
		if got != "" {
			got += "\n"
		}
		if *update {
			want.Data = []byte(got)
		} else if diff := cmp.Diff(string(want.Data), got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", plan.Name, diff)
		}
		for _, mistake := range mistakes {
			checkText(t, data, mistake)
		}
	}
	if *update {
		if err := os.WriteFile(file, txtar.Format(archive), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// checkText holds a mistake's text against the document's line.
func checkText(t *testing.T, data string, mistake Mistake) {
	lines := strings.Split(strings.TrimPrefix(data, "\ufeff"), "\n")
	line := mistake.Place.Line
	if line == 0 {
		return
	}
	if line > len(lines) || mistake.Place.Column > len([]rune(lines[line-1]))+1 {
		t.Errorf("%v: no such place", mistake)
	} else if want := strings.ToValidUTF8(strings.TrimRight(lines[line-1], "\r"), "?"); mistake.Text != want && len(want) <= 400 {
		t.Errorf("%v: text %q, line %q", mistake, mistake.Text, want)
	}
}
