package plan

import (
	"os"
	"testing"
)

// BenchmarkRead reads the plan that has every key.
func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile("testdata/everything.yaml")
	if err != nil {
		b.Fatal(err)
	}
	base := testKit(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, mistakes := Read("everything.yaml", data, base); len(mistakes) > 0 {
			b.Fatal(mistakes)
		}
	}
}
