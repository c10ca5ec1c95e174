package pdf_test

import (
	"bytes"
	"encoding/xml"
	"image"
	stdpng "image/png"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"softloft/draw"
	"softloft/draw/pdf"
	"softloft/draw/png"
	"softloft/draw/svg"
)

// sample has one of everything.
func sample() draw.Picture {
	p := draw.Picture{Name: "sample", Title: "sample", Width: 80, Height: 60}
	black := func(w float64, d draw.Dash) draw.Pen { return draw.Pen{Weight: w, Dash: d, Ink: draw.Black} }
	p.Add(
		draw.Rectangle(draw.Frame, black(draw.Heavy, draw.Solid), draw.Pale, draw.Point{X: 5, Y: 5}, 40, 20),
		draw.Area(draw.Lamps, black(draw.Medium, draw.Solid), draw.Gray, draw.Point{X: 50, Y: 10}, draw.Point{X: 70, Y: 12}, draw.Point{X: 58, Y: 26}),
		draw.Line(draw.Lines, black(draw.Strong, draw.Dashed), draw.Point{X: 5, Y: 35}, draw.Point{X: 40, Y: 35}, draw.Point{X: 40, Y: 55}),
		draw.Line(draw.Lines, black(draw.Massive, draw.DashDot), draw.Point{X: 5, Y: 40}, draw.Point{X: 35, Y: 55}),
		draw.Line(draw.Lines, black(draw.Strong, draw.Dotted), draw.Point{X: 50, Y: 35}, draw.Point{X: 75, Y: 35}),
		draw.Label(draw.Labels, `12'-6 1/2" W1 ■ ≤ Ж`, draw.Point{X: 8, Y: 15}, 3, draw.Start),
	)
	turned := draw.Label(draw.Labels, "turned 90°", draw.Point{X: 60, Y: 47}, 3, draw.Middle)
	turned.Angle, turned.Bold = math.Pi/2, true
	p.Add(turned)
	return p
}

// The PDF, set by another program, and the PNG that is painted here show the same.
func TestSamePicture(t *testing.T) {
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		t.Skip("pdftoppm is not here")
	}
	const dots = 8.0 // per mm
	folder := t.TempDir()
	var document bytes.Buffer
	if err := pdf.Write(&document, "sample", sample()); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(folder, "sample")
	if err := os.WriteFile(name+".pdf", document.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("pdftoppm", "-r", "203.2", "-singlefile", "-png", name+".pdf", name).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	file, err := os.Open(name + ".png")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	theirs, err := stdpng.Decode(file)
	if err != nil {
		t.Fatal(err)
	}
	var painted bytes.Buffer
	if err := png.Write(&painted, sample(), dots); err != nil {
		t.Fatal(err)
	}
	ours, err := stdpng.Decode(&painted)
	if err != nil {
		t.Fatal(err)
	}
	// In squares of 1 mm the mean tones agree: dashes and glyphs lie in the same place.
	worst, at := 0.0, image.Point{}
	for y := 0; y < 60; y++ {
		for x := 0; x < 80; x++ {
			if d := math.Abs(mean(ours, x, y, dots) - mean(theirs, x, y, dots)); d > worst {
				worst, at = d, image.Pt(x, y)
			}
		}
	}
	if worst > 0.10 {
		t.Errorf("the pictures differ by %.2f of full black in the square at %v mm", worst, at)
	}
}

func mean(i image.Image, x, y int, dots float64) float64 {
	var sum float64
	n := int(dots)
	for dy := range n {
		for dx := range n {
			r, g, b, _ := i.At(x*n+dx, y*n+dy).RGBA()
			sum += 1 - float64(r+g+b)/3/0xffff
		}
	}
	return sum / float64(n*n)
}

func TestSameBytes(t *testing.T) {
	var one, two bytes.Buffer
	for _, to := range []*bytes.Buffer{&one, &two} {
		if err := pdf.Write(to, "sample", sample(), sample()); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(one.Bytes(), two.Bytes()) {
		t.Error("two runs gave different documents")
	}
}

func TestNothing(t *testing.T) {
	if err := pdf.Write(io.Discard, "nothing"); err == nil {
		t.Error("a document without a page is no error")
	}
}

// Any text that a user types can be set by every back end, and the SVG stays well-formed.
func TestAnyText(t *testing.T) {
	all := draw.Picture{Width: 80, Height: 60}
	rapid.Check(t, func(t *rapid.T) {
		text := string(rapid.SliceOfN(rapid.Byte(), 0, 60).Draw(t, "bytes")) + rapid.String().Draw(t, "text")
		all.Add(writesText(t, text).Items...)
	})
	if err := pdf.Write(io.Discard, "all", all); err != nil {
		t.Error("PDF of all texts:", err)
	}
}

type fataler interface{ Fatal(...any) }

// writesText fails where SVG or PNG can't set a text; it returns what was to be set.
func writesText(t fataler, text string) draw.Picture {
	p := draw.Picture{Name: text, Title: text, Width: 40, Height: 20}
	item := draw.Label(draw.Labels, text, draw.Point{X: 20, Y: 10}, 3, draw.Middle)
	item.Text, item.Part, item.Of = text, text, text // past Label's own cleaning
	p.Add(item)
	var page bytes.Buffer
	if err := svg.Write(&page, p); err != nil {
		t.Fatal(err)
	}
	decoder := xml.NewDecoder(&page)
	for {
		_, err := decoder.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal("SVG of", text, err)
		}
	}
	if err := png.Write(io.Discard, p, 2); err != nil {
		t.Fatal("PNG of", text, err)
	}
	return p
}

func FuzzText(f *testing.F) {
	for _, seed := range []string{"", "Łucja ℵ 你好 😀", "\xff\xfe</text>&\"'", "\u202eabc\u2066\u0000", "a\u0301\u0301"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if err := pdf.Write(io.Discard, text, writesText(t, text)); err != nil {
			t.Fatal("PDF of", text, err)
		}
	})
}
