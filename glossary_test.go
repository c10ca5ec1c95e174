package softloft

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
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
	packages, err := parser.ParseDir(token.NewFileSet(), folder, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for name, parsed := range packages {
		if strings.HasSuffix(name, "_test") {
			continue
		}
		for file, content := range parsed.Files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			for _, declaration := range content.Decls {
				group, ok := declaration.(*ast.GenDecl)
				if !ok || group.Tok != token.TYPE {
					continue
				}
				for _, spec := range group.Specs {
					if typed := spec.(*ast.TypeSpec); typed.Name.IsExported() {
						names = append(names, typed.Name.Name)
					}
				}
			}
		}
	}
	return names
}
