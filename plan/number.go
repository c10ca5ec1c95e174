package plan

import (
	"fmt"
	"math"
	"reflect"

	"softloft/document"
	"softloft/plan/key"
	"softloft/quantity"
)

const degree = quantity.Degree

// demand complains of a number that the user typed and that isn't ok. Numbers that
// nobody typed are defaults.
func (c *checker) demand(path, what string, ok bool, hint string) {
	if !ok && c.Doc.Has(path) {
		c.wrong(path, what+" of "+c.typed(path), hint)
	}
}

func positive[T ~float64](c *checker, path, what string, x T) {
	c.demand(path, what, x >= nextToNothing, "more than 0")
}

func notNegative[T ~float64](c *checker, path, what string, x T) {
	c.demand(path, what, x >= 0, "0 or more")
}

// size complains of a length that isn't more than 0 or is absurd.
func size[T ~float64](c *checker, path, what string, x T) {
	c.demand(path, what, x >= smallestSize, "more than 0")
	c.demand(path, what, x < smallestSize || x <= largestSize, "at most 1 km")
}

func sizes[T ~float64](c *checker, path, what string, all []T) {
	for i, x := range all {
		size(c, document.Item(path, i), what, x)
	}
}

// reach complains of a length that is negative or absurd.
func reach[T ~float64](c *checker, path, what string, x T) {
	notNegative(c, path, what, x)
	c.demand(path, what, x <= largestSize, "at most 1 km")
}

func share[T ~float64](c *checker, path, what string, x T) {
	c.demand(path, what, x >= 0 && x <= 1, "from 0 to 1")
}

// reflectance complains of a share that would give as much light back as arrives:
// between such faces light has no end.
func reflectance(c *checker, path string, x float64) {
	c.demand(path, "a reflectance", x >= 0 && x < 1, "0 or more and less than 1")
}

func count(c *checker, path, what string, n, least, most int) {
	c.demand(path, what, n >= least && n <= most, fmt.Sprintf("from %d to %d", least, most))
}

// given applies a check to an optional value.
func given[T any](c *checker, check func(*checker, string, string, T), path, what string, x *T) {
	if x != nil {
		check(c, path, what, *x)
	}
}

// numbers complains of each number in the plan that is not finite or is beyond what
// any rig has, wherever it stands.
func (c *checker) numbers() {
	key.Walk(c.Doc, c.Plan, func(v key.Value) {
		if !v.Present || c.descended(v) {
			return
		}
		if x, ok := largest(v.Value); ok {
			c.bounded(v.Path, x)
		}
	})
}

// descended tells whether Walk comes to the numbers inside a value by itself.
func (c *checker) descended(v key.Value) bool {
	t := v.Value.Type()
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if t.Kind() == reflect.Float64 {
		return false
	}
	if !reflect.PointerTo(t).Implements(reflect.TypeFor[document.Reader]()) {
		return true
	}
	_, word := c.Doc.Typed(v.Path)
	if t.Kind() == reflect.Array {
		return c.Doc.Has(document.Item(v.Path, 0))
	}
	return !word && len(key.Fields(t)) > 0
}

// number is one number inside a value, with its dimension where it has one.
type number struct {
	x  float64
	of quantity.Dimension
	is bool // whether it has a dimension
}

// largest returns the number inside a value that is farthest beyond its bound.
func largest(v reflect.Value) (worst number, ok bool) {
	var look func(v reflect.Value)
	look = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Pointer:
			if !v.IsNil() {
				look(v.Elem())
			}
		case reflect.Struct:
			for i := range v.NumField() {
				look(v.Field(i))
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				look(v.Index(i))
			}
		case reflect.Float64:
			n := numberOf(v)
			if !ok || n.beyond() > worst.beyond() || math.IsNaN(n.x) {
				worst, ok = n, true
			}
		}
	}
	look(v)
	return worst, ok
}

func numberOf(v reflect.Value) number {
	n := number{x: v.Float()}
	if q, ok := v.Interface().(interface{ Dimension() quantity.Dimension }); ok {
		n.of, n.is = q.Dimension(), true
	}
	return n
}

// beyond returns how many times its bound a number is.
func (n number) beyond() float64 { return math.Abs(n.x) / n.bound() }

func (n number) bound() float64 {
	if !n.is {
		return largestNumber
	}
	return largestOf(n.of)
}

// String prints a number with the unit that it was worked out in.
func (n number) String() string { return n.print(n.x) }

func (n number) limit() string { return n.print(n.bound()) }

func (n number) print(x float64) string {
	switch {
	case n.is && n.of == quantity.OfAngle:
		return fmt.Sprintf("%g deg", x/float64(degree))
	case n.is && n.of.Unit() != "":
		return fmt.Sprintf("%g %s", x, n.of.Unit())
	}
	return fmt.Sprintf("%g", x)
}

// bounded complains of a number beyond its bound.
func (c *checker) bounded(path string, n number) {
	if n.beyond() <= 1 { // false for NaN
		return
	}
	if math.IsNaN(n.x) || math.IsInf(n.x, 0) {
		c.wrong(path, n.String()+" is no finite number", "a number")
		return
	}
	c.wrong(path, n.String()+" is beyond what softloft works with", "at most "+n.limit()+" either way")
}
