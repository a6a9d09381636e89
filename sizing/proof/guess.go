package proof

import (
	"math"
	"slices"
)

// mostGuesses is how many ways to lay the pin are looked at closely: a round pin
// has many that its outline allows.
const mostGuesses = 8

// guesses lists ways to lay the pin on pieces of the picture, the best first, each
// polished.
func (a *Asked) guesses(g *ground, pieces []piece, pr *probes, stop func(share float64) error) ([]guess, error) {
	pin := a.pinPolar()
	var all []guess
	for i := range pieces {
		if err := stop(float64(i) / float64(len(pieces))); err != nil {
			return nil, err
		}
		q := g.piecePolar(&pieces[i])
		all = append(all, pin.peaks(q, i)...)
	}
	slices.SortStableFunc(all, func(p, q guess) int { return compare(p.off, q.off) })
	all = all[:min(len(all), mostGuesses)]
	o := a.Badge.Outline
	span := max(o[2]-o[0], o[3]-o[1])
	for i := range all {
		all[i] = g.polish(pr, all[i], span)
	}
	slices.SortStableFunc(all, func(p, q guess) int { return compare(p.off, q.off) })
	return all, nil
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// peaks lists the turns at which a piece suits best, each better than those beside
// it, a few for each side.
func (p *polar) peaks(q *polar, piece int) []guess {
	var all []guess
	for _, mirror := range []bool{false, true} {
		var cost [rays]float64
		for t := range cost {
			cost[t] = p.cost(q, t, mirror)
		}
		var own []guess
		for t, c := range cost {
			if c <= cost[(t+1)%rays] && c <= cost[(t+rays-1)%rays] {
				own = append(own, guess{
					pin: p.mid, pic: q.mid, size: q.radius / p.radius,
					turn: 2 * math.Pi * float64(t) / rays, mirror: mirror, off: c, piece: piece,
				})
			}
		}
		slices.SortStableFunc(own, func(p, q guess) int { return compare(p.off, q.off) })
		all = append(all, own[:min(len(own), 4)]...)
	}
	return all
}
