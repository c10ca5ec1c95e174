package power

import (
	"fmt"
	"math"
	"slices"

	"softloft/circuit"
	"softloft/finding"
	"softloft/source"
)

// conclude sets every circuit, its voltage drop, the cable and the balance against what
// is published.
func (w *work) conclude() {
	for _, l := range w.lamps {
		if !l.known() {
			w.add(finding.Unknown("power.lamp."+l.name, w.subject(l.part, l.path), "Circuit of "+l.name,
				"the kit gives no power for lamp "+l.kit))
		}
	}
	w.concludeCable()
	for k, c := range w.plan.Circuits {
		w.concludeCircuit(w.answer.Circuits[k], c)
		w.concludeDrop(w.answer.Circuits[k], w.ways[k])
	}
	w.concludeTotal()
	w.concludeBalance()
}

func (w *work) add(f finding.Finding) { w.findings = append(w.findings, f) }

func (w *work) subject(part, key string) finding.Subject {
	line, column := w.rig.Place(key)
	return finding.Subject{Part: part, Place: finding.Place{Line: line, Column: column}}
}

func input(symbol, name string, value float64, unit, origin string) finding.Input {
	return finding.Input{Symbol: symbol, Name: name, Value: value, Unit: unit, Origin: origin}
}

func (w *work) voltage() finding.Input {
	return input("V", "voltage between leg and neutral", w.volts, "V", w.rig.Origin("power.volts"))
}

// concludeCircuit holds a circuit's current to its rating for a continuous load. Lamps of
// one kit entry are one term of the sum.
func (w *work) concludeCircuit(told Circuit, c circuit.Circuit) {
	work := finding.Work{Name: "current of circuit " + told.Name, Formula: "I = ", Inputs: []finding.Input{w.voltage()}}
	var kits []string
	counts := map[string]int{}
	for _, l := range w.of(c) {
		if counts[l.kit]++; !slices.Contains(kits, l.kit) {
			kits = append(kits, l.kit)
		}
	}
	for i, id := range kits {
		if i > 0 {
			work.Formula += " + "
		}
		work.Formula += fmt.Sprintf("n_%d*P_%d/(f_%d*V)", i+1, i+1, i+1)
		work.Inputs = append(work.Inputs, w.lampInputs(i+1, id, counts[id])...)
	}
	share := source.ContinuousShare()
	w.add(finding.Check{
		ID: "power.circuit." + told.Name, Subject: w.subject("power."+told.Name, "power.circuit"),
		Statement: fmt.Sprintf("Circuit %s on leg %d: %s", told.Name, told.Phase, lampWords(told.Lamps)),
		Relation:  finding.AtMost, Unit: "A", Value: work, Source: share.Citation,
		Limit: finding.Work{Formula: "I_max = s*I_n", Name: "allowed continuous current", Inputs: []finding.Input{
			finding.Cited("s", share), input("I_n", "rating of the breaker", w.rating, "A", w.rig.Origin("power.circuit"))}},
		Assumptions: w.circuitAssumptions(c),
	}.Conclude())
}

func (w *work) lampInputs(n int, id string, count int) []finding.Input {
	l := lampOf(w.rig, id, w.volts)
	from := w.rig.Kit.Lamp[id].Source
	symbol := func(s string) string { return fmt.Sprintf("%s_%d", s, n) }
	return []finding.Input{
		input(symbol("n"), "number of "+id, float64(count), "", "plan, lamps"),
		input(symbol("P"), "power of "+id, l.watts, "W", origin(id, from.For("power"))),
		input(symbol("f"), "power factor of "+id, l.factor, "", origin(id, from.For("power_factor"))),
	}
}

func origin(id, from string) string {
	if from == "" {
		from = "no source given"
	}
	return "kit lamp " + id + ": " + from
}

func lampWords(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	return fmt.Sprintf("%s and %d more", names[0], len(names)-1)
}

func (w *work) circuitAssumptions(c circuit.Circuit) []string {
	told := []string{"full level; the lamps burn for three hours or more"}
	if slices.ContainsFunc(w.of(c), func(l lamp) bool { return l.demo }) {
		told = append(told, demoNote)
	}
	return told
}

const demoNote = "DEMO: a lamp's power is an invented demo value; it says nothing about real gear"

// concludeDrop holds the voltage that a circuit loses on its way to the advice: the
// whole current is taken over the whole way.
func (w *work) concludeDrop(c Circuit, way way) {
	id, subject := "power.drop."+c.Name, w.subject("power."+c.Name, "power.cable")
	statement := fmt.Sprintf("Voltage lost to the farthest lamp of circuit %s", c.Name)
	if why := w.noDrop(); why != "" {
		w.add(finding.Unknown(id, subject, statement, why))
		return
	}
	advice, assumptions := source.BranchDrop(), []string{way.assumption(), "the code's note is advice, no rule"}
	if w.conductor.Metric() {
		advice, assumptions = source.LightingDrop(), []string{way.assumption()}
	}
	w.add(finding.Check{
		ID: id, Subject: subject, Statement: statement, Relation: finding.AtMost, Unit: "%",
		Value:  w.dropWork(c, way),
		Limit:  finding.Work{Formula: "d_max = 100*a", Name: "advised voltage drop", Inputs: []finding.Input{finding.Cited("a", advice)}},
		Source: advice.Citation, Assumptions: append(assumptions, w.cableAssumptions()...),
	}.Conclude())
}

func (x way) assumption() string {
	if x.words == alongRig {
		return lampToLamp
	}
	return allTheWay
}

func (w *work) noDrop() string {
	supply := w.rig.Plan.Power
	switch {
	case supply.Cable == "":
		return "the plan names no cable (power.cable)"
	case !w.conductor.Known():
		return fmt.Sprintf("cable %s does not name its conductor; write it in its id or name as in 12/3, 10 AWG or 3G2.5", supply.Cable)
	case supply.TieIn == nil:
		return "the plan names no tie-in (power.tie_in)"
	}
	return ""
}

func (w *work) dropWork(c Circuit, way way) finding.Work {
	work := finding.Work{Formula: "d = 100*V_d/V", Name: "voltage lost", Inputs: []finding.Input{w.voltage(),
		input("I", "current of circuit "+c.Name, float64(c.Amps), "A", "finding power.circuit."+c.Name),
		input("L", "length of cable", way.lumped, "m", way.words)}}
	lost := finding.Input{Name: "voltage lost", Unit: "V"}
	from := fmt.Sprintf("%s, %s of cable %s", w.conductor.Source, w.conductor.Name, w.rig.Plan.Power.Cable)
	if w.conductor.Metric() {
		work.Steps = []finding.Step{{Formula: "V_d = m*I*L", Result: lost}}
		work.Inputs = append(work.Inputs, input("m", "voltage drop of both conductors", w.conductor.Drop1, "V/(A m)", from))
		return work
	}
	work.Steps = []finding.Step{{Formula: "V_d = 2*I*R*L", Result: lost}}
	work.Inputs = append(work.Inputs, input("R", "resistance of one conductor", w.conductor.Resistance, "ohm/m", from))
	return work
}

func (w *work) cableAssumptions() []string {
	if w.conductor.Metric() {
		return []string{"lamps count as lighting: 3 % from the origin of the installation, taken from the tie-in"}
	}
	return []string{"resistance at 75 °C; the table's solid conductors up to 8 AWG, stranded ones have about 3 % more (from memory)"}
}

// concludeTotal tells how much of the advised total the worst circuit leaves for the
// house's own feeder.
func (w *work) concludeTotal() {
	if w.noDrop() != "" || w.conductor.Metric() || len(w.plan.Circuits) == 0 {
		return
	}
	most := 0
	for k := range w.plan.Circuits {
		if w.answer.Circuits[k].DropShare > w.answer.Circuits[most].DropShare {
			most = k
		}
	}
	worst, way := w.answer.Circuits[most], w.ways[most]
	advice := source.TotalDrop()
	w.add(finding.Check{
		ID: "power.total", Subject: w.subject("power."+worst.Name, "power.cable"), Case: "circuit " + worst.Name,
		Statement: "Voltage lost from the tie-in on, of what feeder and branch may lose together", Relation: finding.AtMost, Unit: "%",
		Value:  w.dropWork(worst, way),
		Limit:  finding.Work{Formula: "d_max = 100*a", Name: "advised voltage drop in all", Inputs: []finding.Input{finding.Cited("a", advice)}},
		Source: advice.Citation, Assumptions: append([]string{way.assumption(), "what the house loses before the tie-in is not known and not in it",
			"the code's note is advice, no rule"}, w.cableAssumptions()...),
	}.Conclude())
}

// concludeCable holds the breaker to what may protect the cord.
func (w *work) concludeCable() {
	supply := w.rig.Plan.Power
	if supply.Cable == "" || len(w.lamps) == 0 {
		return
	}
	id, subject, statement := "power.cable", w.subject("power.cable", "power.cable"), "Breaker over cable "+supply.Cable
	if math.IsNaN(w.conductor.Breaker) {
		why := fmt.Sprintf("no table here says which breaker protects a cord of %s", w.conductor.Name)
		if !w.conductor.Known() {
			why = w.noDrop()
		}
		w.add(finding.Unknown(id, subject, statement, why))
		return
	}
	// A breaker of exactly the rating that the cord may have is the rule, not a near miss.
	if w.rating <= w.conductor.Breaker {
		return
	}
	cord := source.Cite("nfpa-70", "520.44(C)(2)")
	w.add(finding.Check{
		ID: id, Subject: subject, Statement: statement, Relation: finding.AtMost, Unit: "A", Source: cord,
		Value:       finding.Given(input("I_n", "rating of the breaker", w.rating, "A", w.rig.Origin("power.circuit"))),
		Limit:       finding.Given(input("I_p", "largest breaker for a cord of "+w.conductor.Name, w.conductor.Breaker, "A", cord.String())),
		Assumptions: []string{"an extra-hard-usage cord with three current-carrying conductors"},
	}.Conclude())
}

// evenLegs is how far the largest leg may be over the mean: a habit of the trade, from memory.
func evenLegs() source.Limit {
	return source.Limit{Name: "share of the mean by which a leg may be larger", Value: 0.1,
		Citation: source.Citation{Source: "common-practice", Clause: "legs within 10 %, from memory", FromMemory: true}}
}

// concludeBalance compares the largest of three legs with their mean, where there are
// as many lamps as legs.
func (w *work) concludeBalance() {
	if w.legs != 3 || len(w.held) < 3 || len(w.unknown) > 0 {
		return
	}
	legs := w.plan.Legs
	var inputs []finding.Input
	for i, x := range legs {
		inputs = append(inputs, input(fmt.Sprintf("I_%d", i+1), fmt.Sprintf("leg %d", i+1), x, "A", "sum of its circuits"))
	}
	even := evenLegs()
	w.add(finding.Check{
		ID: "power.balance", Subject: w.subject("power", "power.phases"), Statement: "Largest leg over the mean of the three",
		Relation: finding.AtMost, Unit: "A", Source: even.Citation,
		Value: finding.Work{Formula: "I_l = max(I_1, I_2, I_3)", Name: "largest leg", Inputs: inputs},
		Limit: finding.Work{Formula: "I_e = (1 + u)*(I_1 + I_2 + I_3)/3", Name: "even leg and its tolerance",
			Inputs: append(slices.Clone(inputs), finding.Cited("u", even))},
		Assumptions: []string{fmt.Sprintf("no assignment of these lamps has a largest leg under %.4g A", float64(w.answer.Balance.Bound))},
	}.Conclude())
}

// assumptions are what the answer as a whole rests on.
func (w *work) assumptions() []string {
	told := []string{"every lamp at full level: a level below saves what the lamp's own supply saves, which nobody states",
		"every lamp stands between a leg and neutral"}
	if w.volts >= 200 {
		told = append(told, "a circuit is held to 80 % of its breaker here too, the stricter rule: BS 7671 asks for its rating (from memory)")
	}
	if w.legs == 3 {
		told = append(told,
			"the neutral is that of linear loads of one power factor",
			"switched supplies add third harmonics there, 3k/√(1+k²) of a leg for a share k: count the neutral as current carrying and no smaller than a leg")
	}
	if room := w.rig.Plan.Room; room != nil && room.Outdoors != nil {
		told = append(told, "outdoors and in the wet: residual-current protection and dry connectors are not checked")
	}
	if mixed(w.lamps) {
		told = append(told, "lamps of different power factors: their amps are added, which is never less than the true sum")
	}
	return told
}

func mixed(lamps []lamp) bool {
	return slices.ContainsFunc(lamps, func(l lamp) bool { return l.factor != lamps[0].factor })
}
