// Package rig turns a plan and a kit into every placed part: the single derived
// model that all analyses, lists and drawings read.
//
// A part that is drawn is weighed; a part that is weighed is on the pull list. A
// frame tube stands here once; the weight, the pull list, the frame model, the
// drawing and the shade in the light all read that one tube.
//
// Places are in box axes (origin at the center of the cloth plane, z up, x and y
// along the box's size) unless a name says InRoom. Lengths in m, masses in kg.
//
// Terms: a body is a set of parts that move together; a drop joins two bodies; a
// weight is a mass that isn't a tube's own; a line carries a body from a point.
// The rules of placing are softloft's own contract, see docs/plan.md.
package rig
