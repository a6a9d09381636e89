package proof

import (
	"math"
	"slices"

	"badgewright/reduce"
	"badgewright/reduce/mask"
)

// piece is something drawn in a picture that may be a pin, freed from thin
// strokes: its pixels on the ground's copy.
type piece struct {
	in   []uint8 // 1 where it is, on the whole copy
	box  [4]int
	area int
	mid  Point
}

// strokeShare is how wide, as a share of the picture's long side, a stroke may be
// that is taken off before pins are looked for: leaders, arrows, lettering.
const strokeShare = 0.012

// A piece is looked at when it has at least this share of the copy, and this
// share of the largest piece.
const (
	leastPiece = 0.002
	leastOfAll = 0.08
	mostPieces = 8
)

// pieces finds what may be a pin, the largest first. A box, in px of the picture,
// bounds the search; nil for none.
func (g *ground) pieces(box *[4]float64) []piece {
	w, h := g.small.W, g.small.H
	fore := slices.Clone(g.fore)
	if box != nil {
		g.cutTo(fore, box)
	}
	whole := core(fore, w, h, strokeShare*float64(max(w, h))/2)
	parts := mask.Connect(whole, w, h, &[256]bool{})
	boxes := boxesOf(parts)
	var out []piece
	for _, c := range bySize(parts) {
		n := parts.Area[c]
		if parts.Label[c] != 1 || float64(n) < leastPiece*float64(w*h) || len(out) > 0 && float64(n) < leastOfAll*float64(out[0].area) || len(out) >= mostPieces {
			continue
		}
		out = append(out, pieceOf(parts, c, boxes[c]))
	}
	return out
}

func bySize(parts *mask.Components) []int32 {
	keys := make([]uint32, len(parts.Area))
	for c, n := range parts.Area {
		keys[c] = math.MaxUint32 - uint32(n)
	}
	return mask.Order(keys)
}

func pieceOf(parts *mask.Components, c int32, box [4]int) piece {
	p := piece{in: make([]uint8, parts.W*parts.H), box: box, area: parts.Area[c]}
	var sx, sy float64
	eachRun(parts, func(y int, r mask.Run) {
		if r.Comp != c {
			return
		}
		fill(p.in[y*parts.W+int(r.X0):y*parts.W+int(r.X1)], 1)
		n := float64(r.X1 - r.X0)
		sx += n * float64(r.X0+r.X1) / 2
		sy += n * (float64(y) + 0.5)
	})
	p.mid = Point{sx / float64(p.area), sy / float64(p.area)}
	return p
}

func (g *ground) cutTo(fore []uint8, box *[4]float64) {
	k := float64(g.by)
	for y := range g.small.H {
		for x := range g.small.W {
			u, v := (float64(x)+0.5)*k, (float64(y)+0.5)*k
			if u < box[0] || v < box[1] || u > box[2] || v > box[3] {
				fore[y*g.small.W+x] = 0
			}
		}
	}
}

// core opens a raster: what no disc of radius r fits in is taken off.
func core(fore []uint8, w, h int, r float64) []uint8 {
	none := make([]bool, len(fore))
	for i, v := range fore {
		none[i] = v == 0
	}
	f, ok := mask.Nearest(none, w, h)
	if !ok {
		return fore
	}
	inner := make([]bool, len(fore))
	far := int32(r * r)
	any := false
	for i, d := range f.D2 {
		inner[i] = d > far
		any = any || inner[i]
	}
	out := make([]uint8, len(fore))
	if !any {
		return out
	}
	back, _ := mask.Nearest(inner, w, h)
	reach := int32((r + 1) * (r + 1))
	for i, d := range back.D2 {
		if d <= reach && fore[i] == 1 {
			out[i] = 1
		}
	}
	return out
}

var errNoPin = &reduce.Refusal{What: "No pin was found in this picture.", Do: "Draw a box round the pin, or set three places on it."}
