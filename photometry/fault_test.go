package photometry

import (
	"fmt"
	"math"
	"runtime"
	"strings"
	"testing"
)

func typed(text string, kind int) string {
	return strings.Replace(text, " 1 2 0.3", fmt.Sprintf(" %d 2 0.3", kind), 1)
}

func countFields(text string) int { return len(strings.Fields(text)) }

// Faults of real files, each as it was met in one (common practice): what a person
// would read is read the same, and told.
func TestOddButRead(t *testing.T) {
	plain := read(t, "a.ies", z1)
	for _, c := range []struct{ name, text, odd string }{
		{"TILT= within a line of text", strings.Replace(z1, "[TEST] 1", "[TEST] 1\n[LUMINAIRE] flood TILT=INCLUDE", 1), "TILT= stands within a line of text"},
		{"blank in the version", strings.Replace(z1, "IESNA:LM-63-2002", "IESNA: LM-63-2002", 1), "not as the standard writes it: read as 2002"},
		{"prefix of another version", strings.Replace(z1, "IESNA:LM-63-2002", "IESNA:LM-63-2019", 1), "read as 2019"},
		{"unknown version", strings.Replace(z1, "IESNA:LM-63-2002", "IESNA:LM-63-2044", 1), "read as 2002"},
		{"no version", strings.Replace(z1, "IESNA:LM-63-2002\n", "", 1), "no version line, but keywords"},
		{"Latin-1 degree sign in text", strings.Replace(z1, "[TEST] 1", "[TEST] 25\xb0", 1), "ISO 8859-1"},
		{"byte order mark", "\xEF\xBB\xBF" + z1, "byte order mark"},
		{"CR alone", strings.ReplaceAll(z1, "\n", "\r"), "CR alone"},
		{"CR CR LF", strings.ReplaceAll(z1, "\n", "\r\r\n"), "CR CR LF"},
		{"end mark", z1 + "\x1a", "end mark"},
		{"trailing text", z1 + "END\n", "behind the last candela value"},
		{"lost line break", strings.Replace(z1, "TILT=NONE\n", "TILT=NONE ", 1), "line break is lost"},
		{"decimal commas", strings.NewReplacer("1 1000 1 ", "1 1000,0 1,0 ", "0.3 0.6", "0,3 0,6").Replace(z1), "commas are decimal signs"},
		{"tilt in another file", strings.Replace(z1, "TILT=NONE", "TILT=LAMP7.TLT", 1), "another file"},
		{"field 12", strings.Replace(z1, "\n1 1 100\n", "\n1 0.5 100\n", 1), "has no meaning since 1995"},
		{"degree sign behind an angle", strings.Replace(z1, "80 90\n", "80 90\xb0\n", 1), "degree signs"},
		{"exponent of older programs", strings.Replace(z1, "1 1000 1 ", "1 1.0D3 1 ", 1), ""},
		{"missing keywords", strings.Replace(z1, "[MANUFAC] none\n", "", 1), "[MANUFAC]"},
		{"empty keyword", strings.Replace(z1, "[TEST] 1", "[TEST] 1\n[LAMPCAT]", 1), ""},
		{"lower case", strings.Replace(z1, "TILT=NONE", "tilt=none", 1), ""},
		{"wrapped anywhere", strings.Replace(z1, "8500 5000 3250", "8500\n5000\n\n3250", 1), ""},
		{"commas", strings.NewReplacer("8500 5000 3250 5250", "8500,5000,3250, 5250", "0 10 20 30", "0,10,20,30").Replace(z1), ""},
		{"all commas", strings.Replace(strings.Replace(z1, "1 1000 1 10 1 1 2 0.3 0.6 0", "1,1000,1,10,1,1,2,0.3,0.6,0", 1), "1 1 100", "1,1,100", 1), ""},
		{"zero watts", strings.Replace(z1, "1 1 100", "1 1 0", 1), "power is not known"},
		{"point", strings.Replace(z1, "0.3 0.6 0", "0 0 0", 1), "a point in the file"},
		{"feet taken for millimeters", strings.Replace(z1, "0.3 0.6 0", "300 600 0", 1), "mixed up"},
	} {
		f, err := ReadFile("a.ies", []byte(c.text))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if *f.LumensIntegrated != *plain.LumensIntegrated {
			t.Errorf("%s: %g lm, want %g", c.name, *f.LumensIntegrated, *plain.LumensIntegrated)
		}
		if c.odd != "" && !hasOdd(f, c.odd) {
			t.Errorf("%s: odd is %q, want %q", c.name, f.Odd, c.odd)
		}
		if c.odd == "" && len(f.Odd) != len(plain.Odd) {
			t.Errorf("%s: odd is %q", c.name, f.Odd)
		}
	}
}

// A relative file whose light is more than its lamps' (a real one gave 904.5 lm of
// "500 lm") is told; up to its lamps' it isn't.
func TestMoreLightThanLamps(t *testing.T) {
	f := read(t, "a.ies", strings.Replace(z2, "1 1000 1", "1 2000 1", 1))
	if !hasOdd(f, "more than they give") || math.Abs(*f.Share()-3133.487345/2000) > 1e-9 {
		t.Errorf("share %v, odd %q", show(f.Share()), f.Odd)
	}
	if f := read(t, "a.ies", strings.Replace(z2, "1 1000 1", "2 2000 1", 1)); hasOdd(f, "more than they give") || *f.LumensStated != 4000 {
		t.Errorf("odd %q", f.Odd)
	}
}

// Candela are table times multiplier times ballast factor (LM-63-2002); -1 lumens per
// lamp is absolute; the field behind the ballast factor counts up to 1991 only.
func TestFactors(t *testing.T) {
	f := read(t, "a.ies", strings.Replace(z2, "1 1000 1", "1 -1 0.4597", 1))
	close(t, "multiplier", f.LumensIntegrated, 0.4597*3133.487345, 1e-6)
	if f.Photometry != Absolute || f.LumensStated != nil {
		t.Errorf("%s, stated %v", f.Photometry, show(f.LumensStated))
	}
	close(t, "ballast factor", read(t, "a.ies", strings.Replace(z2, "1 1 100", "0.9 1 100", 1)).LumensIntegrated, 0.9*3133.487345, 1e-6)
	old := strings.Replace(strings.Replace(z2, "IESNA:LM-63-2002", "IESNA91", 1), "1 1 100", "1 0.8 100", 1)
	close(t, "photometric factor", read(t, "a.ies", old).LumensIntegrated, 0.8*3133.487345, 1e-6)
	f = read(t, "a.ies", z2)
	close(t, "efficacy", f.Efficacy(), 31.33487345, 1e-8)
}

// What cannot be read says where, what and what would be right, in one sentence.
func TestRefused(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "a.ies: the file is empty"},
		{"no TILT", strings.Replace(z1, "TILT=NONE\n", "", 1), "no line begins with TILT="},
		{"TILT within text only", strings.Replace(z1, "TILT=NONE\n", "[OTHER] TILT=NONE\n", 1), "only line 6 has it within its text"},
		{"cut off", z1[:len(z1)-14], "the file ends where a candela value is due; it is cut off (value 7 of 10)"},
		{"cut off in the header", z1[:strings.Index(z1, "TILT")+30], "cut off"},
		{"a thousand million angles", strings.Replace(z1, " 10 1 1 2", " 1000000000 1000000000 1 2", 1), "line 7: 1000000000 vertical times 1000000000 horizontal angles need"},
		{"angles for a small file", strings.Replace(z1, " 10 1 1 2", " 1000 1 1 2", 1), "room for"},
		{"NaN", strings.Replace(z1, "5250", "NaN", 1), `line 11: "NaN" where a candela value is due`},
		{"infinity", strings.Replace(z1, "5250", "1e999", 1), `"1e999" where a candela value`},
		{"word", strings.Replace(z1, "5250", "bright", 1), `"bright" where a candela value`},
		{"negative", strings.Replace(z1, "5250", "-5250", 1), "line 11: a negative intensity, -5250"},
		{"unsorted", strings.Replace(z1, "10 20 30", "10 30 20", 1), "vertical angles that don't rise: 20 comes after 30"},
		{"twice the same", strings.Replace(z1, "10 20 30", "10 20 20", 1), "don't rise"},
		{"unsorted planes", lm63("0 90", "0 180 90", "1 1", "1 1", "1 1"), "horizontal angles that don't rise"},
		{"one vertical angle", lm63("0", "0", "5"), "one vertical angle"},
		{"no angles", strings.Replace(z1, " 10 1 1 2", " 0 1 1 2", 1), "0 vertical and 1 horizontal angles"},
		{"minus angles", strings.Replace(z1, " 10 1 1 2", " -10 1 1 2", 1), "-10 vertical"},
		{"half an angle", strings.Replace(z1, " 10 1 1 2", " 9.5 1 1 2", 1), "9.5 where the number of vertical angles is due"},
		{"multiplier 0", strings.Replace(z1, "1 1000 1 10", "1 1000 0 10", 1), "a candela multiplier of 0"},
		{"type 7", typed(z1, 7), "7 as photometric type"},
		{"no light", lm63("0 90", "0", "0 0"), "all intensities are 0"},
		{"planes to 45", lm63("0 90", "0 45", "1 1", "1 1"), "horizontal angles from 0 to 45 deg"},
		{"past the zenith", lm63("0 200", "0", "1 1"), "vertical angles from 0 to 200 deg"},
		{"one plane of type B", typed(lm63("-90 0 90", "0", "1 1 1"), 2), "one horizontal angle in a table of type B"},
		{"sum past numbers", lm63("0 90", "0", "1e308 1e308"), "no number"},
		{"tilt of a million angles", strings.Replace(z6, "\n4\n", "\n1000000000\n", 1), "1000000000 tilt angles"},
		{"tilt position", strings.Replace(z6, "INCLUDE\n1\n", "INCLUDE\n5\n", 1), "5 as the lamp's position"},
		{"UTF-16", "\xFF\xFEI\x00", "UTF-16"},
		{"zero byte", "IESNA91\n\x00\nTILT=NONE\n", "line 2: a zero byte"},
	} {
		f, err := ReadFile("a.ies", []byte(c.text))
		if err == nil {
			t.Errorf("%s was read: %+v", c.name, f)
			continue
		}
		if !strings.Contains(err.Error(), c.want) || !strings.HasPrefix(err.Error(), "a.ies") {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
	if _, err := ReadFile("a.txt", []byte("hello")); err == nil || !strings.Contains(err.Error(), "no lamp file that can be read") {
		t.Errorf("got %v", err)
	}
}

// No file makes the reader hold, or even ask for over time, more than ten times its
// size.
func TestMemory(t *testing.T) {
	huge := strings.Replace(z1, " 10 1 1 2", " 1000000000 1000000000 1 2", 1)
	values := strings.Repeat("1 ", 500_000)
	var angles strings.Builder
	for i := range 500 {
		fmt.Fprintf(&angles, "%g ", float64(i)*0.36)
	}
	dense := lm63(angles.String(), "0 90 180", strings.Repeat("1 ", 1500)) + values
	big := denseLM63(1000)
	for name, text := range map[string]string{
		"huge header": huge, "much behind the end": dense, "dense": big,
		"dense, wrong at the end":       big[:len(big)-3] + "x\n",
		"dense, tried with commas":      big[:len(big)-3] + "1,x\n",
		"long line of text":             strings.Replace(z1, "[TEST] 1", "[TEST] "+strings.Repeat("a", 1_000_000), 1),
		"many lines of text":            strings.Replace(z1, "[TEST] 1", strings.Repeat("[A]\n", 300_000), 1),
		"many keywords":                 strings.Replace(z1, "[TEST] 1", strings.Repeat("[TEST]a\n[MORE]b\n", 100_000), 1),
		"many lines of Latin text":      strings.Replace(z1, "[TEST] 1", strings.Repeat("\xb0\n", 300_000), 1),
		"EULUMDAT with a huge header":   strings.Replace(ldt(0, 4, "0\n90\n180\n270", "0\n90", "1\n1\n1\n1\n1\n1\n1\n1"), "\n4\n90\n2\n", "\n1000000000\n90\n1000000000\n", 1),
		"EULUMDAT with text in a value": "a\n1\n1\n" + strings.Repeat("9", 1_000_000),
	} {
		data := []byte(text)
		var before, after runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&before)
		_, err := ReadFile("a.ldt", data)
		runtime.ReadMemStats(&after)
		used := after.TotalAlloc - before.TotalAlloc
		if limit := uint64(10*len(data) + 64<<10); used > limit {
			t.Errorf("%s: %d bytes for a file of %d (%v)", name, used, len(data), err)
		}
	}
}

// denseLM63 has as many numbers in as few bytes as the form allows.
func denseLM63(planes int) string {
	var v, h strings.Builder
	for i := range 1000 {
		fmt.Fprintf(&v, "%g ", float64(i)*0.18)
	}
	v.WriteString("180")
	for i := range planes {
		fmt.Fprintf(&h, "%g ", float64(i)*360/float64(planes))
	}
	h.WriteString("360")
	return lm63(v.String(), h.String(), strings.Repeat("1 ", 1001*(planes+1)))
}
