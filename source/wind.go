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

// CanopyCenter is how far the wind's force on a free monopitch roof acts from its
// windward edge, as a share of the roof's depth.
func CanopyCenter() Limit {
	return Limit{"center of pressure from the windward edge, share of the depth", 0.25, "", remembered("en-1991-1-4", "7.3(6)")}
}

// Panel is the net force coefficient of an upright panel that stands off the ground by
// more than a quarter of its height: a side, a skirt.
func Panel() Limit {
	return Limit{"net force coefficient of a panel off the ground", 1.8, "", Cite("en-1991-1-4", "7.4.3")}
}

// RoundMember and SquareMember are the force coefficients of long round tubes and of
// sharp-edged sections, on the area that they show to the wind. They do not go down with
// the length.
func RoundMember() Limit {
	return Limit{"force coefficient of a round tube", 1.2, "", remembered("en-1991-1-4", "7.9")}
}

// SquareMember is described with RoundMember.
func SquareMember() Limit {
	return Limit{"force coefficient of a sharp-edged body", 2.0, "", remembered("en-1991-1-4", "7.7")}
}

// SurfaceFriction is the friction coefficient of a very rough surface (ripples, folds)
// along which the wind blows, on each of its faces.
func SurfaceFriction() Limit {
	return Limit{"friction coefficient of a rippled surface", 0.04, "", remembered("en-1991-1-4", "Table 7.10")}
}

// Shelter is the share of the wind's force that a solid panel keeps behind a panel like
// it at a spacing of so many heights: 0.3 up to five, all from twenty on, straight
// between.
func Shelter(spacing float64) Limit {
	share := Limit{Name: "share of the force behind a panel like it", Value: 1, Citation: remembered("en-1991-1-4", "Figure 7.20")}
	switch {
	case spacing <= 5:
		share.Value = 0.3
	case spacing < 20:
		share.Value = 0.3 + 0.7*(spacing-5)/15
	}
	return share
}

// FloorFriction is the friction of a stand's feet or locked castors on the ground. Nobody
// states it: an assumption.
func FloorFriction() Limit {
	return Limit{"friction of a stand on the ground", 0.3, "", Cite("design-assumption", "")}
}

// WetCloth is by how much of its dry mass cloth gets heavier when it is wet through: the
// upper end of 50 to 100 %.
func WetCloth() Limit {
	return Limit{"water in wet cloth, share of its dry mass", 1, "", Cite("common-practice", "")}
}

// WindVeers is by how much to either side of a stated direction the wind may come.
func WindVeers() Limit {
	return Limit{"turn of the wind to either side of its direction", 45 * degree, "rad", remembered("en-1991-1-4", "7.2.1")}
}

func windLimits() []Limit {
	return []Limit{AirDensity(), WatchShare(), LowerShare(), TowerWorkStops(), CanopyCenter(), Panel(), RoundMember(), SquareMember(),
		SurfaceFriction(), FloorFriction(), WetCloth(), WindVeers()}
}
