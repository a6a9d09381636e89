package fastener

import (
	"fmt"
	"math"

	"badgewright/reduce/mask"
	"badgewright/sizing"
	"badgewright/sizing/unit"
)

// The artist's own mark on the back (common practice, no published source).
const (
	markUsual = 6.0 // mm, as high as a mark is made when there is room
	markLeast = 0.2 // mm, narrowest stroke or gap that a die holds
	markTimes = 3.0 // of the height of capitals, a mark above lettering
	markGap   = 0.7 // of the height of capitals, from a mark to the lettering
	// markCoarsest is the widest stroke that is looked for, in cells: a mark
	// lower than four of its strokes is none.
	markCoarsest = sizing.MarkCells / 4
)

// StampedMark is the artist's own mark as it stands on the back.
type StampedMark struct {
	W      unit.MM `json:"w"`
	Height unit.MM `json:"height"`
	Least  unit.MM `json:"least"` // the narrowest stroke or gap that is held
	// HoldsFrom is the height from which no stroke and no gap is narrower.
	HoldsFrom unit.MM `json:"holdsFrom"`
	Holds     bool    `json:"holds"`
}

// ownMark is a mark to be placed.
type ownMark struct {
	sizing.Mark
	cells []bool
}

func ownMarkOf(m *sizing.Mark) (*ownMark, error) {
	if m == nil {
		return nil, nil
	}
	cells, err := m.Cells()
	return &ownMark{*m, cells}, err
}

// struck measures it at a height, mm.
func (m *ownMark) struck(height float64) *StampedMark {
	least := markLeast
	if m.Least > 0 {
		least = float64(m.Least)
	}
	out := &StampedMark{W: place2(height * float64(m.W) / float64(m.H)), Height: place2(height), Least: unit.MM(least), Holds: true}
	cell := height / float64(m.H)
	wide := math.Inf(1)
	if cell > 0 {
		wide = least / cell
	}
	if out.Holds = wide <= markCoarsest && m.holds(wide); out.Holds {
		out.HoldsFrom = out.Height
		return out
	}
	out.HoldsFrom = unit.MM(math.Ceil(float64(10*least*float64(m.H))/m.narrowest(min(wide, markCoarsest))-1e-6) / 10)
	return out
}

// narrowest is the width, in cells, to which every stroke and gap holds, looked
// for below one at which some do not.
func (m *ownMark) narrowest(below float64) float64 {
	if m.holds(below) {
		return below
	}
	// Squares of distances between pixels are whole numbers; nothing is narrower
	// than a cell.
	low, high := 1, int(math.Ceil(below*below))
	for high-low > 1 {
		if mid := (low + high) / 2; m.holds(math.Sqrt(float64(mid))) {
			low = mid
		} else {
			high = mid
		}
	}
	return math.Sqrt(float64(low))
}

// holds says whether no stroke and no gap is narrower than a width in cells.
func (m *ownMark) holds(wide float64) bool {
	if wide <= 1 {
		return true
	}
	// At twice as many pixels as cells the middle of every stroke lies on a pixel,
	// so half the width in pixels is the width in cells.
	pad := int(math.Ceil(wide)) + 2
	w, h := 2*(m.W+pad), 2*(m.H+pad)
	on, off := make([]bool, w*h), make([]bool, w*h)
	for i := range on {
		x, y := i%w/2-pad/2, i/w/2-pad/2
		on[i] = x >= 0 && y >= 0 && x < m.W && y < m.H && m.cells[y*m.W+x]
		off[i] = !on[i]
	}
	return !narrower(on, off, w, h, wide) && !narrower(off, on, w, h, wide)
}

// narrower says whether part of a shape is too narrow for a disc of radius r,
// px, to roll in: whole bits of it, or what is longer than it is wide. What a
// disc leaves out of a corner is less.
func narrower(shape, rest []bool, w, h int, r float64) bool {
	edge, _ := mask.Nearest(rest, w, h)
	reach := float64(r*r) - 1e-9
	core := make([]bool, w*h)
	for i := range core {
		core[i] = shape[i] && float64(edge.D2[i]) >= reach
	}
	near, some := mask.Nearest(core, w, h)
	if !some {
		return true
	}
	// 1 is what is rolled over, 2 what is not.
	label := make([]uint8, w*h)
	for i := range label {
		if shape[i] {
			label[i] = 1
			if float64(near.D2[i]) >= reach {
				label[i] = 2
			}
		}
	}
	eight := &[256]bool{1: true, 2: true}
	left := mask.Connect(label, w, h, eight)
	for i, l := range left.Label {
		if l == 2 && float64(left.Area[i]) > 2*reach {
			return true
		}
	}
	return lost(shape, label, w, h, eight)
}

// lost says whether a whole part of a shape is rolled over nowhere.
func lost(shape []bool, label []uint8, w, h int, eight *[256]bool) bool {
	whole := make([]uint8, w*h)
	for i, is := range shape {
		if is {
			whole[i] = 1
		}
	}
	parts := mask.Connect(whole, w, h, eight)
	kept := make([]bool, len(parts.Label))
	for y := range h {
		for _, run := range parts.Runs[parts.Row[y]:parts.Row[y+1]] {
			for x := run.X0; x < run.X1; x++ {
				kept[run.Comp] = kept[run.Comp] || label[y*w+int(x)] == 1
			}
		}
	}
	for i, l := range parts.Label {
		if l == 1 && !kept[i] {
			return true
		}
	}
	return false
}

// says tells of its strokes; "" where they hold.
func (s *StampedMark) says() string {
	if s == nil || s.Holds || s.Height == 0 {
		return ""
	}
	return fmt.Sprintf(" The mark is %s high: strokes or gaps of it are narrower than %s and may fill in or be lost; from %s it holds.",
		unit.InMM(s.Height, 2), unit.InMM(s.Least, 2), unit.InMM(s.HoldsFrom, 1))
}
