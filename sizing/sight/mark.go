package sight

import (
	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
)

// Mark draws where one flat lies, in the frame of the badge: in the colour
// given, hatched so that it is seen whatever that is, all else clear.
func Mark(b *sizing.Badge, longSide int, flat reduce.FlatID, as colour.RGB8) *Image {
	im := frameOf(b, longSide)
	sep := *b.Sep
	sep.Flats = append([]reduce.Flat(nil), sep.Flats...)
	for i := range sep.Flats {
		sep.Flats[i].Role = reduce.CutOut
		if sep.Flats[i].ID == flat {
			sep.Flats[i].Role = reduce.Enamel
		}
	}
	only := *b
	only.Sep = &sep
	f := lay(&only, im, Recolour{flat: as})
	im.Pix = make([]uint32, len(f.solid))
	for i, solid := range f.solid {
		if solid == 0 {
			continue
		}
		c := rgbf{f.r[i], f.g[i], f.b[i]}
		switch (i%im.W + i/im.W) % hatchEvery / hatchWide {
		case 0:
			c = rgbf{1, 1, 1}
		case 1:
			c = rgbf{}
		}
		im.Pix[i] = packed(c[0], c[1], c[2], solid)
	}
	return &im
}

// The hatching, px: a white and a dark stroke beside each other, so that one
// of them shows on any colour.
const (
	hatchEvery = 14
	hatchWide  = 2
)
