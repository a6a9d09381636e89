package reduce

import "badgewright/reduce/colour"

// grade says how far a drawing's pixels can be trusted, found by looking at
// how neighbours differ.
type grade int

const (
	exact     grade = iota // a vector export or a flat painting: most neighbours are equal
	wandering              // JPEG: flats wander by a few levels
	grainy                 // a photograph or scan: every pixel wanders
)

// survey is a drawing laid on its ground and looked at for calm places.
type survey struct {
	w, h   int
	pix    []uint32 // laid on the ground, grain settled; the top byte is still the file's alpha
	seen   []uint32 // as pix, grain and all
	back   []uint8
	ground colour.RGB8
	clear  bool // the ground is transparency: only alpha tells it from the drawing
	grade  grade
	// calm is 1 where a pixel differs little from its neighbours: only there
	// are colours looked for, so that soft edges never become flats.
	calm []uint8
}

// trust holds what depends on the grade: how far a pixel may be from what it
// is taken for. Distances within pixels are levels of 255; radius is OKLab.
type trust struct {
	calm   int     // greatest difference to a neighbour inside a flat
	radius float64 // how far from its colour a flat's pixels lie
	pure   int     // greatest difference of an unmixed pixel beside its flat
	mix    int     // greatest distance of a mixed pixel from the line between two flats
	speck  int     // an island of fewer pixels is no area
}

var trusts = [...]trust{
	exact:     {calm: 2, radius: 0.012, pure: 3, mix: 10, speck: 3},
	wandering: {calm: 9, radius: 0.020, pure: 10, mix: 26, speck: 14},
	grainy:    {calm: 10, radius: 0.034, pure: 14, mix: 34, speck: 30},
}

const (
	// wanderFew is the share of calm pairs, in parts of 1000, that may differ
	// a little in a clean drawing; JPEG has far more.
	wanderFew = 30
	// wanderMost is the middle of all small steps that a still flat stays
	// within; the grain of a camera moves every pixel further.
	wanderMost = 2
	// stillFew is the share of small steps, in parts of 100, that are none at
	// all: in grain hardly any, in the flats of the worst JPEG four in ten.
	stillFew = 20
	// edgeSmall: for so many great steps a smoothed edge has a small one too.
	edgeSmall = 8
	// smallStep is the difference up to which a step is taken for stain, not edge.
	smallStep = 12
)

// look lays the drawing on its ground, grades it and marks its calm places.
func look(d *Drawing, g *Ground) *survey {
	s := &survey{w: d.W, h: d.H, back: g.Back, ground: g.RGB, clear: g.Found == GroundClear}
	s.pix = lay(g.Levelled.Pix, g.RGB)
	s.seen = s.pix
	steps := stepsOf(s.pix, s.w, s.h)
	s.grade = gradeOf(steps, s.back)
	if s.grade == grainy {
		s.pix = settle(settle(s.pix, s.w, s.h), s.w, s.h)
		steps = stepsOf(s.pix, s.w, s.h)
	}
	s.calm = calmOf(steps, s.w, s.h, trusts[s.grade].calm)
	return s
}

// lay puts see-through pixels on the ground's colour and keeps their alpha in
// the top byte. Solid drawings come back as they are.
func lay(pix []uint32, ground colour.RGB8) []uint32 {
	first := len(pix)
	for i, p := range pix {
		if p < 0xff000000 {
			first = i
			break
		}
	}
	if first == len(pix) {
		return pix
	}
	out := make([]uint32, len(pix))
	copy(out, pix[:first])
	r, g, b := uint32(ground.R), uint32(ground.G), uint32(ground.B)
	for i := first; i < len(pix); i++ {
		p := pix[i]
		a := p >> 24
		switch a {
		case 255:
			out[i] = p
		case 0:
			out[i] = r | g<<8 | b<<16
		default:
			c := 255 - a
			out[i] = ((p&255)*a+r*c+127)/255 | ((p>>8&255)*a+g*c+127)/255<<8 | ((p>>16&255)*a+b*c+127)/255<<16 | a<<24
		}
	}
	return out
}

// differ is the greatest difference of any channel, alpha too.
func differ(p, q uint32) int {
	if p == q {
		return 0
	}
	m := int(p&255) - int(q&255)
	m = max(m, -m)
	d := int(p>>8&255) - int(q>>8&255)
	m = max(m, d, -d)
	d = int(p>>16&255) - int(q>>16&255)
	m = max(m, d, -d)
	d = int(p>>24) - int(q>>24)
	return max(m, d, -d)
}

// stepsOf holds for each pixel the greater difference to its right and lower
// neighbour.
func stepsOf(pix []uint32, w, h int) []uint8 {
	out := make([]uint8, w*h)
	for y := 0; y < h; y++ {
		row, to := pix[y*w:(y+1)*w], out[y*w:(y+1)*w]
		below := row
		if y+1 < h {
			below = pix[(y+1)*w : (y+2)*w]
		}
		below = below[:len(row)]
		for x := 0; x+1 < len(row); x++ {
			p := row[x]
			if p != row[x+1] || p != below[x] {
				to[x] = uint8(max(differ(p, row[x+1]), differ(p, below[x])))
			}
		}
		to[w-1] = uint8(differ(row[w-1], below[w-1]))
	}
	return out
}

// gradeOf looks at the small steps of the drawing itself.
func gradeOf(steps, back []uint8) grade {
	var count [256]int
	back = back[:len(steps)]
	for i, s := range steps {
		if back[i] < 255 {
			count[s]++
		}
	}
	small, all, big := 0, 0, 0
	for s, n := range count {
		switch {
		case s > smallStep:
			big += n
		case s > 0:
			small += n
			fallthrough
		default:
			all += n
		}
	}
	switch {
	case 100*count[0] < stillFew*all && quantile(&count, all, 1, 2) > wanderMost:
		return grainy
	case 1000*(small-big/edgeSmall) > wanderFew*all:
		return wandering
	}
	return exact
}

// calmOf marks pixels whose steps to all four sides are at most most.
func calmOf(steps []uint8, w, h, most int) []uint8 {
	calm := make([]uint8, w*h)
	m := uint8(most)
	for y := 0; y < h; y++ {
		row, to := steps[y*w:(y+1)*w], calm[y*w:(y+1)*w]
		above := row
		if y > 0 {
			above = steps[(y-1)*w : y*w]
		}
		above = above[:len(row)]
		left := row[0]
		for x, s := range row {
			if s <= m && left <= m && above[x] <= m {
				to[x] = 1
			}
			left = s
		}
	}
	return calm
}

// settleReach is how far a neighbour's channel may be from a pixel's own and
// still be averaged with it: three times the grain of a phone's picture.
const settleReach = 24

// settle averages each pixel with those of its eight neighbours that look
// like it, so that grain goes and edges stay.
func settle(pix []uint32, w, h int) []uint32 {
	out := make([]uint32, len(pix))
	copy(out, pix)
	off := [8]int{-w - 1, -w, -w + 1, -1, 1, w - 1, w, w + 1}
	for y := 1; y+1 < h; y++ {
		for i := y*w + 1; i < (y+1)*w-1; i++ {
			p := pix[i]
			// two channels a word, sixteen bits each: sums of nine fit
			rb, g, n := p&0xff00ff, p>>8&255, uint32(1)
			for _, o := range off {
				if q := pix[i+o]; differ(p, q) <= settleReach {
					rb += q & 0xff00ff
					g += q >> 8 & 255
					n++
				}
			}
			r, b := rb&0xffff, rb>>16
			out[i] = (r+n/2)/n | (g+n/2)/n<<8 | (b+n/2)/n<<16 | p&0xff000000
		}
	}
	return out
}
