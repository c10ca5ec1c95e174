package answer

import (
	"crypto/sha256"
	"encoding/hex"
	"sync"

	"softloft/build"
	"softloft/finding"
	"softloft/fit"
	"softloft/light"
	"softloft/load"
	"softloft/plan"
	"softloft/power"
	"softloft/pull"
	"softloft/rig"
	"softloft/sight"
)

// Version is the version of the answers JSON.
const Version = 1

// Answers is everything that one plan gives, as in the answers JSON: SI, degrees.
type Answers struct {
	Softloft   int               `json:"softloft"`
	Title      string            `json:"title"`
	Revision   string            `json:"revision"`
	PlanDigest string            `json:"plan_digest"`
	Result     finding.Result    `json:"result"`
	Demo       bool              `json:"demo"`
	Defaults   []Default         `json:"defaults"`
	NotUsed    []NotUsed         `json:"not_used"`
	Findings   []finding.Finding `json:"findings"`
	Rig        Rig               `json:"rig"`
	Light      light.Answer      `json:"light"`
	Load       load.Answer       `json:"load"`
	Power      *power.Answer     `json:"power,omitempty"`
	Sight      *sight.Answer     `json:"sight,omitempty"`
	Pull       []pull.Row        `json:"pull"`
	Build      []build.Step      `json:"build"`
	Strike     []build.Step      `json:"strike"`
	Job        *build.Job        `json:"job"`
	TwoUp      finding.Number    `json:"two_feet_up_stops"` // of the area's mean, the box two feet higher
	TwoUpShot  *Shot             `json:"two_feet_up_in_shot,omitempty"`
	Cautions   []string          `json:"cautions"`

	// Model is the rig that the answers are about, for drawings and sheets.
	Model *rig.Rig `json:"-"`
}

// Shot names the cameras that have something of the rig in shot, and those of which that
// is not known.
type Shot struct {
	Cameras []string `json:"cameras"`
	Unknown []string `json:"not_known"`
}

// Of runs every analysis on a plan that was read.
func Of(file *plan.File) *Answers {
	model := rig.Derive(file.Plan, file.Doc, file.Kit)
	a := &Answers{
		Softloft: Version, Title: file.Plan.Title, Revision: file.Plan.Revision, PlanDigest: digest(file.Doc.Bytes()),
		Defaults: defaultsOf(file), NotUsed: notUsed(file), Rig: rigOf(model), Pull: pull.List(model), Model: model,
		Cautions: cautions(file.Plan),
	}
	var ofLight, ofLoad, ofPower, ofSight []finding.Finding
	var wait sync.WaitGroup
	wait.Add(3)
	go func() {
		defer wait.Done()
		a.Light, ofLight = light.Run(model)
		a.TwoUp = finding.Number(light.Raised(model, a.Light, twoFeet))
	}()
	go func() {
		defer wait.Done()
		a.Power, ofPower = power.Run(model)
	}()
	go func() {
		defer wait.Done()
		if a.Sight, ofSight = sight.Run(model); a.Sight != nil {
			a.TwoUpShot = &Shot{}
			a.TwoUpShot.Cameras, a.TwoUpShot.Unknown = sight.Raised(model, twoFeet)
		}
	}()
	a.Load, ofLoad = load.Run(model)
	wait.Wait()
	a.Findings = append(a.Findings, ofLoad...)
	a.Findings = append(a.Findings, ofLight...)
	a.Findings = append(a.Findings, ofPower...)
	a.Findings = append(a.Findings, ofSight...)
	a.Findings = append(a.Findings, fit.Run(model)...)
	a.Findings = append(a.Findings, a.order(model)...)
	a.Findings = finding.Silence(a.Findings)
	a.fillEmpty()
	a.Result = overall(a.Findings)
	a.Demo = demo(model) || a.Power != nil && a.Power.Demo
	return a
}

// order puts the work in order, after load and list.
func (a *Answers) order(model *rig.Rig) []finding.Finding {
	told, found := build.Run(model, a.Load, a.Pull)
	a.Build, a.Strike, a.Job = told.Build, told.Strike, &told.Job
	return found
}

// twoFeet is how far the third of a crew's questions raises the box, in m.
const twoFeet = 2 * 0.3048

// overall is the worst result. Of no finding at all it is not known.
func overall(findings []finding.Finding) finding.Result {
	results := make([]finding.Result, len(findings))
	for i, f := range findings {
		results[i] = f.Result
	}
	return finding.Worst(results...)
}

// digest names a plan's text: the first half of its SHA-256 (FIPS 180-4).
func digest(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:16])
}

// demo reports whether any number rests on an invented demo value.
func demo(r *rig.Rig) bool {
	for i := range r.Parts {
		if r.Parts[i].Demo {
			return true
		}
	}
	for _, l := range r.Lines {
		if l.Rope != nil && l.Rope.Demo {
			return true
		}
	}
	for _, o := range r.Optics.Lamps {
		if o.Demo {
			return true
		}
	}
	return false
}

// fillEmpty makes lists that hold nothing empty rather than null.
func (a *Answers) fillEmpty() {
	empty(&a.Findings)
	empty(&a.Pull)
	empty(&a.Rig.Bodies)
	empty(&a.Rig.Parts)
	empty(&a.Load.TakeOff)
	empty(&a.Load.Lines)
	empty(&a.Load.Points)
	empty(&a.Load.Lost)
	empty(&a.Load.Stands)
	empty(&a.Load.Assumptions)
	empty(&a.Load.Unknown)
	empty(&a.Light.Probes)
	empty(&a.Light.Marks)
	empty(&a.Light.Spill)
	empty(&a.Light.Missing)
}

func empty[T any](list *[]T) {
	if *list == nil {
		*list = []T{}
	}
}
