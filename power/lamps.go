package power

import (
	"fmt"
	"math"
	"strings"

	"softloft/plan"
	"softloft/rig"
)

// lamp is what one lamp asks of the supply, at full level. Amps is NaN where its power
// is not known.
type lamp struct {
	part, name, kit, path string
	watts, factor         float64
	amps                  float64
	inrush                float64 // NaN where nobody gave it
	demo                  bool
}

func (l lamp) known() bool { return !math.IsNaN(l.amps) }

// lampsOf lists the lamps of a rig, in its order.
func lampsOf(r *rig.Rig, volts float64) []lamp {
	var all []lamp
	for i := range r.Parts {
		p := &r.Parts[i]
		if p.What != "lamp" || p.KitKind != "lamp" {
			continue
		}
		l := lampOf(r, p.KitID, volts)
		l.part, l.name, l.path = p.ID, strings.TrimPrefix(p.ID, "lamp."), p.Path
		all = append(all, l)
	}
	return all
}

func lampOf(r *rig.Rig, id string, volts float64) lamp {
	entry := r.Kit.Lamp[id]
	l := lamp{kit: id, watts: math.NaN(), factor: entry.PowerFactor, inrush: math.NaN(), demo: entry.Source.Demo("power")}
	if l.factor == 0 {
		l.factor = 1 // the kit's default, where an entry was made without its file
	}
	if entry.Power != nil {
		l.watts = float64(*entry.Power)
	}
	if entry.Inrush != nil {
		l.inrush = float64(*entry.Inrush)
	}
	l.amps = Amps(l.watts, volts, l.factor, 1)
	return l
}

// mostGrown is how many lamps are counted one by one for a reserve: a design assumption.
const mostGrown = 4000

// grownLamps are today's lamps as often as the reserve says, with a part of each for what
// is over a whole number, and the named ones that may still go up; nil where the plan
// provides for nothing.
func grownLamps(r *rig.Rig, today []lamp, volts float64) []lamp {
	provision := r.Plan.Provision
	if provision == nil {
		return nil
	}
	reserve := 1.0
	if provision.Reserve != nil {
		reserve = *provision.Reserve
	}
	var all []lamp
	for ; reserve >= 1 && len(all)+len(today) <= mostGrown; reserve-- {
		all = append(all, today...)
	}
	if reserve > 1e-9 {
		for _, l := range today {
			l.watts, l.amps, l.inrush = reserve*l.watts, reserve*l.amps, reserve*l.inrush
			all = append(all, l)
		}
	}
	for i := range provision.Lamps {
		l := lampOf(r, provision.Lamps[i].Kit, volts)
		l.name, l.path = titleOf(&provision.Lamps[i], i), fmt.Sprintf("provision.lamps[%d]", i)
		all = append(all, l)
	}
	return all
}

func titleOf(l *plan.Lamp, i int) string { return l.Title(i + 1) }
