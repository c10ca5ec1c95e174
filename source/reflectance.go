package source

import "slices"

// Reflectance is the diffuse reflectance of a surface.
type Reflectance struct {
	Name  string
	Value float64
	Citation
}

// reflectances are what a plan means by its words for sides, roof and room;
// each is treated as diffuse. Never written to.
var reflectances = []Reflectance{
	{"white", 0.80, Cite("design-assumption", "inner face of a white side or roof")}, // a lighting encyclopedia has white 0.8
	{"black", 0.04, Cite("design-assumption", "inner face of a black side or roof")}, // published black masking cloth 0.02 to 0.05
	{"silver", 0.75, Cite("design-assumption", "inner face of a silver side or roof")},
	{"outer face", 0.04, Cite("design-assumption", "outer face of any side or skirt")},
	{"floor", 0.2, Cite("design-assumption", "room.reflectance.floor")},
	{"walls", 0.3, Cite("design-assumption", "room.reflectance.walls")},
	{"ceiling", 0.1, Cite("design-assumption", "room.reflectance.ceiling")},
}

// Reflectances lists the assumed reflectances. The slice is the caller's own.
func Reflectances() []Reflectance { return slices.Clone(reflectances) }

// ReflectanceOf finds an assumed reflectance by the plan's word: white, black,
// silver, outer face, floor, walls, ceiling.
func ReflectanceOf(word string) (Reflectance, bool) {
	for _, r := range reflectances {
		if r.Name == word {
			return r, true
		}
	}
	return Reflectance{}, false
}
