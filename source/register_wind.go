package source

// wind are the sources of wind pressures, coefficients and action speeds.
var wind = []Publication{
	{"en-1991-1-4", "EN 1991-1-4, Actions on structures, wind actions", "", "", Standard, false, byEngine},
	{"asce-7", "ASCE 7, Minimum design loads", "7-10", "2010", Standard, true, "Fig. 27.4-5; the monoslope free roof is from memory"},
	{"asce-37", "ASCE 37, Design loads on structures during construction", "", "", Standard, false, "second-hand, from the society's editorial"},
	{"pasma", "advice of the mobile access tower trade (EN 1004 towers) on wind", "", "", Guideline, true, "published copies differ on stop and dismantle"},
	{"park-authority-wind", "a park authority's rules for event structures", "", "", Guideline, true, ""},
	{"beaufort", "Beaufort table, US National Weather Service", "", "", Handbook, true, ""},
	{"ontario-wind-words", "Ontario wind terms", "", "", Guideline, true, ""},
}
