package wall

import (
	"math"
	"slices"

	"badgewright/reduce/mask"
)

const (
	// bayNeck is how wide the opening of a bay is at most, against the largest
	// disc behind it: this tool's choice, beyond which one would call it a notch
	// in the outline.
	bayNeck = 0.4
	// leastBay is how wide, in pixels, the largest disc in a bay is at least.
	leastBay = 8
	// widestNeck is how wide an opening is at most, as a share of the raster's
	// long side, to be looked at: the smallest cut-out of the trade on a pin of
	// half an inch.
	widestNeck = 0.12
	// longestChannel is how many points alike are looked at for their middle.
	longestChannel = 256
	// mostNecks is how many places are looked at, the narrowest first, lest an
	// outline of grass take all day.
	mostNecks = 64
)

// bays notes the rooms behind narrow openings to the outside: where the
// centreline of what lies outside is narrowest, it is cut there, and what then
// no longer reaches the end of the raster is a bay.
func (r *roomer) bays() {
	c := newCutter(r.m)
	for _, i := range r.necks() {
		q := &r.ridge[i]
		if c.taken(int(q.X), int(q.Y)) {
			continue
		}
		if b, ok := r.behind(c, i); ok {
			r.m.rooms = append(r.m.rooms, b)
		}
	}
}

// necks returns the points at which what lies outside is narrowest, by rising
// width.
func (r *roomer) necks() []int32 {
	most := widestNeck * float64(max(r.m.v.w, r.m.v.h)) / 2
	var all []int32
	var keys []uint32
	for i := range r.ridge {
		if d2 := r.ridge[i].D2; r.inside[i] && float64(d2) <= most*most && r.isNeck(int32(i)) {
			all, keys = append(all, int32(i)), append(keys, uint32(d2))
		}
	}
	var necks []int32
	for _, k := range mask.Order(keys) {
		if necks = append(necks, r.midway(all[k])); len(necks) == mostNecks {
			break
		}
	}
	return necks
}

// midway returns the middle of the points as narrow as i that follow one
// another: at the mouth of a channel its edges turn away.
func (r *roomer) midway(i int32) int32 {
	alike := []int32{i}
	for k := 0; k < min(len(alike), longestChannel); k++ {
		for _, n := range r.g.of(alike[k]) {
			if r.inside[n] && r.ridge[n].D2 == r.ridge[i].D2 && !slices.Contains(alike, n) {
				alike = append(alike, n)
			}
		}
	}
	return alike[len(alike)/2]
}

// isNeck says whether no point near another along the centreline is narrower,
// and the point is not where the centreline ends in a corner. Of points alike
// the first counts.
func (r *roomer) isNeck(i int32) bool {
	d2 := r.ridge[i].D2
	if n := len(r.g.of(i)); n == 1 && d2 <= 2 {
		return false
	}
	for _, n := range r.g.of(i) {
		if q := r.ridge[n].D2; r.inside[n] && (q < d2 || q == d2 && n < i) {
			return false
		}
	}
	return true
}

// behind cuts at a point and measures the bay behind it.
func (r *roomer) behind(c *cutter, i int32) (b room, ok bool) {
	q := &r.ridge[i]
	if !c.cut(q) || c.overlaps() {
		return b, false
	}
	b = room{open: true, x: float64(q.X) + 0.5, y: float64(q.Y) + 0.5, width: r.m.roomAt(q), area: c.area, box: c.box}
	b.ends = [4]float64{float64(q.AX) + 0.5, float64(q.AY) + 0.5, float64(q.BX) + 0.5, float64(q.BY) + 0.5}
	wide := r.widestReached(c)
	if wide < leastBay || b.width > bayNeck*wide {
		return b, false
	}
	c.take()
	return b, true
}

// widestReached returns the diameter of the largest disc in what a cut parted.
func (r *roomer) widestReached(c *cutter) float64 {
	wide2 := int32(0)
	for k := range r.ridge {
		if p := &r.ridge[k]; p.D2 > wide2 && c.reached(int(p.X), int(p.Y)) {
			wide2 = p.D2
		}
	}
	// The middle of a round room may be missing from its centreline.
	if x, y := floor(c.x), floor(c.y); c.reached(x, y) {
		_, _, d2 := r.m.nearestEdge(r.m.parts.At(x, y), x, y, 0, 0)
		wide2 = max(wide2, d2)
	}
	return 2 * math.Sqrt(float64(wide2))
}
