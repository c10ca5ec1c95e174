package fit

import (
	"os"
	"strings"
	"testing"

	"softloft/finding"
	"softloft/kit"
	"softloft/plan"
	"softloft/rig"
)

// derive reads a plan on the kit that comes with the program and places its parts.
func derive(t testing.TB, text string) *rig.Rig {
	t.Helper()
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	file, mistakes := plan.Read("test.yaml", []byte(text), base)
	if len(mistakes) > 0 {
		t.Fatalf("the plan is not read:\n%v\n%s", mistakes, text)
	}
	return rig.Derive(file.Plan, file.Doc, file.Kit)
}

// example reads an example plan.
func example(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile("../examples/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// change replaces a piece of a text that must be there.
func change(t testing.TB, text, old, by string) string {
	t.Helper()
	if !strings.Contains(text, old) {
		t.Fatalf("no %q in the plan", old)
	}
	return strings.Replace(text, old, by, 1)
}

func byID(found []finding.Finding, id string) *finding.Finding {
	for i := range found {
		if found[i].ID == id {
			return &found[i]
		}
	}
	return nil
}
