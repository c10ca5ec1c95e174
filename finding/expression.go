package finding

import (
	"fmt"
	"slices"
)

// Expression is a parsed formula: it is evaluated and printed from one tree,
// and does not change after Parse. The zero Expression is not known.
//
// Notation: + - * / ^ and parentheses; also · × ÷ − and ² ³ … as they are
// printed; x° is x·π/180; π or pi; √(x) or sqrt(x). Functions: min, max and
// hypot of one or more; atan2(y, x); sqrt, abs, ceil, exp, log2, sin, cos, tan,
// asin, acos, atan in radians; deg(x) from radians to degrees. Symbols are
// letters of any alphabet, then letters, digits, _ and subscripts.
// ^ binds tighter than a sign and groups to the right; the others to the left.
type Expression struct {
	symbol string // what stands left of =, or empty
	root   *node
}

// operation is what a node does with its arguments.
type operation byte

const (
	literal operation = iota
	variable
	circle // π
	plus
	minus
	times
	over
	power
	negative
	degrees // x°
	call
)

// node is one place of the tree. text is a number as written, a symbol or a
// function's name.
type node struct {
	operation operation
	text      string
	number    float64
	function  *function
	arguments []*node
}

// Symbol is the name that the formula defines, empty where it has no =.
func (e Expression) Symbol() string { return e.symbol }

// Symbols are the names that the formula uses, in the order of their first
// appearance.
func (e Expression) Symbols() []string {
	var names []string
	e.root.walk(func(n *node) {
		if n.operation == variable && !slices.Contains(names, n.text) {
			names = append(names, n.text)
		}
	})
	return names
}

func (n *node) walk(visit func(*node)) {
	if n == nil {
		return
	}
	visit(n)
	for _, argument := range n.arguments {
		argument.walk(visit)
	}
}

// check refuses a formula that uses what it defines, and one that is too large.
func (e Expression) check() error {
	if e.symbol != "" && slices.Contains(e.Symbols(), e.symbol) {
		return fmt.Errorf("%s is defined by itself; give the left side another name", e.symbol)
	}
	if e.root.nesting() > nestsAtMost {
		return errTooDeep
	}
	return nil
}

// nesting counts the nodes above each other, but not those of a chain such as
// a + b + c, which is printed without parentheses.
func (n *node) nesting() int {
	deepest := 0
	for i, argument := range n.arguments {
		below := argument.nesting()
		if i > 0 || !n.chains(argument) {
			below++
		}
		deepest = max(deepest, below)
	}
	return deepest
}

func (n *node) chains(left *node) bool {
	return n.binding() == left.binding() && n.binding() <= bindsProduct
}
