package photometry

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// BenchmarkIntensity asks a table of 37 planes of 1001 angles toward directions in turn.
func BenchmarkIntensity(b *testing.B) {
	f, err := ReadFile("a.ies", []byte(denseLM63(36)))
	if err != nil {
		b.Fatal(err)
	}
	var directions []r3.Vec
	for i := range 256 {
		directions = append(directions, typeC.direction(float64(i)*0.7, float64(i%90)*degree))
	}
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		sum += f.Distribution.Intensity(directions[i%256])
	}
	if sum == 0 {
		b.Fatal("no light")
	}
}

// BenchmarkReadFile reads a table of a thousand planes of a thousand angles.
func BenchmarkReadFile(b *testing.B) {
	data := []byte(denseLM63(1000))
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := ReadFile("a.ies", data); err != nil {
			b.Fatal(err)
		}
	}
}
