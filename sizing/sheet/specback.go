package sheet

import (
	"fmt"
	"slices"
	"strconv"

	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// back draws the pin from behind: bare metal, its stamp, and what holds it.
func (d *drafting) back(stand Stand) {
	sh := d.s.Shapes
	d.Fill(sh, stand, plate, sh.Outline.Areas...)
	d.Stroke(sh, stand, Pen{Width: 0.1, Colour: black}, sh.Outline.Areas...)
	d.cutOuts(stand)
	d.stamp(stand)
	d.chain(stand)
	if d.s.Back.Fastening == sizing.PinBar {
		d.pinBar(stand)
		return
	}
	for i, p := range d.s.Back.Posts {
		d.post(stand, p, d.s.number(i))
	}
}

// over is how far a clutch stands out above the pin.
func (s *Spec) over() unit.MM {
	most := unit.MM(0)
	for _, p := range s.Back.Posts {
		most = max(most, s.Back.Clutch/2-p.Y)
	}
	return most
}

// number is what a post is called by.
func (s *Spec) number(i int) int {
	if i < len(s.Asked.Posts) {
		return s.Asked.Posts[i].No
	}
	return i + 1
}

// clutchLine is the edge of what sits behind the cloth and is no part of the pin.
var clutchLine = Pen{Width: 0.15, Colour: grey, Dash: []unit.MM{1, 0.7}}

// post draws the pad, the clutch dashed, and the middle with its number.
func (d *drafting) post(stand Stand, p sizing.Post, no int) {
	x, y := stand.At(d.s.Shapes, p.X, p.Y)
	k := unit.MM(stand.Scale)
	d.Circle(x, y, d.s.Back.Clutch*k/2, nil, &clutchLine)
	r := d.s.Back.Pad * k / 2
	d.Circle(x, y, r, &paper, &thinLine)
	reach := min(r, 1)
	d.Line(x-reach, y, x+reach, y, thinLine)
	d.Line(x, y-reach, x, y+reach, thinLine)
	t := Type{Size: 6, Weight: Strong, Colour: black}
	if r > 2.2 {
		d.Text(x+0.5, y-0.6, t, strconv.Itoa(no))
	} else {
		d.Text(x+d.s.Back.Clutch*k/2+0.5, y+t.Cap()/2, t, strconv.Itoa(no))
	}
}

// barThick is the width that a pin bar is drawn with, mm.
const barThick unit.MM = 4

func (d *drafting) pinBar(stand Stand) {
	b, k := d.s.Back, unit.MM(stand.Scale)
	if len(b.Posts) == 0 {
		return
	}
	x, y := stand.At(d.s.Shapes, b.Posts[0].X, b.Posts[0].Y)
	w, h := b.Bar*k, barThick*k
	if b.Upright {
		w, h = h, w
	}
	d.Rect(x-w/2, y-h/2, w, h, &paper, &thinLine)
	d.Line(x-1, y, x+1, y, thinLine)
	d.Line(x, y-1, x, y+1, thinLine)
}

// stamp draws the lettering and the mark as they are struck.
func (d *drafting) stamp(stand Stand) {
	st := d.s.Stamped
	if !st.Struck() {
		return
	}
	x, y := stand.At(d.s.Shapes, st.Middle.X, st.Middle.Y)
	k := unit.MM(stand.Scale)
	d.pdf.SetLineCapStyle("round")
	pen := Pen{Width: max(st.Stroke*k, 0.05), Colour: grey}
	for _, way := range st.Strokes() {
		for i := 1; i < len(way); i++ {
			d.Line(x+unit.MM(way[i-1].X)*k, y+unit.MM(way[i-1].Y)*k, x+unit.MM(way[i].X)*k, y+unit.MM(way[i].Y)*k, pen)
		}
	}
	d.pdf.SetLineCapStyle("butt")
	if st.Mark != nil && d.s.Mark != nil {
		d.ownMark(x, y-st.H*k/2, st.Mark.Height*k)
	}
}

// ownMark draws the artist's mark, the middle of its upper side at x, y.
func (d *drafting) ownMark(x, y, high unit.MM) {
	m := d.s.Mark
	side := high / unit.MM(m.H)
	left := x - side*unit.MM(m.W)/2
	rowsOf(m, func(cx, cy, w, h float64) {
		d.Rect(left+side*unit.MM(cx), y+side*unit.MM(cy), side*unit.MM(w), side*unit.MM(h), &grey, nil)
	})
}

// postLines are the places of what holds the pin as seen from behind, a line each.
func (s *Spec) postLines() []string {
	b := s.Back
	var all []string
	for i, p := range b.Posts {
		left, top := s.Shapes.Width-p.X, p.Y
		at := fmt.Sprintf("%s from the left, %s from the top", unit.InMM(left, 1), unit.InMM(top, 1))
		if b.Fastening == sizing.PinBar {
			lies := "level"
			if b.Upright {
				lies = "upright"
			}
			return []string{fmt.Sprintf("Bar %s long, %s, its middle %s.", unit.InMM(b.Bar, 1), lies, at)}
		}
		all = append(all, fmt.Sprintf("%d: %s.", s.number(i), at))
	}
	slices.Sort(all) // by their numbers, which have one digit
	return all
}

// holder is what holds the pin, in words.
func (s *Spec) holder() string {
	n := len(s.Back.Posts)
	switch s.Back.Fastening {
	case sizing.PinBar:
		return "a pin bar"
	case sizing.MagnetBack:
		return amount(n, "magnet")
	case sizing.ScrewBack:
		return amount(n, "screw back")
	}
	if n == 1 {
		return "1 post with a clutch"
	}
	return amount(n, "post") + " with clutches"
}

// postsWide is how wide the places of posts are set.
const postsWide unit.MM = 52

// postsHigh is how high they are.
func (d *drafting) postsHigh() unit.MM {
	y := unit.MM(5)
	for _, l := range d.postsText() {
		y += unit.MM(len(d.Wrap(body, postsWide, l)))*body.Leading() + 0.8
	}
	return y
}

func (d *drafting) postsText() []string {
	all := append([]string{"From behind, to the middle of each:"}, d.s.postLines()...)
	b := d.s.Back
	switch {
	case b.Fastening == sizing.PinBar:
	case b.Pad > 0 && b.Clutch > 0:
		all = append(all, fmt.Sprintf("Drawn: pad %s, and dashed what grips it behind the cloth, %s across.", unit.InMM(b.Pad, 1), unit.InMM(b.Clutch, 1)))
	}
	if d.s.Asked.Stamp != "" {
		all = append(all, "Back stamp: "+d.s.Asked.Stamp+".")
	}
	return all
}

// posts sets their places; x counts from the left of the back.
func (d *drafting) posts(x, y unit.MM) {
	width := min(postsWide, margin+d.wide-x)
	d.head(x, y, width, fastening, d.s.holder())
	y += 4.5
	for _, l := range d.postsText() {
		y = d.Block(x, y, width, body, l) + 0.8
	}
}
