package head

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

func v(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z} }

// chisel is one step of the sculpture: a solid that is added, or taken away, with a
// seam about so wide (m).
type chisel struct {
	solid
	seam float64
	away bool
}

func add(s solid, seam float64) chisel  { return chisel{s, seam, false} }
func take(s solid, seam float64) chisel { return chisel{s, seam, true} }

// steps are the sculpture from the skull to the lids.
func steps() []chisel {
	var all []chisel
	for _, part := range [][]chisel{skull(), neck(), cheeks(), brows(), nose(), mouth(), ears(), eyes()} {
		all = append(all, part...)
	}
	return all
}

// skull: the cranium, the forehead, the middle of the face, the jaw, the chin.
func skull() []chisel {
	return []chisel{
		add(egg(v(-0.088, 0, 0.026), v(0.094, 0.074, 0.087)), 0.01),
		add(egg(v(-0.042, 0, 0.040), v(0.045, 0.058, 0.046)), 0.03),
		add(egg(v(-0.050, 0, -0.040), v(0.052, 0.056, 0.060)), 0.03),
		add(both(bar(v(-0.072, 0.044, -0.062), v(-0.014, 0.014, -0.100), 0.018, 0.016)), 0.034),
		add(bar(v(-0.008, -0.007, -0.1005), v(-0.008, 0.007, -0.1005), 0.0155, 0.0155), 0.024),
		add(both(bar(v(-0.070, 0.050, -0.010), v(-0.072, 0.045, -0.060), 0.019, 0.016)), 0.03),
	}
}

// neck: it and what of the shoulders is in the picture.
func neck() []chisel {
	return []chisel{
		add(bar(v(-0.094, 0, -0.060), v(-0.110, 0, -0.215), 0.049, 0.053), 0.022),
		add(both(bar(v(-0.112, 0.055, -0.238), v(-0.120, 0.150, -0.264), 0.048, 0.046)), 0.05),
		add(egg(v(-0.105, 0, -0.270), v(0.075, 0.14, 0.065)), 0.04),
		add(both(bar(v(-0.088, 0.056, -0.050), v(-0.062, 0.012, -0.200), 0.009, 0.008)), 0.03),
	}
}

// cheeks: the bones, the arches to the ears, the flesh below, the temples.
func cheeks() []chisel {
	return []chisel{
		add(both(egg(v(-0.020, 0.041, -0.030), v(0.020, 0.018, 0.015))), 0.028),
		add(both(bar(v(-0.030, 0.052, -0.022), v(-0.078, 0.062, -0.008), 0.009, 0.008)), 0.024),
		add(both(egg(v(-0.030, 0.036, -0.064), v(0.026, 0.017, 0.030))), 0.024),
		take(both(egg(v(-0.020, 0.082, 0.026), v(0.030, 0.014, 0.028))), 0.026),
	}
}

// brows: the sockets, then the edges over them.
func brows() []chisel {
	return []chisel{
		take(both(egg(v(0.0155, 0.032, -0.001), v(0.024, 0.0205, 0.0155))), 0.014),
		add(both(bar(v(0.0065, 0.012, 0.0205), v(0.0030, 0.034, 0.0240), 0.0060, 0.0055)), 0.016),
		add(both(bar(v(0.0030, 0.034, 0.0240), v(-0.0165, 0.051, 0.0150), 0.0055, 0.0050)), 0.016),
	}
}

// nose: the bridge, the tip, the wings, the nostrils.
func nose() []chisel {
	return []chisel{
		add(bar(v(0.0055, 0, 0.014), v(0.0210, 0, -0.028), 0.0068, 0.0066), 0.014),
		add(bar(v(0.0160, 0, -0.024), v(0.0250, 0, -0.0350), 0.0085, 0.0082), 0.010),
		add(both(egg(v(0.0140, 0.0115, -0.0380), v(0.0105, 0.0062, 0.0075))), 0.008),
		take(both(egg(v(0.0185, 0.0064, -0.0462), v(0.0050, 0.0032, 0.0036))), 0.005),
	}
}

// mouth: the teeth's arch, the groove over the lip, the lips, the line between them,
// the hollow over the chin.
func mouth() []chisel {
	return []chisel{
		add(egg(v(-0.006, 0, -0.066), v(0.0195, 0.030, 0.023)), 0.018),
		take(bar(v(0.0190, 0, -0.048), v(0.0180, 0, -0.056), 0.0034, 0.0038), 0.008),
		add(both(bar(v(0.0120, 0.0040, -0.0606), v(0.0030, 0.0200, -0.0662), 0.0048, 0.0022)), 0.006),
		add(both(bar(v(0.0105, 0.0000, -0.0742), v(0.0030, 0.0180, -0.0690), 0.0058, 0.0026)), 0.006),
		take(both(bar(v(0.0185, 0.0000, -0.0674), v(0.0095, 0.0200, -0.0680), 0.0022, 0.0012)), 0.005),
		take(bar(v(0.0165, -0.009, -0.0870), v(0.0165, 0.009, -0.0870), 0.0066, 0.0066), 0.014),
	}
}

// ears: plain shells with their hollows.
func ears() []chisel {
	return []chisel{
		add(both(egg(v(-0.096, 0.0745, -0.008), v(0.0165, 0.0085, 0.030))), 0.012),
		take(both(egg(v(-0.087, 0.0835, -0.002), v(0.0085, 0.0050, 0.0165))), 0.006),
	}
}

// eyes: the balls, and lids as bars over and under them.
func eyes() []chisel {
	return []chisel{
		add(both(ball(v(-0.0130, 0.0315, 0), 0.0125)), 0.003),
		add(both(bar(v(-0.0060, 0.0185, -0.0010), v(-0.0012, 0.0300, 0.0072), 0.0022, 0.0030)), 0.004),
		add(both(bar(v(-0.0012, 0.0300, 0.0072), v(-0.0085, 0.0440, 0.0005), 0.0030, 0.0022)), 0.004),
		add(both(bar(v(-0.0060, 0.0185, -0.0015), v(-0.0030, 0.0265, -0.0074), 0.0018, 0.0024)), 0.005),
		add(both(bar(v(-0.0030, 0.0265, -0.0074), v(-0.0040, 0.0370, -0.0070), 0.0024, 0.0024)), 0.005),
		add(both(bar(v(-0.0040, 0.0370, -0.0070), v(-0.0090, 0.0445, -0.0005), 0.0024, 0.0018)), 0.005),
	}
}

// bustEnd is the height (m) at which the bust is cut off, halfBust how wide it is.
const (
	bustEnd  = -0.232
	halfBust = 0.135
)

// sculpture is the field of all steps. A step whose sphere is too far to change
// anything is left out.
func sculpture() form {
	all := steps()
	return func(p r3.Vec) float64 {
		mirror := v(p.X, math.Abs(p.Y), p.Z)
		d := all[0].form(p)
		for i := 1; i < len(all); i++ {
			s := &all[i]
			at := p
			if s.mirrored {
				at = mirror
			}
			reach := s.radius + s.seam + d
			if s.away {
				reach = s.radius + s.seam - d
			}
			if reach < 0 || r3.Norm2(r3.Sub(at, s.center)) > reach*reach {
				continue
			}
			if s.away {
				d = carve(d, s.form(at), s.seam)
				continue
			}
			d = melt(d, s.form(at), s.seam)
		}
		return math.Max(math.Max(d, bustEnd-p.Z), math.Abs(p.Y)-halfBust)
	}
}
