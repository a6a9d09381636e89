package wall

import (
	"math"
	"slices"
)

// What may be a letter, against its own height or the raster (this tool's
// choices: what tells a stroke of the pen from a dot, a bar or a patch).
const (
	leastLetter = 8    // px high or wide; less cannot be told from grain
	mostLetter  = 0.2  // of the raster's long side
	boldest     = 0.45 // the largest disc in a letter, of its height or width
	linedUp     = 1.3  // the length of its strokes, of its height: a bar has 1
	widestOf    = 1.7  // its width, of its height
	mostParts   = 1500 // more small parts than this are texture
)

// letter is a part that may be one.
type letter struct {
	part    int32
	x, y    float64 // middle of its box
	big     float64 // the longer side of its box
	links   [2]int32
	next    int     // how many links
	height  float64 // across the row
	width   float64 // along the row
	lo, hi  float64 // its reach across the row, from its middle
	strokes float64 // length of its strokes
}

// letters returns the parts that may be letters: of metal standing in enamel,
// or of enamel sunk into metal, in which case what is inside a letter of metal
// does not count.
func (m *Measured) letters() (raised, sunk []letter) {
	is := make([]bool, len(m.parts.Label))
	for i, c := range m.parts.Label {
		k := int32(i)
		if c == metal && m.round.by[k]&(byOutside|byFrame) == 0 && m.maybeLetter(k) {
			is[k] = true
			raised = append(raised, m.letterOf(k))
		}
	}
	for i, c := range m.parts.Label {
		k := int32(i)
		if m.v.enamel[c] && m.round.by[k] == byMetal && !is[max(m.round.outer[k], 0)] && m.maybeLetter(k) {
			sunk = append(sunk, m.letterOf(k))
		}
	}
	return raised, sunk
}

func (m *Measured) maybeLetter(k int32) bool {
	b := m.boxes[k]
	big := max(b[2]-b[0], b[3]-b[1])
	return big >= leastLetter && big <= mostLetter*float64(max(m.v.w, m.v.h)) && m.widthOf(k) <= boldest*big
}

func (m *Measured) letterOf(k int32) letter {
	b := m.boxes[k]
	return letter{
		part: k, x: (b[0] + b[2]) / 2, y: (b[1] + b[3]) / 2, big: max(b[2]-b[0], b[3]-b[1]),
		strokes: m.area[k] / m.widthOf(k),
	}
}

// spacing is how far apart the middles of neighbouring letters are at most, in
// heights: a narrow letter, a space, and a wide one. likeSize is how much larger
// one may be than the other.
const (
	spacing  = 1.9
	likeSize = 2.2
)

// link gives each letter its nearest neighbour, and the nearest on the other
// hand; those that do not look back are let go.
func link(all []letter) {
	for i := range all {
		l := &all[i]
		one := nearestLetter(all, i, -1)
		if one < 0 {
			continue
		}
		l.links[0], l.next = int32(one), 1
		if two := nearestLetter(all, i, one); two >= 0 {
			l.links[1], l.next = int32(two), 2
		}
	}
	was := slices.Clone(all)
	for i := range all {
		l := &all[i]
		l.next = 0
		for _, k := range was[i].links[:was[i].next] {
			if back := &was[k]; slices.Contains(back.links[:back.next], int32(i)) {
				l.links[l.next] = k
				l.next++
			}
		}
	}
}

// cosAcross is the cosine of the angle between the ways to both neighbours, at
// least: letters stand in a row.
const cosAcross = -0.5

// nearestLetter returns the nearest of those within reach, on the other hand
// than one unless that is -1; -1 for none.
func nearestLetter(all []letter, i, one int) int {
	l := &all[i]
	best, pick := math.MaxFloat64, -1
	for k := range all {
		q := &all[k]
		dx, dy := q.x-l.x, q.y-l.y
		d := math.Hypot(dx, dy)
		if k == i || d >= best || d > spacing*min(l.big, q.big) || max(l.big, q.big) > likeSize*min(l.big, q.big) {
			continue
		}
		if one >= 0 {
			ox, oy := all[one].x-l.x, all[one].y-l.y
			if float64(dx*ox)+float64(dy*oy) > cosAcross*d*math.Hypot(ox, oy) {
				continue
			}
		}
		best, pick = d, k
	}
	return pick
}

// chains returns the rows that links make, each from one end to the other.
func chains(all []letter) (rows [][]int32) {
	seen := make([]bool, len(all))
	walk := func(i int32) {
		var row []int32
		for i >= 0 {
			seen[i] = true
			row = append(row, i)
			on := int32(-1)
			for _, k := range all[i].links[:all[i].next] {
				if !seen[k] {
					on = k
				}
			}
			i = on
		}
		rows = append(rows, row)
	}
	for i := range all {
		if !seen[i] && all[i].next <= 1 {
			walk(int32(i))
		}
	}
	for i := range all {
		if !seen[i] { // a ring of letters
			walk(int32(i))
		}
	}
	return rows
}
