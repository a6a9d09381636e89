package sight

import (
	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// Look says how a badge is to be seen.
type Look struct {
	Plating  sizing.Plating
	Fill     sizing.Fill
	Side     Side
	LongSide int // of the picture, px
	// Posts, Clutch and Pad (diameters) are drawn on the back: what stands there
	// is of the Fastening, a pin bar of the length Bar.
	Posts     []sizing.Post
	Clutch    unit.MM
	Pad       unit.MM
	Fastening sizing.Fastening
	Bar       unit.MM
	Upright   bool   // the bar stands upright
	Stamp     *Stamp // nil for none
	// Chain is the rings and links that parts hang by, given from the front.
	Chain []sizing.Loop
	// Recolour gives flats other colours and Finish other finishes, by ID; nil
	// changes none.
	Recolour Recolour
	Finish   Finish
}

// Struck draws a badge as a pin in metal and enamel, on a clear ground with a
// soft shadow. It stops with p's error when p, which may be nil, returns one.
func Struck(b *sizing.Badge, look Look, p reduce.Progress) (*Image, error) {
	im := frameOf(b, look.LongSide)
	k := fineFor(look.LongSide)
	fr := im.finer(k)
	if err := tell(p, 0, "laying out the metal"); err != nil {
		return nil, err
	}
	f := lay(b, fr, look.Recolour)
	s := scene{field: f, look: &look, mm: float32(float64(b.Scale) * fr.Scale), ball: ballOf(&look.Plating)}
	if look.Side == Back {
		f.mirror()
	} else {
		s.finish = layFinish(b, fr, look.Finish)
	}
	if err := tell(p, 0.4, "raising the lines"); err != nil {
		return nil, err
	}
	var pix []uint32
	if look.Side == Back {
		pix = s.back(b, fr)
	} else {
		pix = s.front()
		s.chain(fr, pix)
	}
	if err := tell(p, 0.95, "polishing"); err != nil {
		return nil, err
	}
	im.Pix = shrink(pix, fr.W, fr.H, k)
	return &im, nil
}

func tell(p reduce.Progress, share float64, doing string) error {
	if p == nil {
		return nil
	}
	return p(share, doing)
}

// scene is everything the shading reads.
type scene struct {
	*field
	look *Look
	mm   float32 // px per mm of the finished pin
	ball *ball
	// finish of the flat in the middle of each pixel; nil when all are plain.
	finish []sizing.Finish
}

// px is a length on the pin in px, held between two bounds of the picture.
func (s *scene) px(mm, least, most float32) float32 {
	return min(max(mul(mm, s.mm), least), most)
}
