package face

import (
	"image/color"
	"math"
	"testing"

	"softloft/light"
)

// Middle gray, 0.18, is 118 of 255 in sRGB (IEC 61966-2-1, worked by hand: 1.055 x
// 0.18^(1/2.4) - 0.055 = 0.4614), and what is twice as bright never comes out darker.
func TestGray(t *testing.T) {
	if got := gray(middleGray); got != 118 {
		t.Errorf("middle gray is %d", got)
	}
	last := uint8(0)
	for x := 1e-4; x < 100; x *= 1.1 {
		tone := gray(x)
		if tone < last {
			t.Fatalf("%g comes out darker than what is less", x)
		}
		last = tone
	}
}

// To the nearest half stop, held at the ends.
func TestBands(t *testing.T) {
	for _, c := range []struct {
		stops float64
		band  int
	}{{0, 0}, {0.24, 0}, {0.26, 1}, {-1, -2}, {-1.3, -3}, {9, highestBand}, {-40, lowestBand}, {math.Inf(-1), lowestBand}} {
		if got := bandOf(c.stops); got != c.band {
			t.Errorf("%g stops: band %d, want %d", c.stops, got, c.band)
		}
	}
}

// Every color is lighter than the one below it (relative luminance, IEC 61966-2-1), so
// that the scale reads without its hues.
func TestScaleRises(t *testing.T) {
	last := -1.0
	for band := lowestBand; band <= highestBand; band++ {
		l := luminance(colorOf(band))
		if l <= last {
			t.Errorf("band %d is not lighter than the one below", band)
		}
		last = l
	}
}

func luminance(c color.RGBA) float64 {
	linear := func(x uint8) float64 {
		v := float64(x) / 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

// A patch of one level is one color, with its number; the ground stays where the head
// is not.
func TestPictures(t *testing.T) {
	p := &light.Portrait{Mark: "A", Width: 100, Height: 120, Asked: 100}
	for i := range 100 * 120 {
		lux, cover := math.NaN(), 0.0
		if x, y := i%100, i/100; x >= 20 && x < 80 && y >= 20 && y < 100 {
			lux, cover = 50, 1
		}
		p.Lux, p.Cover = append(p.Lux, lux), append(p.Cover, cover)
	}
	stops, tones := Stops(p), Gray(p)
	if got := stops.RGBAAt(25, 25); got != colorOf(-2) {
		t.Errorf("a stop under is %v", got)
	}
	if got, want := tones.RGBAAt(25, 25).R, gray(0.5*clayReflectance); got != want {
		t.Errorf("gray %d, want %d", got, want)
	}
	if stops.RGBAAt(2, 2) != ground || tones.RGBAAt(2, 2) != ground {
		t.Error("the ground is not free")
	}
	if items := numbers(p, bandsOf(p)); len(items) != 1 || items[0].Text != "-1" {
		t.Errorf("numbers %v", items)
	}
	if told(lowestBand) != "-5 or less" || told(highestBand) != "+2.5 or more" || plain(highestBand) != "+2.5" {
		t.Errorf("%s, %s", told(lowestBand), told(highestBand))
	}
}
