// Package shape holds plain geometry: poses, polygons, clipping, solids that
// shade, and rays. It knows no word of the trade, no light and no load.
//
// Lengths are meters, angles radians, axes right-handed with z up. Vectors are
// r3.Vec. Polygons are planar; where a function asks for a convex one it says
// so. Nothing here panics on degenerate input: a polygon with fewer than three
// corners is empty and a ray of no length hits nothing.
//
// Sources: clipping against a half-space after Sutherland and Hodgman (1974);
// rotation about an axis after Rodrigues; both textbook forms from memory.
package shape
