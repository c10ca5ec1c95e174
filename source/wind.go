package source

import "slices"

// AirDensity is the density of air in kg/m³ that belongs to the wind
// coefficients of EN 1991-1-4: q = ½ ρ v². (US texts have 1.225.)
func AirDensity() Limit {
	return Limit{"density of air", 1.25, "kg/m3", remembered("en-1991-1-4", "4.5")}
}

// WatchShare and LowerShare are the shares of the first limiting wind speed at
// which somebody watches, and at which the box comes down. Force goes with the
// square: 80 % of the speed is 64 % of the force.
func WatchShare() Limit {
	return Limit{"share of the limiting wind speed, watch", 0.6, "", Cite("park-authority-wind", "")}
}

// LowerShare is described with WatchShare.
func LowerShare() Limit {
	return Limit{"share of the limiting wind speed, lower", 0.8, "", Cite("park-authority-wind", "")}
}

// TowerWorkStops is the wind speed in m/s (17 mph) at which work on mobile
// towers stops; no sheeting hangs on them at any.
func TowerWorkStops() Limit {
	return Limit{"wind speed, work on mobile towers stops", 17 * mile, "m/s", Cite("pasma", "")}
}

// Canopy is a row of the overall force coefficients of a free monopitch roof.
type Canopy struct {
	Slope float64 // rad
	Max   float64 // downward, any blockage
	Open  float64 // upward (negative), nothing beneath: blockage 0
	Block float64 // upward (negative), blocked: blockage 1
	Citation
}

// canopies is EN 1991-1-4 Table 7.6, overall cf. Never written to.
var canopies = []Canopy{
	{0 * degree, 0.2, -0.5, -1.3, Cite("en-1991-1-4", "Table 7.6")},
	{5 * degree, 0.4, -0.7, -1.4, Cite("en-1991-1-4", "Table 7.6")},
	{10 * degree, 0.5, -0.9, -1.4, Cite("en-1991-1-4", "Table 7.6")},
	{15 * degree, 0.7, -1.1, -1.4, Cite("en-1991-1-4", "Table 7.6")},
	{20 * degree, 0.8, -1.3, -1.4, Cite("en-1991-1-4", "Table 7.6")},
	{25 * degree, 1.0, -1.6, -1.4, Cite("en-1991-1-4", "Table 7.6")},
	{30 * degree, 1.2, -1.8, -1.4, Cite("en-1991-1-4", "Table 7.6")},
}

// Canopies lists the force coefficients of free monopitch roofs by slope, to be
// interpolated in slope and blockage. The slice is the caller's own.
func Canopies() []Canopy { return slices.Clone(canopies) }

func windLimits() []Limit {
	return []Limit{AirDensity(), WatchShare(), LowerShare(), TowerWorkStops()}
}
