package source

// power are the sources of electrical limits, and of units.
var power = []Publication{
	{"nfpa-70", "NFPA 70, National Electrical Code", "", "", Regulation, true, "chapter 9 table 8, 520.44, 530 read; 210.19, 210.20, 215 and 530.18 are from memory"},
	{"bs-7671", "BS 7671, Requirements for electrical installations", "", "", Standard, true, "tables 4F2B, 4F3B and the limits of voltage drop"},
	{"bs-7909", "BS 7909, temporary electrical systems for entertainment", "", "", Standard, false, memory},
	{"iec-60364-7-711", "IEC 60364-7-711, exhibitions, shows and stands", "", "", Standard, false, memory},
	{"third-harmonic-neutral", "published text on the neutral current of third harmonics", "", "", Handbook, true, ""},
	{"cgpm-1901", "3rd CGPM, standard acceleration of free fall", "", "1901", Standard, false, memory},
	{"nist-sp-811", "NIST Special Publication 811, Guide for the Use of the SI", "", "", Guideline, false, memory},
}
