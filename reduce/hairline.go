package reduce

import (
	"cmp"
	"slices"
)

const (
	// hairFar is how far, in levels, a thin line's colour must be from the
	// nearest known flat to be a colour of its own.
	hairFar = 24
	// hairTip is the share of a thin line's pixels that come nearest its true
	// colour: the rest are thinned by what lies beside the line.
	hairTip = 5
	// mostHair bounds the colours found on thin lines.
	mostHair = 12
)

// leastHair is how many pixels a thin line's colour needs, by grade.
var leastHair = [...]int{exact: 8, wandering: 60, grainy: 200}

// hair is one pixel that no known flat explains.
type hair struct {
	t    tone
	pix  uint32
	far2 int32 // squared distance to the nearest flat beside it
	base uint8
}

// hairlines finds the colours of lines too thin to have a calm middle, from
// the pixels that stay lost: those farthest from what lies beside the line.
func (e *edger) hairlines(lost []int32) []leaf {
	left := e.crests(lost)
	var found []leaf
	for len(found) < mostHair && len(left) >= leastHair[e.grade] {
		l, rest, ok := e.nextHair(left)
		left = rest
		if ok {
			found = append(found, l)
		}
	}
	return found
}

// crests keeps the lost pixels from which no neighbour leads further away,
// farthest first.
func (e *edger) crests(lost []int32) []hair {
	all := make(map[int32]int32, len(lost))
	base := make([]uint8, len(lost))
	for k, i := range lost {
		b, d := e.distance(int(i))
		base[k], all[i] = b, d
	}
	var out []hair
	for k, i := range lost {
		d := all[i]
		top := d >= hairFar*hairFar
		if top {
			for _, o := range e.ring(int(i), 1) {
				top = top && all[i+int32(o)] <= d
			}
		}
		if top {
			out = append(out, hair{e.grade.tone(e.pix[i]), e.pix[i], d, base[k]})
		}
	}
	slices.SortStableFunc(out, func(a, b hair) int { return cmp.Compare(b.far2, a.far2) })
	return out
}

// distance returns the flat beside a pixel that is nearest in colour, and how
// far that is, squared.
func (e *edger) distance(i int) (uint8, int32) {
	p := e.grade.tone(e.pix[i])
	base, least := loose, int32(1<<30)
	for r := 1; r <= farReach && base == loose; r++ {
		for _, o := range e.ring(i, r) {
			l := e.grip[i+o]
			if l == loose {
				continue
			}
			if d := p.apart2(&e.tones[l]); d < least {
				base, least = l, d
			}
		}
	}
	if base == loose {
		least = 0
	}
	return base, least
}

// nextHair takes the farthest crest, gathers those on the way from it back to
// the flats beside, and makes a colour of the farthest of them.
func (e *edger) nextHair(left []hair) (leaf, []hair, bool) {
	tip := left[0]
	most := int32(4 * e.mix * e.mix)
	var same, rest []hair
	for _, h := range left {
		if _, off := share(&h.t, &tip.t, &e.tones[h.base]); off <= most {
			same = append(same, h)
		} else {
			rest = append(rest, h)
		}
	}
	if len(same) < leastHair[e.grade] {
		return leaf{}, rest, false
	}
	var sum [3]float64
	n := max(1, len(same)/hairTip)
	for _, h := range same[:n] {
		sum[0], sum[1], sum[2] = sum[0]+float64(h.pix&255), sum[1]+float64(h.pix>>8&255), sum[2]+float64(h.pix>>16&255)
	}
	for c := range sum {
		sum[c] /= float64(n)
	}
	return leafOf(rgbOf(sum)), rest, true
}

// learn adds leaves and explains with them what was lost.
func (e *edger) learn(found []leaf) {
	for _, l := range found {
		e.tones[e.n] = e.grade.toneOf(l.rgb)
		e.n++
	}
	if len(found) > 0 {
		e.sweep((*edger).thin)
	}
}
