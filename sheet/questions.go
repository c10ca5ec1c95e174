package sheet

import (
	"fmt"
	"math"
	"strings"

	"softloft/finding"
	"softloft/load"
	"softloft/quantity"
)

func hypot(a, b float64) float64 { return math.Hypot(a, b) }

// questions answers, of the twelve that a crew asks, what can be answered already,
// under the numbers by which docs/questions lists them.
func (c *check) questions() {
	c.heading("Ten-second answers")
	c.question(1, "all-in weight, and on a point", c.weight())
	c.question(2, "level for the stop, and what is left", c.level())
	c.question(3, "two feet up", c.twoUp())
	c.question(4, "what may still go up", c.growth())
	c.question(5, "is box, rope or tie-off in shot; what trim clears", c.shotInShort())
	c.question(6, "lowest edge over the floor and over heads", c.lowest())
	c.question(7, "tilt: which rope, how many inches, what it then carries", c.tilting())
	c.question(8, "bags on each leg, hands on each line", c.hands())
	if c.a.Load.Wind != nil {
		c.question(9, "wind: watch, cloth out, down", c.windInShort())
	}
	c.question(10, "which circuit is each lamp on; amps on each leg", c.circuitsInShort())
	c.question(11, "what is short, what stands in", "softloft pull PLAN --stock FILE holds the list against a shop's stock")
	c.question(12, "another cloth, or a skirt rolled", "softloft vary PLAN --over box.cloth[0]=light,half,heavy compares cloths; any key of the plan goes")
}

func (c *check) question(number int, ask, told string) {
	if told == "" {
		told = "the plan does not say enough"
	}
	lines := wrap(fmt.Sprintf("%s: %s", ask, told), 92)
	c.line("  %2d  %s", number, lines[0])
	for _, l := range lines[1:] {
		c.line("      %s", l)
	}
}

func (c *check) weight() string {
	if !finding.Known(float64(c.a.Load.Mass)) {
		return "not known, some masses are missing"
	}
	told := quantity.LoadUp(c.units, quantity.Mass(c.a.Load.Mass)) + c.carriedBy()
	name, built, lost := "", 0.0, math.NaN()
	for _, p := range c.a.Load.Points {
		if v := p.Cases.Built; v != nil && float64(-v[2]) > built {
			name, built = p.Name, float64(-v[2])
		}
		if v := p.Cases.LostWorst; v != nil && !(float64(-v[2]) <= lost) {
			lost = float64(-v[2])
		}
	}
	if name != "" {
		told += fmt.Sprintf("; most on point %s, %s now", clean(name), quantity.LoadUp(c.units, quantity.Force(built)))
		if finding.Known(lost) {
			told += fmt.Sprintf("; at worst %s on one point with a line lost", quantity.LoadUp(c.units, quantity.Force(lost)))
		}
	}
	return told + c.notPlaced()
}

// carriedBy names what the box hangs or stands on.
func (c *check) carriedBy() string {
	switch {
	case len(c.a.Load.Lines) > 0:
		return " on the lines"
	case len(c.a.Load.Stands) > 0:
		return " on the stands"
	}
	return ", and nothing carries it"
}

// notPlaced reminds that the weight isn't whole.
func (c *check) notPlaced() string {
	var missing []string
	for _, n := range c.a.Rig.NotPlaced {
		missing = append(missing, clean(n.What))
	}
	if len(missing) == 0 {
		return ""
	}
	return "; without " + strings.Join(missing, ", ")
}

func (c *check) level() string {
	a := c.a.Light.Area
	if a == nil || !finding.Known(float64(a.Level)) {
		return ""
	}
	if a.Level > 1 {
		return fmt.Sprintf("full level is %s short", c.units.Stops(quantity.Stops(-a.Reserve)))
	}
	return fmt.Sprintf("%.0f %%, with %s in hand at full level", 100*float64(a.Level), c.units.Stops(quantity.Stops(a.Reserve)))
}

func (c *check) twoUp() string {
	told := "light not known"
	if finding.Known(float64(c.a.TwoUp)) {
		told = fmt.Sprintf("%+.1f stop over the area", float64(c.a.TwoUp))
	} else if c.a.TwoUpShot == nil {
		return ""
	}
	return told + c.raisedShot()
}

// growth tells what more could go up beside what the plan provides for.
func (c *check) growth() string {
	told := "the plan provides for nothing more"
	if c.a.Model.Plan.Provision != nil {
		worst, name := c.nearestLoad()
		told = fmt.Sprintf("with what the plan provides for up, the loads are %s their limits; nearest: %s", words[worst], clean(name))
	}
	grow := c.a.Load.RoomToGrow
	if grow == nil || !finding.Known(float64(grow.Mass)) {
		return told
	}
	told += fmt.Sprintf("; %s more among today's lamps", c.units.Mass(quantity.Mass(grow.Mass)))
	for _, f := range c.a.Findings {
		if f.ID == grow.FirstLimit {
			told += ", then first: " + clean(f.Statement)
		}
	}
	return told
}

// nearestLoad is the worst result among the loads, and the nearest limit of it.
func (c *check) nearestLoad() (worst finding.Result, name string) {
	worst = finding.Within
	margin := math.Inf(1)
	for _, f := range c.a.Findings {
		if !strings.HasPrefix(f.ID, "load.") {
			continue
		}
		if w := finding.Worst(worst, f.Result); w != worst || (f.Result == worst && finding.Known(f.Margin) && f.Margin < margin) {
			worst, name, margin = w, f.Statement, f.Margin
		}
	}
	return worst, name
}

// tilting tells the last step of the path that the plan asks for.
func (c *check) tilting() string {
	path := c.a.Load.TiltPath
	if len(path) == 0 {
		return "softloft load PLAN --tilt x=15deg works it out; the plan asks for none"
	}
	last := path[len(path)-1]
	var told []string
	for _, l := range c.a.Load.Lines {
		length, ok := last.Lengths[l.Name]
		if ok && finding.Known(float64(length)) {
			told = append(told, fmt.Sprintf("%s %+.1f in, %s", clean(l.Name), float64(length-l.Length)/0.0254, c.force(last.Tension[l.Name])))
		}
	}
	return fmt.Sprintf("at %.0f°: %s", float64(last.Degrees), strings.Join(told, "; "))
}

// hands tells the bags that each stand wants, and what each pair of hands pulls when a
// line is hauled.
func (c *check) hands() string {
	var told []string
	for _, s := range c.a.Load.Stands {
		if fewest, ok := fewestBags(s); ok {
			told = append(told, fmt.Sprintf("%s %.0f × %s", clean(s.Name), float64(fewest.Needed), c.units.Mass(quantity.Mass(fewest.Each))))
		}
	}
	if lift := c.a.Load.Lift; lift != nil {
		for _, l := range lift.Lines {
			told = append(told, fmt.Sprintf("%s %d pulling %s each", clean(l.Name), l.People, c.force(l.PerPerson)))
		}
	}
	return strings.Join(told, "; ")
}

// fewestBags is the size of bag of which a stand wants the fewest.
func fewestBags(s load.Stand) (fewest load.BagCount, ok bool) {
	for _, b := range s.BagCounts {
		if finding.Known(float64(b.Needed)) && (!ok || b.Needed < fewest.Needed) {
			fewest, ok = b, true
		}
	}
	return fewest, ok
}

var words = map[finding.Result]string{finding.Within: "within", finding.Tight: "tight under", finding.Over: "over", finding.NotKnown: "not known against"}

func (c *check) lowest() string {
	low := c.a.Model.ClothAt - c.a.Model.LowestBy
	if pose := c.a.Load.Pose; pose != nil && finding.Known(float64(pose.Lowest)) {
		low = float64(pose.Lowest)
	}
	told := c.units.Length(quantity.Length(low)) + " over the floor"
	eyes := 0.0
	if action := c.a.Model.Plan.Action; action != nil {
		for _, m := range action.Marks {
			eyes = math.Max(eyes, float64(m.Eyes))
		}
	}
	if eyes > 0 {
		told += fmt.Sprintf(", %s over the highest eyes", c.units.Length(quantity.Length(low-eyes)))
	}
	return told
}
