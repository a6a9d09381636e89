package proof

import (
	"math"
	"slices"

	"badgewright/sizing/unit"
)

// held is a picture with the pin laid on it, and what has been learned of its
// colours.
type held struct {
	a    *Asked
	p    *Picture
	w    Warp
	ppx  float64 // px of the picture to one of the pin, about its middle
	bare rgb     // of the ground
	// shown is the median colour of each class in the picture; known says for
	// which there was enough to see.
	shown [256]rgb
	known [256]bool
}

func hold(a *Asked, p *Picture, w Warp, bare rgb) *held {
	h := &held{a: a, p: p, w: w, bare: bare}
	o := a.Badge.Outline
	h.ppx = w.scaleAt((o[0]+o[2])/2, (o[1]+o[3])/2)
	h.shown[outside], h.known[outside] = bare, true
	return h
}

// perMM is how many px of the picture a mm takes.
func (h *held) perMM() float64 { return h.ppx * float64(h.a.Badge.Scale) }

// see returns the colour in the picture of a place of the pin.
func (h *held) see(x, y float64) rgb {
	u, v := h.w.At(x, y)
	return h.p.at(u, v)
}

// awayMM is how far from every border a place lies whose colour is learned before
// the pin lies exactly.
const awayMM unit.MM = 0.12

// learnSamples bounds how many places a colour is learned of.
const learnSamples = 900

// learn takes the median colour of each class where it is widest, and that of
// metal along the middles of lines if there is no wider.
func (h *held) learn() {
	var lists [256]medians
	s := h.a.Badge.Sep
	far := h.a.px(awayMM) + 1/h.ppx
	far2 := int32(far * far)
	every := 1 + int(math.Sqrt(float64(s.W*s.H)/60000))
	for y := every / 2; y < s.H; y += every {
		for x := every / 2; x < s.W; x += every {
			i := y*s.W + x
			if c := h.a.class[i]; c != outside && h.a.deep[i] > far2 {
				lists[c].add(h.see(float64(x)+0.5, float64(y)+0.5))
			}
		}
	}
	if lists[metal].n < 40 {
		h.learnLines(&lists[metal])
	}
	for c := range lists {
		if uint8(c) != outside && lists[c].n >= 8 {
			h.shown[c], h.known[c] = lists[c].median(), true
		}
	}
}

// wideShare is the share of the widest lines whose middles tell the metal's
// colour: those of finer ones are stained by what lies beside them.
const wideShare = 0.25

// learnLines takes the colour of metal along the middles of the widest lines.
func (h *held) learnLines(list *medians) {
	if len(h.a.lines) == 0 {
		return
	}
	wide := make([]float64, len(h.a.lines))
	for i := range wide {
		wide[i] = h.a.lines[i].wide
	}
	slices.Sort(wide)
	least := 0.98 * wide[int(float64(len(wide)-1)*(1-wideShare))]
	every := 1 + len(wide)/(4*learnSamples)
	for i := 0; i < len(h.a.lines); i += every {
		if l := &h.a.lines[i]; l.wide >= least {
			list.add(h.see(l.at.X, l.at.Y))
		}
	}
}

// medians gathers colours by channel.
type medians struct {
	count [3][256]int32
	n     int32
}

func (m *medians) add(c rgb) {
	for k, v := range c {
		m.count[k][uint8(min(255, max(0, v))+0.5)]++
	}
	m.n++
}

// median is that of each channel, interpolated within its step.
func (m *medians) median() rgb {
	var out rgb
	for k := range out {
		out[k] = m.quantile(k, 0.5)
	}
	return out
}

func (m *medians) quantile(k int, share float64) float64 {
	want, sum := share*float64(m.n), 0.0
	for v, n := range m.count[k] {
		if next := sum + float64(n); next >= want && n > 0 {
			return float64(v) - 0.5 + (want-sum)/float64(n)
		}
		sum += float64(n)
	}
	return 255
}
