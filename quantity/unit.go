package quantity

import (
	"math/big"
	"strings"
)

// unit is one unit of measurement. Its size in SI is
//
//	up/down · (0.45359237 kg)^pound · (9.80665 m/s²)^gravity · (0.3048 m)^foot · π^circle
//
// with 0 for up or down read as 1. All of it but π is exact.
type unit struct {
	of                           Dimension
	up, down                     int64
	pound, gravity, foot, circle int
	names                        []string // as normalUnit writes them; the first is the usual one
}

// scale returns the unit's size in SI without its factor π.
func (u unit) scale() *big.Rat {
	size := big.NewRat(max(u.up, 1), max(u.down, 1))
	multiply(size, big.NewRat(45359237, 1e8), u.pound)
	multiply(size, big.NewRat(980665, 1e5), u.gravity)
	return multiply(size, big.NewRat(3048, 1e4), u.foot)
}

// multiply turns x into x·by^power and returns it.
func multiply(x, by *big.Rat, power int) *big.Rat {
	if power < 0 {
		by = new(big.Rat).Inv(by)
		power = -power
	}
	for ; power > 0; power-- {
		x.Mul(x, by)
	}
	return x
}

// weightOf returns the dimension whose units d accepts as well, times standard gravity, because
// gear and floors are rated in pounds and kilograms.
func weightOf(d Dimension) (Dimension, bool) {
	switch d {
	case OfForce:
		return OfMass, true
	case OfPressure:
		return OfAreaMass, true
	case OfLineForce:
		return OfLineMass, true
	}
	return 0, false
}

// unitFor returns the unit that name, as normalUnit writes it, means where d is due. Capitals do not
// matter for names that are written without any, so that LB is lb but MA is not mA.
func unitFor(name string, d Dimension) (unit, bool) {
	if u, ok := unitOf(name, func(of Dimension) bool { return of == d }); ok {
		return u, true
	}
	if mass, ok := weightOf(d); ok {
		u, ok := unitOf(name, func(of Dimension) bool { return of == mass })
		u.of, u.gravity = d, u.gravity+1
		return u, ok
	}
	return unit{}, false
}

// unitOf returns the first unit of that name whose dimension is wanted.
func unitOf(name string, wanted func(Dimension) bool) (unit, bool) {
	lower := strings.ToLower(name)
	for _, exact := range []bool{true, false} {
		for _, u := range unitTable {
			if !wanted(u.of) {
				continue
			}
			for _, known := range u.names {
				if known == name || !exact && known == lower {
					return u, true
				}
			}
		}
	}
	return unit{}, false
}

// anyUnit returns the unit of that name, of whatever dimension.
func anyUnit(name string) (unit, bool) {
	return unitOf(name, func(Dimension) bool { return true })
}
