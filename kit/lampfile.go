package kit

import (
	"maps"

	"softloft/photometry"
	"softloft/quantity"
)

// WithFile returns the lamp with the file that its spread names: read, as the kit
// itself reads none. Lumens that nobody gave become the file's.
func (l Lamp) WithFile(file *photometry.LampFile) Lamp {
	l.Spread.Read = file
	if lumens := file.Lumens(); l.Lumens == nil && lumens != nil {
		flux := quantity.Flux(*lumens)
		l.Lumens = &flux
		each := map[string]string{"lumens": "lamp file " + l.Spread.File}
		maps.Copy(each, l.Source.Each)
		l.Source.Each = each
	}
	return l
}
