package stock

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"softloft/kit"
	"softloft/quantity"

	"pgregory.net/rapid"
)

// served says what is wrong with how needs were served.
func (s *Shop) served(needs []Need, got Served) string {
	if len(got.Lines) != len(needs) {
		return "not a line for each need"
	}
	for i, n := range needs {
		l := got.Lines[i]
		if l.ID != n.ID || l.Own < 0 || l.Rented < 0 || l.Short < 0 || l.Own+l.Rented+l.Short != n.Count || l.Longer > l.Own+l.Rented {
			return fmt.Sprintf("need %+v is served as %+v", n, l)
		}
	}
	for _, take := range got.Takes {
		if take.Count <= 0 || take.Count > s.Items[take.Item].Count {
			return fmt.Sprintf("%d pieces come off a row of %d", take.Count, s.Items[take.Item].Count)
		}
	}
	bars := map[int]int{}
	for _, c := range got.Cuts {
		for _, b := range c.Bars {
			took := -c.Kerf
			for _, p := range b.Pieces {
				took += p.Length + c.Kerf
			}
			if took > b.Length+1e-7 || len(b.Pieces) == 0 {
				return fmt.Sprintf("bar %+v", b)
			}
			if b.Item != Short {
				bars[b.Item]++
				if item := s.Items[b.Item]; item.Kit != c.Kit || (!item.cuttable() && len(b.Pieces) > 1) {
					return fmt.Sprintf("bar %+v of %+v", b, item)
				}
			}
		}
	}
	for item, n := range bars {
		if !slices.ContainsFunc(got.Takes, func(t Take) bool { return t.Item == item && t.Count == n }) {
			return "the bars are not what comes off the shelf"
		}
	}
	return ""
}

func shopOf(t *testing.T, rows string) *Shop {
	t.Helper()
	shop, mistakes := Read("s.yaml", []byte("stock: 1\ncurrency: USD\nkerf: 3 mm\nitems:\n"+rows))
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	return shop
}

func standard(t *testing.T) kit.Kit {
	t.Helper()
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	return base
}

func feet(x float64) float64 { return x * 0.3048 }

// Own before rented before short; counts by hand.
func TestOwnThenRentedThenShort(t *testing.T) {
	shop := shopOf(t, `
  - {kind: lamp, kit: panel-2x1, count: 9, rate: 30, from: far house}
  - {kind: lamp, kit: panel-2x1, count: 4, shelf: cage 1, each: 8 kg, packed: [1 m, 0.5 m, 0.2 m]}
  - {kind: lamp, kit: panel-2x1, count: 3, rate: 20, from: near house}
`)
	needs := []Need{{"lamps", "lamp", "panel-2x1", 0, 20}}
	got := shop.Serve(needs, standard(t), 3)
	if fault := shop.served(needs, got); fault != "" {
		t.Fatal(fault)
	}
	l := got.Lines[0]
	if l.Own != 4 || l.Rented != 12 || l.Short != 4 || !slices.Equal(l.From, []string{"near house", "far house"}) || !slices.Equal(l.Shelves, []string{"cage 1"}) {
		t.Errorf("%+v", l)
	}
	total := 0.0
	for _, take := range got.Takes {
		total += take.Cost
	}
	if total != 3*(3*20+9*30) {
		t.Errorf("rent %g, want %d", total, 3*(3*20+9*30))
	}
	if own := got.Takes[1]; own.Mass != 32 || math.Abs(own.Volume-0.4) > 1e-12 {
		t.Errorf("%+v: 32 kg and 0.4 m3 are due", own)
	}
}

// Two pieces of 8 ft come out of one 20 ft tube, one of 16 ft needs one of its own; the
// rented tubes are not cut.
func TestTubesAreCutTogether(t *testing.T) {
	shop := shopOf(t, `
  - {kind: tube, kit: pipe-1-1/4, length: 20 ft, count: 2, shelf: rack}
  - {kind: tube, kit: pipe-1-1/4, length: 10 ft, count: 5, rate: 2, from: house}
`)
	needs := []Need{{"a", "tube", "pipe-1-1/4", feet(8), 4}, {"b", "tube", "pipe-1-1/4", feet(16), 1}}
	got := shop.Serve(needs, standard(t), 1)
	if fault := shop.served(needs, got); fault != "" {
		t.Fatal(fault)
	}
	if a, b := got.Lines[0], got.Lines[1]; a.Own != 2 || a.Rented != 2 || a.Longer != 2 || b.Own != 1 || a.Short+b.Short != 0 {
		t.Errorf("%+v\n%+v", a, b)
	}
	if c := got.Cuts[0]; !c.Proved || len(c.Bars) != 4 || c.Kerf != 0.003 {
		t.Errorf("%+v", c)
	}
}

// What is short names a length that the kit lists, and a piece longer than all of them says so.
func TestShortTubes(t *testing.T) {
	shop := shopOf(t, "  - {kind: tube, kit: pipe-1-1/4, length: 6 ft, count: 9}\n")
	needs := []Need{{"a", "tube", "pipe-1-1/4", feet(16), 2}, {"b", "tube", "pipe-1-1/4", feet(24), 1}}
	got := shop.Serve(needs, standard(t), 1)
	if fault := shop.served(needs, got); fault != "" {
		t.Fatal(fault)
	}
	if got.Lines[0].Short != 2 || got.Lines[1].Short != 1 || !strings.Contains(got.Lines[1].Why, "longer than every length") {
		t.Errorf("%+v", got.Lines)
	}
	for _, b := range got.Cuts[0].Bars {
		if b.Item != Short || math.Abs(b.Length-feet(16)) > 1e-9 {
			t.Errorf("%+v: a 16 ft tube is short", b)
		}
	}
}

// The next rope up is named and not counted.
func TestTheNextRopeUp(t *testing.T) {
	shop := shopOf(t, `
  - {kind: rope, kit: polyester-3/8, length: 100 ft, count: 9}
  - {kind: rope, kit: polyester-3/4, length: 100 ft, count: 9}
  - {kind: rope, kit: polyester-5/8, length: 100 ft, count: 2}
  - {kind: rope, kit: manila-5/8, length: 100 ft, count: 2}
`)
	needs := []Need{{"a", "rope", "polyester-1/2", feet(40), 3}}
	got := shop.Serve(needs, standard(t), 1)
	if fault := shop.served(needs, got); fault != "" {
		t.Fatal(fault)
	}
	l := got.Lines[0]
	if l.Short != 3 || len(l.StandIn) != 1 || !strings.HasPrefix(l.StandIn[0], "polyester-5/8, the next rope up: enough for 4 pieces") {
		t.Errorf("%+v", l)
	}
}

// A longer piece stands in for what isn't cut, the shortest that is long enough first.
func TestALongerPieceStandsIn(t *testing.T) {
	shop := shopOf(t, `
  - {kind: cable, kit: cable-12/3, length: 100 ft, count: 3}
  - {kind: cable, kit: cable-12/3, length: 25 ft, count: 1}
  - {kind: cable, kit: cable-12/3, length: 50 ft, count: 1}
`)
	needs := []Need{{"a", "cable", "cable-12/3", feet(25), 3}}
	got := shop.Serve(needs, standard(t), 1)
	if l := got.Lines[0]; l.Own != 3 || l.Longer != 2 || got.Takes[0].Count != 1 {
		t.Errorf("%+v %+v", l, got.Takes)
	}
}

func TestServeHolds(t *testing.T) {
	base := standard(t)
	rapid.Check(t, func(t *rapid.T) {
		shop := &Shop{Currency: "USD", Kerf: quantity.Length(rapid.Float64Range(0, 0.005).Draw(t, "kerf"))}
		rows := rapid.IntRange(0, 6).Draw(t, "rows")
		for range rows {
			length := quantity.Length(rapid.IntRange(2, 24).Draw(t, "length")) * 0.3048
			item := Item{Kind: "tube", Kit: "pipe-1-1/4", Length: &length, Count: rapid.IntRange(0, 5).Draw(t, "count")}
			if rapid.Bool().Draw(t, "rented") {
				item.From = "house"
				if rapid.Bool().Draw(t, "rated") {
					rate := rapid.Float64Range(0, 50).Draw(t, "rate")
					item.Rate = &rate
				}
			}
			shop.Items = append(shop.Items, item)
		}
		var needs []Need
		total := 0
		for i := range rapid.IntRange(1, 4).Draw(t, "needs") {
			n := Need{fmt.Sprint(i), "tube", "pipe-1-1/4", float64(rapid.IntRange(2, 22).Draw(t, "need")) * 0.3048, rapid.IntRange(0, 5).Draw(t, "pieces")}
			needs, total = append(needs, n), total+n.Count
		}
		got := shop.Serve(needs, base, 2)
		if fault := shop.served(needs, got); fault != "" {
			t.Fatalf("%s\n%+v", fault, got)
		}
		// One more own bar of the longest kind never makes more short.
		length := quantity.Length(24 * 0.3048)
		more := *shop
		more.Items = append(slices.Clone(shop.Items), Item{Kind: "tube", Kit: "pipe-1-1/4", Length: &length, Count: 1})
		if a, b := short(got), short(more.Serve(needs, base, 2)); b > a && a >= 0 && allProved(got) {
			t.Fatalf("%d short, %d with one more tube", a, b)
		}
	})
}

// short counts bars that are short, and pieces that fit in none.
func short(got Served) int {
	n := 0
	for _, c := range got.Cuts {
		n += c.TooLong
		for _, b := range c.Bars {
			if b.Item == Short {
				n++
			}
		}
	}
	return n
}

func allProved(got Served) bool {
	return !slices.ContainsFunc(got.Cuts, func(c Cut) bool { return !c.Proved })
}
