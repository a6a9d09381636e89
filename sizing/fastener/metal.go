package fastener

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// densities of the base metals, g/cm3: low-carbon steel (iron blanks are that),
// cartridge brass C26000, pure copper, zinc alloy ASTM B86 Alloy 3. Handbook
// and alloy-table values; held to a table of sources in the tests.
var densities = map[sizing.BaseMetal]float64{
	sizing.Iron:   7.87,
	sizing.Brass:  8.53,
	sizing.Copper: 8.96,
	sizing.Zinc:   6.6,
}

// thickest is the greatest base thickness believed; pins are 1.2-2 mm (common
// practice, no published source).
const thickest unit.MM = 10

// weigh returns the mass of a plate of an area in mm2. Recesses and their
// enamel are weighed as metal, so the finished piece is a little lighter.
func weigh(area float64, base sizing.BaseMetal, thickness unit.MM) (unit.Grams, error) {
	d, ok := densities[base]
	if !ok {
		return 0, &reduce.Refusal{What: fmt.Sprintf("%q is no base metal known here.", base), Do: "Choose iron, brass, copper or zinc."}
	}
	if !(thickness > 0 && thickness <= thickest) {
		return 0, &reduce.Refusal{
			What: fmt.Sprintf("A base of %s is not one a pin can have.", unit.InMM(thickness, 2)),
			Do:   fmt.Sprintf("Give more than 0 and at most %s; 1.2 to 2 mm is usual.", unit.InMM(thickest, 0)),
		}
	}
	const mm3PerCM3 = 1000
	return unit.Grams(area * float64(thickness) * d / mm3PerCM3), nil
}
