package reduce

import (
	"image"

	"github.com/anthonynsimon/bild/transform"

	"badgewright/reduce/colour"
)

const (
	// mapSide is the long side of the levelling map: a lamp's light changes
	// slowly, so a hundredth of the picture is fine enough.
	mapSide = 96
	// preSide is what the drawing is brought down to on the way to the map.
	preSide = 384
	// mapSlope is the greatest step of the light from one place of the map to
	// the next, in levels; an edge of the drawing steps further.
	mapSlope = 5
	// mapEdge is the difference within one place of the map, in levels, beyond
	// which an edge runs through it: grain, brought down in size, stays below.
	mapEdge = 26
	// leastShading is the fall of the paper's light, in levels, that is worth
	// levelling; less, the tolerances take.
	leastShading = 12
	// mostGain keeps deep shadow from being blown up into noise.
	mostGain = 4
	// pageOfMap is the share of the map's border, in parts of 1000, that must
	// be one slowly changing sheet.
	pageOfMap = 500
	// steadyHue is how far, in parts of 1000, the balance of the paper's
	// channels may wander across the sheet: a lamp dims, it does not repaint.
	steadyHue = 140
)

// level divides the drawing by the light on its paper and says whether it did.
// A clean or evenly lit drawing comes back as it is; a photograph, known by its
// grain, has a lamp's colour even where its light is even.
func level(d *Drawing) (*Drawing, bool) {
	if min(d.W, d.H) < 16 || clearShare(d) > 0 {
		return d, false
	}
	photo := grainOf(d)
	if !photo && evenBorder(d) {
		return d, false
	}
	light := lightMap(d, photo)
	if light == nil {
		return d, false
	}
	return divide(d, light), true
}

// grainStrip and grainStrips: so many rows at so many places tell grain.
const (
	grainStrip  = 12
	grainStrips = 10
)

// grainOf is true for a picture whose every pixel wanders, as a camera's does.
func grainOf(d *Drawing) bool {
	var pix []uint32
	for k := range grainStrips {
		y := k * max(0, d.H-grainStrip) / grainStrips
		pix = append(pix, d.Pix[y*d.W:min(y+grainStrip, d.H)*d.W]...)
	}
	return gradeOf(stepsOf(pix, d.W, len(pix)/d.W), make([]uint8, len(pix))) == grainy
}

// evenBorder is true when all but a hundredth of the border has one colour
// within the clean tolerance: there is no lamp on it.
func evenBorder(d *Drawing) bool {
	border := borderOf(d.W, d.H)
	bin, _ := commonest(d.Pix, border)
	near := tolerance(meanNear(d.Pix, border, bin), cleanTolerance)
	n := 0
	for _, i := range border {
		if near.holds(d.Pix[i]) {
			n++
		}
	}
	return 100*n >= 99*len(border)
}

// lightMap returns the light on the paper at reduced size, or nil when there
// is no sheet or, but for a photograph, no shading on it worth taking out.
func lightMap(d *Drawing, photo bool) *light {
	pre := Shrink(sparse(d, max(d.W, d.H)/(2*preSide)), preSide)
	w, h := fit(d.W, d.H, mapSide)
	small := transform.Resize(asRGBA(pre), w, h, transform.Box)
	sheet := sheetOf(small, edgesIn(pre, w, h))
	if sheet == nil || !photo && !shaded(small, sheet) {
		return nil
	}
	return spread(small, sheet)
}

// sparse takes every step-th pixel of every step-th row: light needs no more.
func sparse(d *Drawing, step int) *Drawing {
	if step < 2 {
		return d
	}
	s := &Drawing{W: (d.W + step - 1) / step, H: (d.H + step - 1) / step}
	s.Pix = make([]uint32, 0, s.W*s.H)
	for y := 0; y < d.H; y += step {
		for x := 0; x < d.W; x += step {
			s.Pix = append(s.Pix, d.Pix[y*d.W+x])
		}
	}
	return s
}

// sheetOf marks the cells of the largest slowly changing area along the
// border; nil when it holds too little of the border to be the paper.
func sheetOf(m *image.RGBA, edged []bool) []bool {
	w, h := m.Rect.Dx(), m.Rect.Dy()
	seen := make([]int, w*h)
	border := borderOf(w, h)
	best, bestAt := 0, 0
	for k, i := range border {
		if seen[i] != 0 {
			continue
		}
		walk(m, edged, seen, i, k+1)
		n := 0
		for _, j := range border {
			if seen[j] == k+1 {
				n++
			}
		}
		if n > best {
			best, bestAt = n, k+1
		}
	}
	if 1000*best < pageOfMap*len(border) {
		return nil
	}
	sheet := make([]bool, w*h)
	for i, s := range seen {
		sheet[i] = s == bestAt
	}
	return sheet
}

// edgesIn marks the cells of a map of w x h through which an edge of the
// drawing runs: along an edge that is nearly upright, or level, the cells
// change slowly from paper to drawing, and the light's way must not lead there.
func edgesIn(pre *Drawing, w, h int) []bool {
	low, high := make([][3]int, w*h), make([][3]int, w*h)
	for i := range low {
		low[i] = [3]int{255, 255, 255}
	}
	for i, p := range pre.Pix {
		k := i/pre.W*h/pre.H*w + i%pre.W*w/pre.W
		for c := range 3 {
			v := int(p >> (8 * c) & 255)
			low[k][c], high[k][c] = min(low[k][c], v), max(high[k][c], v)
		}
	}
	edged := make([]bool, w*h)
	for k := range edged {
		for c := range 3 {
			edged[k] = edged[k] || high[k][c]-low[k][c] > mapEdge
		}
	}
	return edged
}

// walk marks every cell that can be reached from i by small steps.
func walk(m *image.RGBA, edged []bool, seen []int, i, mark int) {
	w, h := m.Rect.Dx(), m.Rect.Dy()
	stack := []int{i}
	seen[i] = mark
	for len(stack) > 0 {
		i = stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		x, y := i%w, i/w
		for _, n := range [4][2]int{{x - 1, y}, {x + 1, y}, {x, y - 1}, {x, y + 1}} {
			if n[0] < 0 || n[1] < 0 || n[0] >= w || n[1] >= h {
				continue
			}
			if j := n[1]*w + n[0]; seen[j] == 0 && !edged[j] && step(m, i, j) <= mapSlope {
				seen[j] = mark
				stack = append(stack, j)
			}
		}
	}
}

func step(m *image.RGBA, i, j int) int {
	a, b := m.Pix[4*i:4*i+3], m.Pix[4*j:4*j+3]
	return max(gap(a[0], b[0]), gap(a[1], b[1]), gap(a[2], b[2]))
}

// shaded is true when the sheet's light falls off enough and its hue holds.
func shaded(m *image.RGBA, sheet []bool) bool {
	var green, red, blue [256]int
	n := 0
	for i, in := range sheet {
		if !in {
			continue
		}
		r, g, b := int(m.Pix[4*i]), int(m.Pix[4*i+1]), int(m.Pix[4*i+2])
		n++
		green[g]++
		red[balance(r, g)]++
		blue[balance(b, g)]++
	}
	wander := func(c *[256]int) int { return 1000 * (quantile(c, n, 19, 20) - quantile(c, n, 1, 20)) / 100 }
	return quantile(&green, n, 19, 20)-quantile(&green, n, 1, 20) >= leastShading &&
		wander(&red) <= steadyHue && wander(&blue) <= steadyHue
}

// balance is a channel against green in hundredths, at most 255.
func balance(c, green int) int { return min(255, (100*c+green/2)/max(1, green)) }

// divide lifts every pixel to the light of the best-lit paper. Gains are in
// parts of 256 and everything is whole numbers, so every machine agrees.
func divide(d *Drawing, l *light) *Drawing {
	gains := gainsOf(l)
	w, h := l.w, l.h
	out := *d
	out.Pix = make([]uint32, len(d.Pix))
	row := make([]int32, 3*w)
	columns := columnsOf(d.W, w)
	for y := 0; y < d.H; y++ {
		y0, y1, fy := between(y, d.H, h)
		for i := range row {
			row[i] = (gains[y0*3*w+i]*(256-fy) + gains[y1*3*w+i]*fy) >> 4 // parts of 4096
		}
		line, to := d.Pix[y*d.W:(y+1)*d.W], out.Pix[y*d.W:(y+1)*d.W]
		for x, p := range line {
			k := &columns[x]
			a, b := row[k.a:k.a+3:k.a+3], row[k.b:k.b+3:k.b+3]
			r := lift(p&255, uint32(a[0]*k.near+b[0]*k.far)>>8)
			g := lift(p>>8&255, uint32(a[1]*k.near+b[1]*k.far)>>8)
			u := lift(p>>16&255, uint32(a[2]*k.near+b[2]*k.far)>>8)
			to[x] = r | g<<8 | u<<16 | p&0xff000000
		}
	}
	return &out
}

// toe is what sRGB takes off the power of light that it encodes, in levels
// (IEC 61966-2-1: 0.055 of 255). A lamp multiplies light, so what it does to
// encoded levels is a factor only once that is put back.
const toe = 14

// lift multiplies the light of an encoded level by a gain in parts of 4096.
func lift(v, gain uint32) uint32 {
	return min(max(((v+toe)*gain+2048)>>12, toe)-toe, 255)
}

// column says which cells of the map a column of the drawing lies between:
// where their gains start in a row, and the parts of 256 each counts for.
type column struct{ a, b, near, far int32 }

func columnsOf(n, cells int) []column {
	columns := make([]column, n)
	for x := range columns {
		a, b, f := between(x, n, cells)
		columns[x] = column{int32(3 * a), int32(3 * b), 256 - f, f}
	}
	return columns
}

// between places pixel i of n on a line of m cells: the cells either side of
// its centre and, in parts of 256, how far it is to the second.
func between(i, n, m int) (a, b int, f int32) {
	at := (2*i+1)*m*128/n - 128
	at = min(max(at, 0), (m-1)*256)
	a = at >> 8
	return a, min(a+1, m-1), int32(at & 255)
}

const (
	// paleTint and paleLight bound the OKLab chroma and lightness of paper that
	// is white to whoever drew on it; beyond, it is coloured paper and stays so.
	paleTint  = 0.05
	paleLight = 0.72
)

// gainsOf returns, for each cell and channel, in parts of 256, how far its paper
// is from white, so that the lamp's own colour goes too; from its best-lit
// place, when the paper itself is coloured.
func gainsOf(l *light) []int32 {
	best := bestLit(l)
	to := [3]int32{255, 255, 255}
	if lab := best.OKLab(); lab.Chroma() > paleTint || lab.L < paleLight {
		to = [3]int32{int32(best.R), int32(best.G), int32(best.B)}
	}
	gains := make([]int32, 3*len(l.at))
	for i, v := range l.at {
		for c := range v {
			at := v[c] + toe*finer
			gains[3*i+c] = min(max(((to[c]+toe)*finer*256+at/2)/at, 64), mostGain*256)
		}
	}
	return gains
}

// bestLit is the colour of the best-lit paper: all but a twentieth is darker.
func bestLit(l *light) colour.RGB8 {
	var best [3]uint8
	for c := range best {
		var count [256]int
		for _, v := range l.at {
			count[(v[c]+finer/2)/finer]++
		}
		best[c] = uint8(quantile(&count, len(l.at), 19, 20))
	}
	return colour.RGB8{R: best[0], G: best[1], B: best[2]}
}

// asRGBA copies a solid drawing for the image library.
func asRGBA(d *Drawing) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, d.W, d.H))
	for i, p := range d.Pix {
		a := p >> 24
		m.Pix[4*i] = uint8(((p&255)*a + 127) / 255)
		m.Pix[4*i+1] = uint8(((p>>8&255)*a + 127) / 255)
		m.Pix[4*i+2] = uint8(((p>>16&255)*a + 127) / 255)
		m.Pix[4*i+3] = uint8(a)
	}
	return m
}
