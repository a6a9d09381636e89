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
		top := d >= hairFar*hairFar && !e.betweenFlats(int(i))
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

// betweenFlats is true for a lost pixel that comes of the flats beside it all
// the same.
func (e *edger) betweenFlats(i int) bool {
	if e.grade == exact {
		return e.seam(i)
	}
	return e.smeared(i)
}

const (
	// smearLight is how far light may ring past the flats beside an edge, and
	// smearHue how far its hue may stray from the way between theirs.
	smearLight = 30
	smearHue   = 12
)

// smeared is true when light and hue of a pixel each lie between those of two
// flats beside it: JPEG keeps hue at half the fineness of light, so that one
// runs over an edge where the other stops.
func (e *edger) smeared(i int) bool {
	var c near
	for r := 1; r <= farReach; r++ {
		e.collect(i, r, e.grip, &c)
	}
	p := e.grade.tone(e.pix[i])
	for x := 0; x < c.n; x++ {
		for y := 0; y < x; y++ {
			a, b := e.tones[c.label[x]], e.tones[c.label[y]]
			if p[0] < min(a[0], b[0])-smearLight || p[0] > max(a[0], b[0])+smearLight {
				continue
			}
			hue := p
			a[0], b[0], hue[0] = 0, 0, 0
			if _, off := share(&hue, &a, &b); off <= smearHue*smearHue {
				return true
			}
		}
	}
	return false
}

// distance returns the flat beside a pixel that is nearest in colour, and how
// far that is, squared; deep in a patch of lost pixels loose, and how far the
// nearest flat of all.
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
	for l := 0; base == loose && l < e.n; l++ {
		least = min(least, p.apart2(&e.tones[l]))
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
		off := h.t.apart2(&tip.t)
		if h.base != loose {
			_, off = share(&h.t, &tip.t, &e.tones[h.base])
		}
		if off <= most {
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
	l := leafOf(rgbOf(sum))
	return l, rest, e.unknown(&l)
}

// unknown is true for a colour that is not nearly that of a flat: beside a
// strong edge JPEG rings past both colours.
func (e *edger) unknown(l *leaf) bool {
	t := e.grade.toneOf(l.rgb)
	for k := 0; k < e.n; k++ {
		if t.apart2(&e.tones[k]) <= int32(4*e.mix*e.mix) {
			return false
		}
	}
	return true
}

// learn adds leaves and explains with them what was lost.
func (e *edger) learn(found []leaf) {
	for _, l := range found {
		e.colour(e.n, l.rgb)
		e.n++
	}
	if len(found) > 0 {
		e.sweep((*edger).thin)
	}
}
