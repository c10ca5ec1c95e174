package light

// Receptor is how a receiver weighs light by its direction.
type Receptor int

// The receptors. Psi is the angle between the light's direction of origin and
// the way the receptor faces; eps the angle to the cylinder's axis.
const (
	Flat     Receptor = iota // cos psi, nothing from behind
	Dome                     // (1 + cos psi)/2: a hemispherical meter dome
	Cylinder                 // sin eps / pi: mean over a cylinder's side, axis along facing
	Scalar                   // 1/4: mean over a sphere, mean spherical illuminance
)
