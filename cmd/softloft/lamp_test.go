package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"softloft/answer"
)

// lampPlan is the starter plan with its lamps from an entry of its own.
func lampPlan(t *testing.T, spread string) string {
	t.Helper()
	text := strings.ReplaceAll(string(starter), "kit: panel-2x1", "kit: mine")
	return text + "\nkit:\n  lamp:\n    mine: {mass: 15 lb, power: 220 W, size: [24 in, 12 in], body: [26 in, 14 in, 5 in], " + spread + ", source: demo value}\n"
}

// cosine is an LM-63 file of a Lambertian opening in 1-deg steps: 1000 cos cd.
func cosine() string {
	var v, cd strings.Builder
	for a := range 91 {
		fmt.Fprintf(&v, "%d ", a)
		fmt.Fprintf(&cd, "%.9f ", 1000*math.Cos(float64(a)*math.Pi/180))
	}
	return "IESNA:LM-63-2002\n[TEST] 1\n[TESTLAB] none\n[ISSUEDATE] 2020\n[MANUFAC] none\nTILT=NONE\n1 -1 1 91 1 1 2 0.3048 0.6096 0\n1 1 220\n" + v.String() + "\n0\n" + cd.String() + "\n"
}

func check(t *testing.T, folder, name, plan string) *answer.Answers {
	t.Helper()
	at := filepath.Join(folder, name)
	if err := os.WriteFile(at, []byte(plan), 0o600); err != nil {
		t.Fatal(err)
	}
	var told bytes.Buffer
	flags := planFlags{Plan: at}
	file, err := flags.read(&session{out: &told, err: &told})
	if err != nil {
		t.Fatalf("%v: %s", err, told.String())
	}
	return answer.Of(file)
}

// A lamp whose file is Lambert's law gives the light of a Lambertian opening: two
// routes, closed form and table, through the whole plan. Lumens that the kit doesn't
// give are the file's: 1000 pi (Lambert's law).
func TestLampFileAsSpread(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "cos.ies"), []byte(cosine()), 0o600); err != nil {
		t.Fatal(err)
	}
	closed := check(t, folder, "closed.yaml", lampPlan(t, fmt.Sprintf("lumens: %.6f lm, spread: lambertian", 1000*math.Pi)))
	table := check(t, folder, "table.yaml", lampPlan(t, "spread: {file: cos.ies}"))
	if closed.Light.Area == nil || table.Light.Area == nil {
		t.Fatalf("no light: %q and %q", closed.Light.Missing, table.Light.Missing)
	}
	if a, b := float64(closed.Light.Area.Mean), float64(table.Light.Area.Mean); !(math.Abs(b/a-1) < 0.003) {
		t.Errorf("area %g lx by the table, %g by the closed form", b, a)
	}
	if a, b := float64(closed.Light.Flux.Lamps), float64(table.Light.Flux.Lamps); !(math.Abs(b/a-1) < 1e-4) {
		t.Errorf("%g lm by the table, %g by the closed form", b, a)
	}
	if text := strings.Join(table.Light.Missing, "\n"); strings.Contains(text, "its file has an opening") {
		t.Error(text)
	}
}

// A length along C0 in the file and along C90 in the kit is told.
func TestLampFileSizesApart(t *testing.T) {
	folder := t.TempDir()
	turned := strings.Replace(cosine(), "0.3048 0.6096 0", "0.6096 0.3048 0", 1)
	if err := os.WriteFile(filepath.Join(folder, "turned.ies"), []byte(turned), 0o600); err != nil {
		t.Fatal(err)
	}
	a := check(t, folder, "p.yaml", lampPlan(t, "spread: {file: turned.ies}"))
	if !strings.Contains(strings.Join(a.Light.Missing, "\n"), "its file has an opening of 0.305 m along C0 and 0.61 m along C90") {
		t.Errorf("%q", a.Light.Missing)
	}
}
