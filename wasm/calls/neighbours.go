package calls

import (
	"fmt"

	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/apart"
	"badgewright/wasm/wire"
)

// neighbours says which colours are told apart where they meet.
func neighbours(s *Session, job Job, ask wire.NeighboursAsk) (Reply, error) {
	if err := ask.Thresholds.Check(); err != nil {
		return Reply{}, err
	}
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	k, err := u.looked(false, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	sc, t := u.scene(k, colour.RGB8{}), &ask.Thresholds
	pairs := apart.Pairs(k.measured.Meetings(), sc, t)
	platings := apart.Platings(pairs, sc, u.design.Fill, t)
	sep := k.badge.Sep
	return Reply{Answer: wire.Neighbours{
		Pairs: pairs, Platings: platings, Ideas: apart.Ideas(pairs, platings, sc, sep.W, sep.H, t),
		Words: neighbourWords(pairs),
	}}, nil
}

// neighbourWords is the answer in a sentence.
func neighbourWords(pairs []apart.Pair) string {
	same, dim := 0, 0
	for i := range pairs {
		if pairs[i].Same() {
			same++
		}
		if pairs[i].Seen[0].ByLightness == sizing.Fails {
			dim++
		}
	}
	switch {
	case len(pairs) == 0:
		return "no two colours meet"
	case same > 0:
		return fmt.Sprintf("%d of %d pairs that meet read as one", same, len(pairs))
	case dim > 0:
		return fmt.Sprintf("all %d pairs that meet are told apart in good light; in dim light %d may not be", len(pairs), dim)
	}
	return fmt.Sprintf("all %d pairs that meet are told apart", len(pairs))
}
