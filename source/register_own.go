package source

// own are the sources that are not publications: what the crew states, what the
// trade does, what this program derives or assumes.
var own = []Publication{
	{"plan", "the plan", "", "", User, true, "given by the user in the plan"},
	{"kit", "kit entry", "", "", User, true, "given by the user in a kit entry"},
	{"measured", "measured by the crew", "", "", User, true, "given by the user as measured"},
	{"owner", "statement of the building's owner", "", "", User, true, "as the plan repeats it; not seen by this program"},
	{"common-practice", "common practice", "", "", CommonPractice, false, "a habit of the trade, no publication"},
	{"demo", "invented for demonstration", "", "", Demo, false, "not a rating: an invented value"},
	{"definition", "geometry and physics from first principles", "", "", Derived, true, "derived here, nothing to read"},
	{"design-assumption", "assumption of this program", "", "", Derived, true, "chosen here and printed, nothing to read"},
	{"reference-finite-elements", "an independent finite-element solver", "", "", Derived, true, "reference results for tests"},
	{"reference-path-tracer", "an unbiased path tracer", "", "", Derived, true, "reference results for tests"},
}
