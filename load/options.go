package load

// Options say what is worked out besides what the plan asks for. The zero value is
// the plan alone.
type Options struct {
	Tilt *TiltAsk // a tilt whose path is wanted; nil: the plan's own, box.tilt
	// Integrate asks for the motion after each cut in time, besides the estimate of
	// its peak.
	Integrate bool
}

// TiltAsk is a tilt about the box's own x or y, By in radians after the right hand.
type TiltAsk struct {
	About string
	By    float64
}
