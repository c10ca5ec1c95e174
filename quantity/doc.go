// Package quantity holds the numbers of a plan: lengths, masses, forces, light and
// angles, each a float64 of its own type, in SI (angles in radians), read from text with a unit
// and printed in SI, in feet or in metres.
//
// Reading never guesses: a bare number where a unit is due is an error, also 0, and so is
// anything that is not a finite number. Every conversion factor is exact and is
// applied as a fraction, so that 12 ft and 3.6576 m are the same float64.
//
// Sources:
//   - NIST Special Publication 811 (2008), appendix B: conversion factors
//   - 3rd General Conference on Weights and Measures (1901): standard gravity
//   - international yard and pound agreement (1959): foot 0.3048 m, pound 0.45359237 kg
package quantity
