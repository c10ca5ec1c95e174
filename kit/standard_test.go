package kit

import (
	"io/fs"
	"slices"
	"strings"
	"testing"

	"softloft/source"
)

// standard returns the embedded kit and fails where it has mistakes.
func standard(t testing.TB) Kit {
	t.Helper()
	k, mistakes := Standard()
	if len(mistakes) > 0 {
		t.Fatalf("the embedded kit has mistakes:\n%v", mistakes)
	}
	return k
}

func TestStandardIsWhole(t *testing.T) {
	k := standard(t)
	least := map[string]int{"alloy": 5, "tube": 8, "corner": 6, "tee": 3, "cloth": 6, "crate": 3, "wrap": 3, "lamp": 6, "rope": 6,
		"pulley": 2, "clamp": 4, "shackle": 3, "sling": 3, "safety": 1, "tie": 1, "bag": 3, "cable": 2, "stand": 2}
	for kind, n := range least {
		if got := len(k.items(kind)); got < n {
			t.Errorf("%d entries of kind %s, %d are due", got, kind, n)
		}
	}
}

// A source is a publication of the register, or it says in its first words what else it is.
func TestEveryValueOfTheStandardKitHasASource(t *testing.T) {
	openings := []string{DemoValue, commonPractice, fromMemory, "a published "}
	for _, it := range standard(t).items("") {
		for _, p := range properties(it.Value) {
			text := it.Entry.Source.text(p.Key)
			_, cited := registered(text)
			if !cited && !slices.ContainsFunc(openings, func(o string) bool { return strings.HasPrefix(text, o) }) {
				t.Errorf("%s %s: %s has the source %q", it.Kind, it.ID, p.Key, text)
			}
		}
		if it.Entry.Name == "" {
			t.Errorf("%s %s has no name", it.Kind, it.ID)
		}
	}
}

// A set-screw fitting holds by friction and nobody gives the load at which it slips: common
// practice. Only couplers with a published slip load have one.
func TestSlipIsKnownOnlyWhereItIsPublished(t *testing.T) {
	k := standard(t)
	for _, kind := range []string{"corner", "tee", "clamp"} {
		for _, it := range k.items(kind) {
			published := strings.HasPrefix(it.Entry.Source.text("slip"), "bs-1139")
			if it.Value.(Hardware).Slip != nil && !published {
				t.Errorf("%s %s has a slip load from %q", kind, it.ID, it.Entry.Source.For("slip"))
			}
		}
	}
}

func TestNoStandardFileOverridesAnother(t *testing.T) {
	names, err := fs.Glob(data, "data/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatal(names, err)
	}
	first := map[string]string{}
	for _, name := range names {
		text, err := fs.ReadFile(data, name)
		if err != nil {
			t.Fatal(err)
		}
		for _, it := range parse(name, text).own.items("") {
			key := it.Kind + " " + it.ID
			if other, taken := first[key]; taken {
				t.Errorf("%s is in %s and %s", key, other, name)
			}
			first[key] = name
		}
	}
}

// Every tube of the standard kit has a corner that fits it: a box of it can be joined.
func TestEveryTubeHasACorner(t *testing.T) {
	k := standard(t)
	for _, id := range IDs(k.Tube) {
		found := false
		for _, corner := range k.Corner {
			found = found || slices.Contains(corner.Fits, id)
		}
		if !found {
			t.Errorf("no corner fits %s", id)
		}
	}
}

// A plan's words for sides mean the same reflectance in the kit and in the register.
func TestWrapsReflectAsTheRegisterSays(t *testing.T) {
	k := standard(t)
	for _, color := range []string{"white", "black", "silver"} {
		assumed, ok := source.ReflectanceOf(color)
		if wrap := k.Wrap[color]; !ok || wrap.Color != color || wrap.Reflectance == nil || *wrap.Reflectance != assumed.Value {
			t.Errorf("%s: kit has %+v, register %v", color, wrap, assumed.Value)
		}
	}
}
