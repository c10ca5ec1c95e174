package sheet

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/photometry"
)

// Size of the polar picture: characters from its center to a side, and rows from its
// center down. A character is about twice as high as wide.
const (
	polarSide = 32
	polarDown = 16
)

// polar draws the intensity over direction in the two planes through the aim: o is
// C0-C180, + is C90-C270, * both. Rows over the aim are left out where nothing shines.
func polar(f *photometry.LampFile) []string {
	var picture canvas
	for i := range picture {
		for k := range picture[i] {
			picture[i][k] = ' '
		}
	}
	for step := range 720 {
		angle := float64(step) * math.Pi / 360
		picture.mark(angle, 1, '.')
		picture.mark(angle, 0.5, '.')
	}
	largest := 0.0
	for _, plane := range [2]r3.Vec{{X: 1}, {Y: 1}} {
		for step := range 1440 {
			largest = math.Max(largest, f.Distribution.Intensity(toward(plane, float64(step)*math.Pi/720)))
		}
	}
	if f.Peak != nil && f.Lumens() != nil {
		largest = math.Max(largest, f.Peak.Candela / *f.Lumens())
	}
	top := polarDown // first row with light
	for _, plane := range [2]struct {
		side r3.Vec
		sign rune
	}{{r3.Vec{X: 1}, 'o'}, {r3.Vec{Y: 1}, '+'}} {
		for step := range 1440 {
			angle := float64(step) * math.Pi / 720
			if share := f.Distribution.Intensity(toward(plane.side, angle)) / largest; share > 0.01 {
				top = min(top, picture.mark(angle, share, plane.sign))
			}
		}
	}
	picture[polarDown][polarSide] = 'x'
	lines := []string{"o C0-C180   + C90-C270   * both   x the lamp"}
	for _, row := range picture[top:] {
		lines = append(lines, strings.TrimRight(string(row[:]), " "))
	}
	return lines
}

// toward is the direction at an angle from the aim, to the side of a plane.
func toward(side r3.Vec, angle float64) r3.Vec {
	sin, cos := math.Sincos(angle)
	return r3.Add(r3.Scale(sin, side), r3.Vec{Z: cos})
}

type canvas [2*polarDown + 1][2*polarSide + 1]rune

// mark sets a sign at an angle from straight down and a share of the radius. It
// returns the row.
func (c *canvas) mark(angle, share float64, sign rune) int {
	sin, cos := math.Sincos(angle)
	row := polarDown + int(math.Round(share*cos*polarDown))
	column := polarSide + int(math.Round(share*sin*polarSide))
	switch at := &c[row][column]; {
	case sign == '+' && (*at == 'o' || *at == '*'), sign == 'o' && (*at == '+' || *at == '*'):
		*at = '*'
	default:
		*at = sign
	}
	return row
}
