package sight

import (
	"fmt"
	"math"
	"sync"

	"softloft/finding"
	"softloft/plan"
	"softloft/rig"
)

// Run tells what every camera of a plan sees, and concludes. What cannot be worked out
// is null in the answer and a finding that is not known; Run never fails. The answer is
// nil where the plan has no camera.
func Run(r *rig.Rig) (*Answer, []finding.Finding) {
	if len(r.Plan.Cameras) == 0 {
		return nil, nil
	}
	s := newScene(r, 0)
	answer := &Answer{Cameras: make([]CameraAnswer, len(r.Plan.Cameras)), Missing: missing(r)}
	found := make([][]finding.Finding, len(r.Plan.Cameras))
	var wait sync.WaitGroup
	for i := range r.Plan.Cameras {
		wait.Add(1)
		go func() {
			defer wait.Done()
			k := &work{rig: r, scene: s, camera: &r.Plan.Cameras[i], path: fmt.Sprintf("cameras[%d]", i)}
			answer.Cameras[i] = k.run()
			found[i] = k.findings
		}()
	}
	wait.Wait()
	var all []finding.Finding
	for _, each := range found {
		all = append(all, each...)
	}
	return answer, all
}

// missing says what is not looked for.
func missing(r *rig.Rig) []string {
	out := []string{}
	for i := range r.Parts {
		if r.Parts[i].Body == floorBody {
			out = append(out, "cable on the floor: how it lies is not planned")
			break
		}
	}
	for _, n := range r.NotPlaced {
		out = append(out, n.What+": nothing places it")
	}
	return out
}

// work is one camera's analysis under way.
type work struct {
	rig      *rig.Rig
	scene    *scene
	camera   *plan.Camera
	path     string
	way      *way
	answer   CameraAnswer
	findings []finding.Finding
}

func (k *work) run() CameraAnswer {
	nan := Number(math.NaN())
	k.answer = CameraAnswer{Name: k.camera.Name, Sees: []Seen{}, Hides: []Hidden{}, ErrorDeg: nan, ClearTrim: nan, WidestClear: nan}
	var err error
	if k.way, err = wayOf(k.camera); err != nil {
		k.answer.Missing = []string{err.Error()}
		k.unknown(err.Error())
		return k.answer
	}
	k.answer.Swept = k.way.kind
	k.answer.FieldOfView = k.way.frame.field()
	switch k.way.kind {
	case "orbit", "pan":
		k.answer.Way = []Number{Number(k.way.low / degree), Number(k.way.high / degree)}
	case "track":
		k.answer.Way = []Number{0, 1}
	}
	if !k.trouble() {
		return k.answer
	}
	k.see()
	k.clear()
	k.hide()
	k.conclude()
	return k.answer
}

const degree = math.Pi / 180

// see lists what is in shot.
func (k *work) see() {
	l := &looker{scene: k.scene, way: k.way}
	for i := range k.scene.bodies {
		b := &k.scene.bodies[i]
		for _, s := range l.ranges(b) {
			k.answer.Sees = append(k.answer.Sees, k.seen(b.part, s, l.share(b, s)))
		}
	}
	switch k.way.kind {
	case "orbit", "pan":
		k.answer.ErrorDeg = Number(math.Max(k.way.fineness().angle/degree, 1e-9))
	}
}

func (k *work) seen(part string, s span, share float64) Seen {
	nan := Number(math.NaN())
	told := Seen{Part: part, Share: Number(share), FromDeg: nan, ToDeg: nan}
	switch k.way.kind {
	case "orbit", "pan":
		told.FromDeg, told.ToDeg = Number(s.low/degree), Number(s.high/degree)
	case "track":
		from, to := Number(s.low), Number(s.high)
		told.FromShare, told.ToShare = &from, &to
	}
	return told
}

// clear tells what would get the rig out of the frame.
func (k *work) clear() {
	k.answer.ClearTrim = Number(clearTrim(k.rig, k.way))
	lens, any := widestLens(k.scene, k.way, float64(*k.camera.Lens))
	k.answer.WidestClear, k.answer.AnyLensClears = Number(lens*1000), any
}

// hide tells what of the source the camera and its operator hide.
func (k *work) hide() {
	if k.rig.Plan.Action == nil {
		return
	}
	cloth := clothArea(k.rig)
	for i := range k.rig.Plan.Action.Marks {
		m := &k.rig.Plan.Action.Marks[i]
		share := math.NaN()
		if cloth.polygon.Area() > 0 {
			share = worstHidden(&cloth, m, k.way)
		}
		k.answer.Hides = append(k.answer.Hides, Hidden{m.Name, Number(share)})
	}
}
