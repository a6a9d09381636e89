package reduce

import (
	"fmt"

	"badgewright/reduce/colour"
)

const (
	// pageOfBorder and tintOfBorder are the shares of the file's border, in
	// parts of 1000, that one colour must hold to be paper. Pale greys are what
	// paper is, so a third of the border will do (a figure may stand on three
	// edges); any other colour may well be a painted sky, which holds one edge
	// and half of two.
	pageOfBorder = 340
	tintOfBorder = 620
	// paleFrom and paleSpread say what a pale grey is: its darkest channel, and
	// how far its channels may lie apart (an old sheet is yellowish).
	paleFrom   = 196
	paleSpread = 48
	// cornersOfTint is how many corners a coloured ground must reach, for the same reason.
	cornersOfTint = 3

	// Tolerances per channel, in levels of 255. A clean file has one exact
	// paper colour; a photo's noise and a JPEG's stain are measured at the border.
	cleanTolerance   = 5
	stainedTolerance = 10
	mostTolerance    = 36
	// stainTolerance is how far JPEG ringing beside a dark line strays, and
	// stainReach how far it reaches: one block with halved chroma (ITU-T T.81).
	stainTolerance = 32
	stainReach     = 16
	// stainedFrom is the share of background pixels, in parts of 1000, that
	// differ from the paper's colour before a file counts as stained.
	stainedFrom = 3
	// speckPixels is the size up to which a faint island in the paper is noise,
	// and speckTolerance how faint it must be.
	speckPixels    = 12
	speckTolerance = 90
)

// paper is a background colour found along the border.
type paper struct {
	rgb    colour.RGB8
	stray  int // nine tenths of the paper's border pixels lie within this, per channel
	share  int // of the solid border, parts of 1000
	corner int // corners of the file that are paper
}

// paperGround sets the paper apart, or returns nil when there is none.
func paperGround(d *Drawing) (*Ground, error) {
	flat, shading := level(d)
	p, ok := borderPaper(flat)
	if !ok {
		return nil, nil
	}
	back := make([]uint8, len(flat.Pix))
	near := tolerance(p.rgb, max(cleanTolerance, min(mostTolerance, p.stray+p.stray/2+cleanTolerance)))
	if !shading {
		flood(back, flat.Pix, flat.W, flat.H, near)
	}
	if shading || stained(back, flat.Pix, p.rgb) {
		near = near.atLeast(p.rgb, stainedTolerance)
		flood(back, flat.Pix, flat.W, flat.H, near)
		wide := near.atLeast(p.rgb, stainTolerance)
		growInto(back, flat.Pix, flat.W, flat.H, wide)
		dropSpecks(back, flat.Pix, flat.W, flat.H, near.atLeast(p.rgb, speckTolerance))
	}
	clearTo(back, flat.Pix)
	if drawn(back) < leastDrawing {
		return nil, &Refusal{What: "This picture is a blank sheet: nothing on it stands out from the paper.",
			Do: "Photograph or scan it with more light, or export it with stronger lines."}
	}
	return &Ground{Found: GroundPaper, RGB: p.rgb, Note: paperNote(p.rgb, shading), Back: back, Levelled: flat}, nil
}

func paperNote(c colour.RGB8, shading bool) string {
	name := "coloured background"
	switch lo, hi := min(c.R, c.G, c.B), max(c.R, c.G, c.B); {
	case lo >= 245:
		name = "white paper"
	case lo >= paleFrom:
		name = "pale paper"
	case hi <= 64:
		name = "dark background"
	}
	evened := ""
	if shading {
		evened = ", evened out where the light fell off,"
	}
	return fmt.Sprintf("The %s round the drawing%s is left away; areas of that colour closed in by the drawing stay.", name, evened)
}

// borderPaper finds the colour that holds most of the solid border.
func borderPaper(d *Drawing) (paper, bool) {
	border := borderOf(d.W, d.H)
	first, solid := commonest(d.Pix, border)
	if solid == 0 {
		return paper{}, false
	}
	p := paper{rgb: meanNear(d.Pix, border, first)}
	near := tolerance(p.rgb, mostTolerance)
	var strays [256]int
	n := 0
	for _, i := range border {
		if q := d.Pix[i]; near.holds(q) {
			strays[apart(q, p.rgb)]++
			n++
		}
	}
	p.stray = quantile(&strays, n, 9, 10)
	p.share = 1000 * n / solid
	for _, i := range []int{0, d.W - 1, (d.H - 1) * d.W, d.H*d.W - 1} {
		if near.holds(d.Pix[i]) {
			p.corner++
		}
	}
	lo, hi := min(p.rgb.R, p.rgb.G, p.rgb.B), max(p.rgb.R, p.rgb.G, p.rgb.B)
	if lo >= paleFrom && hi-lo <= paleSpread {
		return p, p.share >= pageOfBorder
	}
	return p, p.share >= tintOfBorder && p.corner >= cornersOfTint
}

// commonest returns the fullest bin (4 bits a channel, counted with its
// neighbours, ties to the lowest) of the solid pixels at idx, and their number.
func commonest(pix []uint32, idx []int) (bin [3]int, solid int) {
	var count [16][16][16]int
	for _, i := range idx {
		if p := pix[i]; p>>24 == 255 {
			count[p>>4&15][p>>12&15][p>>20&15]++
			solid++
		}
	}
	best := 0
	for r := range 16 {
		for g := range 16 {
			for b := range 16 {
				if count[r][g][b] == 0 {
					continue
				}
				n := 0
				for _, k := range [7][3]int{{0, 0, 0}, {1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}} {
					rr, gg, bb := r+k[0], g+k[1], b+k[2]
					if rr|gg|bb >= 0 && rr < 16 && gg < 16 && bb < 16 {
						n += count[rr][gg][bb]
					}
				}
				if n > best {
					best, bin = n, [3]int{r, g, b}
				}
			}
		}
	}
	return bin, solid
}

// meanNear returns the colour that most pixels near a bin have, as the median
// of each channel: a few stray pixels do not move it.
func meanNear(pix []uint32, idx []int, bin [3]int) colour.RGB8 {
	centre := colour.RGB8{R: uint8(bin[0]*16 + 8), G: uint8(bin[1]*16 + 8), B: uint8(bin[2]*16 + 8)}
	near := tolerance(centre, 24)
	var r, g, b [256]int
	n := 0
	for _, i := range idx {
		if p := pix[i]; near.holds(p) {
			r[p&255]++
			g[p>>8&255]++
			b[p>>16&255]++
			n++
		}
	}
	return colour.RGB8{R: uint8(quantile(&r, n, 1, 2)), G: uint8(quantile(&g, n, 1, 2)), B: uint8(quantile(&b, n, 1, 2))}
}

// quantile returns the least value at or below which num/den of n counts lie.
func quantile(count *[256]int, n, num, den int) int {
	sum := 0
	for v, c := range count {
		if sum += c; sum*den >= n*num && sum > 0 {
			return v
		}
	}
	return 0
}

// apart is the greatest difference of any channel, 0..255.
func apart(p uint32, c colour.RGB8) int {
	return max(gap(uint8(p), c.R), gap(uint8(p>>8), c.G), gap(uint8(p>>16), c.B))
}

func gap(a, b uint8) int {
	if a > b {
		return int(a - b)
	}
	return int(b - a)
}

// box is a box of solid colours: low and span per channel.
type box struct{ r, g, b, rs, gs, bs uint32 }

// tolerance returns the box of colours within t of c on every channel.
func tolerance(c colour.RGB8, t int) box {
	side := func(v uint8) (lo, span uint32) {
		low, high := max(0, int(v)-t), min(255, int(v)+t)
		return uint32(low), uint32(high - low)
	}
	var b box
	b.r, b.rs = side(c.R)
	b.g, b.gs = side(c.G)
	b.b, b.bs = side(c.B)
	return b
}

// atLeast widens a box round c to t on every channel.
func (b box) atLeast(c colour.RGB8, t int) box {
	o := tolerance(c, t)
	if o.rs+o.gs+o.bs > b.rs+b.gs+b.bs {
		return o
	}
	return b
}

// holds is true for solid pixels in the box; unsigned wrap makes each channel one comparison.
func (b *box) holds(p uint32) bool {
	return p >= 0xff000000 && p&255-b.r <= b.rs && p>>8&255-b.g <= b.gs && p>>16&255-b.b <= b.bs
}

// stained is true when the background holds more than a few pixels that are
// not exactly the paper's colour.
func stained(back []uint8, pix []uint32, c colour.RGB8) bool {
	exact := packed(c) | 0xff000000
	n, off := 0, 0
	for i, b := range back {
		if b == 255 {
			n++
			if pix[i] != exact {
				off++
			}
		}
	}
	return off*1000 > n*stainedFrom
}
