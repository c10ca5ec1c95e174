package document

import "softloft/quantity"

// samplePlan uses every kind of value that Read knows.
type samplePlan struct {
	Version int                   `key:"softloft,required"`
	Title   string                `key:"title"`
	On      bool                  `key:"on"`
	Sheet   sampleSheet           `key:"sheet"`
	Box     sampleBox             `key:"box,required"`
	Lamps   []sampleLamp          `key:"lamps"`
	Camera  *sampleCamera         `key:"camera"`
	Track   [][3]float64          `key:"track"`
	Kit     map[string]sampleItem `key:"kit"`
	Spare   uint8                 `key:"spare"`
}

type sampleSheet struct {
	Units quantity.System `key:"units"`
	Paper samplePaper     `key:"paper"`
}

type samplePaper string

func (samplePaper) Words() []string { return []string{"letter", "a4"} }

type samplePlace struct {
	At   [2]quantity.Length `key:"at"`
	Turn quantity.Angle     `key:"turn"`
}

type sampleBox struct {
	samplePlace
	Size  [2]quantity.Length `key:"size,required"`
	Trim  *quantity.Length   `key:"trim"`
	Sides sampleSides        `key:"sides"`
	Roof  *sampleSides       `key:"roof"`
}

type sampleLamp struct {
	Name  string             `key:"name"`
	Kit   string             `key:"kit,required"`
	Above quantity.Length    `key:"above"`
	Level quantity.Share     `key:"level"`
	On    sampleHold         `key:"on"`
	At    [2]quantity.Length `key:"at"`
	Count int                `key:"count"`
	Stop  quantity.TStop     `key:"stop"`
}

type sampleCamera struct {
	Looks [3]quantity.Length `key:"looks,required"`
	Lens  quantity.Length    `key:"lens"`
}

type sampleItem struct {
	Mass   quantity.Mass `key:"mass"`
	Gain   float64       `key:"gain"`
	Parts  []string      `key:"parts"`
	Within *sampleItem   `key:"within"`
}

// sampleSides is a word, a reflectance or one for each side.
type sampleSides struct {
	All         sampleCloth
	Reflectance *float64    `key:"reflectance"`
	North       sampleCloth `key:"north"`
	South       sampleCloth `key:"south"`
}

type sampleCloth string

func (sampleCloth) Words() []string { return []string{"white", "black", "silver", "none"} }

func (s *sampleSides) ReadFrom(c *Cursor) {
	if c.IsText() {
		c.Into(&s.All)
		return
	}
	c.Into(s)
}

// sampleHold is {rib: 1}, {frame: north} or a list of ribs; it reads its keys one by one.
type sampleHold struct {
	Ribs  []int
	Frame string
}

func (h *sampleHold) ReadFrom(c *Cursor) {
	switch {
	case c.IsList():
		for _, item := range c.Items() {
			var rib int
			if item.Into(&rib) {
				h.Ribs = append(h.Ribs, rib)
			}
		}
	case c.IsMap():
		rib, onRib := c.Key("rib")
		frame, onFrame := c.Key("frame")
		switch {
		case onRib && onFrame:
			c.Wrong("a lamp hangs on a rib or on the frame, not on both", "leave one out")
		case onRib:
			h.Ribs = make([]int, 1)
			rib.Into(&h.Ribs[0])
		case onFrame:
			frame.Into(&h.Frame)
		}
	default:
		c.Wrong(quoted(c.Text())+" holds no lamp", "write {rib: 1} or {frame: north}")
	}
}
