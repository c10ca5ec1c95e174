package quantity

// Duration is a time (s).
type Duration float64

// UnmarshalText reads text as Parse does for OfDuration and leaves *x alone on an error.
func (x *Duration) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfDuration) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Duration) String() string { return format(float64(x), OfDuration) }

// Dimension returns OfDuration.
func (x Duration) Dimension() Dimension { return OfDuration }

// Speed is a speed (m/s).
type Speed float64

// UnmarshalText reads text as Parse does for OfSpeed and leaves *x alone on an error.
func (x *Speed) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfSpeed) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Speed) String() string { return format(float64(x), OfSpeed) }

// Dimension returns OfSpeed.
func (x Speed) Dimension() Dimension { return OfSpeed }
