package build

import (
	"fmt"
	"slices"
	"strings"

	"softloft/quantity"
)

// Roles that sign; keys of crew.names.
const (
	caller  = "caller"
	rigging = "rigging"
	power   = "power"
	floorBy = "floor"
)

// act makes a step without parts of its own kind.
func (w *work) act(key, title, undo string) int {
	i := w.step(key, act)
	w.steps[i].title, w.steps[i].undo = title, undo
	return i
}

// sign lets work stop after a step until somebody signs.
func (w *work) sign(i int, role, what string) { w.steps[i].role, w.steps[i].hold = role, what }

func (w *work) hung() bool     { return len(w.rig.Lines) > 0 }
func (w *work) standing() bool { return len(w.of(ears)) > 0 }

// acts makes the steps that have no part: what the trade does around the parts.
func (w *work) acts() {
	w.act("floor", "Mark the floor from two walls, put the barricade up", "Barricade down, floor swept")
	if len(w.of(bones)) > 0 {
		w.horsesAndTorque()
	}
	if len(w.of(lamps)) > 0 || w.armLamps() {
		w.light()
	}
	if w.hung() || w.standing() {
		w.up()
	}
	w.armsUp()
	w.last()
	w.bagsFirst()
	w.roots()
}

func (w *work) horsesAndTorque() {
	set := w.act("horses", "Set horses, waist high, under where the box goes up", "Horses away")
	for _, i := range w.of(bones) {
		w.after(i, set, "put together waist high, on horses")
	}
	torque := w.act("torque", "Torque every set screw, tug at every joint", "")
	w.afterAll(torque, w.of(bones, ears), "a screw holds when it is torqued, not when it is set")
	for _, i := range w.of(lamps, loom, sheets, burden) {
		w.after(i, torque, "nothing is hung on joints that are not torqued")
	}
}

func (w *work) armLamps() bool {
	for i := range w.rig.Parts {
		if p := &w.rig.Parts[i]; p.What == "lamp" && w.steps[w.home[p.ID]].kind == onStand {
			return true
		}
	}
	return false
}

// light addresses and lights the lamps where each can still be reached.
func (w *work) light() {
	by := 0
	for i := range w.rig.Plan.Lamps {
		if w.rig.Kit.Lamp[w.rig.Plan.Lamps[i].Kit].Control != "remote" {
			by++
		}
	}
	title := "Address every lamp, set its level, light it once"
	if by > 0 {
		title += fmt.Sprintf("; %d without remote control: what is set now stays", by)
	}
	i := w.act("light", title, "")
	w.afterAll(i, w.of(lamps, loom, onStand), "a lamp is lit before it flies: a dead one is changed within reach")
}

// up is the way of the box from the horses to its place.
func (w *work) up() {
	inches := "6 to 12 in"
	if w.units() == quantity.InMetres {
		inches = "15 to 30 cm"
	}
	bump := w.act("bump", "Bump: "+inches+" up, hold there", "")
	again := w.act("again", "While it hangs: torque again; look at joints, knots, pins, cable", "")
	if !w.hung() {
		w.steps[again].title = "While it stands low: torque again; look at joints, pins, feet, cable"
	}
	w.sign(again, rigging, "bumped, torqued again, nothing moved")
	clear := w.act("clear", "Clear the floor; one caller, one stop word", "")
	w.sign(clear, floorBy, "nobody beneath")
	lift := w.act("lift", w.liftTitle("up to trim"), w.liftTitle("down to the horses"))
	for _, i := range w.of(bones, lamps, loom, sheets, burden, ears, seat) {
		w.after(bump, i, "it goes up with the box")
	}
	for _, key := range []string{"torque", "light", "fast.hauled", "guys", "seat"} {
		w.afterKey(bump, key, "before the box leaves the horses")
	}
	w.after(bump, clear, "nobody beneath while it moves")
	w.after(again, bump, "looked at while it is within reach")
	w.after(lift, again, "no lift before the bump is signed")
	made := lift
	if w.hung() {
		made = w.hangUp(bump, lift)
	}
	if w.standing() {
		made = w.standUp(lift)
	}
	w.beneath(lift, made)
	w.emptyFloor(clear, bump, again)
}

// emptyFloor ends all other work before the floor is cleared: what needs neither the
// clearing nor the lift is done before, and in the strike after.
func (w *work) emptyFloor(clear, bump, again int) {
	for i, s := range w.steps {
		late := s.kind == catches || s.key == "fast.dead" || s.kind == act && !slices.Contains(beforeLift, s.key)
		if i != clear && i != bump && i != again && !late {
			w.after(clear, i, "nobody works where the box moves")
		}
	}
}

// beforeLift are the acts that are done before the floor is cleared.
var beforeLift = []string{"floor", "horses", "torque", "light", "owner", "tag"}

func (w *work) liftTitle(way string) string {
	how := "Box " + way
	if !w.hung() {
		how = "All stands together, stage by stage, box " + way
	}
	every := "4 ft"
	if w.units() == quantity.InMetres {
		every = "1.2 m"
	}
	return fmt.Sprintf("%s, %s, level every %s: %s", how, w.units().Length(quantity.Length(w.rise())), every, counted(stops(w.rise()), "stop"))
}

// hangUp is what only a hung box needs; it returns the step after which lines hold.
func (w *work) hangUp(bump, lift int) int {
	owner := w.act("owner", "Read the owner's word on every point: load, direction, date", "")
	w.sign(owner, rigging, "points as their owner states them")
	for _, i := range w.of(tops, ropes) {
		w.after(i, owner, "nothing hangs from a point that nobody has stated")
	}
	tag := w.act("tag", "Tag lines on the corners", "Tag lines off")
	w.afterAll(tag, w.of(bones), "they hold its corners")
	w.after(bump, tag, "tag lines steady it from the first inch")
	w.fastBefore(bump)
	made := lift
	if len(w.lifters()) > 0 {
		made = w.act("tieoff", "Level it, tie off "+list(w.lifters(), 6), "Take the weight on "+list(w.lifters(), 6)+", untie")
		w.after(made, lift, "tied off at trim")
	}
	if i, ok := w.index["fast.dead"]; ok {
		w.after(i, made, "dead-hung lines have their length at trim only")
		made = i
	}
	for _, i := range w.of(catches) {
		w.after(i, made, "what catches is set when nothing moves any more")
	}
	return made
}

// fastBefore lets hauled lines be made fast before the box leaves the horses.
func (w *work) fastBefore(bump int) {
	hauled, ok := w.index["fast.hauled"]
	if !ok {
		return
	}
	w.afterKey(hauled, "torque", "no line pulls on joints that are not torqued")
	w.afterAll(hauled, w.of(bones), "no line pulls on a frame that is not closed")
	w.after(bump, hauled, "they lift it")
}

// standUp is what only a standing box needs.
func (w *work) standUp(lift int) int {
	pins := w.step("seat", seat)
	w.afterAll(pins, w.of(ears), "the ears sit on the stands")
	w.afterAll(pins, w.of(bones), "stands take a frame that is closed")
	w.afterKey(pins, "torque", "stands take joints that are torqued")
	for i := range w.rig.Stands {
		if s := &w.rig.Stands[i]; s.Ear != nil {
			w.afterKey(pins, s.Part, "it sits on it")
			w.afterKey(pins, "bags."+s.Part, "bags before load")
		}
	}
	for _, i := range w.of(lamps, loom, sheets, burden) {
		w.after(i, pins, "the stands carry it low before it gets heavy")
	}
	if i, ok := w.index["bump"]; ok {
		w.after(i, pins, "the stands lift it")
	}
	lock := w.act("lock", "Pin or lock every stage, lock the castors, count the bags", "Unlock the stages, castors stay locked")
	w.after(lock, lift, "locked at its height")
	return lock
}

// beneath lets nobody under the box before what catches is on.
func (w *work) beneath(lift, made int) {
	i := w.act("beneath", "Walk around: "+w.catching(), "Clear the floor: nobody beneath from here on")
	w.after(i, lift, "nobody beneath while it moves")
	w.after(i, made, "nobody beneath before what holds it is made fast")
	w.afterAll(i, w.of(catches), "nobody beneath before the secondary is on")
	if len(w.of(guys)) > 0 {
		set := w.act("guys.set", "Set the guys, opposite ones together", "Slack the guys, hands on them")
		w.after(set, lift, "they are set at its height")
		w.after(set, made, "they steady what holds already")
		w.after(i, set, "nobody beneath before the guys are on")
		for _, g := range w.of(guys) {
			w.after(set, g, "they are on it before it goes up")
		}
	}
	w.sign(i, caller, "people may be called beneath: everything that catches is on")
}

// catching says what must be on before anybody goes beneath, and what is not there.
func (w *work) catching() string {
	var on []string
	for _, each := range []struct {
		there bool
		name  string
	}{{len(w.of(catches)) > 0, "secondary"}, {len(w.of(lamps)) > 0, "safeties"}, {len(w.of(seat)) > 0, "pins"}, {len(w.of(guys)) > 0, "guys"}} {
		if each.there {
			on = append(on, each.name)
		}
	}
	text := "what holds it"
	if len(on) > 0 {
		text = strings.Join(on, ", ")
	}
	text += " on"
	if w.hung() && len(w.of(catches)) == 0 {
		text += "; THE BOX HAS NO SECONDARY"
	}
	return text
}

// armsUp raises the stands that hold arms, loaded and bagged.
func (w *work) armsUp() {
	for i := range w.rig.Stands {
		s := &w.rig.Stands[i]
		if s.Arm == nil {
			continue
		}
		up := w.act("raise."+s.Part, fmt.Sprintf("Raise stand %s to %s, turn its arm in", s.Name, w.units().Length(quantity.Length(s.Rise))), "Lower stand "+s.Name)
		w.steps[up].people = 2
		for _, key := range []string{s.Part, "arm." + s.Part, "lamps." + s.Part, "cable." + s.Part, "more." + s.Part, "bags." + s.Part, "light"} {
			w.afterKey(up, key, "loaded low, then raised")
		}
		if b, ok := w.index["beneath"]; ok {
			w.after(b, up, "nobody beneath while an arm comes in")
			w.afterKey(up, "lift", "it reaches in when the box is up")
		}
	}
}

// bagsFirst puts bags on a stand before anything that loads it.
func (w *work) bagsFirst() {
	for _, i := range w.of(onStand) {
		for _, p := range w.steps[i].parts {
			w.afterKey(i, "bags."+p.Body, "bags before load")
		}
	}
	for _, i := range w.of(guys) {
		w.afterAll(i, w.of(bones, stand), "it holds it")
	}
}

// last puts power at the end, and the signature after it.
func (w *work) last() {
	before := len(w.steps)
	end := before
	if w.rig.Plan.Power != nil && len(w.rig.Plan.Lamps) > 0 {
		on := w.act("power", "Tie in; power on, one circuit after the other", "Power off, tie-in pulled, lamps cool")
		for i := range before {
			w.after(on, i, "power last")
		}
		w.sign(on, power, "tied in by a licensed electrician, every lamp answers")
		end = len(w.steps)
	}
	open := w.act("open", "Look up once more, all of you", "")
	for i := range end {
		w.after(open, i, "the last step")
	}
	w.sign(open, caller, "lit and handed over")
}

// roots starts everything after the floor is marked.
func (w *work) roots() {
	mark := w.index["floor"]
	for i := range w.steps {
		if i != mark && len(w.steps[i].links) == 0 {
			w.after(i, mark, "the floor is marked first")
		}
	}
}

// lifters are the names of the lines that lift.
func (w *work) lifters() []string {
	var names []string
	for i := range w.rig.Lines {
		if l := &w.rig.Lines[i]; w.lifts(l) {
			names = append(names, l.Name)
		}
	}
	return names
}

func (w *work) units() quantity.System { return w.rig.Plan.Sheet.Units }
