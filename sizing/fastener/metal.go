package fastener

import (
	"fmt"
	"slices"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// density of a metal, g/cm3: the value tables give, and how far they differ.
type density struct {
	value float64
	sizing.Range
}

// densities of the base metals: low-carbon steel (iron blanks are that),
// cartridge brass C26000, pure copper, zinc alloy ASTM B86 Alloy 3. Handbook
// and alloy-table values; held to a table of sources in the tests.
var densities = map[sizing.BaseMetal]density{
	sizing.Iron:   {7.87, sizing.Range{Low: 7.85, High: 7.872}},
	sizing.Brass:  {8.53, sizing.Range{Low: 8.52, High: 8.55}},
	sizing.Copper: {8.96, sizing.Range{Low: 8.92, High: 8.96}},
	sizing.Zinc:   {6.6, sizing.Range{Low: 6.6, High: 6.7}},
}

// thickest is the greatest base thickness believed; pins are 1.2-2 mm (common
// practice, no published source).
const thickest unit.MM = 10

// leastFloor is the share of the thickness that is left under a recess, however
// deep it was asked for (this tool's choice).
const leastFloor = 0.25

// Stuff is what a pin is made of, as far as its mass hangs on it.
type Stuff struct {
	Base      sizing.BaseMetal
	Thickness unit.MM // from the back to the top of the metal
	Fill      sizing.Fill
	Depths    sizing.Depths
}

const mm3PerCM3 = 1000

// weigh returns the mass of a plate of an area in mm2, of which a part is cut
// down and filled:
//
//	m = metal * (area*thickness - filled*recess) + resin * filled*(recess - sunk)
//
// Hard fill is flush with the metal, soft fill sunk below it; no fill leaves
// the recess empty. The middle of each range gives the value, its ends the range.
func (s Stuff) weigh(area, filled float64) (value unit.Grams, span sizing.Range, err error) {
	d, err := s.check()
	if err != nil {
		return 0, sizing.Range{}, err
	}
	deepest := (1 - leastFloor) * float64(s.Thickness)
	mass := func(metal, recess, sunk, resin float64) float64 {
		recess = min(recess, deepest)
		out := float64(filled * recess)
		in := float64(filled * s.filledTo(recess, sunk))
		return (float64(metal*(float64(area*float64(s.Thickness))-out)) + float64(resin*in)) / mm3PerCM3
	}
	r, k, e := s.Depths.Recess, s.Depths.Sunk, s.Depths.Resin
	value = unit.Grams(mass(d.value, r.Mid(), k.Mid(), e.Mid()))
	// Metal is heavier than resin, so deeper is lighter; see check.
	return value, sizing.Range{Low: mass(d.Low, r.High, k.High, e.Low), High: mass(d.High, r.Low, k.Low, e.High)}, nil
}

// filledTo is how deep the fill is, mm.
func (s Stuff) filledTo(recess, sunk float64) float64 {
	switch s.Fill {
	case sizing.Unfilled:
		return 0
	case sizing.Hard:
		return recess
	default:
		return max(0, recess-sunk)
	}
}

// check refuses what no pin is made of, in words.
func (s Stuff) check() (density, error) {
	d, ok := densities[s.Base]
	if !ok {
		return d, &reduce.Refusal{What: fmt.Sprintf("%q is no base metal known here.", s.Base), Do: "Choose iron, brass, copper or zinc."}
	}
	if !(s.Thickness > 0 && s.Thickness <= thickest) {
		return d, &reduce.Refusal{
			What: fmt.Sprintf("A base of %s is not one a pin can have.", unit.InMM(s.Thickness, 2)),
			Do:   fmt.Sprintf("Give more than 0 and at most %s; 1.2 to 2 mm is usual.", unit.InMM(thickest, 0)),
		}
	}
	return d, ranges(
		bound{"The depth of a colour area", s.Depths.Recess, 0, 5, "mm"},
		bound{"How far soft fill is sunk", s.Depths.Sunk, 0, 5, "mm"},
		bound{"The density of the fill", s.Depths.Resin, 0, 6, "g/cm³"},
	)
}

// bound is a range as typed, and what is believed of it.
type bound struct {
	name        string
	r           sizing.Range
	least, most float64
	unit        string
}

// ranges refuses the first that is out of bounds or the wrong way round.
func ranges(all ...bound) error {
	i := slices.IndexFunc(all, func(b bound) bool {
		return !(b.r.Low >= b.least && b.r.Low <= b.r.High && b.r.High <= b.most)
	})
	if i < 0 {
		return nil
	}
	b := all[i]
	return &reduce.Refusal{
		What: fmt.Sprintf("%s cannot run from %g to %g %s.", b.name, b.r.Low, b.r.High, b.unit),
		Do:   fmt.Sprintf("Give the least first, from %g to %g %s.", b.least, b.most, b.unit),
	}
}
