package kit

import (
	"testing"

	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	ids := []string{"pipe-1", "pipe-1-1/2", "pipe-1-1/4", "square-1"}
	for typed, want := range map[string]string{"pipe-1-12": "pipe-1-1/2", "pip-1": "pipe-1", "squar-1": "square-1", "truss": "", "": ""} {
		if got := Nearest(typed, ids); got != want {
			t.Errorf("%q: got %q, want %q", typed, got, want)
		}
	}
}

// One changed letter in an id of at least three is found again, unless another is as near.
func TestNearestFindsOneLetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		id := rapid.StringMatching(`[a-f]{3,12}`).Draw(t, "id")
		i := rapid.IntRange(0, len(id)-1).Draw(t, "place")
		typed := id[:i] + "z" + id[i+1:]
		if got := Nearest(typed, []string{id, id + "yyyyyy"}); got != id {
			t.Fatalf("%q: got %q, want %q", typed, got, id)
		}
	})
}
