package sheet

import (
	"bytes"
	"encoding/csv"
	"math"
	"strings"
	"testing"

	"softloft/answer"
	"softloft/power"
	"softloft/pull"
)

// A lamp's name is the user's text: in a table it is text, not a formula, and its commas
// and quotation marks stay in their cell (RFC 4180).
func TestCSVKeepsTextInItsCell(t *testing.T) {
	names := []string{"=1+1", "@x", "a, b", `the "old" one`, "bell\a"}
	a := &answer.Answers{Power: &power.Answer{Circuits: []power.Circuit{{Name: "C1", Phase: 1, Lamps: names, Drop: power.Number(math.NaN())}}}}
	var out bytes.Buffer
	if err := PowerCSV(&out, a); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil || len(rows) != len(names)+1 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for i, want := range []string{"'=1+1", "'@x", "a, b", `the "old" one`, "bell "} {
		if rows[i+1][2] != want || rows[i+1][6] != "" {
			t.Errorf("%q: %q", names[i], rows[i+1])
		}
	}
}

// What a sheet says of a sum that is not known is never the known part alone.
func TestAnUnknownSumSaysSo(t *testing.T) {
	c := &check{}
	if text := c.sum("weight", "12 kg", []string{"pull.a", "pull.b"}); !strings.HasPrefix(text, "weight: not known; 12 kg without 2 rows") {
		t.Error(text)
	}
	if text := c.sum("weight", "12 kg", nil); text != "weight: 12 kg" {
		t.Error(text)
	}
}

func TestServedCSVOfNothing(t *testing.T) {
	var out bytes.Buffer
	if err := ServedCSV(&out, pull.Served{}); err != nil || strings.Count(out.String(), "\n") != 1 {
		t.Errorf("%q, %v", out.String(), err)
	}
}
