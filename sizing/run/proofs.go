package run

import "fmt"

// ProofPrices is what the maker's drawing costs, design by design.
type ProofPrices struct {
	Included int  `json:"included"` // rounds in the price; 0 when the maker does not say
	Further  Rate `json:"further"`  // each further round
}

// proofs charges the rounds past those in the price, for every die that is cut.
func (s *sheet) proofs(rounds, dies int) {
	n := rounds - s.list.Proofs.Included
	if n <= 0 || dies == 0 {
		return
	}
	what := counted(n, "further proof round", "further proof rounds")
	if dies > 1 {
		what += fmt.Sprintf(", %d designs", dies)
	}
	s.once(KeyProofs, what, s.list.Proofs.Further, n*dies, "proofs.further")
}

func (v *validation) proofs(p *ProofPrices) {
	v.count("proofs.included", "The number of proof rounds in the price", p.Included, mostIncluded)
	v.amount("proofs.further", p.Further)
}
