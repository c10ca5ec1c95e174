package draw_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/draw"
	"softloft/light"
)

// slope is a map whose light halves every meter from left to right: its lines of equal
// light are upright, one a meter apart for every stop.
func slope(name string) *light.Map {
	m := &light.Map{Name: name, Nodes: [2]int{9, 9}, Across: r3.Vec{X: 8}, Up: r3.Vec{Y: 6}}
	for k := range 81 {
		m.Lux = append(m.Lux, 800*math.Exp2(-float64(k%9)))
	}
	return m
}

// Lines stand where the light is so many stops about the level, at the scale of the
// picture; the heavy one at none.
func TestLightContours(t *testing.T) {
	a := answers(t, waltz)
	maps := &light.Maps{Walls: []light.Map{*slope("north")}, Asked: math.NaN(), Key: 100} // 800 is 3 stops over: 0 at 3 m
	pictures := draw.Lights(a, maps, draw.Space{Width: 250, Height: 180})
	if len(pictures) != 1 || pictures[0].Name != "light-walls" {
		t.Fatalf("%d pictures", len(pictures))
	}
	var frame draw.Item
	var lines []float64
	heavy := math.NaN()
	for _, item := range pictures[0].Items {
		switch {
		case item.Layer != draw.Light || item.Text != "" || item.Fill != draw.None: // words and what clears the paper behind them
		case item.Pen.Weight == draw.Strong:
			frame = item
		case len(item.Points) > 2:
			lines = append(lines, item.Points[0].X)
			if item.Pen.Weight == draw.Heavy {
				heavy = item.Points[0].X
			}
		}
	}
	if len(frame.Points) != 4 || len(lines) < 7 {
		t.Fatalf("frame of %d corners, %d lines", len(frame.Points), len(lines))
	}
	low, high := frame.Points[0].X, frame.Points[2].X
	if at := (heavy - low) / (high - low) * 8; math.Abs(at-3) > 1e-6 {
		t.Errorf("0 stops at %g m, want 3", at)
	}
	for _, x := range lines {
		at := (x - low) / (high - low) * 8
		if math.Abs(at-math.Round(at)) > 1e-6 {
			t.Errorf("a line at %g m", at)
		}
	}
}

// The maps of every plan are drawn, and nothing of them leaves the paper.
func TestLightSheets(t *testing.T) {
	for _, name := range plans(t) {
		a := answers(t, name)
		maps, err := light.MapsOf(a.Model)
		if err != nil {
			continue
		}
		for _, p := range draw.LightSheets(a, maps, "letter") {
			for _, item := range p.Items {
				if item.Text == "DEMO" {
					continue
				}
				if b := item.Bounds(); b.Left < -0.1 || b.Top < -0.1 || b.Right > p.Width+0.1 || b.Bottom > p.Height+0.1 {
					t.Errorf("%s %s: %q %v leaves the paper", name, p.Name, item.Text, b)
				}
			}
		}
	}
}

// Dark, or without a level, a map is a frame with words and no line.
func TestLightWithoutLight(t *testing.T) {
	a := answers(t, waltz)
	m := slope("area")
	for i := range m.Lux {
		m.Lux[i] = 0
	}
	for _, level := range []float64{100, math.NaN()} {
		pictures := draw.Lights(a, &light.Maps{Area: m, Asked: level, Key: math.NaN()}, draw.Space{Width: 250, Height: 180})
		words := false
		for _, item := range pictures[0].Items {
			words = words || len(item.Text) >= 8 && item.Text[:8] == "no light"
			if item.Layer == draw.Light && item.Pen.Weight == draw.Thin {
				t.Error("no light has a line")
			}
		}
		if !words {
			t.Error("no light is not said")
		}
	}
}
