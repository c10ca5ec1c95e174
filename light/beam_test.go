package light

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/photometry"
)

func beamOf(t testing.TB, beam, field float64) photometry.Distribution {
	t.Helper()
	b, err := photometry.NewBeam(beam*math.Pi/180, field*math.Pi/180)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// steepTable is a lamp file's table: a peak of 3 deg half width on a broad base, or,
// with a ring, a second and steeper rise at 20 deg.
func steepTable(t testing.TB, ring bool) photometry.Distribution {
	t.Helper()
	var angles, values []string
	for i := range 181 {
		v := float64(i) / 2
		cd := 10000*math.Exp(-math.Ln2*math.Pow(v/3, 2)) + 80*math.Cos(v*math.Pi/180)
		if ring && v > 19 && v < 23 {
			cd += 4000
		}
		angles, values = append(angles, fmt.Sprint(v)), append(values, fmt.Sprintf("%.4f", cd))
	}
	wrapped := func(words []string) string {
		var out strings.Builder
		for i, w := range words {
			out.WriteString(w)
			out.WriteByte(" \n"[(i+1)%16/15])
		}
		return out.String()
	}
	text := fmt.Sprintf("IESNA:LM-63-2002\n[TEST] none\nTILT=NONE\n1 -1 1 %d 1 1 2 0 0 0\n1 1 100\n%s\n0\n%s\n", len(angles), wrapped(angles), wrapped(values))
	f, err := photometry.ReadFile("steep.ies", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return f.Distribution
}

// finely adds up an opening by midpoints, n along each side, closer about the place
// that aims at the point: the definition.
func finely(l *Lamp, p, facing r3.Vec, n int) float64 {
	off := r3.Sub(p, l.Centre)
	ahead := r3.Dot(off, l.Axis)
	places := func(axis r3.Vec, half float64) (at, share []float64) {
		const closest = 0.2 // of the distance
		foot, reach := r3.Dot(off, axis), ahead*math.Tan(math.Min(1.57, l.Distribution.Reach()))
		from := math.Asinh((math.Max(-half, foot-reach) - foot) / (closest * ahead))
		to := math.Asinh((math.Min(half, foot+reach) - foot) / (closest * ahead))
		for i := range n {
			s := from + (to-from)*(float64(i)+0.5)/float64(n)
			at = append(at, foot+closest*ahead*math.Sinh(s))
			share = append(share, math.Max(0, to-from)/float64(n)*closest*ahead*math.Cosh(s))
		}
		return at, share
	}
	us, wu := places(l.U, l.Size[0]/2)
	vs, wv := places(l.V, l.Size[1]/2)
	sum := 0.0
	for i, u := range us {
		for j, v := range vs {
			d := r3.Sub(off, r3.Add(r3.Scale(u, l.U), r3.Scale(v, l.V)))
			r := r3.Norm(d)
			d = r3.Scale(1/r, d)
			sum += wu[i] * wv[j] * l.Distribution.Intensity(r3.Vec{X: r3.Dot(d, l.U), Y: r3.Dot(d, l.V), Z: r3.Dot(d, l.Axis)}) * math.Max(0, -r3.Dot(d, facing)) / (r * r)
		}
	}
	return sum * l.Lumens / (l.Size[0] * l.Size[1])
}

// Narrow and steep beams against the plain sum over the opening: on the axis, in the
// flank, far out, near and far; leaning lamps and long openings too.
func TestNarrowBeams(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name         string
		distribution photometry.Distribution
		fine         int
	}{
		{"2 deg", beamOf(t, 2, 4), 120}, {"8 deg", beamOf(t, 8, 16), 120}, {"8 deg steep", beamOf(t, 8, 8.4), 120}, {"8 deg pointed", beamOf(t, 8, 80), 120},
		{"20 deg", beamOf(t, 20, 40), 120}, {"60 deg", beamOf(t, 60, 90), 120}, {"table", steepTable(t, false), 120}, {"table with a ring", steepTable(t, true), 500},
	} {
		s := spread{reference: fineSum}
		for _, size := range [][2]float64{{0.3, 0.3}, {0.02, 1.2}, {1.2, 0.6}} {
			for _, tilt := range []float64{0, 0.5} {
				l := aimed(0, 0, 0, tilt, 0.7, false)
				l.Size, l.Distribution = size, c.distribution
				e := prepared(t, Scene{Size: [2]float64{0.01, 0.01}, Clear: [2]float64{0.01, 0.01}, Roof: Roof{Open: true}, Lamps: []Lamp{below1(l)}})
				lamp := below1(l)
				brightest := 0.0
				var got, want []float64
				for _, ahead := range []float64{0.1, 0.5, 3} {
					for _, aside := range []float64{0, 0.04, 0.15, 0.4, 1.1} {
						p := r3.Add(lamp.Centre, r3.Add(r3.Scale(ahead, lamp.Axis), r3.Scale(aside, r3.Add(r3.Scale(0.8, lamp.U), r3.Scale(0.6, lamp.V)))))
						facing := r3.Scale(-1, lamp.Axis)
						got, want = append(got, e.At(p, facing, Flat)), append(want, finely(&lamp, p, facing, c.fine))
						brightest = math.Max(brightest, want[len(want)-1])
					}
				}
				for k := range got {
					if want[k] > 1e-4*brightest {
						s.add(got[k], want[k])
					}
				}
			}
		}
		s.check(t, c.name+" beam", 1e-3, 3e-3)
	}
}

// below1 is a lamp brought 1 m under the cloth plane, where nothing is in its way.
func below1(l Lamp) Lamp {
	l.Centre = r3.Add(l.Centre, r3.Vec{Z: -1})
	return l
}

// What a cloth passes forward of a narrow beam arrives below, whatever is wider, the
// beam or the lobe: the sum over a wide floor is the lumens times the cloth's share.
func TestForwardOfNarrowBeams(t *testing.T) {
	t.Parallel()
	for _, c := range [][3]float64{{0.1, 20, 40}, {0.1, 8, 16}, {0.1, 2, 4}, {0.2, 20, 40}, {0.2, 8, 8.4}, {0.2, 2, 4}} {
		s := boxScene()
		s.Cloths = []Cloth{{ForwardPart: 0.5, ForwardSigma: c[0]}}
		s.Lamps = []Lamp{downward(0.1, 0.05, 0.5, 0.3, 0.3, 10000)}
		s.Lamps[0].Distribution = beamOf(t, c[1], c[2])
		e := prepared(t, s)
		const n, floor = 31, 8.0
		at := func(k int) float64 { return floor * ((float64(k)+0.5)/n - 0.5) }
		sum := 0.0
		for i := range n {
			for j := range n {
				sum += e.At(r3.Vec{X: at(i), Y: at(j), Z: -2}, up, Flat) * floor * floor / n / n
			}
		}
		rel(t, fmt.Sprintf("lm on the floor, lobe %g rad, beam %g deg", c[0], c[1]), sum, 5000, 3.5e-3)
	}
}

// The tally closes for narrow beams too.
func TestTallyOfNarrowBeams(t *testing.T) {
	t.Parallel()
	for _, b := range [][2]float64{{8, 8.4}, {2, 4}} {
		s := whiteBox(Cloth{Diffuse: 0.3, Back: 0.5})
		for i := range s.Lamps {
			s.Lamps[i].Distribution = beamOf(t, b[0], b[1])
		}
		f := prepared(t, s).Flux()
		rel(t, fmt.Sprintf("tally, beam %g deg, field %g deg", b[0], b[1]), f.OutLm+f.AbsorbedLm+f.LostLm, f.LampsLm, 1e-3)
	}
}
