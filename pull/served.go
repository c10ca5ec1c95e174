package pull

import (
	"math"
	"strings"

	"softloft/finding"
	"softloft/kit"
	"softloft/stock"
)

// Served is the list held against a shop's stock. Numbers are null where a value that
// goes into them is not known; the lists beside them say of what.
type Served struct {
	Shop     string      `json:"shop"`
	Currency string      `json:"currency"`
	Days     int         `json:"days"`
	Rows     []ServedRow `json:"pull"`
	Cuts     []CutList   `json:"cuts"`
	Takes    []Take      `json:"takes"`
	Totals   Totals      `json:"totals"`
	Odd      []string    `json:"odd"` // rows of the stock that name what the kit doesn't have
	Notes    []string    `json:"notes"`
}

// ServedRow is a row of the list with where it comes from. Shelf and Short are null where
// the shop has no part in it: own, rented and short are then 0.
type ServedRow struct {
	Row
	Own     int      `json:"own"`
	Rented  int      `json:"rented"`
	Longer  int      `json:"longer"` // of own and rented: a longer piece stands in, uncut
	From    []string `json:"from"`
	StandIn []string `json:"stand_in"`
	Why     string   `json:"why"`
}

// CutList is how one tube or rope is cut.
type CutList struct {
	Kind    string         `json:"kind"`
	Kit     string         `json:"kit"`
	Kerf    finding.Number `json:"kerf_m"`
	Proved  bool           `json:"proved"`
	Gap     string         `json:"gap"`
	TooLong int            `json:"too_long"`
	Bars    []CutBar       `json:"bars"`
}

// CutBar is one bar and the pieces from it, longest first. A short one is on no shelf.
type CutBar struct {
	Short  bool             `json:"short"`
	Shelf  string           `json:"shelf"`
	From   string           `json:"from"`
	Length finding.Number   `json:"length_m"`
	Pieces []finding.Number `json:"pieces_m"`
	Rows   []string         `json:"rows"` // of each piece
	Rest   finding.Number   `json:"rest_m"`
}

// Take is what comes off one row of the stock.
type Take struct {
	Kind   string         `json:"kind"`
	Kit    string         `json:"kit"`
	Length finding.Number `json:"length_m"`
	Count  int            `json:"count"`
	Shelf  string         `json:"shelf"`
	From   string         `json:"from"`
	Mass   finding.Number `json:"mass_kg"`
	Volume finding.Number `json:"volume_m3"`
	Cost   finding.Number `json:"cost"`
}

// Totals adds the list up. Mass is that of the list as rigged; volume and cost are of what
// comes off the stock. The known sums leave out what is not known.
type Totals struct {
	Mass          finding.Number `json:"mass_kg"`
	MassKnown     finding.Number `json:"mass_known_kg"`
	MassUnknown   []string       `json:"mass_unknown"`
	Volume        finding.Number `json:"volume_m3"`
	VolumeKnown   finding.Number `json:"volume_known_m3"`
	VolumeUnknown []string       `json:"volume_unknown"`
	Cost          finding.Number `json:"cost"`
	CostKnown     finding.Number `json:"cost_known"`
	CostUnknown   []string       `json:"cost_unknown"`
	Short         int            `json:"short"` // pieces
}

// Against serves a list from a shop. The rows keep their ids and their order. Days is the
// time of the rental, from 1.
func Against(rows []Row, shop *stock.Shop, of kit.Kit, days int) Served {
	needs, index := needsOf(rows)
	got := shop.Serve(needs, of, days)
	s := Served{Shop: shop.Name, Currency: shop.Currency, Days: days, Rows: []ServedRow{}, Cuts: []CutList{}, Takes: []Take{}, Odd: shop.Odd(of)}
	for i, row := range rows {
		told := ServedRow{Row: row, From: []string{}, StandIn: []string{}}
		if k, ok := index[i]; ok {
			told = served(row, got.Lines[k])
		} else {
			told.Why = apart(row)
		}
		s.Rows = append(s.Rows, told)
	}
	for _, c := range got.Cuts {
		s.Cuts = append(s.Cuts, cutList(c, shop, needs))
	}
	for _, t := range got.Takes {
		item := shop.Items[t.Item]
		s.Takes = append(s.Takes, Take{Kind: item.Kind, Kit: item.Kit, Length: lengthOf(item), Count: t.Count, Shelf: item.Shelf, From: item.From,
			Mass: finding.Number(t.Mass), Volume: finding.Number(t.Volume), Cost: finding.Number(t.Cost)})
	}
	s.Totals = totals(s)
	s.Notes = notesOf()
	return s
}

// notesOf hold for every list.
func notesOf() []string {
	return []string{
		"a splice of two short tubes is not offered: it is another frame, and a new plan",
		"cloth, wraps and crates are matched by id: their size is not compared",
		"knots and slings of a rope are in its length only as far as the list has them",
	}
}

// needsOf lists what the shop may have; index is the need of each row.
func needsOf(rows []Row) (needs []stock.Need, index map[int]int) {
	index = map[int]int{}
	for i, row := range rows {
		if apart(row) != "" {
			continue
		}
		n := stock.Need{ID: row.ID, Kind: row.Kind, Kit: row.Kit, Count: row.Count}
		if finding.Known(float64(row.Length)) {
			n.Length = float64(row.Length)
		}
		index[i] = len(needs)
		needs = append(needs, n)
	}
	return needs, index
}

// apart says why a row is none of the stock's; empty where it is.
func apart(row Row) string {
	switch {
	case strings.HasPrefix(row.ID, "pull.power-supply."):
		return "comes with its lamp"
	case row.Kit == "" || row.Kind == "":
		return "the plan names no kit entry for it"
	}
	return ""
}

func served(row Row, l stock.Line) ServedRow {
	told := ServedRow{Row: row, Own: l.Own, Rented: l.Rented, Longer: l.Longer, From: listed(l.From), StandIn: listed(l.StandIn), Why: l.Why}
	shelf, short := strings.Join(l.Shelves, ", "), l.Short
	told.Short = &short
	if shelf != "" {
		told.Shelf = &shelf
	}
	return told
}

func listed(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

func lengthOf(item stock.Item) finding.Number {
	if item.Length == nil {
		return finding.Number(math.NaN())
	}
	return finding.Number(*item.Length)
}

func cutList(c stock.Cut, shop *stock.Shop, needs []stock.Need) CutList {
	told := CutList{Kind: c.Kind, Kit: c.Kit, Kerf: finding.Number(c.Kerf), Proved: c.Proved, Gap: c.Gap, TooLong: c.TooLong, Bars: []CutBar{}}
	for _, b := range c.Bars {
		bar := CutBar{Short: b.Item == stock.Short, Length: finding.Number(b.Length), Rest: finding.Number(b.Rest)}
		if !bar.Short {
			bar.Shelf, bar.From = shop.Items[b.Item].Shelf, shop.Items[b.Item].From
		}
		for _, p := range b.Pieces {
			bar.Pieces = append(bar.Pieces, finding.Number(p.Length))
			bar.Rows = append(bar.Rows, needs[p.Need].ID)
		}
		told.Bars = append(told.Bars, bar)
	}
	return told
}

// totals adds up; a sum is not known as soon as one of its terms is not.
func totals(s Served) Totals {
	t := Totals{MassUnknown: []string{}, VolumeUnknown: []string{}, CostUnknown: []string{}}
	for _, row := range s.Rows {
		sum(&t.Mass, &t.MassKnown, &t.MassUnknown, row.Each*finding.Number(row.Count), row.ID)
		if row.Short != nil {
			t.Short += *row.Short
		}
	}
	for _, take := range s.Takes {
		name := take.Kind + " " + take.Kit
		sum(&t.Volume, &t.VolumeKnown, &t.VolumeUnknown, take.Volume, name)
		sum(&t.Cost, &t.CostKnown, &t.CostUnknown, take.Cost, name)
	}
	return t
}

func sum(all, known *finding.Number, unknown *[]string, x finding.Number, name string) {
	*all += x
	if !finding.Known(float64(x)) {
		*unknown = append(*unknown, name)
		return
	}
	*known += x
}
