package quantity

// Stops is a ratio of light as its logarithm to base 2 (stops, 1 stop = a factor of 2).
type Stops float64

// UnmarshalText reads text as Parse does for OfStops and leaves *x alone on an error.
func (x *Stops) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfStops) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Stops) String() string { return format(float64(x), OfStops) }

// Dimension returns OfStops.
func (x Stops) Dimension() Dimension { return OfStops }

// TStop is a lens's T-number: focal ratio corrected for its transmission (T-number, more than 0).
type TStop float64

// UnmarshalText reads text as Parse does for OfTStop and leaves *x alone on an error.
func (x *TStop) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfTStop) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x TStop) String() string { return format(float64(x), OfTStop) }

// Dimension returns OfTStop.
func (x TStop) Dimension() Dimension { return OfTStop }

// Share is a part of a whole (1, 0.6 = 60%).
type Share float64

// UnmarshalText reads text as Parse does for OfShare and leaves *x alone on an error.
func (x *Share) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfShare) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Share) String() string { return format(float64(x), OfShare) }

// Dimension returns OfShare.
func (x Share) Dimension() Dimension { return OfShare }
