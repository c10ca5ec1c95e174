package finding

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"softloft/source"
)

func TestNumber(t *testing.T) {
	for x, want := range map[float64]string{
		0: "0", math.Copysign(0, -1): "0", 0.5: "0.5", 1.0 / 3: "0.3333333333333", 2.0 / 3: "0.6666666666667", 1e6: "1000000",
		123456789012345: "1.234567890123e+14", 1e-9: "1e-09", -12.5: "-12.5", 0.1 + 0.2: "0.3", math.Inf(1): "null", math.Inf(-1): "null",
	} {
		if got, err := json.Marshal(Number(x)); err != nil || string(got) != want {
			t.Errorf("%v prints as %s, %v; want %s", x, got, err, want)
		}
	}
	if got, err := json.Marshal([]Number{Number(nan)}); err != nil || string(got) != "[null]" {
		t.Errorf("NaN prints as %s, %v", got, err)
	}
	var n Number
	if err := json.Unmarshal([]byte("null"), &n); err != nil || !math.IsNaN(float64(n)) {
		t.Errorf("null is read as %v, %v", n, err)
	}
	if err := json.Unmarshal([]byte(`"12"`), &n); err == nil {
		t.Error("a text is read as a number")
	}
}

func TestNumberProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64().Draw(t, "x")
		data, err := json.Marshal(Number(x))
		if err != nil {
			t.Fatal(err)
		}
		var back Number
		if err := json.Unmarshal(data, &back); err != nil {
			t.Fatal(err)
		}
		if Known(x) && !(math.Abs(float64(back)-x) <= 5.1e-13*math.Abs(x)+5e-324) {
			t.Fatalf("%v comes back as %v", x, back)
		}
		if Known(x) && float64(back) != printed(x)+0 {
			t.Fatalf("%v is compared as %v and printed as %s", x, printed(x), data)
		}
	})
}

// The layout of a finding in the answers: keys of the contract, in its order.
func TestJSONLayout(t *testing.T) {
	c := line()
	c.Limit.Inputs[0].Value = nan
	c.Assumptions = []string{"legs taut"}
	got, err := json.MarshalIndent(c.Conclude(), "", " ")
	if err != nil {
		t.Fatal(err)
	}
	want := `{
 "id": "load.line.NW",
 "subject": {
  "part": "hang/lines/NW",
  "plan": {
   "line": 31,
   "column": 7
  }
 },
 "statement": "North-west line",
 "case": "lost SE",
 "relation": "at_most",
 "value": 328.169,
 "limit": null,
 "unit": "N",
 "margin": null,
 "slack": null,
 "result": "not known",
 "formula": "T = max(T_built, T_lost) ≤ F = B · k / n",
 "inputs": [
  {
   "symbol": "T_built",
   "name": "as built",
   "value": 164.085,
   "unit": "N",
   "origin": "frame"
  },
  {
   "symbol": "T_lost",
   "name": "one line lost",
   "value": 328.169,
   "unit": "N",
   "origin": "frame"
  },
  {
   "symbol": "B",
   "name": "breaking strength",
   "value": null,
   "unit": "N",
   "origin": "kit rope/manila"
  },
  {
   "symbol": "k",
   "name": "knot",
   "value": 0.6,
   "unit": "",
   "origin": "bowline"
  },
  {
   "symbol": "n",
   "name": "design factor",
   "value": 10,
   "unit": "",
   "origin": "plan.yaml:9"
  }
 ],
 "steps": [
  {
   "formula": "T = max(T_built, T_lost)",
   "substituted": "max(164.085, 328.169)",
   "symbol": "T",
   "name": "tension",
   "value": 328.169,
   "unit": "N"
  },
  {
   "formula": "F = B · k / n",
   "substituted": "? × 0.6 / 10",
   "symbol": "F",
   "name": "allowed",
   "value": null,
   "unit": "N"
  }
 ],
 "assumptions": [
  "legs taut"
 ],
 "causes": [],
 "source": {
  "id": "plan",
  "clause": "rules.factor.rope",
  "page": "",
  "read": true
 },
 "why": "breaking strength B is not known"
}`
	if diff := cmp.Diff(want, string(got)); diff != "" {
		t.Error(diff)
	}
}

func TestJSONOfNothing(t *testing.T) {
	got, err := json.Marshal(Unknown("x", Subject{Part: "p"}, "S", ""))
	want := `{"id":"x","subject":{"part":"p","plan":{"line":null,"column":null}},"statement":"S","case":"","relation":"at_most",` +
		`"value":null,"limit":null,"unit":"","margin":null,"slack":null,"result":"not known","formula":"","inputs":[],"steps":[],` +
		`"assumptions":[],"causes":[],"source":{"id":"","clause":"","page":"","read":false}}`
	if err != nil || string(got) != want {
		t.Errorf("got  %s, %v\nwant %s", got, err, want)
	}
}

func TestJSONReadsBack(t *testing.T) {
	remembered := line() // from memory, though its publication was read in part
	remembered.Source = source.Citation{Source: "asme-b30.26", Clause: "26-1.2", FromMemory: true}
	for _, f := range []Finding{line().Conclude(), remembered.Conclude(), Refused("x", Subject{}, "S", "tumbles")} {
		data, err := json.Marshal(f)
		if err != nil {
			t.Fatal(err)
		}
		var back Finding
		if err := json.Unmarshal(data, &back); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(f, back, cmpopts.EquateNaNs(), cmpopts.EquateEmpty(), cmpopts.EquateApprox(1e-12, 0)); diff != "" {
			t.Error(diff)
		}
		if again, _ := json.Marshal(back); !bytes.Equal(again, data) {
			t.Errorf("%s\nthen\n%s", data, again)
		}
		if strings.Join(back.Working(Sources), "\n") != strings.Join(f.Working(Sources), "\n") {
			t.Error("the working of what was read back differs")
		}
	}
}

func FuzzFindingJSON(f *testing.F) {
	for _, x := range []Finding{line().Conclude(), Refused("x", Subject{}, "S", "tumbles")} {
		data, err := json.Marshal(x)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(`{"subject":{"plan":{"line":3}},"value":1e308,"inputs":[{"value":null}],"steps":null,"source":{"id":"iso-2720","read":false}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		var a, b Finding
		if json.Unmarshal(data, &a) != nil {
			return
		}
		once, err := json.Marshal(a)
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(once, &b); err != nil {
			t.Fatalf("%s is refused: %v", once, err)
		}
		if twice, err := json.Marshal(b); err != nil || !bytes.Equal(once, twice) {
			t.Fatalf("%s then %s, %v", once, twice, err)
		}
		a.Working(Sources)
	})
}
