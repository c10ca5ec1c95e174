package frame

import "math"

// Section holds a member's cross-section in the member's own axes. Lengths in m.
type Section struct {
	Area     float64 // m²
	InertiaY float64 // m⁴, bending in the x–z plane
	InertiaZ float64 // m⁴, bending in the x–y plane
	Torsion  float64 // m⁴, J
	// ShearAreaY and ShearAreaZ are the areas that carry shear along y and z, m². Zero means no shear
	// flexibility, as in Bernoulli's beam.
	ShearAreaY, ShearAreaZ float64
	// ModulusY and ModulusZ are the elastic section moduli about y and z, m³. Zero means unknown: stresses are
	// then NaN.
	ModulusY, ModulusZ float64
	// Corners is true for a section whose two bending stresses meet in a corner and add (a rectangular tube);
	// false for a round one, where they combine as the square root of the sum of squares.
	Corners bool
	Outer   float64 // m, the outside size along z; for drawing and labels only
}

// Material holds what a member is made of.
type Material struct {
	Young   float64 // Pa
	Shear   float64 // Pa
	Density float64 // kg/m³; not used by the solver, weights are loads
}

// RoundTube is a circular tube of an outside diameter and a wall thickness in m. A wall of half the diameter or
// more gives a solid bar. Shear flexibility is left out; see [Section.WithShear].
// A = π/4(D²−d²), I = π/64(D⁴−d⁴), J = 2I, W = 2I/D.
func RoundTube(outer, wall float64) Section {
	inner := math.Max(0, outer-2*wall)
	area := math.Pi / 4 * (outer*outer - inner*inner)
	inertia := math.Pi / 64 * (math.Pow(outer, 4) - math.Pow(inner, 4))
	modulus := 2 * inertia / outer
	return Section{
		Area: area, InertiaY: inertia, InertiaZ: inertia, Torsion: 2 * inertia,
		ModulusY: modulus, ModulusZ: modulus, Outer: outer,
	}
}

// SquareTube is a square tube of an outside size and a wall thickness in m; see [RectangularTube].
func SquareTube(outer, wall float64) Section { return RectangularTube(outer, outer, wall) }

// RectangularTube is a rectangular tube with sharp corners, outside height (along z), width (along y) and wall in
// m. I = (b·h³ − bᵢ·hᵢ³)/12; torsion after Bredt: J = 4·A_m²·t/s with the mid-line area A_m and perimeter s
// (Roark's Formulas for Stress and Strain, Table 10.1, thin closed sections; from memory).
func RectangularTube(height, width, wall float64) Section {
	hi, wi := math.Max(0, height-2*wall), math.Max(0, width-2*wall)
	iy := (width*math.Pow(height, 3) - wi*math.Pow(hi, 3)) / 12
	iz := (height*math.Pow(width, 3) - hi*math.Pow(wi, 3)) / 12
	hm, wm := height-wall, width-wall
	return Section{
		Area: height*width - hi*wi, InertiaY: iy, InertiaZ: iz,
		Torsion:  2 * wall * hm * hm * wm * wm / (hm + wm),
		ModulusY: 2 * iy / height, ModulusZ: 2 * iz / width, Corners: true, Outer: height,
	}
}

// WithShear returns the section with shear flexibility of a thin closed tube. For a round tube the shear area is
// A/2; for a rectangular one the two walls along the shear, taken as A/2 as well where height equals width
// (Cowper, The Shear Coefficient in Timoshenko's Beam Theory, 1966, thin-walled sections with Poisson's ratio 0.3
// gives 0.53 for the round and 0.44 for the square tube, from memory; A/2 and 0.44·A are used).
func (s Section) WithShear() Section {
	share := 0.5
	if s.Corners {
		share = 0.44
	}
	s.ShearAreaY, s.ShearAreaZ = share*s.Area, share*s.Area
	return s
}

// Stress is the largest normal stress in Pa from an axial force in N and two moments in N·m:
// |N|/A + sqrt(My²+Mz²)/W for a round section, |N|/A + |My|/Wy + |Mz|/Wz at a corner. NaN where the area or a
// modulus is unknown.
func (s Section) Stress(n, my, mz float64) float64 {
	if !(s.Area > 0 && s.ModulusY > 0 && s.ModulusZ > 0) {
		return math.NaN()
	}
	if s.Corners {
		return math.Abs(n)/s.Area + math.Abs(my)/s.ModulusY + math.Abs(mz)/s.ModulusZ
	}
	return math.Abs(n)/s.Area + math.Hypot(my/s.ModulusY, mz/s.ModulusZ)
}
