package proof

import (
	"fmt"
	"math"

	"badgewright/reduce"
	"badgewright/sizing/unit"
)

// Candidate is something in the picture that may be the pin: its box in px, x0, y0,
// x1, y1, and how badly the pin suits it, 0 perfectly.
type Candidate struct {
	Box [4]float64 `json:"box"`
	Off float64    `json:"off"`
}

// Fit is how the pin lies on a picture.
type Fit struct {
	Warp Warp `json:"warp"`
	// Turn is clockwise, degrees, Mirrored whether left and right are changed over.
	Turn     float64 `json:"turn"`
	Mirrored bool    `json:"mirrored"`
	// PerMM is how many px of the picture a mm of the pin takes.
	PerMM float64 `json:"perMM"`
	// Rms is how far the pin's edges lie from those of the picture, as the root of
	// their mean square without the farthest tenth; Share is the share of the
	// outline that lies within Within of its place.
	Rms    unit.MM `json:"rms"`
	Share  float64 `json:"share"`
	Within unit.MM `json:"within"`
	// Edges is the share of all edges that were found at all.
	Edges float64 `json:"edges"`
	Good  bool    `json:"good"`
	Words string  `json:"words"`
}

// Laid is a picture with the pin laid on it.
type Laid struct {
	Fit   Fit         `json:"fit"`
	Spots []Candidate `json:"spots"`
	// Chosen is the spot that the pin was laid on, -1 if it was laid by hand.
	Chosen int `json:"chosen"`
	h      *held
	g      *ground
	pieces []piece
	back   *Laid // the view from behind, once it was looked for
}

// Find looks for the pin in a picture, within a box if one is given, and lays it
// on the piece it suits best, or on the piece that is asked for (-1 for the best).
func Find(a *Asked, p *Picture, box *[4]float64, choose int, progress reduce.Progress) (*Laid, error) {
	progress = orNone(progress)
	if err := progress(0, "looking for the pin"); err != nil {
		return nil, err
	}
	l := &Laid{g: findGround(p)}
	l.pieces = l.g.pieces(box)
	if box != nil && len(l.pieces) == 0 || !l.g.plain && box != nil {
		l.pieces = []piece{l.g.boxed(box)}
	}
	if len(l.pieces) == 0 {
		return nil, errNoPin
	}
	look := l.pieces
	if choose >= 0 && choose < len(look) {
		look = look[choose : choose+1]
	} else {
		choose = -1
	}
	stop := func(share float64) error { return progress(0.05+0.4*share, "trying turns and sides") }
	all, err := a.guesses(l.g, look, a.findProbes(), stop)
	if err != nil {
		return nil, err
	}
	if choose >= 0 {
		for i := range all {
			all[i].piece = choose
		}
	}
	l.spots(all)
	l.settle(a, p, all)
	return l, progress(0.6, "laying the pin on it")
}

// Slant lays the pin freely in perspective, from how it lies: a photograph is
// seldom taken straight from above.
func (l *Laid) Slant() {
	for _, k := range []freedom{affine, projective, projective} {
		l.h.refine(k, 1)
	}
	l.h.ppx = l.h.scale()
	l.Fit = l.h.quality()
}

// boxed takes a whole box for the pin's own: where no ground parts it from the
// rest, the person did.
func (g *ground) boxed(box *[4]float64) piece {
	p := piece{in: make([]uint8, g.small.W*g.small.H)}
	k := float64(g.by)
	x0, y0 := max(0, int(box[0]/k)), max(0, int(box[1]/k))
	x1, y1 := min(g.small.W, int(math.Ceil(box[2]/k))), min(g.small.H, int(math.Ceil(box[3]/k)))
	x1, y1 = max(x1, x0+1), max(y1, y0+1)
	for y := y0; y < min(y1, g.small.H); y++ {
		fill(p.in[y*g.small.W+min(x0, g.small.W-1):y*g.small.W+min(x1, g.small.W)], 1)
	}
	p.box, p.area = [4]int{x0, y0, x1, y1}, max(1, (x1-x0)*(y1-y0))
	p.mid = Point{float64(x0+x1) / 2, float64(y0+y1) / 2}
	return p
}

func (l *Laid) spots(all []guess) {
	k := float64(l.g.by)
	for i := range l.pieces {
		b := l.pieces[i].box
		s := Candidate{Box: [4]float64{float64(b[0]) * k, float64(b[1]) * k, float64(b[2]) * k, float64(b[3]) * k}, Off: unsuited}
		for _, q := range all {
			if q.piece == i {
				s.Off = min(s.Off, q.off)
			}
		}
		l.Spots = append(l.Spots, s)
	}
}

// unsuited stands for how badly a piece suits that was not worth a close look.
const unsuited = 9

// mostRefined is how many guesses are refined by their edges: a guess that seems a
// little worse may be the right one of a pin that looks alike several ways round.
const mostRefined = 4

// nearlyAs and nearlyOff say how much worse a guess may be and still be refined.
const (
	nearlyAs  = 1.5
	nearlyOff = 0.02
)

// settle refines the best guesses and keeps the one whose edges suit best.
func (l *Laid) settle(a *Asked, p *Picture, all []guess) {
	best := -1.0
	for i, q := range all[:min(len(all), mostRefined)] {
		if i > 0 && q.off > nearlyAs*all[0].off+nearlyOff {
			break
		}
		h := hold(a, p, l.grown(q.warp()), l.g.rgb)
		h.refine(similarity, 0)
		h.ppx = h.scale()
		f := h.quality()
		worth := f.worth() - 0.5*h.tintOff()
		if f.Mirrored {
			worth -= mirrorDoubt
		}
		if i == 0 || worth > best {
			best, l.h, l.Fit, l.Chosen = worth, h, f, q.piece
		}
	}
}

// mirrorDoubt is by how much better a mirrored laying must be: a pin that looks
// alike in the mirror is not told to be mirrored.
const mirrorDoubt = 0.03

// worth is how far a fit is to be trusted among others.
func (f *Fit) worth() float64 { return f.Edges + f.Share }

// grown takes a map onto the ground's copy to one onto the picture.
func (l *Laid) grown(w Warp) Warp {
	k := float64(l.g.by)
	up := Warp{k, 0, 0, 0, k, 0, 0, 0, 1}
	return up.after(&w)
}

func (h *held) scale() float64 {
	o := h.a.Badge.Outline
	return h.w.scaleAt((o[0]+o[2])/2, (o[1]+o[3])/2)
}

// tintOff is how far the colours shown lie from those asked for, 0..1, each
// class alike.
func (h *held) tintOff() float64 {
	sum, n := 0.0, 0.0
	for c := range h.a.Badge.Sep.Flats {
		if h.known[c] && h.a.of[c] == uint8(c) {
			asked := h.a.askedColour(uint8(c))
			sum += min(1, asked.far2(&h.shown[c])/(unlike*unlike))
			n++
		}
	}
	return sum / max(n, 1)
}

// Lay lays the pin by hand: places of the pin on places of the picture. It is
// refined by its edges afterwards if asked for.
func Lay(a *Asked, p *Picture, pin, picture []Point, exact, refine bool) (*Laid, error) {
	w, err := WarpBy(pin, picture, exact)
	if err != nil {
		return nil, err
	}
	l := &Laid{g: findGround(p), Chosen: -1}
	l.h = hold(a, p, w, l.g.rgb)
	if refine {
		k := similarity
		if exact && len(pin) == 3 {
			k = affine
		}
		if exact && len(pin) > 3 {
			k = projective
		}
		l.h.refineSurely(k, 0)
	} else {
		l.h.learn()
	}
	l.h.ppx = l.h.scale()
	l.Fit = l.h.quality()
	return l, nil
}

// withinMM is how near its place an outline lies that counts as lying there.
const withinMM unit.MM = 0.15

// What makes a fit good: the share of the outline within its place, and the
// share of edges found, in this order. A proof without an edit reaches 0.97 and
// 0.9; below these the pin lies wrong, or it is another pin.
const (
	goodShare = 0.75
	goodEdges = 0.55
)

// quality measures how well the pin lies.
func (h *held) quality() Fit {
	f := Fit{Warp: h.w, Turn: h.w.Turn(), Mirrored: h.w.Mirrored(), PerMM: h.perMM(), Within: max(withinMM, unit.MM(0.7/h.perMM()))}
	found := h.offsets(2 * f.Within)
	offs := make([]float64, 0, len(found))
	on, outline, seen := 0, 0, 0
	for i := range h.a.edges {
		e := &h.a.edges[i]
		if e.out == outside {
			outline++
		}
		if h.known[e.in] && h.known[e.out] && h.shown[e.in].far2(&h.shown[e.out]) >= leastStep*leastStep {
			seen++
		}
	}
	for _, o := range found {
		offs = append(offs, math.Abs(o.off))
		if h.a.edges[o.edge].out == outside && unit.MM(math.Abs(o.off)/h.perMM()) <= f.Within {
			on++
		}
	}
	f.Rms = unit.MM(trimmedRms(offs) / h.perMM())
	f.Share = float64(on) / float64(max(outline, 1))
	f.Edges = float64(len(found)) / float64(max(seen, 1))
	f.Good = f.Share >= goodShare && f.Edges >= goodEdges
	f.say()
	return f
}

func (f *Fit) say() {
	how := "The pin lies well on this picture"
	switch {
	case !f.Good && f.Share < goodShare/2:
		how = "The pin does not lie on this picture yet: set three places, or draw a box round it"
	case !f.Good:
		how = "The pin lies on this picture only in part: look whether it lies right, and set three places if not"
	}
	side := ""
	if f.Mirrored {
		side = " It is mirrored, left to right."
	}
	f.Words = fmt.Sprintf("%s. Edges lie about %.2f mm apart, and %.0f percent of the outline lies within %.2f mm of its place. The picture has %.1f px to the mm and is turned by %.1f degrees.%s",
		how, float64(f.Rms), 100*f.Share, float64(f.Within), f.PerMM, f.Turn, side)
}
