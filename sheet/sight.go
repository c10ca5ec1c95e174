package sheet

import (
	"fmt"
	"io"
	"math"
	"sort"
	"strings"

	"softloft/answer"
	"softloft/finding"
	"softloft/quantity"
	"softloft/sight"
)

// Sight writes what each camera sees: what is in shot and where, the trim and the lens
// that clear it, what the camera hides, and what is found.
func Sight(to io.Writer, a *answer.Answers, style Style) error {
	c := &check{printer: &printer{to: to, style: style}, a: a, units: a.Model.Plan.Sheet.Units}
	c.title()
	for i := range a.Sight.Cameras {
		c.camera(&a.Sight.Cameras[i])
	}
	c.heading("What decides")
	for _, f := range SightFindings(a) {
		c.finding(f, nil)
	}
	c.sightNotes()
	c.cautions()
	return c.err
}

// SightFindings are the findings of the cameras, in their order.
func SightFindings(a *answer.Answers) []finding.Finding {
	found := []finding.Finding{}
	for _, f := range a.Findings {
		if strings.HasPrefix(f.ID, "sight.") {
			found = append(found, f)
		}
	}
	return found
}

// SightJSON writes what the cameras see and its findings as JSON.
func SightJSON(to io.Writer, a *answer.Answers) error {
	return Encode(to, struct {
		Sight    *sight.Answer     `json:"sight"`
		Findings []finding.Finding `json:"findings"`
		Cautions []string          `json:"cautions"`
	}{a.Sight, SightFindings(a), a.Cautions})
}

// camera writes one camera's block.
func (c *check) camera(k *sight.CameraAnswer) {
	c.heading("Camera " + clean(k.Name))
	if f := k.FieldOfView; f != nil {
		c.line("  takes in %.1f° × %.1f° (%.1f° across the corners), %s", float64(f.Horizontal), float64(f.Vertical), float64(f.Diagonal), ways[k.Swept])
	}
	for _, m := range k.Missing {
		c.wrapped("  ", "not known: "+clean(m))
	}
	if k.FieldOfView == nil || len(k.Missing) > 0 {
		return
	}
	c.inShot(k)
	c.line("  %s", "box clears at a trim of "+c.clears(k))
	c.line("  %s", "widest lens with nothing of the rig in shot: "+lensOf(k))
	for _, h := range k.Hides {
		if float64(h.SourceShare) > 0 {
			c.line("  camera and operator hide up to %.0f %% of the cloth from mark %s", math.Ceil(100*float64(h.SourceShare)), clean(h.Mark))
		}
	}
}

var ways = map[string]string{"stands": "stands still", "pan": "stands and pans", "track": "on a track", "orbit": "on an orbit"}

// clears is the trim at which the box clears, rounded up to an inch or a centimeter.
func (c *check) clears(k *sight.CameraAnswer) string {
	if !finding.Known(float64(k.ClearTrim)) {
		return "not known, or none: the frame reaches up to the zenith"
	}
	return c.lengthUp(float64(k.ClearTrim))
}

// lengthUp rounds up to an inch or a centimeter.
func (c *check) lengthUp(x float64) string {
	step := float64(quantity.Inch)
	if c.units == quantity.InMetres {
		step = 0.01
	}
	return c.units.Length(quantity.Length(math.Ceil(x/step-1e-9) * step))
}

// lensOf is the widest lens that stays clear, rounded up to a millimeter.
func lensOf(k *sight.CameraAnswer) string {
	switch {
	case k.AnyLensClears:
		return "any"
	case !finding.Known(float64(k.WidestClear)):
		return "none"
	}
	return fmt.Sprintf("%.0f mm", math.Ceil(float64(k.WidestClear)-1e-6))
}

// inShot lists parts with where on the way they are seen, the largest first.
func (c *check) inShot(k *sight.CameraAnswer) {
	if len(k.Sees) == 0 {
		c.line("  nothing of rig or points is in shot")
		return
	}
	parts := gatherSeen(k)
	rows := [][]string{{"in shot", "of the frame", whereHead[k.Swept]}}
	for i, p := range parts {
		if i == mostSeen && !c.style.Working {
			c.table(rows)
			c.line("  and %d more: -v shows all", len(parts)-i)
			return
		}
		rows = append(rows, []string{clean(p.part), ofFrame(p.share), strings.Join(p.where, ", ")})
	}
	c.table(rows)
}

// mostSeen is how many parts a list has at most without -v.
const mostSeen = 16

var whereHead = map[string]string{"orbit": "at degrees of the orbit", "pan": "at degrees of pan", "track": "at % of the track"}

// ofFrame prints a share of the frame.
func ofFrame(x float64) string {
	switch {
	case x >= 0.1:
		return fmt.Sprintf("%.0f %%", 100*x)
	case x >= 0.0005:
		return fmt.Sprintf("%.1f %%", 100*x)
	}
	return "under 0.1 %"
}

// seenPart is a part with all the stretches over which it is in shot.
type seenPart struct {
	part  string
	share float64
	where []string
}

func gatherSeen(k *sight.CameraAnswer) []seenPart {
	var parts []seenPart
	index := map[string]int{}
	for _, s := range k.Sees {
		i, ok := index[s.Part]
		if !ok {
			i = len(parts)
			index[s.Part] = i
			parts = append(parts, seenPart{part: s.Part})
		}
		parts[i].share = math.Max(parts[i].share, float64(s.Share))
		if where := stretch(s); where != "" {
			parts[i].where = append(parts[i].where, where)
		}
	}
	sort.SliceStable(parts, func(i, j int) bool { return parts[i].share > parts[j].share })
	return parts
}

// stretch is a range rounded outward to a tenth of a degree, or to percents.
func stretch(s sight.Seen) string {
	switch {
	case finding.Known(float64(s.FromDeg)):
		return fmt.Sprintf("%.1f to %.1f", math.Floor(10*float64(s.FromDeg)+1e-6)/10, math.Ceil(10*float64(s.ToDeg)-1e-6)/10)
	case s.FromShare != nil:
		return fmt.Sprintf("%.0f to %.0f", math.Floor(100*float64(*s.FromShare)+1e-6), math.Ceil(100*float64(*s.ToShare)-1e-6))
	}
	return ""
}

// sightNotes says what was not looked for.
func (c *check) sightNotes() {
	c.heading("Not looked for")
	for _, m := range c.a.Sight.Missing {
		c.wrapped("  ", clean(m))
	}
	c.wrapped("  ", "light stands in reflections, shadows of the rig, flare; what an operator does off plan")
}

// shotInShort answers the fifth of a crew's questions in a line.
func (c *check) shotInShort() string {
	if c.a.Sight == nil {
		return "the plan names no camera"
	}
	var told []string
	for i := range c.a.Sight.Cameras {
		k := &c.a.Sight.Cameras[i]
		told = append(told, clean(k.Name)+": "+c.shotOf(k))
	}
	return strings.Join(told, "; ")
}

func (c *check) shotOf(k *sight.CameraAnswer) string {
	if len(k.Missing) > 0 {
		return "not known, " + clean(k.Missing[0])
	}
	kinds := kindsInShot(c.a, k)
	text := "nothing of the rig in shot"
	if len(kinds) > 0 {
		text = strings.Join(kinds, ", ") + " in shot"
	}
	if finding.Known(float64(k.ClearTrim)) {
		return text + ", box clears at " + c.lengthUp(float64(k.ClearTrim))
	}
	return text + ", no trim clears the box"
}

// kindsInShot sorts what is in shot into what a crew asks for.
func kindsInShot(a *answer.Answers, k *sight.CameraAnswer) []string {
	var kinds []string
	add := func(kind string) {
		for _, each := range kinds {
			if each == kind {
				return
			}
		}
		kinds = append(kinds, kind)
	}
	for _, s := range k.Sees {
		switch head, _, _ := strings.Cut(s.Part, "."); {
		case head == "point":
		case strings.HasSuffix(s.Part, ".tie_off"):
			add("tie-off")
		case head == "line" || head == "secondary" || head == "guy":
			add("rope")
		case head == "stand":
			add("stand")
		case head == "feed" || strings.HasSuffix(s.Part, ".cable"):
			add("cable led from the floor")
		case head == "lamp":
			add("lamp")
		default:
			add("box")
		}
	}
	return kinds
}

// raisedShot answers the rest of the third question: in shot two feet up.
func (c *check) raisedShot() string {
	shot := c.a.TwoUpShot
	switch {
	case shot == nil:
		return "; in shot: the plan names no camera"
	case len(shot.Cameras) > 0:
		return "; in shot still or then on " + clean(strings.Join(shot.Cameras, ", "))
	case len(shot.Unknown) > 0:
		return "; in shot: not known on " + clean(strings.Join(shot.Unknown, ", "))
	}
	return "; nothing of the rig in shot then"
}
