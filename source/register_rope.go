package source

// rope are the sources of rope strengths, knots and the use of rope.
var rope = []Publication{
	{"ci-1201", "Cordage Institute CI 1201, fiber ropes, general standard", "", "", Standard, false, memory},
	{"ci-1307", "Cordage Institute CI 1307, polyester double braid", "", "", Standard, false, memory},
	{"ci-1308", "Cordage Institute CI 1308-96, manila rope, three-strand", "", "1996", Standard, true, ""},
	{"ci-1401", "Cordage Institute guideline CI 1401, use of fiber rope", "", "", Guideline, true, ""},
	{"rope-table", "a published table of three-strand ropes", "", "", Handbook, true, "has misprints; used only where rows rise with the diameter"},
	{"knot-tests", "knot strengths in rope, published tests of 1946, 1964 (Dent, USDA) and 1970 (Day)", "", "", Handbook, true, "disputed for modern fibers"},
	{"rope-spring-equation", "rope as a spring, the standard impact equation", "", "", Handbook, true, ""},
}
