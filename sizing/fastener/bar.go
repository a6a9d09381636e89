package fastener

import "math"

// barSpread is the share of the part's width, or of its height, that a bar may
// take (this tool's choice: it must not reach the edge).
const barSpread = 0.8

// barPlace is the best place for a pin bar: the longest usual one that stays
// hidden, in the upper half, near the line of balance; level, or upright where
// none is hidden level. When none stays hidden it is the shortest, where it
// shows least.
func (p *plate) barPlace(f fixture) place {
	for _, room := range [...]float64{f.cover/2 + edgeMargin, f.cover / 2} {
		for _, upright := range [...]bool{false, true} {
			if pl, ok := p.longestBar(f, room, upright); ok {
				return pl
			}
		}
	}
	short := barLengths[len(barLengths)-1]
	for _, less := range [...]float64{0.85, 0.7, 0.5, 0.25, 0} {
		for _, upright := range [...]bool{false, true} {
			if q, ok := p.barAt(short, f.cover/2*less, upright); ok {
				return barOf(q, f, short, upright)
			}
		}
	}
	return barOf(point{p.CX, p.CY}, f, short, p.high() > p.wide())
}

// longestBar is the longest usual bar that has room all along.
func (p *plate) longestBar(f fixture, room float64, upright bool) (place, bool) {
	for _, long := range barLengths {
		if long > barSpread*p.reachOf(upright) {
			continue
		}
		if q, ok := p.barAt(long, room, upright); ok {
			return barOf(q, f, long, upright), true
		}
	}
	return place{}, false
}

// barAskew is how far beside the axis of a symmetric part the middle of a bar
// may lie, mm (this tool's choice).
const barAskew = 0.5

func barOf(q point, f fixture, long float64, upright bool) place {
	return place{posts: []point{q}, clutch: f.cover, level: !upright, bar: long, upright: upright}
}

func (p *plate) reachOf(upright bool) float64 {
	if upright {
		return p.high()
	}
	return p.wide()
}

// barAt finds the best middle for a bar of a length all of which has room: at a
// level pair's height, and as near to the line of balance as there is room.
func (p *plate) barAt(long, room float64, upright bool) (q point, ok bool) {
	top := math.Inf(-1)
	aim, lowest := p.CY-float64(pairHeight*p.high()), p.CY+float64(pairBelow*p.high())
	lines, along := p.h, p.CX
	if upright {
		lines, along = p.w, aim
	}
	for i := range lines {
		across := (float64(i) + 0.5) * p.cell
		for _, r := range p.stretches(i, room, upright) {
			if r[1]-r[0] < long {
				continue
			}
			at := point{min(max(along, r[0]+long/2), r[1]-long/2), across}
			if upright {
				at = point{at.y, at.x}
			}
			if at.y > lowest || p.symmetric && math.Abs(at.x-p.CX) > barAskew {
				continue
			}
			if s := -float64(unevenWeight*math.Abs(at.x-p.CX)) - float64(heightWeight*math.Abs(at.y-aim)); s > top {
				top, q, ok = s, at, true
			}
		}
	}
	return q, ok
}

// stretches lists where a row, or a column, has room, as its ends in mm.
func (p *plate) stretches(line int, room float64, column bool) [][2]float64 {
	n, first, step := p.w, line*p.w, 1
	if column {
		n, first, step = p.h, line, p.w
	}
	has := func(i int) bool { c := p.clear[first+i*step]; return c >= room && c > 0 }
	var out [][2]float64
	for i := 0; i < n; i++ {
		if !has(i) {
			continue
		}
		from := i
		for i < n && has(i) {
			i++
		}
		out = append(out, [2]float64{float64(from) * p.cell, float64(i) * p.cell})
	}
	return out
}

// along is the least clearance of a bar.
func (p *plate) along(pl place) float64 {
	ends := barEnds(pl)
	dx, dy := ends[1].x-ends[0].x, ends[1].y-ends[0].y
	steps := max(1, math.Ceil(pl.bar/p.cell))
	room := math.Inf(1)
	for i := 0.0; i <= steps; i++ {
		room = min(room, p.at(point{ends[0].x + dx*i/steps, ends[0].y + dy*i/steps}))
	}
	return room
}

// barEnds are the places where the needle of a bar goes through the cloth, the
// left or upper one first.
func barEnds(pl place) []point {
	q, half := pl.posts[0], pl.bar/2
	if pl.upright {
		return []point{{q.x, q.y - half}, {q.x, q.y + half}}
	}
	return []point{{q.x - half, q.y}, {q.x + half, q.y}}
}
