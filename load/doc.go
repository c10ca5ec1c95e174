// Package load works out what the rig weighs, how the box hangs, what each line,
// point and tube carries, and where the rest goes when one line lets go.
//
// The box and its lines are one elastic model (package frame): 12-degree members
// with large rotation, tension-only lines at any angle. Lines share a load as that
// model says, never by a rigid plate and never by counting corners.
//
// Cases: built is the rig as planned; grown has the provision on it; lost is built
// with one line or drop gone, at rest; diagonal holds every line to half of the
// weight, because sharing is never even on a real day.
//
// Sources: package source's register; statics of the elastic frame in package
// frame. The conventions (what a sag is, which loads act where) are softloft's own
// contract, see docs/method.md.
package load
