package apart

import (
	"cmp"
	"slices"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/wall"
)

// Pairs judges every pair of colours that meet, as each kind of eye sees it:
// those that read as one first, the nearest before the others.
func Pairs(meetings []wall.Meeting, s *Scene, t *Thresholds) []Pair {
	all := make([]Pair, 0, len(meetings))
	for i := range meetings {
		g := &meetings[i]
		p := Pair{Kind: Touching, A: g.A, B: g.B, X: g.X, Y: g.Y, Length: s.Scale.MM(g.Length), Width: s.Scale.MM(g.Width)}
		switch {
		case g.Metal:
			p.Kind = BesideLine
		case g.Across:
			p.Kind = AcrossLine
		}
		p.Seen = s.seen(&p, t)
		all = append(all, p)
	}
	slices.SortStableFunc(all, func(a, b Pair) int {
		p, q := &a.Seen[0], &b.Seen[0]
		return cmp.Or(
			cmp.Compare(rank(p.ByColour), rank(q.ByColour)),
			cmp.Compare(meets(a.Kind), meets(b.Kind)),
			cmp.Compare(rank(p.ByLightness), rank(q.ByLightness)),
			cmp.Compare(p.Colour, q.Colour),
		)
	})
	return all
}

// meets orders kinds by how much it matters that two colours are told apart: a
// line between them helps.
func meets(k PairKind) int {
	switch k {
	case Touching:
		return 0
	case BesideLine:
		return 1
	}
	return 2
}

// seen judges a pair by each kind of eye.
func (s *Scene) seen(p *Pair, t *Thresholds) []Seen {
	all := make([]Seen, 0, 4)
	for _, v := range colour.Visions() {
		if p.Kind == BesideLine {
			all = append(all, besideMetal(s.colourOf(p.A, 0), &s.Plating, v, t))
			continue
		}
		c := contrastOf(s.colourOf(p.A, 0), s.colourOf(p.B, 0), v)
		all = append(all, Seen{
			Vision: v, Colour: c.Colour, Lightness: c.Lightness,
			ByColour: verdictOf(c.Colour >= t.Colour), ByLightness: verdictOf(c.Lightness >= t.Lightness),
		})
	}
	return all
}

// besideMetal judges an enamel and a plating: told apart only if both its
// reflections are.
func besideMetal(c colour.RGB8, p *sizing.Plating, v colour.Vision, t *Thresholds) Seen {
	dark, bright := contrastOf(c, metalOf(p, 0), v), contrastOf(c, metalOf(p, 1), v)
	seen := Seen{
		Vision: v, Colour: min(dark.Colour, bright.Colour), Lightness: min(dark.Lightness, bright.Lightness),
		Dark: &dark, Bright: &bright,
	}
	seen.ByColour, seen.ByLightness = verdictOf(seen.Colour >= t.Metal), verdictOf(seen.Lightness >= t.Lightness)
	return seen
}

func contrastOf(a, b colour.RGB8, v colour.Vision) Contrast {
	a, b = a.SeenBy(v), b.SeenBy(v)
	return Contrast{Colour: colour.CIEDE2000(a.Lab(), b.Lab()), Lightness: colour.Contrast(a, b)}
}

func verdictOf(holds bool) sizing.Verdict {
	if holds {
		return sizing.Holds
	}
	return sizing.Fails
}

// Same says whether a pair reads as one by colour, to the normal eye.
func (p *Pair) Same() bool { return p.Seen[0].ByColour == sizing.Fails }

// has says whether a flat is one of a pair.
func (p *Pair) has(id reduce.FlatID) bool { return p.A == id || p.B == id && p.Kind != BesideLine }
