package quantity

// Voltage is a voltage (V).
type Voltage float64

// UnmarshalText reads text as Parse does for OfVoltage and leaves *x alone on an error.
func (x *Voltage) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfVoltage) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Voltage) String() string { return format(float64(x), OfVoltage) }

// Dimension returns OfVoltage.
func (x Voltage) Dimension() Dimension { return OfVoltage }

// Current is an electric current (A).
type Current float64

// UnmarshalText reads text as Parse does for OfCurrent and leaves *x alone on an error.
func (x *Current) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfCurrent) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Current) String() string { return format(float64(x), OfCurrent) }

// Dimension returns OfCurrent.
func (x Current) Dimension() Dimension { return OfCurrent }

// Power is a power (W).
type Power float64

// UnmarshalText reads text as Parse does for OfPower and leaves *x alone on an error.
func (x *Power) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfPower) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Power) String() string { return format(float64(x), OfPower) }

// Dimension returns OfPower.
func (x Power) Dimension() Dimension { return OfPower }
