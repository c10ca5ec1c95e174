package softloft

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// mayImport is the import table of docs/architecture.md: a package may import what
// stands beside it, and what those import. The picture there can't lie, because this
// test holds it.
var mayImport = map[string][]string{
	"quantity":      {},
	"document":      {"quantity"},
	"source":        {"quantity"},
	"finding":       {"quantity", "source"},
	"shape":         {},
	"frame":         {},
	"photometry":    {"quantity"},
	"kit":           {"document", "quantity", "source", "photometry"},
	"plan":          {"document", "quantity", "kit", "plan/key"},
	"plan/key":      {"document", "quantity"},
	"plan/schema":   {"plan", "plan/key"},
	"rig":           {"plan", "kit", "shape", "circuit"},
	"head":          {},
	"light":         {"rig", "photometry", "shape", "finding", "head"},
	"load":          {"rig", "frame", "finding"},
	"fit":           {"rig", "shape", "finding"},
	"sight":         {"rig", "shape", "finding"},
	"cut":           {},
	"circuit":       {"cut"},
	"power":         {"rig", "finding", "circuit"},
	"stock":         {"kit", "cut"},
	"pull":          {"rig", "load", "power", "stock", "finding"},
	"build":         {"rig", "load", "pull", "finding"},
	"answer":        {"light", "load", "fit", "sight", "power", "pull", "build", "rig", "plan"},
	"vary":          {"answer", "plan/key"},
	"draw":          {"answer"},
	"draw/typeface": {"draw"},
	"draw/svg":      {"draw"},
	"draw/pdf":      {"draw/typeface"},
	"draw/png":      {"draw/typeface"},
	"draw/face":     {"draw/png", "light"},
	"sheet":         {"answer", "draw", "vary"},
	"cmd/softloft":  {"sheet", "answer", "plan", "plan/schema", "draw/svg", "draw/pdf", "draw/png", "draw/face"},
}

// engine packages keep out of the machine: they build for js/wasm, and the same plan
// gives the same bytes.
var engine = []string{"quantity", "document", "source", "finding", "shape", "frame", "photometry", "kit", "plan", "plan/key",
	"rig", "head", "light", "load", "fit", "sight", "cut", "circuit", "power", "stock", "pull", "build", "answer", "vary", "draw"}

var ofTheMachine = []string{"os", "net", "net/http", "time", "math/rand", "math/rand/v2", "database/sql", "syscall"}

func TestImports(t *testing.T) {
	seen := map[string]bool{}
	for file, imports := range ownImports(t) {
		name := path.Dir(file)
		seen[name] = true
		allowed, known := mayImport[name]
		if !known {
			t.Errorf("%s: package %s has no row in the import table", file, name)
			continue
		}
		reach := reachable(allowed)
		for _, imported := range imports {
			if own, ok := strings.CutPrefix(imported, "softloft/"); ok && !reach[own] {
				t.Errorf("%s: %s may not import %s", file, name, own)
			}
			if slices.Contains(engine, name) && slices.Contains(ofTheMachine, imported) {
				t.Errorf("%s: %s is of the engine and may not import %s", file, name, imported)
			}
		}
	}
	for name := range mayImport {
		if !seen[name] {
			t.Errorf("the import table has a row for %s, which is not there", name)
		}
	}
}

// reachable is what the allowed packages are and may themselves import.
func reachable(allowed []string) map[string]bool {
	reach := map[string]bool{}
	for next := slices.Clone(allowed); len(next) > 0; next = next[1:] {
		if !reach[next[0]] {
			reach[next[0]] = true
			next = append(next, mayImport[next[0]]...)
		}
	}
	return reach
}

// ownImports lists the imports of every Go file but the tests.
func ownImports(t *testing.T) map[string][]string {
	t.Helper()
	found := map[string][]string{}
	err := filepath.WalkDir(".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && (strings.HasPrefix(entry.Name(), ".") && name != "." || entry.Name() == "testdata" || entry.Name() == "tools" || entry.Name() == "bench") {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		var imports []string
		for _, spec := range file.Imports {
			imports = append(imports, strings.Trim(spec.Path.Value, `"`))
		}
		found[filepath.ToSlash(name)] = imports
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}
