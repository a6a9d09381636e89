package proof

import (
	"fmt"
	"math"
	"slices"

	"badgewright/reduce"
	"badgewright/reduce/colour"
)

// Snapshot says that a picture is a photograph of a finished pin.
type Snapshot struct {
	// White is a place of a white card or paper in the picture, px; nil where none
	// is in view.
	White *Point
	// Metal is the colour of the plating as this tool shows it: what the light is
	// judged by where there is no white.
	Metal colour.RGB8
}

// Photographed are the usual tolerances of a photograph: light, gloss and a
// slanted view make all but plain faults doubtful.
func Photographed() Tolerances {
	t := Usual()
	t.Outline, t.OutlineRun = 0.6, 1.5
	t.Line, t.LineShare = 0.3, 1
	t.Colour = 12
	t.Added = 2
	return t
}

// whiteCard is the linear light that a white card sends back: nine tenths.
const whiteCard = 0.9

// balance finds by how much the light of the picture is off, channel by channel,
// and takes it out of every colour.
func (d *differ) balance() {
	gain, by := d.gains()
	for k := range gain {
		gain[k] = min(20, max(0.05, gain[k]))
	}
	d.gain = &gain
	for c := range d.cells {
		if x := &d.cells[c]; x.seen && x.class < metal {
			x.deltaE = max(0, differs(d.h.a.askedColour(x.class), d.lit(x.shown))-x.stain(d.h))
		}
	}
	d.note("Colours in a photograph that nobody calibrated are compared only within the picture: " + by + ". How they look by day has to be judged by eye.")
}

// gains are the factors of linear light, by the white card, else by what all
// colours and the metal have in common.
func (d *differ) gains() (gain [3]float64, by string) {
	if w := d.photo.White; w != nil {
		var list medians
		for v := -4.0; v <= 4; v++ {
			for u := -4.0; u <= 4; u++ {
				list.add(d.h.p.at(w.X+u, w.Y+v))
			}
		}
		c := list.median()
		for k := range gain {
			gain[k] = whiteCard / max(0.01, linear(c[k]))
		}
		return gain, "relative to the white that was marked"
	}
	var ratio [3][]float64
	add := func(asked, shown rgb) {
		for k := range ratio {
			ratio[k] = append(ratio[k], math.Max(0.01, linear(asked[k]))/math.Max(0.01, linear(shown[k])))
		}
	}
	for l := range d.h.a.Badge.Sep.Flats {
		if d.h.known[l] && d.h.a.of[l] == uint8(l) {
			add(d.h.a.askedColour(uint8(l)), d.h.shown[l])
		}
	}
	if d.h.known[metal] {
		add(rgbOf(d.photo.Metal), d.h.shown[metal])
	}
	for k := range gain {
		gain[k] = 1
		if n := len(ratio[k]); n > 0 {
			slices.Sort(ratio[k])
			gain[k] = (ratio[k][(n-1)/2] + ratio[k][n/2]) / 2
		}
	}
	return gain, "relative to the metal and to each other"
}

func linear(v float64) float64 { return colour.Decode(min(255, max(0, v)) / 255) }

// lit is a colour as it would be in even, white light.
func (d *differ) lit(c rgb) rgb {
	if d.gain == nil {
		return c
	}
	for k := range c {
		c[k] = 255 * colour.Encode(min(1, linear(c[k])*d.gain[k]))
	}
	return c
}

// bareE is how near the metal's colour an area must be to be taken for bare, and
// notMetalE how far from it what was asked for.
const (
	bareE     = 9.0
	notMetalE = 14.0
)

// unfilled says whether an area shows bare metal where enamel was asked for.
func (d *differ) unfilled(l uint8, shown rgb) bool {
	m := d.h.shown[metal]
	return d.h.known[metal] && differs(m, shown) < bareE && differs(d.lit(m), d.h.a.askedColour(l)) > notMetalE
}

// swapped makes one difference of two colours that have changed places.
func (d *differ) swapped() {
	list := d.r.Differences
	gone := make([]bool, len(list))
	for i := range list {
		for k := i + 1; k < len(list); k++ {
			if !gone[i] && !gone[k] && crossed(&list[i], &list[k]) {
				gone[k] = true
				list[i] = d.swap(list[i], &list[k])
			}
		}
	}
	kept := list[:0:0]
	for i := range list {
		if !gone[i] {
			kept = append(kept, list[i])
		}
	}
	d.r.Differences = kept
}

// crossed says whether each of two flats lies much nearer to the other's colour
// than to its own.
func crossed(x, y *Deviation) bool {
	if x.Kind != AreaRecoloured || y.Kind != AreaRecoloured || !x.Whole || !y.Whole {
		return false
	}
	own := x.DeltaE + y.DeltaE
	other := colour.CIEDE2000(x.ShownRGB.Lab(), y.AskedRGB.Lab()) + colour.CIEDE2000(y.ShownRGB.Lab(), x.AskedRGB.Lab())
	return 2*other < own
}

func (d *differ) swap(x Deviation, y *Deviation) Deviation {
	x.Kind, x.Other = ColoursSwapped, y.Flat
	a, b := d.nameOf(x.Flat), d.nameOf(y.Flat)
	x.Asked, x.Shown = fmt.Sprintf("%s and %s each in its areas", a, b), "the two changed over"
	x.Words = fmt.Sprintf("%s and %s have changed places.", a, b)
	return x
}

func (d *differ) nameOf(id reduce.FlatID) string {
	for _, f := range d.h.a.Badge.Sep.Flats {
		if f.ID == id {
			return f.Name
		}
	}
	return ""
}
