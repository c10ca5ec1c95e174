package power

import "softloft/finding"

// Number is a number of the answer, null where it is not known.
type Number = finding.Number

// Answer is what the lamps need of the supply, as in the answers JSON: W, VA, V, A, m.
// Watts, Phases and Neutral are not known where one lamp's power is not.
type Answer struct {
	Watts    Number    `json:"watts"`
	VA       Number    `json:"va"`
	Volts    Number    `json:"volts"`
	Rating   Number    `json:"circuit_a"` // of one breaker
	Allowed  Number    `json:"allowed_a"` // of it, for a continuous load
	Circuits []Circuit `json:"circuits"`
	Phases   []Number  `json:"phases"` // amps of each leg
	Neutral  Number    `json:"neutral_a"`
	// NeutralWorst is what a neutral of three legs may carry where the lamps' supplies draw
	// pulses: √3 of the largest leg. Null in one phase.
	NeutralWorst Number   `json:"neutral_worst_a"`
	Balance      Balance  `json:"balance"`
	Cable        Cable    `json:"cable"`
	Inrush       Inrush   `json:"inrush"`
	Supply       Supply   `json:"supply"`
	Grown        *Grown   `json:"grown,omitempty"`
	Unknown      []string `json:"unknown"` // lamps whose power nobody gave
	Demo         bool     `json:"demo"`
	Assumptions  []string `json:"assumptions"`
}

// Circuit is one breaker. Phase counts from 1; it is 0, and amps and drop are null, for
// the lamps whose power is not known.
type Circuit struct {
	Name      string   `json:"name"`
	Phase     int      `json:"phase"`
	Lamps     []string `json:"lamps"`
	Watts     Number   `json:"watts"`
	Amps      Number   `json:"amps"`
	Allowed   Number   `json:"allowed_a"`
	Length    Number   `json:"cable_m"` // the longest way to one of its lamps
	Drop      Number   `json:"drop_v"`
	DropShare Number   `json:"drop_pct"`
}

// Balance tells how even the legs are, and how near the assignment is to the best.
type Balance struct {
	Largest Number `json:"largest_a"`
	Bound   Number `json:"bound_a"` // no assignment has a smaller largest leg
	Gap     Number `json:"gap_a"`
	Fewest  int    `json:"fewest_circuits"` // that hold the lamps
	Proved  bool   `json:"fewest_proved"`
}

// Cable is the cable of every circuit.
type Cable struct {
	Kit       string `json:"kit"`
	Conductor string `json:"conductor"`
	Source    string `json:"source"`
	Way       string `json:"way"` // how its length was found
}

// Inrush is the current for an instant: of the lamp that draws most, of all at once, and
// the most on one leg when one lamp comes on after the others. Null where a lamp's is not known.
type Inrush struct {
	Largest Number   `json:"largest_a"`
	All     Number   `json:"all_a"`
	Step    Number   `json:"step_a"`
	Unknown []string `json:"unknown"`
}

// Supply is the size of wall or generator. PerLeg is what each leg must be rated for,
// with the continuous load; VA is that for all legs.
type Supply struct {
	PerLeg      Number `json:"per_leg_a"`
	VA          Number `json:"va"`
	PowerFactor Number `json:"power_factor"`
}

// Grown is what the same becomes with what the plan provides for.
type Grown struct {
	Watts    Number   `json:"watts"`
	Circuits int      `json:"circuits"`
	Phases   []Number `json:"phases"`
	Neutral  Number   `json:"neutral_a"`
	Supply   Supply   `json:"supply"`
	Unknown  []string `json:"unknown"`
}
