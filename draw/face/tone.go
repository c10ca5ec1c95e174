package face

import (
	"image/color"
	"math"
)

// clayReflectance is that of the head in gray: a stop over middle gray, as light skin
// (common practice).
const (
	clayReflectance = 0.36
	middleGray      = 0.18
)

// gray is the sRGB tone of a share of white.
func gray(linear float64) uint8 {
	x := shoulder(linear)
	if x <= 0.0031308 {
		x *= 12.92
	} else {
		x = 1.055*math.Pow(x, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * math.Max(0, math.Min(1, x))))
}

// shoulder leaves all up to knee as it is, and brings what is brighter in under white.
func shoulder(x float64) float64 {
	const knee = 0.5
	if x <= knee {
		return x
	}
	return knee + (1-knee)*(1-math.Exp(-(x-knee)/(1-knee)))
}

// viridis in ten colors.
var viridis = [10][3]float64{{68, 1, 84}, {72, 40, 120}, {62, 73, 137}, {49, 104, 142}, {38, 130, 142},
	{31, 158, 137}, {53, 183, 121}, {110, 206, 88}, {181, 222, 43}, {253, 231, 37}}

// The bands go from so many half stops under the level to so many over it. What lies
// beyond has the last color.
const lowestBand, highestBand = -10, 5

// bandOf is the nearest half stop; held at the ends.
func bandOf(stops float64) int {
	if math.IsInf(stops, -1) {
		return lowestBand
	}
	return max(lowestBand, min(highestBand, int(math.Round(2*stops))))
}

// colorOf a band.
func colorOf(band int) color.RGBA {
	x := float64(band-lowestBand) / float64(highestBand-lowestBand) * float64(len(viridis)-1)
	i := min(int(x), len(viridis)-2)
	t := x - float64(i)
	mix := func(k int) uint8 { return uint8(math.Round(viridis[i][k] + t*(viridis[i+1][k]-viridis[i][k]))) }
	return color.RGBA{mix(0), mix(1), mix(2), 255}
}
