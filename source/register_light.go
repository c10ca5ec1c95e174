package source

// light are the sources of photometry, exposure and lamp files.
var light = []Publication{
	{"siegel-howell", "Siegel and Howell, Thermal Radiation Heat Transfer", "4th ed.", "", Handbook, true, "definitions p. 842, 845 read; some formulas from memory, each verified by quadrature"},
	{"lambert-1760", "Lambert, Photometria", "", "1760", Handbook, false, "from memory, verified by quadrature; by way of Siegel and Howell"},
	{"howell-catalogue", "Howell, A Catalog of Radiation Heat Transfer Configuration Factors", "", "", Handbook, true, "in part; some codes not verified"},
	{"solver-manual-factors", "view factors printed in an engineering solver's manual", "", "", Handbook, true, ""},
	{"iso-2720", "ISO 2720, Photographic exposure meters (guide to product specification)", "", "1974", Standard, true, "ranges of C and K; title from memory"},
	{"cinematography-textbook", "Cinematography: Theory and Practice", "", "", Handbook, true, "exposure time, p. 223"},
	{"cinematographers-25-fc", "the rule fc = 25 T²/(ISO t) of working cinematographers", "", "", Handbook, true, "common practice, as printed in a text"},
	{"ies-lm-63", "LM-63, Standard file format for photometric data", "1986, 1991, 1995, 2002, 2019", "", Standard, true, "grammar; title from memory"},
	{"eulumdat", "EULUMDAT file format", "", "", Standard, true, ""},
	{"din-spec-15800", "DIN SPEC 15800, GDTF", "", "2022", Standard, true, ""},
	{"din-spec-15801", "DIN SPEC 15801, MVR", "", "2023", Standard, true, ""},
	{"ies-ls-1", "ANSI/IES LS-1, 9.1.1, the five times rule", "", "", Standard, true, ""},
	{"cie-171", "CIE 171, Test cases to assess the accuracy of lighting computer programs", "", "2006", Standard, false, "second-hand: set-ups and tables in transcriptions and published validations; title from memory"},
	{"cie-130", "CIE 130, Practical methods for the measurement of reflectance and transmittance", "", "1998", Standard, false, "only the abstract was read; title from memory"},
	{"cie-eilv", "CIE e-ILV, International Lighting Vocabulary", "", "", Standard, true, "terms 17-24-065, 17-24-067, 17-30-036, 312, 515"},
	{"astm-d1003", "ASTM D1003, haze and luminous transmittance", "", "", Standard, true, "the definition of haze"},
	{"ies-handbook", "IES Lighting Handbook", "8th and 9th ed.", "", Handbook, false, memory},
	{"reflectance-encyclopedia", "reflectances in a lighting encyclopedia", "", "", Handbook, true, ""},
	{"nist-skin", "NIST skin reflectance data set, J. Res. NIST 122:26", "", "2017", Handbook, false, titleOnly},
}
