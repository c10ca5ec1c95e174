package rig

import (
	"softloft/plan"
	"softloft/source"
)

// opticalFace turns a face's word, or the reflectance that somebody measured, into
// reflectances. The outer face is black cloth whatever the inner one is.
func opticalFace(f plan.Face) Face {
	if f.Word == "none" || f.Word == "open" {
		return Face{}
	}
	outer, _ := source.ReflectanceOf("outer face")
	inner := outer
	if f.Reflectance != nil {
		return Face{Present: true, Inner: *f.Reflectance, Outer: outer.Value}
	}
	if named, ok := source.ReflectanceOf(f.Word); ok {
		inner = named
	}
	return Face{Present: true, Inner: inner.Value, Outer: outer.Value}
}
