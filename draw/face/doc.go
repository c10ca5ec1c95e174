// Package face shows what arrives on a head as a picture: in gray, as a camera at the
// asked stop would see plain clay, and in false stops, a color for every half stop over
// or under the level that the asked stop needs.
//
// Gray: the surface reflects clayReflectance of the light evenly. What reflects 0.18 at
// the asked level comes out as middle gray; over it a shoulder keeps the highlights
// (common practice). Encoded as sRGB (IEC 61966-2-1, from memory).
//
// Stops: log2 of the illuminance over the level, to the nearest half. The colors run
// from dark violet to yellow, evenly in lightness, and are told apart without seeing red
// from green: the open map viridis (ten of its colors, from memory), straight between.
// Numbers stand on the larger patches, so that no color has to be matched by eye.
package face
