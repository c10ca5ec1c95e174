package face

import (
	"strings"

	"softloft/draw"
	"softloft/light"
)

// A number stands in every patch of one band that is wide enough for it, where the patch
// is widest.

// wideEnough is how far (elements) a number's middle must be from the patch's edge.
const wideEnough = 9

// numbers sets them; the largest patches first, at most mostNumbers.
func numbers(p *light.Portrait, bands []int) []draw.Item {
	far := depths(p.Width, p.Height, bands)
	var items []draw.Item
	for range mostNumbers {
		best := -1
		for i, d := range far {
			if bands[i] != outside && d >= wideEnough && (best < 0 || d > far[best]) {
				best = i
			}
		}
		if best < 0 {
			return items
		}
		ink := draw.Black
		if bands[best] < (lowestBand+highestBand)/2 {
			ink = draw.Paper
		}
		item := draw.Label(draw.Notes, plain(bands[best]), draw.Point{X: (float64(best%p.Width) + 0.5) / dots, Y: (float64(best/p.Width) + 0.5) / dots}, 2.6, draw.Middle)
		item.Fill = ink
		items = append(items, item)
		flood(p.Width, bands, far, best)
	}
	return items
}

// mostNumbers bounds how many are set.
const mostNumbers = 24

// plain is a band's number without words.
func plain(band int) string {
	return strings.TrimSuffix(strings.TrimSuffix(told(band), orLess), orMore)
}

// depths is how far every element is from the edge of its patch, in steps of one along
// rows and columns and of 1.4 across (two sweeps).
func depths(width, height int, bands []int) []float64 {
	far := make([]float64, len(bands))
	at := func(x, y, band int) float64 {
		if x < 0 || y < 0 || x >= width || y >= height || bands[y*width+x] != band {
			return 0
		}
		return far[y*width+x]
	}
	for i := range far {
		x, y, b := i%width, i/width, bands[i]
		far[i] = min(at(x-1, y, b)+1, at(x, y-1, b)+1, at(x-1, y-1, b)+1.4, at(x+1, y-1, b)+1.4)
	}
	for i := len(far) - 1; i >= 0; i-- {
		x, y, b := i%width, i/width, bands[i]
		far[i] = min(far[i], at(x+1, y, b)+1, at(x, y+1, b)+1, at(x+1, y+1, b)+1.4, at(x-1, y+1, b)+1.4)
	}
	return far
}

// flood marks a whole patch as done.
func flood(width int, bands []int, far []float64, from int) {
	band := bands[from]
	next := []int{from}
	far[from] = -1
	for len(next) > 0 {
		i := next[len(next)-1]
		next = next[:len(next)-1]
		for _, k := range [4]int{i - 1, i + 1, i - width, i + width} {
			if k < 0 || k >= len(bands) || far[k] < 0 || bands[k] != band || (k/width != i/width && k%width != i%width) {
				continue
			}
			far[k] = -1
			next = append(next, k)
		}
	}
}
