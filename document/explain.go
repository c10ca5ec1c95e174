package document

import "strings"

// explanation is what a message of the YAML parser means to the person who typed the document. LINE
// in the problem stands for the line where the construct began.
type explanation struct {
	message string // part of the parser's message
	context string // part of its context; empty matches all
	problem string
	hint    string
	atStart bool // points at where the construct began, not at where the parser gave up
}

// explain returns the explanation of a parser's message about the sign at its place.
func explain(message, context string, sign rune) explanation {
	if sign == '\t' && strings.Contains(message, "cannot start any token") || strings.Contains(message, "tab") && strings.Contains(message, "indentation") {
		return explanation{problem: "a tab stands where blanks indent", hint: "indent with blanks"}
	}
	if strings.Contains(message, "cannot start any token") {
		return explanation{problem: "a value cannot begin with " + string(sign), hint: "put it in quotation marks"}
	}
	for _, known := range explanations() {
		if strings.Contains(message, known.message) && strings.Contains(context, known.context) {
			return known
		}
	}
	return explanation{problem: "this is no YAML: " + message, hint: "check the quotation marks, brackets and indentation"}
}

const (
	closeQuote  = `end it with the same mark; an inch mark needs no quotation marks around it: 12'6"`
	aliasHint   = "write the value out where it is needed"
	spacingHint = "check the indentation, and put text with a colon in quotation marks"
)

// explanations returns what the parser's messages mean, the first that fits counts.
func explanations() []explanation {
	return []explanation{
		{message: errDeep.Error(), problem: "lists and mappings are nested more than 64 deep", hint: "a plan needs fewer than 10"},
		{message: "unknown anchor", problem: "names with * or & that stand for other values are not taken", hint: aliasHint},
		{message: "", context: "scanning an alias", problem: "names with * or & that stand for other values are not taken", hint: aliasHint, atStart: true},
		{message: "", context: "scanning an anchor", problem: "names with * or & that stand for other values are not taken", hint: aliasHint, atStart: true},
		{message: "", context: "a tag", problem: "tags with ! are not taken", hint: "leave the tag out, or put the text in quotation marks", atStart: true},
		{message: "tag handle", problem: "tags with ! are not taken", hint: "leave the tag out, or put the text in quotation marks"},
		{message: "mapping values are not allowed", problem: "a colon makes a key here, where none can stand", hint: spacingHint},
		{message: "could not find expected ':'", problem: "no colon follows this key", hint: "write key: value", atStart: true},
		{message: "expected ',' or ']'", problem: "the list that begins here is not closed, or a comma is missing", hint: "write commas between the items and ] after the last", atStart: true},
		{message: "expected ',' or '}'", problem: "the mapping that begins here is not closed, or a comma is missing", hint: "write commas between the entries and } after the last", atStart: true},
		{message: "expected '-' indicator", problem: "this does not go on with the list of LINE", hint: "begin an item with - below the others, or check the indentation"},
		{message: "did not find expected key", problem: "this does not go on with the keys of LINE", hint: "check the indentation, and that quotation marks and brackets end where the value does"},
		{message: "did not find expected node content", problem: "a value is missing before this", hint: "write one, or take out the comma or bracket too many"},
		{message: "unexpected end of stream", problem: "the quotation mark here is not closed", hint: closeQuote, atStart: true},
		{message: "unexpected document indicator", problem: "the quotation mark here is not closed", hint: closeQuote, atStart: true},
		{message: "escape", problem: "a backslash in double quotation marks stands before something that it cannot escape", hint: `write \\ for a backslash, or use single quotation marks`},
		{message: "hexadecimal", problem: "a backslash in double quotation marks stands before something that it cannot escape", hint: `write \\ for a backslash, or use single quotation marks`},
		{message: "block sequence entries", problem: "an item with - cannot stand here", hint: "begin the list on a line of its own"},
		{message: "comment", context: "block scalar", problem: "text stands after | or >", hint: "begin the text on the next line, or put it in quotation marks"},
		{message: "without preceding whitespace", problem: "a comment begins right after a value", hint: "put a blank before the #"},
		{message: "indentation indicator", problem: "the number after | or > cannot be 0", hint: "leave it out"},
		{message: "document start", problem: "this stands beside the document", hint: "check the indentation and brackets"},
		{message: "document-end", problem: "text stands after the end of the document", hint: "leave out the line that begins with ..."},
	}
}
