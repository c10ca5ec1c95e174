// Package photometry says how a lamp's light is spread over directions, and reads
// the files that tell it.
//
// Lamp axes: the direction of aim is +Z, C0 lies along +X, C90 along +Y. For a lamp
// that looks straight down, C runs counter-clockwise seen from above; for one that
// looks ahead, +X is to the right and +Y up seen from behind it. X, Y and Z in this
// order are left-handed. A distribution is relative: candela per lumen of the lamp,
// so that its integral over all directions is 1 (lm/lm).
//
// ReadFile reads three forms:
//   - LM-63 without a header (1986), of 1991, 1995, 2002 and 2019, types A, B and C
//   - EULUMDAT with all five symmetries
//   - GDTF (DIN SPEC 15800:2022-02), which holds a flux and two angles, no table
//
// Between the angles of a table the intensity is linear in each of the two angles.
// Its flux is the exact integral of that, not the zonal rule that takes the mean of
// a zone's ends: the two differ by a percent in steps of 10 deg.
//
// What a person would read although it breaks the form is read and told in
// LampFile.Odd; what could mean two things, or is cut off, is an error.
//
// Sources: ANSI/IES LM-63 (1986, 1991, 1995, 2002, 2019); the EULUMDAT format
// description; DIN SPEC 15800:2022-02. That C runs counter-clockwise seen from above,
// the directions of types A and B, and that the length of an EULUMDAT luminaire lies
// along C90-C270 are from memory.
package photometry
