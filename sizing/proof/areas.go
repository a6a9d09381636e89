package proof

import (
	"fmt"
	"math"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
)

// cellShown is an area as the picture shows it.
type cellShown struct {
	class  uint8
	at     Point // its deepest place
	deep   int32 // squared, px2
	box    [4]float64
	px     int // of the pin
	list   medians
	shown  rgb
	seen   bool    // enough of its inside is to be seen
	deltaE float64 // from what was asked for, less what may be a stain
}

// insideMM is how far from its borders, beside a soft edge, the inside of an area
// begins.
const insideMM unit.MM = 0.08

// softPx is how far an edge softens what lies beside it, px of the picture.
const softPx = 1.4

// How many places of an area are looked at, and the least for a colour to be
// told: fewer are too stained by JPEG to say.
const (
	mostInside  = 3000
	leastInside = 20
)

// stainE is by how much JPEG may shift the colour of an area that is stainPx deep
// or less, CIEDE2000: its colours are kept by blocks of 16 px. An area wider than
// that all round is not stained in its middle.
const (
	stainE  = 6.0
	stainPx = 2.0
	cleanPx = 8.0
)

// stain is how far the colour of an area may lie off for want of room.
func (c *cellShown) stain(h *held) float64 {
	far := math.Sqrt(float64(c.deep)) * h.ppx
	return stainE * min(1, max(0, (cleanPx-far)/(cleanPx-stainPx)))
}

// inside is how far from its borders the inside of an area begins, px of the pin.
func (h *held) inside() float64 { return h.a.px(insideMM) + softPx/h.ppx }

// findCells takes the median colour of the inside of every area.
func (d *differ) findCells() {
	h, a := d.h, d.h.a
	s := a.Badge.Sep
	d.cells = make([]cellShown, len(a.cells.Area))
	for c := range d.cells {
		x := &d.cells[c]
		x.class, x.px = a.cells.Label[c], a.cells.Area[c]
		x.box = [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	}
	for i, k := range a.cell {
		if c := &d.cells[k]; a.class[i] != outside {
			x, y := float64(i%s.W), float64(i/s.W)
			c.box = [4]float64{min(c.box[0], x), min(c.box[1], y), max(c.box[2], x+1), max(c.box[3], y+1)}
			if a.deep[i] > c.deep {
				c.deep, c.at = a.deep[i], Point{x + 0.5, y + 0.5}
			}
		}
	}
	d.seeInsides()
	for c := range d.cells {
		d.cells[c].settle(a, h)
	}
}

// seeInsides reads the colours of every area, off its borders: beyond half of its
// depth there are too few places, up to there what lies beside it stains.
func (d *differ) seeInsides() {
	h, a := d.h, d.h.a
	s := a.Badge.Sep
	far := h.inside()
	every := max(1, int(0.8/h.ppx))
	far2 := make([]int32, len(d.cells))
	thin := make([]int, len(d.cells))
	for c := range d.cells {
		x := &d.cells[c]
		f := max(far, min(math.Sqrt(float64(x.deep))/2, cleanPx/h.ppx))
		far2[c] = int32(f * f)
		thin[c] = max(every, int(math.Sqrt(float64(x.px)/mostInside)))
	}
	for y := range s.H {
		for x := range s.W {
			i := y*s.W + x
			c := a.cell[i]
			if a.class[i] != outside && a.deep[i] > far2[c] && x%thin[c] == 0 && y%thin[c] == 0 {
				d.cells[c].list.add(h.see(float64(x)+0.5, float64(y)+0.5))
			}
		}
	}
}

func (c *cellShown) settle(a *Asked, h *held) {
	if c.class == outside {
		return
	}
	c.shown = h.shown[c.class]
	if float64(c.list.n)*min(1, h.ppx*h.ppx) < leastInside {
		return
	}
	c.shown, c.seen = c.list.median(), true
	if c.class != metal {
		c.deltaE = max(0, differs(a.askedColour(c.class), c.shown)-c.stain(h))
	}
}

func differs(p, q rgb) float64 {
	return colour.CIEDE2000(p.rgb8().Lab(), q.rgb8().Lab())
}

// colours compares every flat, and every area of it that is another colour than
// the rest.
func (d *differ) colours() {
	d.findCells()
	if d.photo != nil {
		d.balance()
	}
	flats := d.h.a.Badge.Sep.Flats
	for l := range flats {
		if d.h.a.of[l] != uint8(l) {
			continue
		}
		d.flat(uint8(l))
	}
	d.cutOuts()
}

// wholeShare is the share of a flat that must have changed alike for all of it
// to be told as one.
const wholeShare = 0.85

// alikeE is how far areas of one flat may differ and still have one colour.
const alikeE = 2.5

func (d *differ) flat(l uint8) {
	f := &d.h.a.Badge.Sep.Flats[l]
	var list medians
	seen, off := 0, 0
	for c := range d.cells {
		x := &d.cells[c]
		if x.class != l || !x.seen {
			continue
		}
		seen += x.px
		if x.deltaE > d.t.Colour {
			off += x.px
		}
		list.addAll(&x.list)
	}
	show := ColourShown{Flat: f.ID, Name: f.Name, Asked: f.RGB, Shown: f.RGB, Seen: seen > 0}
	if seen == 0 {
		d.r.Colours = append(d.r.Colours, show)
		if d.h.present(l) {
			d.note(fmt.Sprintf("The areas in %s are too small in this picture for their colour to be told.", f.Name))
		}
		return
	}
	all := list.median()
	show.Shown, show.DeltaE = d.lit(all).rgb8(), differs(rgbOf(f.RGB), d.lit(all))
	d.r.Colours = append(d.r.Colours, show)
	whole := float64(off) >= wholeShare*float64(seen) && show.DeltaE > d.t.Colour
	if whole {
		d.recoloured(l, -1, all)
	}
	for c := range d.cells {
		x := &d.cells[c]
		if x.class != l || !x.seen || x.deltaE <= d.t.Colour || whole && differs(all, x.shown) <= alikeE {
			continue
		}
		d.recoloured(l, c, x.shown)
	}
}

func (h *held) present(l uint8) bool {
	for _, c := range h.a.cells.Label {
		if c == l {
			return true
		}
	}
	return false
}

func (m *medians) addAll(o *medians) {
	for k := range m.count {
		for v, n := range o.count[k] {
			m.count[k][v] += n
		}
	}
	m.n += o.n
}

// recoloured notes a flat, or one of its areas, in another colour.
func (d *differ) recoloured(l uint8, cell int, shown rgb) {
	f := &d.h.a.Badge.Sep.Flats[l]
	at, where := d.deepest(l), "everywhere"
	var box [4]float64
	if cell >= 0 {
		at, box, where = d.cells[cell].at, d.cells[cell].box, "in this area"
	} else {
		box = d.boxOf(l)
	}
	x := d.new(AreaRecoloured, []Point{at})
	x.Path, x.Box, x.Flat, x.Whole = nil, box, f.ID, cell < 0
	asked, now := f.RGB, d.lit(shown).rgb8()
	x.AskedRGB, x.ShownRGB = &asked, &now
	x.DeltaE = differs(rgbOf(asked), d.lit(shown))
	x.Asked, x.Shown = f.Name+" "+asked.Hex(), colour.Name(now)+" "+now.Hex()
	x.Words = fmt.Sprintf("%s is shown as %s %s: a difference of %.1f (CIEDE2000).", f.Name, x.Shown, where, x.DeltaE)
	if d.unfilled(l, shown) {
		x.Kind = AreaUnfilled
		x.Shown = "bare metal " + now.Hex()
		x.Words = fmt.Sprintf("%s is not filled %s: it shows bare metal.", f.Name, where)
	}
	d.add(x)
}

func (d *differ) deepest(l uint8) Point {
	best := Point{}
	var most int32 = -1
	for c := range d.cells {
		if x := &d.cells[c]; x.class == l && x.deep > most {
			best, most = x.at, x.deep
		}
	}
	return best
}

func (d *differ) boxOf(l uint8) [4]float64 {
	box := [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for c := range d.cells {
		if x := &d.cells[c]; x.class == l {
			box = [4]float64{min(box[0], x.box[0]), min(box[1], x.box[1]), max(box[2], x.box[2]), max(box[3], x.box[3])}
		}
	}
	return box
}

// cutOuts looks whether every hole through the pin shows what lies behind it.
func (d *differ) cutOuts() {
	a := d.h.a
	s := a.Badge.Sep
	far := d.h.inside()
	for _, hole := range a.holes {
		var list medians
		var box = [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
		for y := range s.H {
			for _, r := range a.cells.Runs[a.cells.Row[y]:a.cells.Row[y+1]] {
				if r.Comp != hole {
					continue
				}
				box = [4]float64{min(box[0], float64(r.X0)), min(box[1], float64(y)), max(box[2], float64(r.X1)), max(box[3], float64(y+1))}
				for x := float64(r.X0) + 0.5 + far; x < float64(r.X1)-far; x++ {
					if a.classAt(x, float64(y)+0.5-far) == outside && a.classAt(x, float64(y)+0.5+far) == outside {
						list.add(d.h.see(x, float64(y)+0.5))
					}
				}
			}
		}
		if list.n < leastInside {
			continue
		}
		shown := list.median()
		if shown.far2(&d.h.bare) < 2*leastStep*leastStep {
			continue
		}
		x := d.new(CutOutFilled, []Point{{(box[0] + box[2]) / 2, (box[1] + box[3]) / 2}})
		x.Path, x.Box = nil, box
		x.Asked, x.Shown = "a hole through the pin", "filled, "+shown.rgb8().Hex()
		x.Words = "This cut-out is shown filled."
		d.add(x)
	}
}
