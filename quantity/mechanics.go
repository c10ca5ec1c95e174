package quantity

// Length is a length (m).
type Length float64

// UnmarshalText reads text as Parse does for OfLength and leaves *x alone on an error.
func (x *Length) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfLength) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Length) String() string { return format(float64(x), OfLength) }

// Dimension returns OfLength.
func (x Length) Dimension() Dimension { return OfLength }

// Mass is a mass (kg).
type Mass float64

// UnmarshalText reads text as Parse does for OfMass and leaves *x alone on an error.
func (x *Mass) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfMass) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Mass) String() string { return format(float64(x), OfMass) }

// Dimension returns OfMass.
func (x Mass) Dimension() Dimension { return OfMass }

// Force is a force (N).
type Force float64

// UnmarshalText reads text as Parse does for OfForce and leaves *x alone on an error.
func (x *Force) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfForce) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Force) String() string { return format(float64(x), OfForce) }

// Dimension returns OfForce.
func (x Force) Dimension() Dimension { return OfForce }

// Moment is a moment (N m).
type Moment float64

// UnmarshalText reads text as Parse does for OfMoment and leaves *x alone on an error.
func (x *Moment) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfMoment) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Moment) String() string { return format(float64(x), OfMoment) }

// Dimension returns OfMoment.
func (x Moment) Dimension() Dimension { return OfMoment }

// Angle is a plane angle (rad).
type Angle float64

// UnmarshalText reads text as Parse does for OfAngle and leaves *x alone on an error.
func (x *Angle) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfAngle) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Angle) String() string { return format(float64(x), OfAngle) }

// Dimension returns OfAngle.
func (x Angle) Dimension() Dimension { return OfAngle }

// Pressure is a pressure, a strength or a modulus, and what a floor bears (Pa).
type Pressure float64

// UnmarshalText reads text as Parse does for OfPressure and leaves *x alone on an error.
func (x *Pressure) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfPressure) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Pressure) String() string { return format(float64(x), OfPressure) }

// Dimension returns OfPressure.
func (x Pressure) Dimension() Dimension { return OfPressure }

// LineForce is a force per length, also a stiffness (N/m).
type LineForce float64

// UnmarshalText reads text as Parse does for OfLineForce and leaves *x alone on an error.
func (x *LineForce) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfLineForce) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x LineForce) String() string { return format(float64(x), OfLineForce) }

// Dimension returns OfLineForce.
func (x LineForce) Dimension() Dimension { return OfLineForce }

// LineMass is a mass per length (kg/m).
type LineMass float64

// UnmarshalText reads text as Parse does for OfLineMass and leaves *x alone on an error.
func (x *LineMass) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfLineMass) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x LineMass) String() string { return format(float64(x), OfLineMass) }

// Dimension returns OfLineMass.
func (x LineMass) Dimension() Dimension { return OfLineMass }

// AreaMass is a mass per area (kg/m2).
type AreaMass float64

// UnmarshalText reads text as Parse does for OfAreaMass and leaves *x alone on an error.
func (x *AreaMass) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfAreaMass) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x AreaMass) String() string { return format(float64(x), OfAreaMass) }

// Dimension returns OfAreaMass.
func (x AreaMass) Dimension() Dimension { return OfAreaMass }

// Density is a mass per volume (kg/m3).
type Density float64

// UnmarshalText reads text as Parse does for OfDensity and leaves *x alone on an error.
func (x *Density) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfDensity) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Density) String() string { return format(float64(x), OfDensity) }

// Dimension returns OfDensity.
func (x Density) Dimension() Dimension { return OfDensity }

// Rigidity is a bending rigidity EI (N m2).
type Rigidity float64

// UnmarshalText reads text as Parse does for OfRigidity and leaves *x alone on an error.
func (x *Rigidity) UnmarshalText(text []byte) error { return read((*float64)(x), text, OfRigidity) }

// String prints in SI, readable by Parse without loss; "not known" where x is not finite.
func (x Rigidity) String() string { return format(float64(x), OfRigidity) }

// Dimension returns OfRigidity.
func (x Rigidity) Dimension() Dimension { return OfRigidity }
