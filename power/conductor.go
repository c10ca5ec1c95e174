package power

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"softloft/source"
)

const kilofoot = 304.8 // m, exact

// Conductor is a cable's conductor by its designation: an American gauge with its
// resistance, or a metric section with its voltage drop. What isn't known is NaN.
type Conductor struct {
	Name string // "12 AWG", "2.5 mm2"
	// Resistance of one conductor in Ω/m at 75 °C, direct current, uncoated copper.
	Resistance float64
	// Drop1 and Drop3 are V/(A m) of a circuit in one phase, both conductors together,
	// and of three phases from line to line.
	Drop1, Drop3 float64
	// Breaker is the largest breaker in A that may protect a cord of it.
	Breaker float64
	Source  source.Citation // of the resistance or the drop
}

// Metric reports whether the conductor is of a metric section.
func (c Conductor) Metric() bool { return strings.HasSuffix(c.Name, "mm2") }

// Known reports whether a voltage drop can be worked out.
func (c Conductor) Known() bool { return !math.IsNaN(c.Drop1) }

// gauge is a row of NFPA 70 chapter 9 table 8 (2017), Ω/kft at 75 °C, and of
// 520.44(C)(2) the overcurrent protection in A; 0 where the table has none. 14 to 8
// are the solid conductors; stranded ones have about 3 % more (from memory).
type gauge struct {
	name        string
	ohmKilofoot float64
	breaker     float64
}

// gauges lists the gauges from thin to thick. Both columns were read.
var gauges = []gauge{
	{"14", 3.07, 15}, {"12", 1.93, 20}, {"10", 1.21, 25}, {"8", 0.764, 35}, {"6", 0.491, 45}, {"4", 0.308, 60}, {"3", 0.245, 0},
	{"2", 0.194, 80}, {"1", 0.154, 0}, {"1/0", 0.122, 0}, {"2/0", 0.0967, 0}, {"3/0", 0.0766, 0}, {"4/0", 0.0608, 0},
}

// section is a row of BS 7671: mV/(A m) in one phase and in three. Up to 2.5 mm2 from
// table 4F3B (60 °C flexible), above from 4F2B (90 °C rubber flexible). All were read.
type section struct {
	name     string
	one, tri float64
	table    string
}

var sections = []section{
	{"0.75", 62, 54, "table 4F3B"}, {"1", 46, 40, "table 4F3B"}, {"1.5", 32, 27, "table 4F3B"}, {"2.5", 19, 16, "table 4F3B"},
	{"4", 13.2, 11.1, "table 4F2B"}, {"6", 8.5, 7.4, "table 4F2B"}, {"10", 5.1, 4.4, "table 4F2B"}, {"16", 3.2, 2.7, "table 4F2B"},
}

// Gauge returns a conductor by its American gauge: "12", "2/0".
func Gauge(name string) (Conductor, bool) {
	for _, g := range gauges {
		if g.name != name {
			continue
		}
		r := g.ohmKilofoot / kilofoot
		c := Conductor{Name: name + " AWG", Resistance: r, Drop1: 2 * r, Drop3: math.Sqrt(3) * r, Breaker: math.NaN(),
			Source: source.Cite("nfpa-70", "chapter 9 table 8")}
		if g.breaker > 0 {
			c.Breaker = g.breaker
		}
		return c, true
	}
	return unknownConductor(), false
}

// Section returns a conductor by its metric section in mm²: "2.5".
func Section(name string) (Conductor, bool) {
	for _, s := range sections {
		if s.name == name {
			return Conductor{Name: name + " mm2", Resistance: math.NaN(), Drop1: s.one / 1000, Drop3: s.tri / 1000, Breaker: math.NaN(),
				Source: source.Cite("bs-7671", s.table)}, true
		}
	}
	return unknownConductor(), false
}

func unknownConductor() Conductor {
	return Conductor{Resistance: math.NaN(), Drop1: math.NaN(), Drop3: math.NaN(), Breaker: math.NaN()}
}

var (
	metricCable   = regexp.MustCompile(`(?i)(?:^|[^0-9.])[0-9]{1,2} ?[gx] ?([0-9]+(?:\.[0-9]+)?)(?:$|[^0-9.])`)
	metricSection = regexp.MustCompile(`(?i)(?:^|[^0-9.])([0-9]+(?:\.[0-9]+)?) ?mm(?:2|²)`)
	gaugeCable    = regexp.MustCompile(`(?:^|[^0-9./])([1-4]/0|[0-9]{1,2})/[2-9](?:$|[^0-9/])`)
	gaugeAlone    = regexp.MustCompile(`(?i)(?:^|[^0-9./])([1-4]/0|[0-9]{1,2}) ?AWG`)
)

// Designated reads a conductor from how the trade writes a cable: 12/3 (gauge and number
// of conductors), 12 AWG, 3G2.5, 3x2.5 or 2.5 mm2. It reports false where the text has
// none, or one that no table here has.
func Designated(text string) (Conductor, bool) {
	for _, form := range []struct {
		pattern *regexp.Regexp
		find    func(string) (Conductor, bool)
	}{{metricCable, Section}, {metricSection, Section}, {gaugeAlone, Gauge}, {gaugeCable, Gauge}} {
		if found := form.pattern.FindStringSubmatch(text); found != nil {
			return form.find(plainNumber(found[1]))
		}
	}
	return unknownConductor(), false
}

// plainNumber writes a number as the tables do: 2.50 is 2.5, 4.0 is 4.
func plainNumber(text string) string {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return text
	}
	return fmt.Sprint(x)
}
