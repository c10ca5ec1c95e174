package sight

import (
	"math"

	"softloft/plan"
)

// frame is half the width and height of what a lens takes in at 1 m: the tangents of the
// half angles of view.
type frame struct{ across, up float64 }

// frameOf is the frame of a lens (m) on a used sensor (m). A squeeze widens the
// horizontal: tan(half angle) = squeeze·w/(2·f).
func frameOf(lens float64, sensor [2]float64, squeeze float64) frame {
	return frame{squeeze * sensor[0] / (2 * lens), sensor[1] / (2 * lens)}
}

// field is the angles of view, 2·atan(d/(2·f)), in degrees.
func (f frame) field() *Field {
	full := func(tan float64) Number { return Number(2 * math.Atan(tan) * 180 / math.Pi) }
	return &Field{Horizontal: full(f.across), Vertical: full(f.up), Diagonal: full(math.Hypot(f.across, f.up))}
}

func frameOfCamera(c *plan.Camera) frame {
	return frameOf(float64(*c.Lens), sensorOf(c), c.Squeeze)
}

func sensorOf(c *plan.Camera) [2]float64 {
	return [2]float64{float64(c.Sensor[0]), float64(c.Sensor[1])}
}
