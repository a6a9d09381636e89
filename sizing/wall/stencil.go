package wall

import (
	"math"
	"slices"
)

// stencil is how much of each pixel of a box, 0..255, discs cover.
type stencil struct {
	w, h int
	part []uint8
}

func (p *patch) stencil() *stencil {
	return &stencil{w: p.v.w, h: p.v.h, part: make([]uint8, p.v.w*p.v.h)}
}

// disc adds one: a pixel that its edge crosses is covered in part.
func (k *stencil) disc(at place, radius float64) {
	if !(radius > 0) {
		return
	}
	x0, y0, x1, y1 := boxRound([]place{at}, radius+1, k.w, k.h)
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			dx, dy := float64(x)+0.5-at.x, float64(y)+0.5-at.y
			d := math.Sqrt(float64(dx*dx) + float64(dy*dy))
			if part := min(1, radius+0.5-d); part > 0 {
				k.part[y*k.w+x] = max(k.part[y*k.w+x], uint8(255*part))
			}
		}
	}
}

// layAll gives a class what a stencil covers.
func (p *patch) layAll(k *stencil, class uint8, over bool) {
	for i, part := range k.part {
		if part > 0 {
			p.lay(p.whole(i), class, part, over)
		}
	}
}

// span is what lies across a place of a path, from one distance to another
// along the normal.
type span struct{ from, to float64 }

// slab adds what lies across the stretch between two places of a path.
func (k *stencil) slab(a, b *cross, sa, sb span) {
	dx, dy := b.at.x-a.at.x, b.at.y-a.at.y
	long := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if long < 1e-9 || long > tornApart || !sameHeading(a, b) {
		return
	}
	ux, uy := dx/long, dy/long
	nx, ny := -uy, ux
	if float64(nx*a.nx)+float64(ny*a.ny) < 0 {
		nx, ny = -nx, -ny
	}
	wide := max(math.Abs(sa.from), math.Abs(sa.to), math.Abs(sb.from), math.Abs(sb.to))
	x0, y0, x1, y1 := boxRound([]place{a.at, b.at}, wide+1, k.w, k.h)
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			px, py := float64(x)+0.5-a.at.x, float64(y)+0.5-a.at.y
			along := float64(px*ux) + float64(py*uy)
			if along < -0.5 || along > long+0.5 {
				continue
			}
			t := min(1, max(0, along/long))
			across := float64(px*nx) + float64(py*ny)
			from, to := sa.from+float64(t*(sb.from-sa.from)), sa.to+float64(t*(sb.to-sa.to))
			if part := min(1, across-from+0.5, to-across+0.5, to-from); part > 0 {
				k.part[y*k.w+x] = max(k.part[y*k.w+x], uint8(255*part))
			}
		}
	}
}

// tornApart is how far apart, in pixels, two neighbouring places of a path are
// whose middles no longer belong together.
const tornApart = 3 * probeStep

// sameHeading says whether two places of a path go the same way.
func sameHeading(a, b *cross) bool { return float64(a.nx*b.nx)+float64(a.ny*b.ny) > sameWay }

// sameWay is the cosine from which they do.
const sameWay = 0.7

// ribbon adds a stretch of a path that grows: slabs, which end as squarely as
// what they widen, and round each place that is not near an end a disc, so that
// nothing is left open at a bend.
func (k *stencil) ribbon(all []cross, grows []growth, spanOf func(i int) (s span, some bool)) {
	for i := range all {
		s, some := spanOf(i)
		if !some {
			continue
		}
		if i > 0 {
			if before, also := spanOf(i - 1); also {
				k.slab(&all[i-1], &all[i], before, s)
			}
		}
		half := (s.to - s.from) / 2
		if inner(all, grows, i, half) {
			k.disc(all[i].over((s.from+s.to)/2), half)
		}
	}
}

// inner says whether a path goes on growing for a distance to both sides of a
// place.
func inner(all []cross, grows []growth, i int, far float64) bool {
	n := int(math.Ceil(far/probeStep)) + 1
	for k := i - n; k <= i+n; k++ {
		if k < 0 || k >= len(all) || !grows[k].some {
			return false
		}
	}
	return true
}

// toEnds carries a stretch of a path that grows on to where what it follows
// ends, if that is near: as square or as round as it ended.
func (p *patch) toEnds(all []cross, grows []growth, class uint8, far float64) (longer []cross, more []growth) {
	for i := range all {
		if grows[i].some && (i == 0 || !grows[i-1].some) {
			c, g := p.endOf(all[i], grows[i], class, far, -1)
			slices.Reverse(c)
			slices.Reverse(g)
			longer, more = append(longer, c...), append(more, g...)
		}
		longer, more = append(longer, all[i]), append(more, grows[i])
		if grows[i].some && (i+1 == len(all) || !grows[i+1].some) {
			c, g := p.endOf(all[i], grows[i], class, far, 1)
			longer, more = append(longer, c...), append(more, g...)
		}
	}
	return longer, more
}

// endOf returns the places from the last of a path on to where the class ends.
func (p *patch) endOf(last cross, g growth, class uint8, far, sign float64) (all []cross, grows []growth) {
	dx, dy := sign*last.ny, -sign*last.nx
	e, ends := p.leave(last.at, dx, dy, class, far)
	if !ends {
		return nil, nil
	}
	n := int(math.Ceil(e / probeStep))
	for k := 1; k <= n; k++ {
		by := e * float64(k) / float64(n)
		c := last
		c.at = place{last.at.x + float64(by*dx), last.at.y + float64(by*dy)}
		for s, side := range [2]float64{-1, 1} {
			edge, _ := p.leave(c.at, side*c.nx, side*c.ny, class, c.side[s].edge)
			c.side[s].edge = min(edge, c.side[s].edge)
		}
		all, grows = append(all, c), append(grows, g)
		grows[k-1].end = k == n
	}
	return all, grows
}
