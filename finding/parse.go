package finding

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// Bounds of what Parse accepts, so that no text can exhaust it. Length and
// nesting are those of the formula as it is printed, so that what was accepted
// is accepted again when it is read back.
const (
	longestText    = 1 << 16 // bytes as typed
	longestFormula = 1 << 13 // bytes as printed
	nestsAtMost    = 100     // nesting of the tree, see node.nesting
	deepestRule    = 1000    // rules of the parser inside each other: several per nesting
)

// Parse reads a formula such as "F_allow = B * k / n", or its right side alone.
func Parse(text string) (Expression, error) {
	if len(text) > longestText {
		return Expression{}, fmt.Errorf("the formula is longer than %d bytes", longestText)
	}
	tokens, err := scan(text)
	if err != nil {
		return Expression{}, fmt.Errorf("%w, in %q", err, text)
	}
	p := parser{tokens: tokens}
	e, err := p.formula()
	if err != nil {
		return Expression{}, fmt.Errorf("%w, in %q", err, text)
	}
	// No formula grows more than eightfold in print.
	if len(text) > longestFormula/8 && len(e.String()) > longestFormula {
		return Expression{}, fmt.Errorf("the formula is longer than %d bytes; cut it into steps", longestFormula)
	}
	return e, nil
}

var errTooDeep = errors.New("the formula nests too deeply; cut it into steps")

type parser struct {
	tokens []token
	depth  int
}

func (p *parser) peek() token { return p.tokens[0] }

func (p *parser) next() token {
	t := p.tokens[0]
	if t.kind != endToken {
		p.tokens = p.tokens[1:]
	}
	return t
}

// accept takes the next token if it is this sign.
func (p *parser) accept(sign string) bool {
	if t := p.peek(); t.kind != signToken || t.text != sign {
		return false
	}
	p.next()
	return true
}

func (p *parser) expect(sign string) error {
	if p.accept(sign) {
		return nil
	}
	return fmt.Errorf("%s where %q is due", p.peek(), sign)
}

func (p *parser) formula() (Expression, error) {
	var e Expression
	if len(p.tokens) > 2 && p.tokens[0].kind == nameToken && p.tokens[1].is("=") {
		e.symbol = p.next().text
		if reserved(e.symbol) {
			return Expression{}, fmt.Errorf("%s is not free for a symbol", e.symbol)
		}
		p.next()
	}
	root, err := p.sum()
	if err != nil {
		return Expression{}, err
	}
	if t := p.peek(); t.kind != endToken {
		return Expression{}, fmt.Errorf("%s where an operator or the end is due", t)
	}
	e.root = root
	return e, e.check()
}

func (p *parser) sum() (*node, error) {
	return p.chain((*parser).product, "+", plus, "-", minus)
}

func (p *parser) product() (*node, error) {
	return p.chain((*parser).signed, "*", times, "/", over)
}

// chain reads operands of one level of precedence, which has two signs, grouped
// to the left.
func (p *parser) chain(operand func(*parser) (*node, error), sign string, a operation, other string, b operation) (*node, error) {
	left, err := operand(p)
	for err == nil {
		operation := a
		if !p.accept(sign) {
			if !p.accept(other) {
				return left, nil
			}
			operation = b
		}
		var right *node
		right, err = operand(p)
		left = &node{operation: operation, arguments: []*node{left, right}}
	}
	return nil, err
}

// deeper runs a rule one level down, and refuses what nests too deeply.
func (p *parser) deeper(rule func() (*node, error)) (*node, error) {
	p.depth++
	defer func() { p.depth-- }()
	if p.depth > deepestRule {
		return nil, errTooDeep
	}
	return rule()
}

func (p *parser) signed() (*node, error) {
	return p.deeper(func() (*node, error) {
		if p.accept("+") {
			return p.signed()
		}
		if !p.accept("-") {
			return p.raised()
		}
		argument, err := p.signed()
		return &node{operation: negative, arguments: []*node{argument}}, err
	})
}

// raised reads a base with its marks behind it, and a power.
func (p *parser) raised() (*node, error) {
	base, err := p.marked()
	if err != nil || !p.accept("^") {
		return base, err
	}
	exponent, err := p.signed()
	return &node{operation: power, arguments: []*node{base, exponent}}, err
}

func (p *parser) marked() (*node, error) {
	base, err := p.atom()
	for err == nil {
		switch t := p.peek(); {
		case t.is("°"):
			p.next()
			base = &node{operation: degrees, arguments: []*node{base}}
		case t.kind == superscriptToken:
			p.next()
			var exponent *node
			exponent, err = number(t.text)
			base = &node{operation: power, arguments: []*node{base, exponent}}
		default:
			return base, nil
		}
	}
	return nil, err
}

func (p *parser) atom() (*node, error) {
	switch t := p.next(); {
	case t.kind == numberToken:
		return number(t.text)
	case t.is("("):
		return p.enclosed()
	case t.is("√"):
		if !p.peek().is("(") {
			return nil, errors.New("√ needs parentheses, such as √(x)")
		}
		return p.call(functionNamed("sqrt"))
	case t.kind == nameToken:
		return p.named(t.text)
	default:
		return nil, fmt.Errorf("%s where a number, a symbol or a parenthesis is due", t)
	}
}

func (p *parser) named(name string) (*node, error) {
	f := functionNamed(name)
	switch {
	case p.peek().is("(") && f == nil:
		return nil, fmt.Errorf("%s is no function (for a product write %s · (…)); there are %s", name, name, functionNames())
	case p.peek().is("("):
		return p.call(f)
	case f != nil:
		return nil, fmt.Errorf("%s is a function and needs its arguments in parentheses", name)
	case reserved(name):
		return &node{operation: circle}, nil
	default:
		return &node{operation: variable, text: name}, nil
	}
}

func (p *parser) enclosed() (*node, error) {
	inner, err := p.deeper(p.sum)
	if err != nil {
		return nil, err
	}
	return inner, p.expect(")")
}

func (p *parser) call(f *function) (*node, error) {
	n := &node{operation: call, text: f.name, function: f}
	p.next()
	for {
		argument, err := p.deeper(p.sum)
		if err != nil {
			return nil, err
		}
		n.arguments = append(n.arguments, argument)
		if !p.accept(",") {
			break
		}
	}
	if len(n.arguments) < f.least || len(n.arguments) > f.most {
		return nil, fmt.Errorf("%s has %d arguments, %s", f.name, len(n.arguments), f.takes())
	}
	return n, p.expect(")")
}

func (f *function) takes() string {
	if f.least == f.most {
		return fmt.Sprintf("it takes %d", f.least)
	}
	return fmt.Sprintf("it takes %d to %d", f.least, f.most)
}

// number reads a literal; one that overflows is refused.
func number(text string) (*node, error) {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || !Known(x) {
		return nil, fmt.Errorf("%q is not a number that can be held", text)
	}
	return &node{operation: literal, text: text, number: x}, nil
}

func reserved(name string) bool {
	return name == "pi" || name == "π" || functionNamed(name) != nil
}

func functionNames() string {
	var names []string
	for _, f := range functions {
		names = append(names, f.name)
	}
	return strings.Join(names, ", ")
}
