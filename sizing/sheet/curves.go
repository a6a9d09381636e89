package sheet

import (
	"strconv"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"badgewright/sizing/card"
	"badgewright/sizing/unit"
)

// Set gives a line of words as curves, letter beside letter by their advance, as
// a Document sets it.
func (s *Fonts) Set(words string, points float64, strong bool) card.Line {
	w := Regular
	if strong {
		w = Strong
	}
	c := curves{size: points * mmPerPoint}
	for _, r := range s.runs(Clean(words), w) {
		c.run(&s.faces[r.face], r.text)
	}
	return card.Line{D: string(c.d), W: unit.MM(c.x), Up: unit.MM(c.up), Down: unit.MM(c.down)}
}

// curves is a line being set, in mm from the start of its base line, y down.
type curves struct {
	size        float64 // of type, mm
	x, up, down float64
	d           []byte
	buf         sfnt.Buffer
}

func (c *curves) run(f *face, text string) {
	em := fixed.I(int(f.font.UnitsPerEm()))
	k := c.size / (float64(em) / 64)
	for _, r := range text {
		g, err := f.font.GlyphIndex(&c.buf, r)
		if err != nil {
			continue
		}
		// A letter that has no outline, such as a space, still takes its room.
		if segs, err := f.font.LoadGlyph(&c.buf, g, em, nil); err == nil {
			c.glyph(segs, k)
		}
		if a, err := f.font.GlyphAdvance(&c.buf, g, em, font.HintingNone); err == nil {
			c.x += float64(float64(a) / 64 * k)
		}
	}
}

func (c *curves) glyph(segs sfnt.Segments, k float64) {
	open := false
	for _, s := range segs {
		n := 1
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if open {
				c.d = append(c.d, 'Z')
			}
			open = true
			c.d = append(c.d, 'M')
		case sfnt.SegmentOpLineTo:
			c.d = append(c.d, 'L')
		case sfnt.SegmentOpQuadTo:
			c.d, n = append(c.d, 'Q'), 2
		case sfnt.SegmentOpCubeTo:
			c.d, n = append(c.d, 'C'), 3
		}
		for i := range n {
			c.place(s.Args[i], k, i > 0)
		}
	}
	if open {
		c.d = append(c.d, 'Z')
	}
}

// place writes a place of a letter.
func (c *curves) place(p fixed.Point26_6, k float64, apart bool) {
	x, y := c.x+float64(float64(p.X)/64*k), float64(float64(p.Y)/64*k)
	c.up, c.down = max(c.up, -y), max(c.down, y)
	if apart {
		c.d = append(c.d, ' ')
	}
	c.d = strconv.AppendFloat(c.d, x, 'f', 3, 64)
	c.d = append(c.d, ' ')
	c.d = strconv.AppendFloat(c.d, y, 'f', 3, 64)
}
