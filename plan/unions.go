package plan

import (
	"fmt"
	"strconv"
	"strings"

	"softloft/document"
	"softloft/quantity"
)

// A value of the plan that may take several forms reads itself here, and says
// which forms would be right where it can't.

// ReadFrom takes a number or a source's id.
func (f *Factor) ReadFrom(c *document.Cursor) {
	if !c.IsText() {
		c.Wrong("a factor is one value", "a number such as 10, or the id of a source")
		return
	}
	number, err := strconv.ParseFloat(c.Text(), 64)
	if err != nil {
		f.Source = c.Text()
		return
	}
	if !(number >= 1 && number <= 1e6) {
		c.Wrong(fmt.Sprintf("a design factor of %s", c.Text()), "breaking strength over load, 1 or more, such as 10")
		return
	}
	f.Number = number
}

// ReadFrom takes up, down or three bare numbers.
func (f *Facing) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		switch c.Text() {
		case "up":
			*f = Facing{0, 0, 1}
		case "down":
			*f = Facing{0, 0, -1}
		default:
			c.Wrong("no such direction \""+c.Text()+"\"", "up, down or three numbers such as [1, 0, 0]")
		}
		return
	}
	var direction [3]float64
	if !c.Into(&direction) {
		return
	}
	if direction == ([3]float64{}) {
		c.Wrong("a direction of [0, 0, 0]", "up, down or three numbers such as [1, 0, 0]")
	}
	*f = direction
}

// ReadFrom takes the word any or an angle.
func (b *Bearing) ReadFrom(c *document.Cursor) {
	if c.IsText() && c.Text() == "any" {
		b.Any = true
		return
	}
	c.Into(&b.At)
}

// ReadFrom takes none, {uprights: …} or {drops: …}.
func (j *Join) ReadFrom(c *document.Cursor) {
	if isNone(c, "none, {uprights: {tube, count}} or {drops: {kit, count, length}}") {
		return
	}
	var form struct {
		Uprights *Uprights `key:"uprights"`
		Drops    *Drops    `key:"drops"`
	}
	if !c.Into(&form) {
		return
	}
	if form.Uprights != nil && form.Drops != nil {
		c.Wrong("frames joined by uprights and by drops", "one of the two")
	}
	j.Uprights, j.Drops = form.Uprights, form.Drops
}

// ReadFrom takes none or {tube, corners, welded}.
func (u *Upper) ReadFrom(c *document.Cursor) {
	if isNone(c, "none or {tube, corners, welded}") {
		return
	}
	var form struct {
		Tube    string `key:"tube,required"`
		Corners Fixity `key:"corners"`
		Welded  bool   `key:"welded"`
	}
	form.Corners = "rigid"
	if c.Into(&form) {
		*u = Upper(form)
	}
}

// isNone reports whether a value is a word, and complains of a word but none.
func isNone(c *document.Cursor, forms string) bool {
	if !c.IsText() {
		return false
	}
	if c.Text() != "none" {
		c.Wrong("no such value \""+c.Text()+"\"", forms)
	}
	return true
}

// ReadFrom takes a cloth's id or {kit, gap}.
func (l *ClothLayer) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		l.Kit = c.Text()
		return
	}
	var form struct {
		Kit string          `key:"kit,required"`
		Gap quantity.Length `key:"gap"`
	}
	if c.Into(&form) {
		*l = ClothLayer(form)
	}
}

// ReadFrom takes slack, {sag} or {cut, pretension}.
func (t *ClothTie) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		if c.Text() != "slack" {
			c.Wrong("no such tie \""+c.Text()+"\"", "slack, {sag: 2 in} or {cut: [12 ft, 12 ft], pretension: 20 N/m}")
		}
		return
	}
	var form struct {
		Sag        *quantity.Length    `key:"sag"`
		Cut        *[2]quantity.Length `key:"cut"`
		Pretension *quantity.LineForce `key:"pretension"`
	}
	if c.Into(&form) {
		*t = ClothTie(form)
	}
}

var faceWords = []string{"white", "black", "silver", "none", "open"}

// ReadFrom takes a word or {reflectance}.
func (f *Face) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		for _, word := range faceWords {
			if c.Text() == word {
				f.Word = word
				return
			}
		}
		c.Wrong("no such face \""+c.Text()+"\"", strings.Join(faceWords, ", ")+" or {reflectance: 0.8}")
		return
	}
	var form struct {
		Reflectance *float64 `key:"reflectance,required"`
	}
	if !c.Into(&form) || form.Reflectance == nil {
		return
	}
	if !(*form.Reflectance >= 0 && *form.Reflectance < 1) {
		c.Wrong(fmt.Sprintf("a reflectance of %v", *form.Reflectance), "0 or more and less than 1, such as 0.8")
		return
	}
	f.Reflectance = form.Reflectance
}

// ReadFrom takes one face for all sides, or a face by side.
func (s *Sides) ReadFrom(c *document.Cursor) {
	_, one := c.Key("reflectance")
	if c.IsText() || one {
		var face Face
		c.Into(&face)
		*s = Sides{face, face, face, face}
		return
	}
	var form struct {
		North Face `key:"north"`
		South Face `key:"south"`
		East  Face `key:"east"`
		West  Face `key:"west"`
	}
	none := Face{Word: "none"}
	form.North, form.South, form.East, form.West = none, none, none, none
	if c.Into(&form) {
		*s = Sides{form.North, form.South, form.East, form.West}
	}
}

// ReadFrom takes one length for all sides, or a length by side.
func (s *Skirts) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		if c.Text() == "none" {
			return
		}
		var all quantity.Length
		c.Into(&all)
		*s = Skirts{all, all, all, all}
		return
	}
	var form struct {
		North quantity.Length `key:"north"`
		South quantity.Length `key:"south"`
		East  quantity.Length `key:"east"`
		West  quantity.Length `key:"west"`
	}
	if c.Into(&form) {
		*s = Skirts{form.North, form.South, form.East, form.West}
	}
}

// CornerNames names the corners, counter-clockwise from the north-east: they stay
// with the box when it turns.
var CornerNames = [4]string{"ne", "nw", "sw", "se"}

// ReadFrom takes a corner's name, [x, y] or [x, y, z].
func (f *From) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		for _, name := range CornerNames {
			if c.Text() == name {
				f.Corner = name
				return
			}
		}
		c.Wrong("no such corner \""+c.Text()+"\"", "nw, ne, se, sw, or a place in box axes: [x, y] or [x, y, z]")
		return
	}
	switch len(c.Items()) {
	case 2:
		var at [2]quantity.Length
		c.Into(&at)
		f.At[0], f.At[1] = at[0], at[1]
	case 3:
		f.Deep = c.Into(&f.At)
	default:
		c.Wrong(fmt.Sprintf("a place with %d values", len(c.Items())), "nw, ne, se, sw, [x, y] or [x, y, z]")
	}
}

// ReadFrom takes a point's name or {bridle: [P1, P2], apex}.
func (t *To) ReadFrom(c *document.Cursor) {
	if c.IsText() {
		t.Point = c.Text()
		return
	}
	var bridle Bridle
	if c.Into(&bridle) {
		t.Bridle = &bridle
	}
}

// ReadFrom takes base or leg and its number.
func (p *BagPlace) ReadFrom(c *document.Cursor) {
	if c.Text() == "base" {
		return
	}
	number, ok := strings.CutPrefix(c.Text(), "leg ")
	leg, err := strconv.Atoi(number)
	if !ok || err != nil || leg < 1 {
		c.Wrong("no such place \""+c.Text()+"\"", "base, or leg 1 for the first leg")
		return
	}
	p.Leg = leg
}
