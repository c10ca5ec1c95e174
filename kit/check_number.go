package kit

import (
	"fmt"
	"math"

	"softloft/quantity"
)

// smallest and largest bound every size in SI: beyond them a typing error is the only
// reading, and sums and quotients would leave the numbers that a computer has.
const (
	smallest = 1e-9
	largest  = 1e13
)

// measure is any quantity of package quantity.
type measure interface {
	~float64
	Dimension() quantity.Dimension
}

// over0 asks for a size over 0.
func over0[Q measure](c *checker, key string, q Q) {
	switch x := float64(q); {
	case x == 0:
		c.wrong(key, "0, where a size over 0 is due", suchAs(q))
	case x < 0:
		c.wrong(key, "a negative size, where one over 0 is due", suchAs(q))
	case !(x >= smallest && x <= largest):
		c.wrong(key, noRigHas, suchAs(q))
	}
}

// over0IfGiven asks for a size over 0 where there is one. A rating of 0 is none.
func over0IfGiven[Q measure](c *checker, key string, q *Q) {
	switch {
	case q == nil:
	case float64(*q) == 0:
		c.wrong(key, "0, where a size over 0 is due", "leave the key out where nobody gave it, or write a size "+suchAs(*q))
	default:
		over0(c, key, *q)
	}
}

// from0 asks for 0 or more.
func from0[Q measure](c *checker, key string, q Q) {
	switch x := float64(q); {
	case x < 0:
		c.wrong(key, "a negative size, where 0 or more is due", suchAs(q))
	case !(x <= largest):
		c.wrong(key, noRigHas, suchAs(q))
	}
}

func from0IfGiven[Q measure](c *checker, key string, q *Q) {
	if q != nil {
		from0(c, key, *q)
	}
}

// bounded asks for a size of either sign that a rig could have.
func bounded[Q measure](c *checker, key string, q Q) {
	if x := float64(q); !(math.Abs(x) <= largest) {
		c.wrong(key, noRigHas, suchAs(q))
	}
}

const noRigHas = "a size that nothing in a rig has"

func suchAs[Q measure](q Q) string { return "such as " + q.Dimension().Examples()[0] }

// share asks for a share between 0 and 1, both allowed.
func (c *checker) share(key string, x float64) {
	if !(x >= 0 && x <= 1) {
		c.wrong(key, fmt.Sprintf("a share of %v", x), "from 0 to 1, such as 0.4")
	}
}

// properShare asks for a share over 0.
func (c *checker) properShare(key string, x *float64) {
	if x != nil && !(*x >= smallest && *x <= 1) {
		c.wrong(key, fmt.Sprintf("a share of %v", *x), "over 0 and at most 1, such as 0.6")
	}
}

// reflectance asks for less than 1: a closed room of faces that lose no light has no
// answer.
func (c *checker) reflectance(key string, x float64) {
	if !(x >= 0 && x < 1) {
		c.wrong(key, fmt.Sprintf("a reflectance of %v", x), "0 or more and less than 1, such as 0.8")
	}
}
