package fastener

import "math"

// barSpread is the share of the part's width that a bar may take (this tool's
// choice: it must not reach the edge).
const barSpread = 0.8

// barPlace is the best place for a pin bar: the longest usual one that stays
// hidden, level, in the upper half, near the line of balance. When none stays
// hidden it is the shortest, where it shows least.
func (p *plate) barPlace(f fixture) place {
	room := f.cover/2 + edgeMargin
	for _, long := range barLengths {
		if long > barSpread*p.wide() {
			continue
		}
		if q, ok := p.barAt(long, room); ok {
			return place{posts: []point{q}, clutch: f.cover, level: true, bar: long}
		}
	}
	short := barLengths[len(barLengths)-1]
	for _, less := range [...]float64{0.85, 0.7, 0.5, 0.25, 0} {
		if q, ok := p.barAt(short, room*less); ok {
			return place{posts: []point{q}, clutch: f.cover, level: true, bar: short}
		}
	}
	return place{posts: []point{{p.CX, p.CY}}, clutch: f.cover, level: true, bar: short}
}

// barAt finds the best middle for a bar of a length all of which has room: a
// level pair's height, and as near to the line of balance as the row allows.
func (p *plate) barAt(long, room float64) (q point, ok bool) {
	top := math.Inf(-1)
	aim, lowest := p.CY-float64(pairHeight*p.high()), p.CY+float64(pairBelow*p.high())
	for y := range p.h {
		at := (float64(y) + 0.5) * p.cell
		if at > lowest {
			break
		}
		for _, r := range p.stretches(y, room) {
			if r[1]-r[0] < long {
				continue
			}
			x := min(max(p.CX, r[0]+long/2), r[1]-long/2)
			if s := -float64(unevenWeight*math.Abs(x-p.CX)) - float64(heightWeight*math.Abs(at-aim)); s > top {
				top, q, ok = s, point{x, at}, true
			}
		}
	}
	return q, ok
}

// stretches lists where a row has room, as x0 and x1 in mm.
func (p *plate) stretches(y int, room float64) [][2]float64 {
	var out [][2]float64
	row := p.clear[y*p.w : y*p.w+p.w]
	for x := 0; x < len(row); x++ {
		if row[x] < room || row[x] <= 0 {
			continue
		}
		from := x
		for x < len(row) && row[x] >= room && row[x] > 0 {
			x++
		}
		out = append(out, [2]float64{float64(from) * p.cell, float64(x) * p.cell})
	}
	return out
}

// along is the least clearance of a level bar about its middle.
func (p *plate) along(q point, long float64) float64 {
	room := math.Inf(1)
	for x := q.x - long/2; x <= q.x+long/2; x += p.cell {
		room = min(room, p.at(point{x, q.y}))
	}
	return min(room, p.at(point{q.x + long/2, q.y}))
}

// barEnds are the places where the needle of a bar goes through the cloth.
func barEnds(q point, long float64) []point {
	return []point{{q.x - long/2, q.y}, {q.x + long/2, q.y}}
}
