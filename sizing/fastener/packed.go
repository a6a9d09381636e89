package fastener

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Mass is what a pin weighs, alone and packed; every range runs over what is
// not known of its making.
type Mass struct {
	// Pin is without fasteners, recesses and fill allowed for.
	Pin sizing.Range `json:"pin"`
	// Worn is with what is fixed to its back: posts with their pads, a bar, a magnet.
	Worn sizing.Range `json:"worn"`
	// Packed is with clutches, card and sleeve, and Thick is how thick that lies, mm.
	Packed sizing.Range `json:"packed"`
	Thick  sizing.Range `json:"thick"`
	// All is the mass of every piece of the order, packed.
	All    sizing.Range `json:"all"`
	Pieces int          `json:"pieces"`
	// Filled is the share of the silhouette that is cut down and filled.
	Filled float64 `json:"filled"`
}

// massOf adds up what a pin is worn and posted with.
func massOf(pin sizing.Range, f fixture, posts int, thickness unit.MM, k sizing.Packing, pieces int) (Mass, error) {
	if !(k.CardGSM >= 0 && k.CardGSM <= 2000) || !(k.CardW >= 0 && k.CardW <= 1000) || !(k.CardH >= 0 && k.CardH <= 1000) || !(k.CardThick >= 0 && k.CardThick <= 10) {
		return Mass{}, &reduce.Refusal{What: "This is no card a pin can be posted on.", Do: "Give sides up to 1000 mm, board up to 2000 g/m² and 10 mm."}
	}
	if err := ranges(bound{"The mass of the sleeve", k.Sleeve, 0, 100, "g"}); err != nil {
		return Mass{}, err
	}
	n := float64(posts)
	const mm2PerM2 = 1e6
	card := float64(k.CardW) * float64(k.CardH) * k.CardGSM / mm2PerM2
	m := Mass{Pin: pin, Pieces: pieces}
	m.Worn = plus(pin, times(f.fixed, n))
	m.Packed = plus(plus(m.Worn, times(f.loose, n)), sizing.Range{Low: card + k.Sleeve.Low, High: card + k.Sleeve.High})
	m.All = times(m.Packed, float64(pieces))
	m.Thick = packedThick(f, thickness, k)
	return m, nil
}

// packedThick is the base, and behind it the card and what grips it there or
// the whole length of what stands out, whichever is more.
func packedThick(f fixture, thickness unit.MM, k sizing.Packing) sizing.Range {
	card := 0.0
	if k.CardGSM > 0 {
		card = float64(k.CardThick)
	}
	t := float64(thickness)
	return sizing.Range{
		Low:  t + max(f.stands.Low, card+f.behind.Low),
		High: t + max(f.stands.High, card+f.behind.High),
	}
}

func plus(a, b sizing.Range) sizing.Range {
	return sizing.Range{Low: a.Low + b.Low, High: a.High + b.High}
}

func times(a sizing.Range, n float64) sizing.Range {
	return sizing.Range{Low: a.Low * n, High: a.High * n}
}
