package sight

import (
	"os"
	"testing"

	"softloft/kit"
	"softloft/plan"
	"softloft/rig"
)

// derive reads a plan's text and places its parts.
func derive(t testing.TB, text string) *rig.Rig {
	t.Helper()
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	file, mistakes := plan.Read("plan.yaml", []byte(text), base)
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	return rig.Derive(file.Plan, file.Doc, file.Kit)
}

// example is the example of a hall with a camera all around.
func example(t testing.TB) string {
	t.Helper()
	text, err := os.ReadFile("../examples/waltz-in-the-old-corn-exchange.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// sheetOfCloth is a box of nothing but a cloth, 4 × 4 m at a height of 5 m, with room
// for cameras and marks at the end.
const sheetOfCloth = `softloft: 1
derive: none
box: {size: [4 m, 4 m], cloth_at: 5 m, cloth: [{kit: plain}]}
kit: {cloth: {plain: {mass: 0.2 kg/m2, through: 0.1, forward: {part: 0, sigma: 10 deg}, diffuse: 0.4, back: 0.3, hem: 0 in, source: demo value}}}
`
