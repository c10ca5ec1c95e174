package kit

import (
	"math"

	"softloft/document"
	"softloft/quantity"
)

// Alloy is what a tube is made of. Yield and WeldedYield are nil where unknown.
type Alloy struct {
	Entry
	Young       quantity.Pressure  `key:"E,required" doc:"Young's modulus"`
	Poisson     float64            `key:"poisson,required" doc:"Poisson's ratio"`
	Density     quantity.Density   `key:"density,required" doc:"mass per volume"`
	Yield       *quantity.Pressure `key:"yield" doc:"yield strength away from welds"`
	WeldedYield *quantity.Pressure `key:"welded_yield" doc:"yield strength beside a weld"`
}

// Shear returns the shear modulus E/(2(1+ν)), in Pa.
func (a Alloy) Shear() float64 { return float64(a.Young) / (2 * (1 + a.Poisson)) }

// TubeShape is a tube's cross-section.
type TubeShape string

// Words lists the shapes.
func (TubeShape) Words() []string { return []string{"round", "square"} }

// Tube is a frame member's stock. Mass is nil where it follows from the section
// and the alloy's density.
type Tube struct {
	Entry
	Shape   TubeShape          `key:"shape" default:"round" source:"contract" doc:"round or square"`
	Outer   quantity.Length    `key:"outer,required" doc:"outer diameter or side"`
	Wall    quantity.Length    `key:"wall,required" doc:"wall thickness"`
	Alloy   string             `key:"alloy,required" doc:"id of what it is made of"`
	Lengths []quantity.Length  `key:"lengths" doc:"lengths that stand on the shelf"`
	Mass    *quantity.LineMass `key:"mass" doc:"mass per length; default from section and density"`
	Fits    []string           `key:"fits" doc:"what it fits"`
}

// Area returns the area of metal in m², corners taken as sharp.
func (t Tube) Area() float64 {
	inner := float64(t.Outer) - 2*float64(t.Wall)
	area := float64(t.Outer)*float64(t.Outer) - inner*inner
	if t.Shape == "square" {
		return area
	}
	return math.Pi / 4 * area
}

// MassPerLength returns what the kit states, else area times the alloy's density.
func (t Tube) MassPerLength(alloy Alloy) quantity.LineMass {
	if t.Mass != nil {
		return *t.Mass
	}
	return quantity.LineMass(t.Area() * float64(alloy.Density))
}

// Forward is the lobe of light that a cloth scatters narrowly forward:
// intensity ∝ exp(-θ²/2σ²) about the unscattered ray.
type Forward struct {
	Part  float64        `key:"part,required" doc:"share of the arriving light"`
	Sigma quantity.Angle `key:"sigma,required" doc:"standard angle of the lobe"`
}

// Cloth is diffusion. The shares are of the light that arrives on it; what is
// left of 1 is absorbed. Both faces alike, at every angle.
type Cloth struct {
	Entry
	Mass    *quantity.AreaMass  `key:"mass" doc:"mass per area, dry"`
	Through float64             `key:"through" doc:"share that passes unscattered"`
	Forward *Forward            `key:"forward" doc:"share that is scattered narrowly forward"`
	Diffuse float64             `key:"diffuse" doc:"share that leaves the other face evenly in all directions"`
	Back    float64             `key:"back" doc:"share that is scattered back"`
	Stretch *quantity.LineForce `key:"stretch" doc:"stiffness: force per width for a doubling of length"`
	Hem     quantity.Length     `key:"hem" doc:"width of the hem that passes no light"`
	Flame   string              `key:"flame" doc:"the flame standard that its papers name"`
}

// Passed returns the share of arriving light that leaves the other face.
func (c Cloth) Passed() float64 {
	passed := c.Through + c.Diffuse
	if c.Forward != nil {
		passed += c.Forward.Part
	}
	return passed
}

// Loss returns the stops that the cloth takes, log2(1/Passed), and whether it
// passes any light. Inside a box the light that it throws back comes again, so a
// box loses less.
func (c Cloth) Loss() (quantity.Stops, bool) {
	passed := c.Passed()
	if !(passed > 0) {
		return 0, false
	}
	return quantity.Stops(-math.Log2(passed)), true
}

// Crate is an egg-crate of rectangular cells.
type Crate struct {
	Entry
	Cell        [2]quantity.Length `key:"cell,required" doc:"a cell's width along x and y"`
	Depth       quantity.Length    `key:"depth,required" doc:"height of the walls"`
	Reflectance float64            `key:"reflectance" default:"0.04" source:"design assumption: black cloth" doc:"share of light that the walls throw back"`
	Mass        *CrateMass         `key:"mass" doc:"mass of the crate, or mass per area"`
	Wall        quantity.Length    `key:"wall" doc:"thickness of a cell's wall; default none"`
}

// CutOff returns the angles from straight down beyond which no light passes along
// a row: atan(cell/depth), for the cell's first and second width. From geometry; on
// the diagonal of a square cell it is atan(√2 cell/depth).
func (c Crate) CutOff() [2]quantity.Angle {
	var angles [2]quantity.Angle
	for i, cell := range c.Cell {
		angles[i] = quantity.Angle(math.Atan2(float64(cell), float64(c.Depth)))
	}
	return angles
}

// CrateMass is a mass for the whole crate, or a mass per area.
type CrateMass struct {
	Whole   *quantity.Mass
	PerArea *quantity.AreaMass
}

// ReadFrom takes a mass per area or a mass.
func (m *CrateMass) ReadFrom(c *document.Cursor) {
	var perArea quantity.AreaMass
	if perArea.UnmarshalText([]byte(c.Text())) == nil {
		m.PerArea = &perArea
		return
	}
	var whole quantity.Mass
	if c.Into(&whole) {
		m.Whole = &whole
	}
}

// Of returns the mass of a crate of an area in m².
func (m *CrateMass) Of(area float64) (quantity.Mass, bool) {
	switch {
	case m == nil:
		return 0, false
	case m.Whole != nil:
		return *m.Whole, true
	case m.PerArea != nil:
		return quantity.Mass(float64(*m.PerArea) * area), true
	}
	return 0, false
}

// Wrap is the cloth of sides, roof and skirts.
type Wrap struct {
	Entry
	Mass        *quantity.AreaMass `key:"mass" doc:"mass per area, dry"`
	Color       string             `key:"color" doc:"white, black or silver: the word that a plan's sides use"`
	Reflectance *float64           `key:"reflectance" doc:"share of light that it throws back"`
	Flame       string             `key:"flame" doc:"the flame standard that its papers name"`
	Fits        []string           `key:"fits" doc:"what it fits"`
}
