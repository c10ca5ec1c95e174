package source

// Second-hand ways in which worked examples came here.
const (
	byFrameLibrary = "second-hand: as the tests of an open frame library carry it"
	byEngine       = "second-hand: as the verification tests of an open engine carry it"
)

// structure are the sources of sections, materials, beams and frames.
var structure = []Publication{
	{"mott", "Mott, Machine Elements in Mechanical Design", "4th ed.", "", Handbook, true, "Table A16-6, schedule 40 pipe"},
	{"pipe-weight-table", "a trade table of aluminum pipe, weight, I and S", "", "", Handbook, true, ""},
	{"asme-b36.10", "ASME B36.10, welded and seamless wrought steel pipe", "", "", Standard, false, memory},
	{"en-39", "EN 39, Loose steel tubes for tube and coupler scaffolds", "", "", Standard, true, "tube properties of types 3 and 4; title from memory"},
	{"bs-1139", "BS 1139, Metal scaffolding", "", "", Standard, true, "tube and coupler values; title from memory"},
	{"tg20", "TG20:13, tube and fitting scaffolding", "", "2013", Guideline, true, ""},
	{"adm", "Aluminum Design Manual", "2010 to 2020", "", Standard, false, memory},
	{"en-1999-1-1", "EN 1999-1-1, Design of aluminium structures", "", "", Standard, false, memory},
	{"aisc-manual", "AISC Steel Construction Manual, Table 3-23", "", "", Handbook, false, memory},
	{"aisc-360", "AISC 360, commentary benchmarks", "", "", Standard, false, byFrameLibrary},
	{"roark", "Roark's Formulas for Stress and Strain, Table 8.1", "", "", Handbook, false, memory},
	{"logan", "Logan, A First Course in the Finite Element Method", "4th ed.", "", Handbook, false, byFrameLibrary},
	{"kassimali", "Kassimali, Structural Analysis", "3rd ed.", "", Handbook, false, byFrameLibrary},
	{"mcguire", "McGuire, Matrix Structural Analysis", "", "", Handbook, false, byFrameLibrary},
	{"bedford-fowler", "Bedford and Fowler, Engineering Mechanics: Statics", "4th ed.", "", Handbook, false, byFrameLibrary},
	{"timoshenko", "Timoshenko, Strength of Materials I", "", "", Handbook, false, byEngine},
	{"afnor-ssll02", "AFNOR SSLL02/89", "", "1989", Handbook, false, byEngine},
	{"frame-program-examples", "printed examples of an open frame program (Gavin)", "", "", Handbook, true, ""},
	{"istructe-demountable", "IStructE, Temporary demountable structures", "4th ed.", "2017", Guideline, false, "title read; values from memory"},
	{"en-12811-1", "EN 12811-1, temporary works equipment, scaffolds", "", "", Standard, false, memory},
	{"en-1004", "EN 1004, mobile access and working towers", "", "", Standard, false, memory},
	{"bs-5975", "BS 5975, temporary works", "", "", Standard, false, memory},
	{"en-13782", "EN 13782, temporary structures, tents", "", "", Standard, false, memory},
	{"en-13814", "EN 13814, fairground and amusement park machinery and structures", "", "", Standard, false, memory},
}
