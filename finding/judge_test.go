package finding

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

var nan = math.NaN()

func TestJudge(t *testing.T) {
	for _, c := range []struct {
		what          string
		relation      Relation
		value, limit  float64
		unit          string
		margin, slack float64
		result        Result
	}{
		{"half of the limit", AtMost, 500, 1000, "N", 2, 500, Within},
		{"margin just 1.1", AtMost, 1000, 1100, "N", 1.1, 100, Within},
		{"margin under 1.1", AtMost, 1000, 1099, "N", 1.099, 99, Tight},
		{"at the limit", AtMost, 1000, 1000, "N", 1, 0, Tight},
		{"over", AtMost, 1001, 1000, "N", 0.999000999001, -1, Over},
		{"equal but for the sum's rounding", AtMost, 0.30000000000000004, 0.3, "m", 1, 0, Tight},
		{"value 0", AtMost, 0, 5, "N", nan, 5, Within},
		{"both 0", AtMost, 0, 0, "N", nan, 0, Within},
		{"limit 0", AtMost, 5, 0, "N", 0, -5, Over},
		{"value negative", AtMost, -5, 5, "N", nan, 10, Within},
		{"limit negative", AtMost, 5, -5, "N", nan, -10, Over},
		{"enough", AtLeast, 3, 1.5, "", 2, 1.5, Within},
		{"barely enough", AtLeast, 1.6, 1.5, "", 1.066666666667, 0.1, Tight},
		{"too little", AtLeast, 1, 1.5, "", 0.6666666666667, -0.5, Over},
		{"nothing where something is due", AtLeast, 0, 1.5, "", 0, -1.5, Over},
		{"nothing is due", AtLeast, 0, 0, "", nan, 0, Within},
		{"stops in hand", AtLeast, 1.5, 1, "stop", nan, 0.5, Within},
		{"stops, just a tenth", AtLeast, 4.6, 4.5, "stop", nan, 0.1, Within},
		{"stops, under a tenth", AtMost, 0.45, 0.5, "stop", nan, 0.05, Tight},
		{"stops, over", AtMost, 0.6, 0.5, "stop", nan, -0.1, Over},
		{"stops, value 0", AtMost, 0, 0.05, "stop", nan, 0.05, Tight},
		{"value not known", AtMost, nan, 5, "N", nan, nan, NotKnown},
		{"limit not known", AtMost, 5, nan, "N", nan, nan, NotKnown},
		{"infinite value", AtLeast, math.Inf(1), 5, "N", nan, nan, NotKnown},
		{"infinite limit", AtMost, 5, math.Inf(1), "N", nan, nan, NotKnown},
		{"no relation", "", 5, 10, "N", nan, nan, NotKnown},
	} {
		margin, slack, result := Judge(c.relation, c.value, c.limit, c.unit)
		if !alike(margin, c.margin) || !alike(slack, c.slack) || result != c.result {
			t.Errorf("%s: margin %v, slack %v, %s; want %v, %v, %s", c.what, margin, slack, result, c.margin, c.slack, c.result)
		}
	}
}

func alike(a, b float64) bool {
	return a == b || math.IsNaN(a) && math.IsNaN(b) || math.Abs(a-b) <= 1e-12*math.Abs(b)
}

func TestJudgeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.Float64Range(1e-6, 1e6).Draw(t, "value")
		limit := rapid.Float64Range(1e-6, 1e6).Draw(t, "limit")
		margin, slack, result := Judge(AtMost, value, limit, "N")
		if (result == Over) != (margin < 1) || (result == Over) != (slack < 0) {
			t.Fatalf("%v at most %v: %s with margin %v, slack %v", value, limit, result, margin, slack)
		}
		// Turned round, the same comparison has the same margin and result.
		turned, _, again := Judge(AtLeast, limit, value, "N")
		if turned != margin || again != result {
			t.Fatalf("%v at most %v has margin %v, %s; turned round %v, %s", value, limit, margin, result, turned, again)
		}
		// More of what is limited is never better.
		_, _, more := Judge(AtMost, value*1.01, limit, "N")
		if Worst(more, result) != more {
			t.Fatalf("%v is %s, a hundredth more is %s", value, result, more)
		}
	})
}

func TestWorst(t *testing.T) {
	for _, c := range []struct {
		results []Result
		want    Result
	}{
		{nil, NotKnown},
		{[]Result{Within}, Within},
		{[]Result{Within, Tight}, Tight},
		{[]Result{Within, NotKnown, Tight}, NotKnown},
		{[]Result{NotKnown, Over, Within}, Over},
		{[]Result{Within, ""}, NotKnown},
		{[]Result{"fine"}, NotKnown},
	} {
		if got := Worst(c.results...); got != c.want {
			t.Errorf("the worst of %q is %q, want %q", c.results, got, c.want)
		}
	}
	if got := Overall(nil); got != NotKnown {
		t.Errorf("no findings at all are %q", got)
	}
}
