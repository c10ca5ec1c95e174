package light

import "slices"

// Light is linear in each lamp's lumens. What every lamp gives to every face of the
// box is kept, so that other levels cost no more than the exchange's last solution;
// form factors, what stands in the way and the lamps' sums over openings stay.

// mostKept bounds how many values of single lamps are kept; with more lamps than that
// they are worked out again.
const mostKept = 1 << 22

// directOnFaces works out what comes straight from the lamps at every Gauss point of
// the faces that are not openings.
func (e *Engine) directOnFaces(w *sight) {
	points := 0
	for i := range e.faces {
		points += len(e.faces[i].sheet.value)
	}
	e.single = nil
	if points*len(e.lamps) <= mostKept {
		e.single = make([][][]float64, len(e.faces))
	}
	e.direct = make([][]float64, len(e.faces))
	for i := range e.faces {
		f := &e.faces[i]
		if f.kind != floor && allOpen(f.open) {
			continue
		}
		if e.single == nil {
			e.direct[i] = e.directOn(w, f)
			continue
		}
		for lamp := range e.lamps {
			e.single[i] = append(e.single[i], e.oneOn(w, lamp, f))
		}
	}
	if e.single != nil {
		e.addSingles(nil)
	}
}

// addSingles adds up what the lamps give, each at a level; nil stands for all at 1.
func (e *Engine) addSingles(levels []float64) {
	e.direct = make([][]float64, len(e.faces))
	for i, singles := range e.single {
		if f := &e.faces[i]; f.kind != floor && allOpen(f.open) {
			continue
		}
		e.direct[i] = make([]float64, len(e.faces[i].sheet.value))
		for lamp, values := range singles {
			level := 1.0
			if levels != nil {
				level = levels[lamp]
			}
			for k, lux := range values {
				e.direct[i][k] += level * lux
			}
		}
	}
}

// AtLevels is the engine with each lamp at a share, 0 or more, of the lumens that its
// scene has; as many shares as lamps. The engine it is called on stays as it is.
func (e *Engine) AtLevels(levels []float64) *Engine {
	c := *e
	c.lamps, c.scene.Lamps = slices.Clone(e.lamps), slices.Clone(e.scene.Lamps)
	for i, level := range levels {
		c.lamps[i].Lumens *= level
		c.lamps[i].luminance *= level
		c.scene.Lamps[i].Lumens *= level
	}
	c.glows, c.stamps, c.wallStamps, c.bounces, c.cloth = nil, nil, nil, nil, nil
	w := new(sight)
	if c.single == nil {
		c.directOnFaces(w)
	} else {
		c.addSingles(levels)
		c.single = nil // they are for the whole lumens
	}
	c.relight(w)
	return &c
}
