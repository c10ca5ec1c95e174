package plan

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"softloft/kit"
)

var update = flag.Bool("update", false, "write what is told into testdata/mistakes")

// testKit is the kit of the tests, of invented values.
func testKit(t testing.TB) kit.Kit {
	t.Helper()
	data, err := os.ReadFile("testdata/kit.yaml")
	if err != nil {
		t.Fatal(err)
	}
	k, mistakes := kit.Read("kit.yaml", data, kit.Kit{})
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	return k
}

// section is a part of a text file of cases, under a line "-- name --".
type section struct{ name, text string }

func sections(text string) (head string, all []section) {
	head = text
	for i, part := range strings.Split("\n"+text, "\n-- ") {
		if i == 0 {
			head = strings.TrimPrefix(part, "\n")
			continue
		}
		name, body, _ := strings.Cut(part, " --")
		all = append(all, section{name, strings.Trim(body, "\n")})
	}
	return head, all
}

// TestMistakes holds what is told of each plan of testdata/mistakes. Who changes a
// sentence runs the test with -update and reads the difference: the plans are the
// test, and each has its mistakes by the contract's words.
func TestMistakes(t *testing.T) {
	files, err := filepath.Glob("testdata/mistakes/*.txt")
	if err != nil || len(files) < 9 {
		t.Fatalf("%d files of cases, %v", len(files), err)
	}
	base := testKit(t)
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		head, all := sections(string(data))
		out := head
		if len(all) == 0 || len(all)%2 == 1 {
			t.Fatalf("%s has %d sections: a plan and what is told of it by turns", file, len(all))
		}
		for i := 0; i < len(all); i += 2 {
			c, want := all[i], all[i+1]
			got := told(c.text+"\n", base)
			out += "\n-- " + c.name + " --\n" + c.text + "\n-- want --"
			if got != "" {
				out += "\n" + strings.TrimSuffix(got, "\n")
			}
			t.Run(filepath.Base(file)+"/"+c.name, func(t *testing.T) {
				if diff := cmp.Diff(strings.TrimSpace(want.text), strings.TrimSpace(got)); diff != "" && !*update {
					t.Error(diff)
				}
				if none := strings.Contains(c.name, "no mistake"); none != (got == "") {
					t.Errorf("told of %q: %s", c.name, got)
				}
			})
		}
		if *update {
			if err := os.WriteFile(file, []byte(out+"\n"), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

func told(text string, base kit.Kit) string {
	_, mistakes := Read("plan.yaml", []byte(text), base)
	if len(mistakes) == 0 {
		return ""
	}
	var lines []string
	for _, m := range mistakes {
		lines = append(lines, strings.TrimPrefix(m.Error(), "plan.yaml:"))
	}
	return strings.Join(lines, "\n") + "\n"
}
