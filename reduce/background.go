package reduce

import "badgewright/reduce/colour"

// Ground is what lies round a drawing, found and set apart.
type Ground struct {
	// Found is what the background is: clear, paper or none.
	Found GroundChoice
	// RGB is the paper's colour after levelling; white when clear or none.
	RGB colour.RGB8
	// Note tells the artist in one plain sentence what was done.
	Note string
	// Back holds, for each pixel, 255 where it is surely background, 0 where it
	// is surely drawing, and between them the share that is transparent. Soft
	// pixels between drawing and paper are 0: whoever finds edges mixes them.
	Back []uint8
	// Levelled is the drawing with the shading of its paper taken out; the
	// very drawing that came in when there was nothing to do.
	Levelled *Drawing
}

const (
	// clearAlpha is the alpha up to which a pixel shows nothing: painting
	// programs leave such veils behind an eraser.
	clearAlpha = 8
	// clearOfBorder is the share of the file's border that must be clear
	// before transparency is taken for the background, in parts of 1000: less
	// is a slip of the brush.
	clearOfBorder = 10
	// sameColour is the spread per channel within which a whole file counts as
	// one colour: JPEG and scanners wander this much on a blank sheet.
	sameColour = 6
	// leastDrawing is the number of pixels that must be left to speak of a drawing.
	leastDrawing = 16
)

var white = colour.RGB8{R: 255, G: 255, B: 255}

// FindGround finds the background of a drawing. Only what reaches the edge of
// the file is background: paper enclosed by the drawing stays. It refuses
// drawings with nothing to see.
func FindGround(d *Drawing, choice GroundChoice) (*Ground, error) {
	if err := somethingToSee(d); err != nil {
		return nil, err
	}
	clearBorder := clearShare(d)
	switch {
	case choice == GroundNone:
		return noGround(d, "The whole file is taken as drawing, as you asked; its outline is the edge of the file."), nil
	case choice == GroundClear, choice != GroundPaper && clearBorder >= clearOfBorder:
		return clearGround(d)
	}
	g, err := paperGround(d)
	if g != nil || err != nil {
		return g, err
	}
	if hasClear(d) {
		return clearGround(d)
	}
	if choice == GroundPaper {
		return noGround(d, "No one colour runs along enough of the file's edge to be paper, so the whole file is taken as drawing."), nil
	}
	return noGround(d, "The drawing fills the whole file, so the pin's outline is the edge of the file."), nil
}

// somethingToSee refuses a drawing that is clear all over, or of one colour
// with no shape.
func somethingToSee(d *Drawing) error {
	var low, high [4]uint8
	seen := false
	var last uint32
	for _, p := range d.Pix {
		if p == last && seen {
			continue
		}
		if p>>24 <= clearAlpha {
			p = 0 // whatever colour it keeps, it shows none
		}
		if !seen {
			low, high, seen = channels(p), channels(p), true
		}
		last = p
		for c, v := range channels(p) {
			low[c], high[c] = min(low[c], v), max(high[c], v)
			if high[c]-low[c] > sameColour {
				return nil
			}
		}
	}
	if high[3] == 0 {
		return &Refusal{What: "This picture is transparent all over: there is nothing to see in it.",
			Do: "Check that the layers are switched on, and export it again."}
	}
	return &Refusal{What: "This picture is one colour all over: there is no drawing to see in it.",
		Do: "Check that the layer with the drawing is switched on, and export it again."}
}

func channels(p uint32) [4]uint8 {
	return [4]uint8{uint8(p), uint8(p >> 8), uint8(p >> 16), uint8(p >> 24)}
}

// borderOf returns the indexes of the pixels along the file's edge, each once,
// clockwise from the top left.
func borderOf(w, h int) []int {
	if w == 1 || h == 1 {
		all := make([]int, w*h)
		for i := range all {
			all[i] = i
		}
		return all
	}
	idx := make([]int, 0, 2*(w+h))
	for x := 0; x < w; x++ {
		idx = append(idx, x)
	}
	for y := 1; y < h; y++ {
		idx = append(idx, y*w+w-1)
	}
	for x := w - 2; x >= 0; x-- {
		idx = append(idx, (h-1)*w+x)
	}
	for y := h - 2; y > 0; y-- {
		idx = append(idx, y*w)
	}
	return idx
}

// clearShare returns how much of the border is clear, in parts of 1000.
func clearShare(d *Drawing) int {
	border := borderOf(d.W, d.H)
	n := 0
	for _, i := range border {
		if d.Pix[i]>>24 <= clearAlpha {
			n++
		}
	}
	return 1000 * n / len(border)
}

func hasClear(d *Drawing) bool {
	for _, p := range d.Pix {
		if p>>24 <= clearAlpha {
			return true
		}
	}
	return false
}

// clearGround takes every transparent pixel as background, in the share in
// which it is transparent.
func clearGround(d *Drawing) (*Ground, error) {
	back := make([]uint8, len(d.Pix))
	clearTo(back, d.Pix)
	if drawn(back) < leastDrawing {
		return nil, &Refusal{What: "Almost nothing in this picture is solid enough to see.",
			Do: "Export it again with the drawing at full strength, or choose another background."}
	}
	g := &Ground{Found: GroundClear, RGB: white, Back: back, Levelled: d,
		Note: "The transparent part of the file is left away."}
	if !hasClear(d) {
		g.Found, g.Note = GroundNone, "Nothing in this file is transparent, so the whole file is taken as drawing."
	}
	return g, nil
}

// clearTo raises back to the transparent share of each pixel.
func clearTo(back []uint8, pix []uint32) {
	back = back[:len(pix)]
	for i, p := range pix {
		if p < 0xff000000 {
			a := uint8(p >> 24)
			if a <= clearAlpha {
				a = 0
			}
			back[i] = max(back[i], 255-a)
		}
	}
}

// drawn counts the pixels that are at least half drawing.
func drawn(back []uint8) int {
	n := 0
	for _, b := range back {
		if b < 128 {
			n++
		}
	}
	return n
}

// noGround takes the whole file as drawing; what is transparent in it is laid
// on white, as it would be seen on a page.
func noGround(d *Drawing, note string) *Ground {
	return &Ground{Found: GroundNone, RGB: white, Note: note, Back: make([]uint8, len(d.Pix)), Levelled: onWhite(d)}
}

func onWhite(d *Drawing) *Drawing {
	solid := true
	for _, p := range d.Pix {
		if p < 0xff000000 {
			solid = false
			break
		}
	}
	if solid {
		return d
	}
	laid := *d
	laid.Pix = make([]uint32, len(d.Pix))
	for i, p := range d.Pix {
		a := p >> 24
		over := func(c uint32) uint32 { return (c*a + 255*(255-a) + 127) / 255 }
		laid.Pix[i] = over(p&255) | over(p>>8&255)<<8 | over(p>>16&255)<<16 | 0xff000000
	}
	return &laid
}
