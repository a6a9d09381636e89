package apart

import (
	"math"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Scene is a version of a design as it is looked at.
type Scene struct {
	Scale unit.PxPerMM
	Size  sizing.Size
	// LongSide of the working raster, px.
	LongSide int
	Flats    []reduce.Flat // in the version's colours
	Plating  sizing.Plating
	Cloth    colour.RGB8 // what it is pinned on
}

// reflections are the two in which metal is judged.
const reflections = 2

// metalOf is the colour of a plating in a reflection: the dark one, then the bright.
func metalOf(p *sizing.Plating, reflection int) colour.RGB8 {
	if reflection == 0 {
		return p.Dark
	}
	return p.Bright
}

// colourOf is what a flat looks like in a reflection; what is no flat is cloth.
func (s *Scene) colourOf(id reduce.FlatID, reflection int) colour.RGB8 {
	if id == reduce.BuiltMetal {
		return metalOf(&s.Plating, reflection)
	}
	for i := range s.Flats {
		f := &s.Flats[i]
		switch {
		case f.ID != id:
		case f.Role == reduce.Metal:
			return metalOf(&s.Plating, reflection)
		case f.Role != reduce.CutOut:
			return f.RGB
		}
	}
	return s.Cloth
}

// nameOf is what a flat is called.
func (s *Scene) nameOf(id reduce.FlatID) string {
	for i := range s.Flats {
		if s.Flats[i].ID == id && s.Flats[i].Role != reduce.Metal {
			return s.Flats[i].Name
		}
	}
	return s.Plating.Name
}

// greatestMM is the greatest size that is still called a pin (this tool's bound,
// as for the sizes that hold).
const greatestMM unit.MM = 120

// sizeFor is the size, by the measure of the one asked for, at which what has
// now px pixels has need: rounded up to a tenth of a millimetre. Its mm are 0
// when it is no pin's.
func (s *Scene) sizeFor(need, px float64) unit.Length {
	if !(px > 0) {
		return unit.Length{}
	}
	mm := unit.MM(math.Ceil(float64(s.Size.MM)*need/px*10-1e-9) / 10)
	if mm > greatestMM {
		return unit.Length{}
	}
	return unit.Shown(max(mm, sizing.LeastSize))
}

// sureFrom is how many errors wide a thing must be to be judged at all: below
// it, a measure near what is needed cannot tell.
const sureFrom = 5

// judge compares a width in pixels with what is needed. Within the error of it a
// fine measure holds, so that a line drawn at the limit does not fail by the
// raster's grain. What is needed may only rise for a verdict to get worse.
func judge(px, err, need float64) sizing.Verdict {
	switch {
	case need <= passes(px, err):
		return sizing.Holds
	case need > px+err:
		return sizing.Fails
	}
	return sizing.CannotTell
}

// passes is the greatest need that a width holds for.
func passes(px, err float64) float64 {
	if px >= sureFrom*err {
		return px + err
	}
	return px - err
}
