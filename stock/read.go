package stock

import (
	"fmt"
	"slices"
	"strings"

	"softloft/document"
	"softloft/kit"
)

// Bounds against slips of the pen, far outside of any shop: design assumptions.
const (
	mostItems  = 5000
	mostCount  = 100_000
	mostRate   = 1e7
	mostLength = 1000 // m
	mostMass   = 1e5  // kg
	mostName   = 100  // characters
)

// Read reads a stock file. All mistakes come at once, sorted by place; the shop is nil
// where there is one. An id that no kit has is no mistake, see Shop.Odd.
func Read(file string, data []byte) (*Shop, document.Mistakes) {
	if mistake, table := tableNotYAML(file, data); table {
		return nil, document.Mistakes{mistake}
	}
	s := &Shop{}
	doc, mistakes := document.Read(file, data, s)
	if doc == nil {
		return nil, mistakes
	}
	s.doc = doc
	c := &checker{shop: s, mistakes: mistakes}
	c.whole()
	for i := range s.Items {
		c.item(i)
	}
	if len(c.mistakes) > 0 {
		return nil, c.mistakes.Sort()
	}
	return s, nil
}

// tableNotYAML recognizes a table of separated values, such as another program
// writes: its first line has two separators or more and no key.
func tableNotYAML(file string, data []byte) (document.Mistake, bool) {
	number := 0
	for line := range strings.Lines(strings.TrimPrefix(string(data[:min(len(data), 4096)]), "\ufeff")) {
		number++
		text := strings.TrimSpace(line)
		if text == "" || strings.HasPrefix(text, "#") {
			continue
		}
		for _, separator := range []string{",", ";", "\t"} {
			if strings.Count(text, separator) >= 2 && !strings.ContainsAny(text, ":{[") {
				return document.Mistake{Place: document.Place{File: file, Line: number, Column: 1}, Problem: "a table of separated values stands here, a stock file is due",
					Hint: "write stock: 1 and items: with rows such as - {kind: tube, kit: pipe-1-1/4, length: 20 ft, count: 6}", Text: clip(text)}, true
			}
		}
		return document.Mistake{}, false
	}
	return document.Mistake{}, false
}

func clip(text string) string {
	if runes := []rune(text); len(runes) > 100 {
		return string(runes[:100]) + "…"
	}
	return strings.ToValidUTF8(text, "?")
}

type checker struct {
	shop     *Shop
	mistakes document.Mistakes
}

// wrong tells a mistake, unless reading has told one at that place.
func (c *checker) wrong(path, problem, hint string) {
	told := slices.ContainsFunc(c.mistakes, func(m document.Mistake) bool { return m.Path == path })
	if !told && len(c.mistakes) < 1000 {
		c.mistakes = append(c.mistakes, document.Mark(c.shop.doc, path, problem, hint))
	}
}

func (c *checker) whole() {
	s := c.shop
	if s.doc.Has("stock") && s.Stock != Version {
		c.wrong("stock", fmt.Sprintf("version %d of the stock file", s.Stock), fmt.Sprintf("this softloft reads version %d", Version))
	}
	if s.Currency != "" && !letters(s.Currency) {
		c.wrong("currency", fmt.Sprintf("no currency %q", clip(s.Currency)), "three capital letters of ISO 4217, such as USD or EUR")
	}
	if !(s.Kerf >= 0 && s.Kerf <= 0.05) {
		c.wrong("kerf", "a saw cut of "+s.Kerf.String(), "0 to 50 mm, such as 1/8 in")
	}
	if len(s.Items) > mostItems {
		c.wrong("items", fmt.Sprintf("%d rows", len(s.Items)), fmt.Sprintf("%d at most", mostItems))
		s.Items = nil
	}
	c.name("shop", s.Name)
}

func letters(text string) bool {
	return len(text) == 3 && strings.Trim(text, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == ""
}

func (c *checker) name(path, text string) {
	if len([]rune(text)) > mostName {
		c.wrong(path, fmt.Sprintf("a name of %d characters", len([]rune(text))), fmt.Sprintf("%d at most", mostName))
	}
}

func (c *checker) item(i int) {
	item, path := c.shop.Items[i], document.Item("items", i)
	c.kind(path, item)
	c.name(path+".kit", item.Kit)
	c.name(path+".shelf", item.Shelf)
	c.name(path+".from", item.From)
	if item.Count < 0 || item.Count > mostCount {
		c.wrong(path+".count", fmt.Sprintf("a count of %d", item.Count), fmt.Sprintf("0 to %d pieces", mostCount))
	}
	if item.Length != nil && !(*item.Length > 0.001 && *item.Length <= mostLength) {
		c.wrong(path+".length", "a length of "+item.Length.String(), "more than 1 mm, such as 20 ft")
	}
	if item.Length == nil && isCut(item.Kind) {
		c.wrong(path+".length", "missing: a "+item.Kind+" is cut from a length", "write length: 20 ft")
	}
	if item.Each != nil && !(*item.Each >= 0 && *item.Each <= mostMass) {
		c.wrong(path+".each", "a mass of "+item.Each.String(), "0 or more, such as 15.6 lb")
	}
	if item.Packed != nil {
		for k, side := range item.Packed {
			if !(side > 0 && side <= 50) {
				c.wrong(fmt.Sprintf("%s.packed[%d]", path, k), "a side of "+side.String(), "more than 0 and at most 50 m")
			}
		}
	}
	if item.Rate != nil {
		c.rate(path+".rate", *item.Rate)
	}
}

func (c *checker) rate(path string, rate float64) {
	switch {
	case !(rate >= 0 && rate <= mostRate):
		c.wrong(path, fmt.Sprintf("a rate of %g a day", rate), "0 or more, such as 12.50")
	case c.shop.Currency == "":
		c.wrong(path, "a rate without a currency", "write currency: USD at the top")
	}
}

// kind refuses a kind that isn't one.
func (c *checker) kind(path string, item Item) {
	kinds := kit.Kinds()
	switch {
	case slices.Contains(kinds, item.Kind):
	case kit.Nearest(item.Kind, kinds) != "":
		c.wrong(path+".kind", fmt.Sprintf("the kit has no kind %q", clip(item.Kind)), "did you mean "+kit.Nearest(item.Kind, kinds)+"?")
	default:
		c.wrong(path+".kind", fmt.Sprintf("the kit has no kind %q", clip(item.Kind)), "one of "+strings.Join(kinds, ", "))
	}
	if item.Kit == "" && c.shop.doc.Has(path+".kit") {
		c.wrong(path+".kit", "no id stands here", "write the id of a kit entry, as softloft kit lists them")
	}
}
