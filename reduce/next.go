package reduce

import "badgewright/reduce/colour"

// Joining is what happens to a flat drawing when it must do with one enamel
// fewer.
type Joining struct {
	Keep FlatID `json:"keep"` // the flat that takes the other in
	Goes FlatID `json:"goes"` // the flat that is lost
	// Becomes is the colour of both afterwards.
	Becomes colour.RGB8 `json:"becomes"`
	// Share of the drawing, without its background, that was Goes: 0..1.
	Share float64 `json:"share"`
	// Shift is how far the lost colour is from what it becomes: CIEDE2000.
	Shift float64 `json:"shift"`
}

// Next says which two enamels join when one fewer than the count is asked
// for; ok is false when no more may join: one is left, or all are kept.
func (a *Analysis) Next(o Options) (j Joining, ok bool) {
	d := a.replay(o.Edits, o.RolesOff)
	twigs := d.thinOut(o.Count)
	x, y, mean := d.nextPair(twigs)
	if x < 0 {
		return Joining{}, false
	}
	total := 0.0
	for i := range twigs {
		total += twigs[i].area
	}
	goes := &twigs[y]
	one := merged(twigs[x], twigs[y], mean)
	if one.lead == twigs[y].lead {
		goes = &twigs[x]
	}
	keep, gone := flatFrom(&one, d.boughs), flatFrom(goes, d.boughs)
	return Joining{
		Keep: keep.ID, Goes: gone.ID, Becomes: keep.RGB,
		Share: goes.area / total, Shift: colour.CIEDE2000(gone.RGB.Lab(), keep.RGB.Lab()),
	}, true
}
