// Package light computes what light a soft overhead gives: lamps, the inside
// of the box, cloths, crate, skirts, and what arrives at a point below.
//
// Terms. Illuminance: luminous flux per area that arrives, lx. Exitance: flux
// per area that leaves, lm/m2. A Lambertian surface has the same luminance in
// all directions: exitance / pi. Form factor: the share of the flux leaving a
// Lambertian patch that arrives straight at another one.
//
// All of it is in box axes: the origin at the center of the cloth plane, z up
// toward the lamps, x and y along the box's size. SI units.
package light
