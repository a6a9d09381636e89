package sight

import (
	"math"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// paint draws a badge from a rule that gives the flat at a place: x and y run
// from 0 to 1 across a square, four by four places are asked in each pixel.
func paint(side int, mm unit.MM, flats []reduce.Flat, at func(x, y float64) uint8) *sizing.Badge {
	s := reduce.NewSeparation(side, side)
	s.Flats = flats
	for i := range s.Labels {
		var votes [256]int
		for k := 0; k < 16; k++ {
			x := (float64(i%side) + (float64(k%4)+0.5)/4) / float64(side)
			y := (float64(i/side) + (float64(k/4)+0.5)/4) / float64(side)
			votes[at(x, y)]++
		}
		first, second := best(&votes)
		s.Labels[i], s.Beside[i] = first, second
		if n := votes[first] + votes[second]; second != first {
			s.Cover[i] = uint8(max(128, votes[first]*255/n))
		}
	}
	box, _ := sizing.Outline(s)
	return &sizing.Badge{Sep: s, Outline: box, Scale: sizing.ScaleFor(box, sizing.Size{MM: mm, By: sizing.ByLongest})}
}

func best(votes *[256]int) (first, second uint8) {
	for l, v := range votes {
		if v > votes[first] {
			first = uint8(l)
		}
	}
	second = first
	for l, v := range votes {
		if uint8(l) != first && v > 0 && (second == first || v > votes[second]) {
			second = uint8(l)
		}
	}
	return first, second
}

func flat(id int, role reduce.Role, hex uint32) reduce.Flat {
	return reduce.Flat{ID: reduce.FlatID(id), Role: role, RGB: colour.RGB8{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex)}}
}

// The flats of the test pin.
const (
	line = iota
	sky
	sea
	white
	red
	sun
	hole
	inkFlat
)

// lightPin is a round pin: a tower on a rock before a sun, over waves, with a
// hole to hang it by.
func lightPin(side int, mm unit.MM) *sizing.Badge {
	flats := []reduce.Flat{
		flat(line, reduce.Metal, 0x202020), flat(sky, reduce.Enamel, 0x2b5c8a), flat(sea, reduce.Enamel, 0x12304f),
		flat(white, reduce.Enamel, 0xf4efe2), flat(red, reduce.Enamel, 0xc8322b), flat(sun, reduce.Enamel, 0xf2b53c),
		flat(hole, reduce.CutOut, 0xffffff), flat(inkFlat, reduce.Printed, 0x1d1d22),
	}
	return paint(side, mm, flats, lightAt)
}

func lightAt(x, y float64) uint8 {
	const wall = 0.0085
	out := math.Hypot(x-0.5, y-0.52) - 0.44
	lug := math.Hypot(x-0.5, y-0.075) - 0.05
	if min(out, lug) > 0 {
		return reduce.None
	}
	if math.Hypot(x-0.5, y-0.07) < 0.026 {
		return hole
	}
	if out > -0.022 || lug < 0 && out > -0.05 {
		return line
	}
	near := func(d float64) bool { return math.Abs(d) < wall/2 }
	// Tower: a taper from y .30 to .74, banded.
	half := 0.055 + (y-0.30)*0.09
	tower := max(math.Abs(x-0.46)-half, max(0.30-y, y-0.745))
	lamp := max(math.Abs(x-0.46)-0.042, max(0.215-y, y-0.30))
	roof := max(math.Abs(x-0.46)-(y-0.15)*0.85, max(0.15-y, y-0.215))
	switch {
	case near(tower), near(lamp), near(roof), math.Abs(y-0.30) < 0.009 && math.Abs(x-0.46) < 0.085:
		return line
	case roof < 0:
		return red
	case lamp < 0:
		if math.Hypot(x-0.46, y-0.255) < 0.013 {
			return inkFlat
		}
		return sun
	case tower < 0:
		band := math.Mod((y-0.30)/0.089, 2)
		if e := math.Mod((y-0.30)/0.089, 1); e < wall/0.089 && y > 0.31 {
			return line
		}
		if math.Hypot(x-0.46, y-0.43) < 0.016 {
			return line
		}
		if band < 1 {
			return white
		}
		return red
	}
	rock := y - (0.73 + 0.9*(x-0.46)*(x-0.46)*4)
	wave := y - (0.76 + 0.012*math.Sin(x*38))
	wave2 := y - (0.85 + 0.010*math.Sin(x*34+1))
	switch {
	case rock > 0 && wave < 0:
		return line
	case near(wave), near(wave2):
		return line
	case wave2 > 0:
		return sky
	case wave > 0:
		return sea
	}
	disc := math.Hypot(x-0.66, y-0.40) - 0.12
	if near(disc) {
		return line
	}
	if disc < 0 {
		return sun
	}
	return sky
}

func plating(id sizing.PlatingID) sizing.Plating {
	for _, p := range sizing.Platings() {
		if p.ID == id {
			return p
		}
	}
	panic("no such plating: " + id)
}
