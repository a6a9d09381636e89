package sheet

import (
	"math"
	"slices"
	"strconv"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/reduce/mask"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// region is one area of a colour, and the widest place in it.
type region struct {
	flat reduce.FlatID
	x, y unit.MM // from the upper left of the front
	room unit.MM // radius of the largest disc there
}

// regionRaster is the long side, in pixels, of the raster in which widest places
// are looked for: they need to be well inside, not exact.
const regionRaster = 900

// regionsOf finds the areas of enamel and print, the roomiest first.
func regionsOf(b *sizing.Badge) []region {
	s := b.Sep
	step := max(1, (max(s.W, s.H)+regionRaster-1)/regionRaster)
	w, h := (s.W+step-1)/step, (s.H+step-1)/step
	label := make([]uint8, w*h)
	for i := range label {
		x, y := min(i%w*step+step/2, s.W-1), min(i/w*step+step/2, s.H-1)
		label[i] = s.Labels[y*s.W+x]
	}
	parts := mask.Connect(label, w, h, &[256]bool{})
	field := mask.Others(label, w, h, &[256]bool{reduce.None: true})
	best := make([]int, len(parts.Label))
	for i := range best {
		best[i] = -1
	}
	for y := range h {
		for _, run := range parts.Runs[parts.Row[y]:parts.Row[y+1]] {
			for i := y*w + int(run.X0); i < y*w+int(run.X1); i++ {
				if b := best[run.Comp]; b < 0 || field.D2[i] > field.D2[b] {
					best[run.Comp] = i
				}
			}
		}
	}
	var all []region
	for part, i := range best {
		l := parts.Label[part]
		if i < 0 || int(l) >= len(s.Flats) || s.Flats[l].Role != reduce.Enamel && s.Flats[l].Role != reduce.Printed {
			continue
		}
		mm := func(cell int, from float64) unit.MM {
			return b.Scale.MM(float64(cell*step+step/2) + 0.5 - from)
		}
		all = append(all, region{
			flat: s.Flats[l].ID, x: mm(i%w, b.Outline[0]), y: mm(i/w, b.Outline[1]),
			room: b.Scale.MM((math.Sqrt(float64(field.D2[i])) - 0.5) * float64(step)),
		})
	}
	slices.SortStableFunc(all, func(a, b region) int {
		switch {
		case a.room > b.room:
			return -1
		case a.room < b.room:
			return 1
		}
		return 0
	})
	return all
}

// The numbers on the enlarged front.
const (
	largestNumber  = 9.0 // points
	smallestNumber = 5.0
	mostLeaders    = 14           // beside the view; with more, only colours without a number get one
	leaderColumn   = unit.MM(6.5) // for numbers beside the view
)

// numbered draws the front enlarged, a number in each area of colour, into a
// box.
func (d *drafting) numbered(x, y, w, h unit.MM) {
	sh := d.s.Shapes
	scale := neatScale(min(float64((w-2*leaderColumn)/sh.Width), float64((h-12)/sh.Height)))
	d.head(x, y+3, w, "Front, numbered", scaleWords(scale))
	wide, high := sh.Width*unit.MM(scale), sh.Height*unit.MM(scale)
	stand := Stand{X: x + (w-wide)/2, Y: y + 6 + max(0, (h-12-high)/2), Scale: scale}
	d.front(stand)
	inside, beside := d.sorted(stand)
	for _, n := range inside {
		d.inArea(n)
	}
	d.leaders(beside, stand, x, w)
	if d.unnumbered {
		d.Text(x, y+h-1.5, small, d.Cut(small, w, "An area without a number has the colour it is drawn in."))
	}
}

// numberAt is a number and the place on the sheet that it belongs to.
type numberAt struct {
	no   int
	x, y unit.MM
	as   Type
}

// sorted says which areas hold their number and which want a leader.
func (d *drafting) sorted(stand Stand) (inside, beside []numberAt) {
	has := map[int]bool{}
	var others []numberAt
	for _, r := range regionsOf(d.s.Badge) {
		no, rgb := d.s.colourOf(r.flat)
		if no == 0 {
			continue
		}
		px, py := stand.At(d.s.Shapes, r.x, r.y)
		n := numberAt{no: no, x: px, y: py, as: Type{Weight: Strong, Colour: onColour(rgb)}}
		if n.as.Size = d.fitting(no, r.room*unit.MM(stand.Scale)); n.as.Size > 0 {
			inside, has[no] = append(inside, n), true
		} else {
			others = append(others, n)
		}
	}
	few := len(others) <= mostLeaders
	for _, n := range others {
		if few || !has[n.no] {
			beside, has[n.no] = append(beside, n), true
		} else {
			d.unnumbered = true
		}
	}
	return inside, beside
}

// colourOf is the number and the colour of a flat; 0 for one that has none.
func (s *Spec) colourOf(f reduce.FlatID) (int, colour.RGB8) {
	for _, c := range s.Asked.Colours {
		if c.Flat == f && c.Role != reduce.Metal {
			return c.No, c.RGB
		}
	}
	return 0, colour.RGB8{}
}

// onColour is black or white, whichever is read better on a colour.
func onColour(c colour.RGB8) colour.RGB8 {
	white := colour.RGB8{R: 255, G: 255, B: 255}
	if colour.Contrast(c, white) > colour.Contrast(c, black) {
		return white
	}
	return black
}

// fitting is the size of type at which a number fits a disc, 0 when none does.
func (d *drafting) fitting(no int, radius unit.MM) float64 {
	text := strconv.Itoa(no)
	for size := largestNumber; size >= smallestNumber; size-- {
		t := Type{Size: size, Weight: Strong}
		half, up := float64(d.Width(t, text))/2, float64(t.Cap())/2
		if half*half+up*up <= float64(radius*radius)*0.9 {
			return size
		}
	}
	return 0
}

func (d *drafting) inArea(n numberAt) {
	d.Centred(n.x, n.y+n.as.Cap()/2, n.as, strconv.Itoa(n.no))
}

// leaders sets numbers in columns left and right of the view, each with a line
// to its area, from the top in the order of their places.
func (d *drafting) leaders(all []numberAt, stand Stand, x, w unit.MM) {
	var sides [2][]numberAt
	for _, n := range all {
		side := 0
		if n.x > x+w/2 {
			side = 1
		}
		sides[side] = append(sides[side], n)
	}
	const step = 3.6
	for side, column := range sides {
		slices.SortStableFunc(column, func(a, b numberAt) int { return int(math.Copysign(1, float64(a.y-b.y))) })
		// As near to the heights of their places as there is room.
		ys := make([]unit.MM, len(column))
		for i := range column {
			ys[i] = column[i].y
			if i > 0 {
				ys[i] = max(ys[i], ys[i-1]+step)
			}
		}
		bottom := stand.Y + d.s.Shapes.Height*unit.MM(stand.Scale) + 2
		for i := len(ys) - 1; i >= 0; i-- {
			ys[i] = min(ys[i], bottom)
			bottom = ys[i] - step
		}
		t := Type{Size: 7.5, Weight: Strong, Colour: black}
		for i, n := range column {
			at, edge := x+1, x+4.5
			if side == 1 {
				at, edge = x+w-3.5, x+w-4
			}
			d.Line(edge, ys[i], n.x, n.y, Pen{Width: 0.25, Colour: paper})
			d.Line(edge, ys[i], n.x, n.y, Pen{Width: 0.12, Colour: black})
			d.Circle(n.x, n.y, 0.35, &black, nil)
			d.Text(at, ys[i]+t.Cap()/2, t, strconv.Itoa(n.no))
		}
	}
}
