package rig

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"softloft/kit"
	"softloft/quantity"
)

// A kit entry tells the pins and receivers that it mates with under fits, by these
// words: pin-28 is the junior pin, 1-1/8 in, and the 28 mm spigot of Europe; pin-16 is
// the baby pin, 5/8 in. A lamp without a pin hangs by its yoke's bolt.
const yokeBolt = "yoke"

// pinWord names a pin by its diameter in m. 1-1/8 in and 28 mm are one pin, 5/8 in and
// 16 mm are one pin (common practice).
func pinWord(diameter float64) string {
	for _, nominal := range []float64{16, 28} {
		if math.Abs(1000*diameter-nominal) < 1 {
			return fmt.Sprintf("pin-%.0f", nominal)
		}
	}
	return fmt.Sprintf("pin-%.0f", 1000*diameter)
}

// pinsOf lists the pins that a piece mates with.
func pinsOf(piece kit.Hardware) []string {
	var pins []string
	for _, word := range piece.Fits {
		if strings.HasPrefix(word, "pin-") {
			pins = append(pins, word)
		}
	}
	return pins
}

func contains(words []string, word string) bool { return slices.Contains(words, word) }

// pinned puts a piece's pin into the receiver of a stand, with what keeps it there.
func (d *deriver) pinned(id string, held Part, piece kit.Hardware, s *Stand) {
	pins := pinsOf(piece)
	if s.Receiver == nil || len(pins) == 0 {
		d.notPlaced("retainer of "+s.Name, "the kit doesn't say which pin %s or its stand takes", held.KitID)
		return
	}
	receiver := pinWord(*s.Receiver)
	place := func(p Part) {
		p.Center = s.Top()
		d.onFloor(d.standPart(s, p))
	}
	if !contains(pins, receiver) {
		d.adapter(id, held, pins[0], receiver, place)
	}
	d.retainer(id+".retainer", held, receiver, place)
}

// adapter places what joins a pin to a receiver of another size; without one in the
// kit the two don't mate, and that is a finding.
func (d *deriver) adapter(id string, held Part, pin, receiver string, place func(Part)) bool {
	for _, name := range kit.IDs(d.Kit.Adapter) {
		entry := d.Kit.Adapter[name]
		if !contains(entry.Fits, pin) || !contains(entry.Fits, receiver) {
			continue
		}
		p := Part{ID: id + ".adapter", What: "adapter", Name: entry.Label(name), KitKind: "adapter", KitID: name, Demo: entry.Source.Demo("mass"),
			Joined: []string{held.ID}, Path: held.Path, Why: fmt.Sprintf("%s has a %s and what takes it a %s", held.Name, spoken(pin), spoken(receiver))}
		p.Mass, p.MassFrom = pieceMass(entry, 0)
		place(p)
		return true
	}
	d.Odd = append(d.Odd, Oddity{ID: "rig.pin." + held.ID, Part: held.ID, Path: held.Path, Statement: fmt.Sprintf(
		"%s has a %s, what takes it a %s, and the kit has no adapter between them", held.Name, spoken(pin), spoken(receiver))})
	return false
}

// spoken is how a crew says a pin's word.
func spoken(pin string) string {
	switch pin {
	case "pin-28":
		return "28 mm (1-1/8 in) pin"
	case "pin-16":
		return "16 mm (5/8 in) pin"
	case yokeBolt:
		return "yoke bolt"
	}
	return strings.TrimPrefix(pin, "pin-") + " mm pin"
}

// retainer places what keeps a pin in its receiver: in the US an eight-penny nail
// through the junior pin, elsewhere a hairpin (common practice).
func (d *deriver) retainer(id string, held Part, pin string, place func(Part)) {
	for _, name := range kit.IDs(d.Kit.Retainer) {
		entry := d.Kit.Retainer[name]
		nail := entry.Material == "nail"
		if !contains(entry.Fits, pin) || nail && d.Plan.Sheet.Units == quantity.InMetres {
			continue
		}
		p := Part{ID: id, What: "retainer", Name: entry.Label(name), KitKind: "retainer", KitID: name, Demo: entry.Source.Demo("mass"),
			Joined: []string{held.ID}, Path: held.Path, Why: fmt.Sprintf("keeps the %s of %s in its receiver", spoken(pin), held.Name)}
		p.Mass, p.MassFrom = pieceMass(entry, 0)
		place(p)
		return
	}
	d.notPlaced("retainer of "+held.ID, "the kit has none for a %s", spoken(pin))
}
