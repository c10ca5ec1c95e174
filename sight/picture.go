package sight

import (
	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
	"softloft/shape"
)

// Look is what a camera sees from one place, in its frame: x to the right and y up, from
// -1 to 1 each.
type Look struct {
	Main    float64 // orbit's angle or pan in degrees, or share of the track
	Aspect  float64 // width of the frame over its height
	Patches []Patch
	// Area and Marks are the action's, seen through everything: the area at its height, each
	// mark an upright from the floor to the eyes. Empty where none is in frame.
	Area  [][2]float64
	Marks [][][2]float64
}

// Patch is a convex piece of a part that nothing hides. Part is empty for set walls;
// OfRig is false for them, for the building's points and for cables to the box.
type Patch struct {
	Part   string
	OfRig  bool
	Points [][2]float64
}

// Looks are looks from n places spread over a camera's way, at the middle of pan and boom
// and the highest tilt, where an overhead shows most; one where the camera stands still.
// Nil where its way isn't known.
func Looks(r *rig.Rig, camera, n int) []Look {
	w, err := wayOf(&r.Plan.Cameras[camera])
	if err != nil {
		return nil
	}
	if w.high <= w.low {
		n = 1
	}
	l := &looker{scene: newScene(r, 0), way: w}
	var out []Look
	for i := range n {
		main := w.low
		switch {
		case w.kind == "orbit" && n > 1: // the end of a whole turn is its beginning
			main += (w.high - w.low) * float64(i) / float64(n)
		case n > 1:
			main += (w.high - w.low) * float64(i) / float64(n-1)
		}
		out = append(out, l.lookFrom(r, main))
	}
	return out
}

func (l *looker) lookFrom(r *rig.Rig, main float64) Look {
	eye := l.way.eye(main, 0.5)
	yaw, pitch := l.way.yawAt(eye, main, (l.way.pan[0]+l.way.pan[1])/2)
	v := l.way.window(eye, yaw, pitch)
	look := Look{Main: main, Aspect: l.way.frame.across / l.way.frame.up, Area: l.areaOf(r, &v), Marks: l.marksOf(r, &v)}
	if l.way.kind == "orbit" || l.way.kind == "pan" {
		look.Main = main / degree
	}
	add := func(of *solid, part string, ofRig bool) {
		l.cutter.Reset()
		for _, piece := range l.visible(of, eye) {
			if piece = v.crop(&l.cutter, piece, v.high); piece != nil {
				look.Patches = append(look.Patches, Patch{part, ofRig, v.flat(piece, v.high)})
			}
		}
	}
	for i := range l.scene.set {
		add(&l.scene.set[i], "", false)
	}
	for i := range l.scene.bodies {
		b := &l.scene.bodies[i]
		for j := range b.solids {
			add(&b.solids[j], b.part, b.ofRig)
		}
	}
	return look
}

// areaOf is the outline of the action's area in the frame.
func (l *looker) areaOf(r *rig.Rig, v *window) [][2]float64 {
	if r.Plan.Action == nil || r.Plan.Action.Area == nil {
		return nil
	}
	a := r.Plan.Action.Area
	center := r3.Vec{X: float64(a.At[0]), Y: float64(a.At[1]), Z: float64(a.Height)}
	return l.outline(v, shape.Rectangle(center, r3.Vec{X: float64(a.Size[0]) / 2}, r3.Vec{Y: float64(a.Size[1]) / 2}))
}

// markWidth is how wide (m) a mark's upright is drawn.
const markWidth = 0.04

func (l *looker) marksOf(r *rig.Rig, v *window) [][][2]float64 {
	if r.Plan.Action == nil {
		return nil
	}
	var out [][][2]float64
	for _, m := range r.Plan.Action.Marks {
		half := float64(m.Eyes) / 2
		center := r3.Vec{X: float64(m.At[0]), Y: float64(m.At[1]), Z: half}
		if p := l.outline(v, shape.Rectangle(center, r3.Scale(markWidth/2, v.right), r3.Vec{Z: half})); len(p) > 0 {
			out = append(out, p)
		}
	}
	return out
}

// outline is what of a polygon is in the frame, whatever is before it.
func (l *looker) outline(v *window, p shape.Polygon) [][2]float64 {
	l.cutter.Reset()
	if p = v.crop(&l.cutter, p, v.high); p == nil {
		return nil
	}
	return v.flat(p, v.high)
}

// flat is a cropped polygon in the frame.
func (v *window) flat(p shape.Polygon, pitch float64) [][2]float64 {
	f, u := v.axes(pitch)
	out := make([][2]float64, 0, len(p))
	for _, x := range p {
		d := r3.Sub(x, v.eye)
		if depth := r3.Dot(f, d); depth > 0 {
			out = append(out, [2]float64{r3.Dot(v.right, d) / (depth * v.frame.across), r3.Dot(u, d) / (depth * v.frame.up)})
		}
	}
	return out
}
