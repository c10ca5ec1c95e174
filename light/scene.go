package light

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/photometry"
	"softloft/rig"
	"softloft/shape"
)

// SceneOf fills a scene from a rig, in box axes, with the room's set walls as what
// shades outside. Missing names what the scene leaves out; the error says what
// keeps the light from being computed at all.
func SceneOf(r *rig.Rig) (scene Scene, missing []string, err error) {
	o := &r.Optics
	if len(o.Missing) > 0 {
		return Scene{}, nil, fmt.Errorf("the light needs %s", o.Missing[0])
	}
	scene = Scene{Size: o.Size, Clear: o.Clear, Depth: o.Depth, Skirts: o.Skirts,
		Roof: Roof{Open: !o.Roof.Present, Reflectance: o.Roof.Inner}}
	for i, face := range o.Sides {
		scene.Sides[i] = Side(face)
	}
	for _, layer := range o.Cloths {
		scene.Cloths = append(scene.Cloths, clothOf(layer))
	}
	if c := o.Crate; c != nil {
		scene.Crate = &Crate{CellX: c.Cell[0], CellY: c.Cell[1], Depth: c.Depth, Reflectance: c.Reflectance, Wall: c.Wall}
	}
	for _, opening := range o.Lamps {
		lamp, err := lampOf(opening)
		if err != nil {
			return Scene{}, nil, err
		}
		scene.Lamps = append(scene.Lamps, lamp)
		missing = append(missing, sizesApart(opening)...)
	}
	for _, tube := range o.Opaque {
		scene.Blockers = append(scene.Blockers, shape.Cylinder{From: tube.From, To: tube.To, Radius: tube.Radius})
	}
	scene.Outside = surfacesOf(r)
	return scene, missing, nil
}

func clothOf(layer rig.Layer) Cloth {
	cloth := Cloth{Through: layer.Through, Diffuse: layer.Diffuse, Back: layer.Back, Gap: layer.Gap}
	if f := layer.Forward; f != nil {
		cloth.ForwardPart, cloth.ForwardSigma = f.Part, float64(f.Sigma)
	}
	return cloth
}

// lampOf turns an opening into a lamp at its level. Its body stands behind the
// opening.
func lampOf(o rig.Opening) (Lamp, error) {
	distribution, err := distributionOf(o.Spread)
	if err != nil {
		return Lamp{}, fmt.Errorf("lamp %s: %w", o.Name, err)
	}
	lamp := Lamp{Centre: o.Center, Axis: o.Axis, U: o.U, V: o.V, Size: o.Size, Lumens: *o.Lumens * o.Level, Distribution: distribution}
	if o.Body != nil {
		lamp.Body = [3]float64{o.Body[0] / 2, o.Body[1] / 2, o.Body[2] / 2}
	}
	return lamp, nil
}

func distributionOf(s kit.Spread) (photometry.Distribution, error) {
	switch {
	case s.File != "":
		return fromFile(s)
	case s.Beam != nil:
		return photometry.NewBeam(float64(*s.Beam), float64(*s.Field))
	}
	return photometry.Lambertian{}, nil
}

// fromFile is the distribution of a lamp file that was handed in.
func fromFile(s kit.Spread) (photometry.Distribution, error) {
	switch {
	case s.Read == nil:
		return nil, fmt.Errorf("its lamp file %s was not read", s.File)
	case s.Read.Distribution == nil:
		return nil, fmt.Errorf("its lamp file %s doesn't fix how the light spreads; softloft lamp %s says why", s.File, s.File)
	}
	return s.Read.Distribution, nil
}

// sizesApart says where a lamp's file has an opening of another size than its kit
// entry, which is the one that counts. An EULUMDAT file has its length along C90.
func sizesApart(o rig.Opening) []string {
	if o.Spread.Read == nil || !o.Spread.Read.Opening.Known() {
		return nil
	}
	const apart = 0.1 // of a size
	told := o.Spread.Read.Opening
	for i, size := range [2]float64{told.AlongC0, told.AlongC90} {
		if math.Abs(size-o.Size[i]) > apart*o.Size[i] {
			return []string{fmt.Sprintf("lamp %s: its file has an opening of %.3g m along C0 and %.3g m along C90, its kit entry of %.3g m and %.3g m; the kit's is used",
				o.Name, told.AlongC0, told.AlongC90, o.Size[0], o.Size[1])}
		}
	}
	return nil
}

// surfacesOf returns the room's set walls in box axes.
func surfacesOf(r *rig.Rig) []shape.Polygon {
	if r.Plan.Room == nil {
		return nil
	}
	var all []shape.Polygon
	for _, s := range r.Plan.Room.Surfaces {
		var polygon shape.Polygon
		for _, c := range s.Corners {
			polygon = append(polygon, r.Pose.In(r3.Vec{X: float64(c[0]), Y: float64(c[1]), Z: float64(c[2])}))
		}
		all = append(all, polygon)
	}
	return all
}
