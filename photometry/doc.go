// Package photometry says how a lamp's light is spread over directions.
//
// Lamp axes: the direction of aim is +Z, C0 lies along +X. A distribution is
// relative: candela per lumen of the lamp, so that its integral over all
// directions is 1 (lm/lm). Files of measured intensities are read here too.
package photometry
