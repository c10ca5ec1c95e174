package quantity

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"
)

// Whatever the text: a finite number that prints and reads back, or a sentence with a hint.
func FuzzParse(f *testing.F) {
	for _, d := range Dimensions() {
		for _, text := range append(d.Examples(), "", "0", "1e400 m", "1,5 m", `12' 6-1/2"`, `12'14"`, "½ in", "−3′ 4″", "T2.8", "nan", "0x1p3 m") {
			f.Add(text, int(d))
		}
	}
	f.Fuzz(func(t *testing.T, text string, number int) {
		d := Dimension(number)
		x, err := Parse(text, d)
		if err != nil {
			problem, ok := err.(*Error)
			if !ok || problem.Problem == "" || problem.Hint == "" || x != 0 || !utf8.ValidString(err.Error()) || strings.ContainsAny(err.Error(), "\n\r\x00") || len(err.Error()) > 600 {
				t.Fatalf("%q as %v: %v, error %q", text, d, x, err)
			}
			return
		}
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%q as %v is %v", text, d, x)
		}
		if again, err := Parse(format(x, d), d); err != nil || again != x {
			t.Fatalf("%q as %v is %v, prints %s, reads %v: %v", text, d, x, format(x, d), again, err)
		}
	})
}
