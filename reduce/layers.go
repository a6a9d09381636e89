package reduce

import (
	"fmt"

	"badgewright/reduce/colour"
)

// Layers is one drawing brought as two pictures of one size: its lines and its
// colours. The lines are known to be metal, so nothing need be guessed.
type Layers struct {
	// Whole is the lines laid over the colours: the drawing as it is seen.
	Whole *Drawing
	// Lines holds how much of each pixel is line, 0..255, and Ink their colour.
	Lines []uint8
	Ink   colour.RGB8

	colours *Drawing
}

// mostLines is the greatest share of a picture, in 1, that its lines may cover
// and still be lines: a bold cartoon has a third.
const mostLines = 0.6

// LayersOf takes two pictures, in either order: the one that covers less is
// the lines.
func LayersOf(a, b *Drawing) (*Layers, error) {
	if a.W != b.W || a.H != b.H || a.FileW != b.FileW || a.FileH != b.FileH {
		return nil, &Refusal{
			What: fmt.Sprintf("Lines and colours must be of one size; these are %d x %d and %d x %d px.", a.FileW, a.FileH, b.FileW, b.FileH),
			Do:   "Export both layers from the same canvas, untrimmed.",
		}
	}
	inkA, coverA := inkOf(a)
	inkB, coverB := inkOf(b)
	l := &Layers{Lines: coverB, Ink: inkB, colours: a}
	if shareOf(coverA) < shareOf(coverB) {
		l.Lines, l.Ink, l.colours = coverA, inkA, b
	}
	if s := shareOf(l.Lines); s == 0 || s > mostLines {
		return nil, &Refusal{
			What: "Neither of these two pictures looks like lines alone.",
			Do:   "Bring one picture with the lines and one with the colours, each exported with the other layer switched off.",
		}
	}
	l.Whole = l.laid()
	return l, nil
}

// inkOf returns the colour of a picture's ink and how much of each pixel it
// covers: its alpha, or on paper how far it is from the paper to the ink.
func inkOf(d *Drawing) (colour.RGB8, []uint8) {
	cover := make([]uint8, len(d.Pix))
	if hasClear(d) {
		for i, p := range d.Pix {
			cover[i] = uint8(p >> 24)
		}
		return meanOf(d.Pix, cover), cover
	}
	paper, ink := lightest(d.Pix)
	if paper == ink {
		return colour.RGB8{}, cover
	}
	for i, p := range d.Pix {
		cover[i] = uint8(min(255, max(0, (paper-lightOf(p))*255/(paper-ink))))
	}
	return meanOf(d.Pix, cover), cover
}

// extremeShare: the darkest and lightest hundredth of a picture are
// its ink and its paper; fewer pixels may be dust.
const extremeShare = 100

// lightest returns the light of a picture's paper and of its ink, 0..255.
func lightest(pix []uint32) (paper, ink int) {
	var count [256]int
	for _, p := range pix {
		count[lightOf(p)]++
	}
	few := len(pix) / extremeShare
	for n := 0; ink < 255 && n+count[ink] <= few; ink++ {
		n += count[ink]
	}
	paper = 255
	for n := 0; paper > ink && n+count[paper] <= few; paper-- {
		n += count[paper]
	}
	return paper, ink
}

// lightOf is the luma of an encoded colour (ITU-R BT.601 weights), 0..255.
func lightOf(p uint32) int {
	return int(77*(p&255)+150*(p>>8&255)+29*(p>>16&255)+128) >> 8
}

// meanOf is the mean colour of what covers its pixel whole, or else at all.
func meanOf(pix []uint32, cover []uint8) colour.RGB8 {
	for _, least := range []uint8{255, 200, 1} {
		var sum [3]int
		n := 0
		for i, p := range pix {
			if cover[i] >= least {
				sum[0], sum[1], sum[2] = sum[0]+int(p&255), sum[1]+int(p>>8&255), sum[2]+int(p>>16&255)
				n++
			}
		}
		if n > 0 {
			return colour.RGB8{R: uint8((sum[0] + n/2) / n), G: uint8((sum[1] + n/2) / n), B: uint8((sum[2] + n/2) / n)}
		}
	}
	return colour.RGB8{}
}

func shareOf(cover []uint8) float64 {
	sum := 0
	for _, c := range cover {
		sum += int(c)
	}
	return float64(sum) / 255 / float64(len(cover))
}

// laid puts the lines over the colours.
func (l *Layers) laid() *Drawing {
	d := *l.colours
	d.Pix = make([]uint32, len(l.colours.Pix))
	ink := [3]uint32{uint32(l.Ink.R), uint32(l.Ink.G), uint32(l.Ink.B)}
	for i, p := range l.colours.Pix {
		c := uint32(l.Lines[i])
		alpha := c*255 + (p>>24)*(255-c) // of 255 * 255
		if alpha == 0 {
			continue
		}
		var out uint32
		for k := range ink {
			was := p >> (8 * k) & 255
			out |= (ink[k]*c*255 + was*(p>>24)*(255-c) + alpha/2) / alpha << (8 * k)
		}
		d.Pix[i] = out | (alpha+127)/255<<24
	}
	return &d
}

// AnalyseLayers finds the flats of the colours and lays the lines over them.
// The ground is that of the whole drawing, so that lines close off white areas.
func AnalyseLayers(l *Layers, g *Ground, p Progress) (*Analysis, error) {
	from := l.beside()
	under := *l.colours
	under.Pix = make([]uint32, len(from))
	ground := *g
	ground.Levelled, ground.Back = &under, make([]uint8, len(from))
	for i, j := range from {
		under.Pix[i], ground.Back[i] = l.colours.Pix[j], g.Back[j]
		if g.Found == GroundClear && l.Lines[i] > 0 {
			ground.Back[i] = uint8(255 - l.colours.Pix[j]>>24)
		}
	}
	a, err := Analyse(&under, &ground, p)
	if err != nil {
		return nil, err
	}
	a.pix = lay(l.Whole.Pix, g.RGB)
	a.ink(l)
	return a, nil
}

// beside names for each pixel that holds any line the nearest pixel, by steps
// to the side, that holds none; every other pixel names itself. Colours then
// run on under the lines, whether the artist let them or not.
func (l *Layers) beside() []int32 {
	w, h := l.colours.W, l.colours.H
	from := make([]int32, len(l.Lines))
	queue := make([]int32, 0, len(l.Lines))
	for i, c := range l.Lines {
		from[i] = -1
		if c == 0 {
			from[i] = int32(i)
			queue = append(queue, int32(i))
		}
	}
	reach := func(i, j int32) {
		if from[j] < 0 {
			from[j] = from[i]
			queue = append(queue, j)
		}
	}
	for k := 0; k < len(queue); k++ {
		i := queue[k]
		x, y := int(i)%w, int(i)/w
		if x > 0 {
			reach(i, i-1)
		}
		if x+1 < w {
			reach(i, i+1)
		}
		if y > 0 {
			reach(i, i-int32(w))
		}
		if y+1 < h {
			reach(i, i+int32(w))
		}
	}
	return from
}

// ink adds the lines as a leaf of metal, the only one.
func (a *Analysis) ink(l *Layers) {
	for k := range a.leaves {
		a.leaves[k].role = Enamel
	}
	metal := leafOf(l.Ink)
	metal.role = Metal
	k := uint8(len(a.leaves))
	a.leaves, a.blend = append(a.leaves, metal), append(a.blend, int(k))
	for i, c := range l.Lines {
		switch u := a.f.label[i]; {
		case c == 0:
		case c >= 253:
			a.f.label[i], a.f.beside[i], a.f.cover[i] = k, k, 255
		case c >= 128:
			a.f.label[i], a.f.beside[i], a.f.cover[i] = k, u, c
		case c > 2:
			a.f.beside[i], a.f.cover[i] = k, 255-c
		}
	}
	a.order()
	a.inked, a.line = true, new([256]bool)
	for k := range a.leaves {
		a.line[k] = a.leaves[k].role == Metal
	}
}
