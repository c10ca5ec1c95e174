package draw

import (
	"math"

	"softloft/quantity"
)

// Scale is how much smaller than life a drawing is: Ratio is life over paper, 0 where
// nothing is to scale.
type Scale struct {
	Name  string
	Ratio float64
}

// Scales lists the customary scales of a system of units, the largest drawing first.
func Scales(units quantity.System) []Scale {
	if units == quantity.InMetres {
		return []Scale{{"1:10", 10}, {"1:20", 20}, {"1:25", 25}, {"1:50", 50}, {"1:75", 75}, {"1:100", 100}, {"1:125", 125}, {"1:200", 200}, {"1:250", 250}, {"1:500", 500},
			{"1:1000", 1000}, {"1:2000", 2000}, {"1:5000", 5000}, {"1:10000", 10000}}
	}
	return []Scale{{`1" = 1'-0"`, 12}, {`3/4" = 1'-0"`, 16}, {`1/2" = 1'-0"`, 24}, {`3/8" = 1'-0"`, 32}, {`1/4" = 1'-0"`, 48}, {`3/16" = 1'-0"`, 64},
		{`1/8" = 1'-0"`, 96}, {`3/32" = 1'-0"`, 128}, {`1/16" = 1'-0"`, 192}, {`1/32" = 1'-0"`, 384}, {`1" = 100'`, 1200}, {`1" = 200'`, 2400}, {`1" = 500'`, 6000},
		{`1" = 1000'`, 12000}}
}

// FitScale returns the largest customary scale at which width × height m fit on
// paperWidth × paperHeight mm, and the smallest one where none fits.
func FitScale(units quantity.System, width, height, paperWidth, paperHeight float64) Scale {
	scales := Scales(units)
	for _, s := range scales {
		if 1000*width/s.Ratio <= paperWidth+1e-9 && 1000*height/s.Ratio <= paperHeight+1e-9 {
			return s
		}
	}
	return scales[len(scales)-1]
}

// paper returns the length in mm on paper of a length in m.
func (s Scale) paper(length float64) float64 { return 1000 * length / s.Ratio }

// barLength returns a round length in m for a scale bar of about a length in m.
func barLength(units quantity.System, about float64) float64 {
	unit := 1.0
	if units != quantity.InMetres {
		unit = float64(quantity.Foot)
	}
	power := math.Pow(10, math.Floor(math.Log10(about/unit)))
	for _, step := range []float64{5, 2, 1} {
		if step*power*unit <= about {
			return step * power * unit
		}
	}
	return power * unit
}
