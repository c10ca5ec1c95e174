package softloft

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Every exported type of these packages stands in the glossary, as package.Type.
func TestGlossary(t *testing.T) {
	text, err := os.ReadFile("GLOSSARY.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"rig", "kit", "finding"} {
		for _, typeName := range exportedTypes(t, name) {
			if !strings.Contains(string(text), "`"+name+"."+typeName) {
				t.Errorf("GLOSSARY.md has no row with `%s.%s`", name, typeName)
			}
		}
	}
}

func exportedTypes(t *testing.T, folder string) []string {
	t.Helper()
	files, err := filepath.Glob(folder + "/*.go")
	if err != nil || len(files) == 0 {
		t.Fatalf("no Go files in %s: %v", folder, err)
	}
	var names []string
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, declaration := range parsed.Decls {
			names = append(names, typesIn(declaration)...)
		}
	}
	return names
}

func typesIn(declaration ast.Decl) (names []string) {
	group, ok := declaration.(*ast.GenDecl)
	if !ok || group.Tok != token.TYPE {
		return nil
	}
	for _, spec := range group.Specs {
		if typed := spec.(*ast.TypeSpec); typed.Name.IsExported() {
			names = append(names, typed.Name.Name)
		}
	}
	return names
}
