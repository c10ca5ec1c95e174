// Package fit tells what of a rig does not mate, does not fit or should not be built:
// findings that rest on shapes alone. First form: what package rig noticed while
// placing, lamps beside their box, and the distance that a lamp keeps to its cloth.
package fit
