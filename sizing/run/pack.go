package run

// PackPrices is what a pin is finished and packed with.
type PackPrices struct {
	Dome      Charge `json:"dome"`      // a clear drop over soft enamel
	Packaging Kinds  `json:"packaging"` // bag, box and the like; none is in the price
	// CardSetUp is paid once a version on a new die; Card is each backing card.
	CardSetUp Rate   `json:"cardSetUp"`
	Card      Charge `json:"card"`
}

func (s *sheet) pack(p *priced) {
	k, it := &s.list.Pack, p.item
	if it.Dome {
		s.charge(p, KeyDome, "Clear dome", k.Dome, 1, "pack.dome.rate", true)
	}
	if it.Packaging != "" {
		c, cell := k.Packaging.of(it.Packaging)
		s.charge(p, KeyPackaging, "Packaging: "+it.Packaging, c, 1, "pack.packaging."+cell, true)
	}
	if it.Card {
		s.setUp(p, KeyCardSetUp, "Backing card set-up, once", k.CardSetUp, 1, "pack.cardSetUp")
		s.charge(p, KeyCard, "Backing card", k.Card, 1, "pack.card.rate", true)
	}
}

func (v *validation) pack(k *PackPrices) {
	v.charge("pack.dome", k.Dome)
	v.kinds("pack.packaging", k.Packaging)
	v.amount("pack.cardSetUp", k.CardSetUp)
	v.charge("pack.card", k.Card)
}
