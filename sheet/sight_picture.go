package sheet

import (
	"fmt"
	"math"

	"softloft/answer"
	"softloft/draw"
	"softloft/finding"
	"softloft/sight"
)

// SightPictures are a picture for each camera: what it sees from places along its way,
// with what is in shot outlined, and under them a strip of where on the way each part is
// in shot.
func SightPictures(a *answer.Answers) []draw.Picture {
	var out []draw.Picture
	for i := range a.Sight.Cameras {
		k := &a.Sight.Cameras[i]
		if k.FieldOfView == nil {
			continue
		}
		p := draw.Picture{Name: "sight-" + fileName(k.Name, i), Title: "Camera " + draw.Clean(k.Name), Width: pictureWide}
		bottom := frames(&p, sight.Looks(a.Model, i, framesAcross*2), k)
		p.Height = strips(&p, k, bottom) + pictureEdge
		out = append(out, p)
	}
	return out
}

// A picture's measures in mm.
const (
	pictureWide  = 279.0
	pictureEdge  = 10.0
	framesAcross = 3
	frameGap     = 6.0
	stripHigh    = 4.5
	stripLabel   = 52.0
	mostStrips   = 60
)

// fileName keeps letters and digits of a camera's name, or its number.
func fileName(name string, i int) string {
	kept := []rune{}
	for _, r := range name {
		if (r >= 'a' && r <= 'z') || (r >= 'A' && r <= 'Z') || (r >= '0' && r <= '9') {
			kept = append(kept, r)
		}
	}
	if len(kept) == 0 || len(kept) != len([]rune(name)) {
		return fmt.Sprintf("%s%d", string(kept), i+1)
	}
	return string(kept)
}

// frames draws the looks in rows and returns where the lowest ends.
func frames(p *draw.Picture, looks []sight.Look, k *sight.CameraAnswer) float64 {
	p.Add(draw.Label(draw.Labels, "Camera "+draw.Clean(k.Name)+": what is in its frame at the highest tilt", draw.Point{X: pictureEdge, Y: pictureEdge}, 4, draw.Start))
	across := min(framesAcross, len(looks))
	top := pictureEdge + 8.0
	if across == 0 {
		return top
	}
	wide := (pictureWide - 2*pictureEdge - float64(across-1)*frameGap) / float64(across)
	high := wide / looks[0].Aspect
	if limit := 150.0; high > limit {
		wide, high = wide*limit/high, limit
	}
	bottom := top
	for i, look := range looks {
		at := draw.Point{X: pictureEdge + float64(i%across)*(wide+frameGap), Y: top + float64(i/across)*(high+frameGap+5)}
		oneFrame(p, look, k, at, wide, high)
		bottom = at.Y + high + 6
	}
	return bottom
}

// oneFrame draws one look: what is nearest covers nothing, because what is hidden is
// already left out.
func oneFrame(p *draw.Picture, look sight.Look, k *sight.CameraAnswer, at draw.Point, wide, high float64) {
	put := func(points [][2]float64) []draw.Point {
		out := make([]draw.Point, len(points))
		for i, q := range points {
			out[i] = draw.Point{X: at.X + (q[0]+1)/2*wide, Y: at.Y + (1-q[1])/2*high}
		}
		return out
	}
	for _, patch := range look.Patches {
		fill, line, layer := draw.Faint, draw.Pen{Weight: draw.Hairline, Ink: draw.Gray}, draw.Room
		if patch.OfRig {
			fill, line, layer = draw.Pale, draw.Pen{Weight: draw.Medium, Ink: draw.Alarm}, draw.Frame
		}
		item := draw.Area(layer, line, fill, put(patch.Points)...)
		item.Part = patch.Part
		p.Add(item)
	}
	if len(look.Area) > 0 {
		item := draw.Area(draw.Action, draw.Pen{Weight: draw.Thin, Ink: draw.Dark, Dash: draw.Dashed}, draw.None, put(look.Area)...)
		p.Add(item)
	}
	for _, mark := range look.Marks {
		p.Add(draw.Area(draw.Action, draw.Pen{Weight: draw.Thin, Ink: draw.Dark}, draw.None, put(mark)...))
	}
	p.Add(draw.Rectangle(draw.Cameras, draw.Pen{Weight: draw.Strong, Ink: draw.Black}, draw.None, at, wide, high))
	p.Add(draw.Label(draw.Labels, lookTitle(look, k), draw.Point{X: at.X, Y: at.Y + high + 3}, 2.6, draw.Start))
}

func lookTitle(look sight.Look, k *sight.CameraAnswer) string {
	switch k.Swept {
	case "orbit":
		return fmt.Sprintf("at %.0f° of the orbit", look.Main)
	case "pan":
		return fmt.Sprintf("panned by %.0f°", look.Main)
	case "track":
		return fmt.Sprintf("at %.0f %% of the track", 100*look.Main)
	}
	return "as it stands"
}

// strips draws a bar for each part along the way and returns where they end.
func strips(p *draw.Picture, k *sight.CameraAnswer, top float64) float64 {
	low, high, ok := wayRange(k)
	if !ok {
		return top
	}
	left, wide := pictureEdge+stripLabel, pictureWide-2*pictureEdge-stripLabel
	x := func(main float64) float64 { return left + (main-low)/(high-low)*wide }
	order := map[string]int{}
	for _, s := range k.Sees {
		i, known := order[s.Part]
		if !known {
			i = len(order)
			order[s.Part] = i
		}
		if i >= mostStrips {
			continue
		}
		y := top + 4 + float64(i)*stripHigh
		if !known {
			p.Add(draw.Label(draw.Labels, draw.Shorten(s.Part, 2.6, stripLabel-2, false), draw.Point{X: pictureEdge, Y: y + stripHigh/2}, 2.6, draw.Start))
		}
		from, to := ends(s)
		bar := draw.Rectangle(draw.Frame, draw.Pen{Weight: draw.Hairline, Ink: draw.Alarm}, draw.Alarm, draw.Point{X: x(from), Y: y + 1}, math.Max(0.2, x(to)-x(from)), stripHigh-2)
		bar.Part = s.Part
		p.Add(bar)
	}
	bottom := top + 4 + float64(min(len(order), mostStrips))*stripHigh + 2
	for i := range 13 {
		main := low + (high-low)*float64(i)/12
		p.Add(draw.Line(draw.Dimensions, draw.Pen{Weight: draw.Hairline, Ink: draw.Gray}, draw.Point{X: x(main), Y: top + 3}, draw.Point{X: x(main), Y: bottom}))
		p.Add(draw.Label(draw.Dimensions, fmt.Sprintf("%.4g", main), draw.Point{X: x(main), Y: bottom + 3}, 2.6, draw.Middle))
	}
	text := whereHead[k.Swept] + ": where each part is in shot"
	if len(order) == 0 {
		text = "nothing of rig or points is in shot anywhere on the way"
	} else if len(order) > mostStrips {
		text += fmt.Sprintf("; %d more parts are not drawn", len(order)-mostStrips)
	}
	p.Add(draw.Label(draw.Labels, text, draw.Point{X: left, Y: bottom + 8}, 2.6, draw.Start))
	return bottom + 10
}

// ends are a stretch's ends: degrees, or percents of the track.
func ends(s sight.Seen) (from, to float64) {
	if s.FromShare != nil {
		return 100 * float64(*s.FromShare), 100 * float64(*s.ToShare)
	}
	return float64(s.FromDeg), float64(s.ToDeg)
}

// wayRange is the whole way in the unit of ends; not ok for a camera that stands still.
func wayRange(k *sight.CameraAnswer) (low, high float64, ok bool) {
	if len(k.Way) != 2 || !finding.Known(float64(k.Way[0])) || k.Way[1] <= k.Way[0] {
		return 0, 0, false
	}
	low, high = float64(k.Way[0]), float64(k.Way[1])
	if k.Swept == "track" {
		low, high = 100*low, 100*high
	}
	return low, high, true
}
