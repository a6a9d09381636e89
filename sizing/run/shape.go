package run

// ShapePrices is what holes and loose parts cost.
type ShapePrices struct {
	// CutOutsFree is how many holes through the metal are in the price; CutOut
	// is each further one.
	CutOutsFree int    `json:"cutOutsFree"`
	CutOut      Charge `json:"cutOut"`
	Part        Charge `json:"part"` // each part beside the first
	Ring        Charge `json:"ring"` // each jump ring
	// Chain is each chain between two parts, whatever its links.
	Chain Charge `json:"chain"`
}

func (s *sheet) shape(p *priced) {
	h, it := &s.list.Shape, p.item
	if n := it.CutOuts - h.CutOutsFree; n > 0 {
		s.charge(p, KeyCutOuts, counted(n, "cut-out", "cut-outs"), h.CutOut, n, "shape.cutOut.rate", false)
	}
	if n := it.Parts - 1; n > 0 {
		s.charge(p, KeyParts, counted(n, "further part", "further parts"), h.Part, n, "shape.part.rate", true)
	}
	if it.Rings > 0 {
		s.charge(p, KeyRings, counted(it.Rings, "jump ring", "jump rings"), h.Ring, it.Rings, "shape.ring.rate", true)
	}
	if it.Chains > 0 {
		s.charge(p, KeyChains, counted(it.Chains, "chain", "chains"), h.Chain, it.Chains, "shape.chain.rate", true)
	}
}

func (v *validation) shape(h *ShapePrices) {
	v.count("shape.cutOutsFree", "The number of cut-outs in the price", h.CutOutsFree, mostIncluded)
	v.charge("shape.cutOut", h.CutOut)
	v.charge("shape.part", h.Part)
	v.charge("shape.ring", h.Ring)
	v.charge("shape.chain", h.Chain)
}
