package outline

import "badgewright/sizing"

// yields are the yield stresses of the base metals in MPa, soft: the post is
// brazed on, which anneals so small a piece, so that whatever hardness striking
// gave is not counted on.
//
//   - iron: low-carbon steel, SAE 1010 hot-rolled, 180 MPa (Budynas and Nisbett,
//     Shigley's Mechanical Engineering Design, Table A-20, after the SAE Handbook
//     1986)
//   - brass: C26000, annealed to 0.05 mm grain (OS050), 110 MPa (property tables,
//     15 ksi)
//   - copper: C11000, annealed to 0.05 mm grain (OS050), 69 MPa (10 ksi, as the
//     trade association's tables give it for C12700 OS050; for C11000 from memory)
//   - zinc: die-cast Alloy 3 (ASTM B86), 221 MPa at 0.2 % (die-casters' tables,
//     32 ksi)
var yields = map[sizing.BaseMetal]float64{
	sizing.Iron:   180,
	sizing.Brass:  110,
	sizing.Copper: 69,
	sizing.Zinc:   221,
}

// Yield is the stress in MPa from which a base metal stays bent; 0 for a metal
// that is not known.
func Yield(b sizing.BaseMetal) float64 { return yields[b] }
