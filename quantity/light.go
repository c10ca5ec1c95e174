package quantity

// Flux is a luminous flux (lm).
type Flux float64

// UnmarshalText reads text as Parse does for OfFlux and leaves *x alone on an error.
func (x *Flux) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfFlux) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Flux) String() string { return format(float64(x), OfFlux) }

// Dimension returns OfFlux.
func (x Flux) Dimension() Dimension { return OfFlux }

// Illuminance is an illuminance (lx).
type Illuminance float64

// UnmarshalText reads text as Parse does for OfIlluminance and leaves *x alone on an error.
func (x *Illuminance) UnmarshalText(text []byte) error {
	return read((*float64)(x), text, OfIlluminance)
}

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Illuminance) String() string { return format(float64(x), OfIlluminance) }

// Dimension returns OfIlluminance.
func (x Illuminance) Dimension() Dimension { return OfIlluminance }

// Intensity is a luminous intensity (cd).
type Intensity float64

// UnmarshalText reads text as Parse does for OfIntensity and leaves *x alone on an error.
func (x *Intensity) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfIntensity) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Intensity) String() string { return format(float64(x), OfIntensity) }

// Dimension returns OfIntensity.
func (x Intensity) Dimension() Dimension { return OfIntensity }
