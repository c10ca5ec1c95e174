package light

import (
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
		w.answer.Missing = []string{"no lamp is placed, so there is no light to compute"}
		return w.answer, nil
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

// work is an analysis under way.
type work struct {
	rig      *rig.Rig
	engine   *Engine
	full     *Engine // all lamps at full level; the same where they are
	answer   Answer
	findings []finding.Finding
}

// prepare works out the scene, and a second time at full level where a lamp isn't.
func (w *work) prepare() error {
	scene, missing, err := SceneOf(w.rig)
	if err != nil {
		return err
	}
	if w.engine, err = Prepare(scene); err != nil {
		return err
	}
	w.answer.Missing = append(missing, w.engine.Missing()...)
	w.full = w.engine
	if scene, dimmed := w.fullScene(scene); dimmed {
		if w.full, err = Prepare(scene); err != nil {
			return err
		}
	}
	if w.indoors() {
		w.answer.Missing = append(w.answer.Missing, noRoom)
	}
	return nil
}

const noRoom = "light that comes back from floor, walls and ceiling is not computed yet: levels are direct light only, and spill is at least what is told"

func (w *work) indoors() bool {
	room := w.rig.Plan.Room
	return room != nil && room.Size != nil && room.Outdoors == nil
}

func (w *work) fullScene(scene Scene) (Scene, bool) {
	dimmed := false
	lamps := append([]Lamp(nil), scene.Lamps...)
	for i, o := range w.rig.Optics.Lamps {
		dimmed = dimmed || o.Level != 1
		lamps[i].Lumens = *o.Lumens
	}
	scene.Lamps = lamps
	return scene, dimmed
}

// lux asks the engine in the room's axes.
func (w *work) lux(e *Engine, at, facing r3.Vec, receptor Receptor) float64 {
	return e.At(w.rig.Pose.In(at), w.rig.Pose.InDirection(facing), receptor)
}

var receptors = map[plan.Receptor]Receptor{"flat": Flat, "dome": Dome, "cylinder": Cylinder, "scalar": Scalar}

// probes reads every meter point.
func (w *work) probes() {
	for i := range w.rig.Plan.Probes {
		p := &w.rig.Plan.Probes[i]
		facing := r3.Vec{X: p.Facing[0], Y: p.Facing[1], Z: p.Facing[2]}
		points := probePoints(p)
		values := w.each(w.engine, points, facing, receptors[p.Receptor])
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
	values := w.each(w.engine, points, r3.Vec{Z: 1}, Flat)
	mean, low, high := trapezoid(values, areaNodes)
	nan := Number(math.NaN())
	told := &AreaAnswer{Mean: Number(mean), Min: Number(low), Max: Number(high), Even: Number(stops(high, low)), Stop: nan, Level: nan, Reserve: nan}
	if x := w.exposure(); x != nil {
		full := mean
		if w.full != w.engine {
			full, _, _ = trapezoid(w.each(w.full, points, r3.Vec{Z: 1}, Flat), areaNodes)
		}
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
		dome := w.lux(w.engine, at, r3.Vec{X: cos, Y: sin}, Dome)
		told := MarkAnswer{Name: m.Name, Dome: Number(dome), Stop: Number(math.NaN()), VectorScalar: Number(math.NaN()), VectorAltitude: Number(math.NaN())}
		if x := w.exposure(); x != nil {
			told.Stop = Number(stopFor(dome, x, source.DomeReceptor()))
		}
		vector := w.rig.Pose.OutDirection(w.engine.Vector(w.rig.Pose.In(at)))
		if scalar := w.lux(w.engine, at, r3.Vec{Z: 1}, Scalar); scalar > 0 {
			told.VectorScalar = Number(r3.Norm(vector) / scalar)
			told.VectorAltitude = Number(math.Atan2(vector.Z, math.Hypot(vector.X, vector.Y)) * 180 / math.Pi)
		}
		w.answer.Marks = append(w.answer.Marks, told)
	}
}

// cloth tells what arrives on the lowest cloth, and the flux.
func (w *work) cloth() {
	flux := w.engine.Flux()
	w.answer.Flux = &FluxAnswer{Lamps: Number(flux.LampsLm), Out: Number(flux.OutLm), Absorbed: Number(flux.AbsorbedLm),
		Lost: Number(flux.LostLm), Closure: Number(flux.ClosureBeforeCorrection)}
	if len(w.rig.Optics.Cloths) == 0 {
		return
	}
	c := w.engine.Cloth()
	w.answer.Cloth = &ClothAnswer{Mean: Number(c.MeanLux), Min: Number(c.MinLux), Max: Number(c.MaxLux),
		Efficiency: Number(flux.OutLm / flux.LampsLm), HotSpot: Number(stops(c.MaxLux, c.MeanLux))}
}
