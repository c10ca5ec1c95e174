package load

// peaks are the largest tensions of a motion in time, by line, in N.
type peaks struct {
	tension []float64 // of each rig line; NaN for one that holds nothing
	why     string    // why it was not worked out
}
