package light

import (
	"cmp"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/plan"
	"softloft/rig"
	"softloft/source"
)

// Run analyzes a rig's light. What cannot be worked out is null in the answer and a
// finding that is not known; Run never fails.
func Run(r *rig.Rig) (Answer, []finding.Finding) {
	w := &work{rig: r, answer: Answer{Constants: Constants{Number(source.FlatReceptor().Value), Number(source.DomeReceptor().Value)}}}
	if len(r.Optics.Lamps) == 0 {
		w.answer.Missing = []string{noLamp}
		if want := r.Plan.Want; want != nil && (want.Exposure != nil || want.Even != nil) {
			w.findings = append(w.findings, finding.Unknown("light.stop", w.subject("area", "want"), "The light that is asked for", noLamp))
		}
		return w.answer, w.findings
	}
	if err := w.prepare(); err != nil {
		w.answer.Missing = []string{err.Error()}
		w.findings = append(w.findings, finding.Unknown("light.source", w.subject("box", "lamps"), "What light the box gives", err.Error()))
		return w.answer, w.findings
	}
	w.probes()
	w.area()
	w.marks()
	w.spill()
	w.cloth()
	w.conclude()
	return w.answer, w.findings
}

const noLamp = "no lamp is placed, so there is no light to compute"

// work is an analysis under way.
type work struct {
	rig      *rig.Rig
	now      lighting
	full     *Engine // all lamps at full level; the same as now's where they are
	level    float64 // of all lamps, where it is the same above 0; or NaN
	answer   Answer
	hall     *Hall // nil outdoors
	along    int   // the room's patches along its longest edge; 0 is patchesAlong
	findings []finding.Finding
}

// lighting is a box's light with what the room throws back of it, if any.
type lighting struct {
	engine *Engine
	room   *RoomLight // nil outdoors, and where the plan has no room
}

// prepare works out the scene at full level, and from that at today's levels.
func (w *work) prepare() error {
	scene, missing, err := SceneOf(w.rig)
	if err != nil {
		return err
	}
	if w.full, err = Prepare(w.atFull(scene)); err != nil {
		return err
	}
	w.now.engine = w.full
	levels := w.levels()
	if w.level = oneLevel(levels); w.level != 1 {
		w.now.engine = w.full.AtLevels(levels)
	}
	w.answer.Missing = append(missing, w.now.engine.Missing()...)
	return w.prepareRoom(&scene)
}

// prepareRoom works out what the room throws back.
func (w *work) prepareRoom(scene *Scene) error {
	room, indoors := RoomOf(w.rig)
	if !indoors {
		return nil
	}
	var err error
	if w.hall, err = prepareRoom(room, scene, w.rig.Pose, cmp.Or(w.along, patchesAlong)); err != nil {
		return err
	}
	w.now.room = w.hall.Light(w.now.engine)
	w.answer.Missing = append(w.answer.Missing, w.hall.Missing()...)
	return nil
}

func (w *work) indoors() bool { return w.now.room != nil }

// atFull is a scene with every lamp at full level.
func (w *work) atFull(scene Scene) Scene {
	scene.Lamps = append([]Lamp(nil), scene.Lamps...)
	for i, o := range w.rig.Optics.Lamps {
		scene.Lamps[i].Lumens = *o.Lumens
	}
	return scene
}

// levels of the lamps.
func (w *work) levels() []float64 {
	var all []float64
	for _, o := range w.rig.Optics.Lamps {
		all = append(all, o.Level)
	}
	return all
}

// oneLevel is the value that all of them have, above 0, and 1 where there is none of
// them; NaN where they differ.
func oneLevel(values []float64) float64 {
	one := 1.0
	for i, x := range values {
		if i == 0 {
			one = x
		}
		if x != one || !(x > 0) {
			return math.NaN()
		}
	}
	return one
}

// atFullLevel is the area's mean with every lamp at full level, from today's mean: in
// proportion where all lamps have one level, and else worked out.
func (w *work) atFullLevel(mean float64, points []r3.Vec) float64 {
	if !math.IsNaN(w.level) {
		return mean / w.level
	}
	full := lighting{engine: w.full}
	if w.hall != nil {
		full.room = w.hall.Light(w.full)
	}
	mean, _, _ = trapezoid(w.grid(full, points, areaNodes, r3.Vec{Z: 1}), areaNodes)
	return mean
}

// lux is what arrives at a place in the room's axes, straight from the box and by way
// of the room.
func (w *work) lux(l lighting, at, facing r3.Vec, receptor Receptor) float64 {
	direct := l.engine.At(w.rig.Pose.In(at), w.rig.Pose.InDirection(facing), receptor)
	if l.room == nil {
		return direct
	}
	return direct + l.room.At(at, facing, receptor)
}

// vector is the light vector at a place in the room's axes.
func (w *work) vector(l lighting, at r3.Vec) r3.Vec {
	direct := w.rig.Pose.OutDirection(l.engine.Vector(w.rig.Pose.In(at)))
	if l.room == nil {
		return direct
	}
	return r3.Add(direct, l.room.Vector(at))
}

var receptors = map[plan.Receptor]Receptor{"flat": Flat, "dome": Dome, "cylinder": Cylinder, "scalar": Scalar}

// probes reads every meter point.
func (w *work) probes() {
	for i := range w.rig.Plan.Probes {
		p := &w.rig.Plan.Probes[i]
		facing := r3.Vec{X: p.Facing[0], Y: p.Facing[1], Z: p.Facing[2]}
		points := probePoints(p)
		values := w.each(w.now, points, facing, receptors[p.Receptor])
		told := ProbeAnswer{Name: p.Name, N: p.N, Facing: vec(facing), Receptor: string(p.Receptor)}
		for k, at := range points {
			told.Points = append(told.Points, vec(at))
			told.Lux = append(told.Lux, Number(values[k]))
		}
		w.answer.Probes = append(w.answer.Probes, told)
	}
}

func vec(v r3.Vec) Vec { return Vec{Number(v.X), Number(v.Y), Number(v.Z)} }

// probePoints are nodes, edges included, x fastest; with one along an axis it is the
// middle. The patch is horizontal at the probe's place, whatever it faces.
func probePoints(p *plan.Probe) []r3.Vec {
	var size [2]float64
	if p.Size != nil {
		size = [2]float64{float64(p.Size[0]), float64(p.Size[1])}
	}
	center := r3.Vec{X: float64(p.At[0]), Y: float64(p.At[1]), Z: float64(p.At[2])}
	return nodes(center, r3.Vec{X: size[0]}, r3.Vec{Y: size[1]}, p.N)
}

// nodes are places on a parallelogram about a center with two edges, edges
// included, the first fastest.
func nodes(center, a, b r3.Vec, n [2]int) []r3.Vec {
	points := make([]r3.Vec, 0, n[0]*n[1])
	for j := range n[1] {
		for i := range n[0] {
			points = append(points, r3.Add(center, r3.Add(r3.Scale(fraction(i, n[0]), a), r3.Scale(fraction(j, n[1]), b))))
		}
	}
	return points
}

// fraction is where node i of n lies along an edge, from -1/2 to 1/2.
func fraction(i, n int) float64 {
	if n < 2 {
		return 0
	}
	return float64(i)/float64(n-1) - 0.5
}

// areaNodes is the number of nodes along each edge of the action's area.
const areaNodes = 33

// area samples the action's area.
func (w *work) area() {
	action := w.rig.Plan.Action
	if action == nil || action.Area == nil {
		return
	}
	a := action.Area
	center := r3.Vec{X: float64(a.At[0]), Y: float64(a.At[1]), Z: float64(a.Height)}
	points := nodes(center, r3.Vec{X: float64(a.Size[0])}, r3.Vec{Y: float64(a.Size[1])}, [2]int{areaNodes, areaNodes})
	values := w.grid(w.now, points, areaNodes, r3.Vec{Z: 1})
	mean, low, high := trapezoid(values, areaNodes)
	nan := Number(math.NaN())
	told := &AreaAnswer{Mean: Number(mean), Min: Number(low), Max: Number(high), Even: Number(stops(high, low)), Stop: nan, Level: nan, Reserve: nan}
	if x := w.exposure(); x != nil {
		full := w.atFullLevel(mean, points)
		c := source.FlatReceptor()
		told.Stop = Number(stopFor(mean, x, c))
		told.Level = Number(luxFor(x, c) / full)
		told.Reserve = Number(stops(full, luxFor(x, c)))
	}
	w.answer.Area = told
}

func (w *work) exposure() *plan.Exposure {
	if w.rig.Plan.Want == nil {
		return nil
	}
	return w.rig.Plan.Want.Exposure
}

// trapezoid is the mean over an n × n grid of nodes by the trapezoidal rule, with
// the smallest and the largest value.
func trapezoid(values []float64, n int) (mean, low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	var sum, weights float64
	for k, v := range values {
		weight := edgeWeight(k%n, n) * edgeWeight(k/n, n)
		sum, weights = sum+weight*v, weights+weight
		low, high = math.Min(low, v), math.Max(high, v)
	}
	return sum / weights, low, high
}

func edgeWeight(i, n int) float64 {
	if i == 0 || i == n-1 {
		return 0.5
	}
	return 1
}

// marks reads a dome at every performer's eyes.
func (w *work) marks() {
	action := w.rig.Plan.Action
	if action == nil {
		return
	}
	for _, m := range action.Marks {
		at := r3.Vec{X: float64(m.At[0]), Y: float64(m.At[1]), Z: float64(m.Eyes)}
		sin, cos := math.Sincos(float64(m.Faces))
		dome := w.lux(w.now, at, r3.Vec{X: cos, Y: sin}, Dome)
		told := MarkAnswer{Name: m.Name, Dome: Number(dome), Stop: Number(math.NaN()), VectorScalar: Number(math.NaN()), VectorAltitude: Number(math.NaN())}
		if x := w.exposure(); x != nil {
			told.Stop = Number(stopFor(dome, x, source.DomeReceptor()))
		}
		vector := w.vector(w.now, at)
		if scalar := w.lux(w.now, at, r3.Vec{Z: 1}, Scalar); scalar > 0 {
			told.VectorScalar = Number(r3.Norm(vector) / scalar)
			told.VectorAltitude = Number(math.Atan2(vector.Z, math.Hypot(vector.X, vector.Y)) * 180 / math.Pi)
		}
		w.face(&m, &told)
		w.answer.Marks = append(w.answer.Marks, told)
	}
}

// cloth tells what arrives on the lowest cloth, and the flux.
func (w *work) cloth() {
	flux := w.now.engine.Flux()
	w.answer.Flux = &FluxAnswer{Lamps: Number(flux.LampsLm), Out: Number(flux.OutLm), Absorbed: Number(flux.AbsorbedLm),
		Lost: Number(flux.LostLm), Closure: Number(flux.ClosureBeforeCorrection), RoomClosure: Number(math.NaN())}
	if w.hall != nil {
		w.answer.Flux.RoomClosure = Number(w.hall.Closure())
	}
	if len(w.rig.Optics.Cloths) == 0 {
		return
	}
	c := w.now.engine.Cloth()
	w.answer.Cloth = &ClothAnswer{Mean: Number(c.MeanLux), Min: Number(c.MinLux), Max: Number(c.MaxLux),
		Efficiency: Number(flux.OutLm / flux.LampsLm), HotSpot: Number(stops(c.MaxLux, c.MeanLux))}
}
