package proof

import (
	"fmt"
	"math"

	"badgewright/reduce/colour"
	"badgewright/reduce/mask"
	"badgewright/sizing/unit"
)

// patchStep is the least difference in encoded channels of something within an
// area that was not asked for: stains of JPEG stay below.
const patchStep = 42.0

// rasterPerMM is how finely areas are searched, px of the pin per mm at least.
const rasterPerMM = 16.0

// How much an added patch takes at least, mm2.
const leastPatch = 0.12

// added looks inside areas for what was not asked for.
func (d *differ) added() {
	h, a := d.h, d.h.a
	s := a.Badge.Sep
	step := max(1, int(float64(a.Badge.Scale)/rasterPerMM))
	w, t := (s.W+step-1)/step, (s.H+step-1)/step
	far := a.px(0.12) + 1.6/h.ppx
	far2 := int32(far * far)
	label := make([]uint8, w*t)
	for y := range t {
		for x := range w {
			px, py := x*step+step/2, y*step+step/2
			if px >= s.W || py >= s.H {
				continue
			}
			i := py*s.W + px
			if a.class[i] == outside || a.deep[i] <= far2 {
				continue
			}
			c := h.see(float64(px)+0.5, float64(py)+0.5)
			label[y*w+x] = 1
			if own := d.tint(a.class[i], a.cell[i]); c.far2(&own) > patchStep*patchStep {
				label[y*w+x] = 2
			}
		}
	}
	var eight [256]bool
	eight[2] = true
	parts := mask.Connect(label, w, t, &eight)
	spots := make([][]Point, len(parts.Area))
	eachRun(parts, func(y int, r mask.Run) {
		if r.Label == 2 {
			for x := r.X0; x < r.X1; x++ {
				spots[r.Comp] = append(spots[r.Comp], Point{(float64(x) + 0.5) * float64(step), (float64(y) + 0.5) * float64(step)})
			}
		}
	})
	for _, list := range spots {
		if len(list) > 0 {
			d.patch(list, float64(a.mm(float64(step))))
		}
	}
}

// patch notes a patch within an area, unless it is small or belongs to a leader.
func (d *differ) patch(list []Point, step float64) {
	a := d.h.a
	size := float64(len(list)) * step * step
	from := list[farthest(list, list[0])]
	to := list[farthest(list, from)]
	length := float64(a.mm(dist(from, to))) + step
	if size < leastPatch || length < float64(d.t.Added) || d.leader(from, to) {
		return
	}
	var seen medians
	for _, p := range list {
		seen.add(d.h.see(p.X, p.Y))
	}
	shown := seen.median()
	i, _ := a.index(list[len(list)/2].X, list[len(list)/2].Y)
	cell := &d.cells[a.cell[i]]
	wide := size / length
	x := d.new(PatchAdded, []Point{from, list[len(list)/2], to})
	x.Length = unit.MM(length)
	now := shown.rgb8()
	x.ShownRGB = &now
	if cell.class != metal {
		x.Flat = a.Badge.Sep.Flats[cell.class].ID
	}
	m := d.h.shown[metal]
	own := cell.shown
	switch {
	case cell.class != metal && shown.far2(&m) < shown.far2(&own) && 3*wide < length:
		x.Kind = LineAdded
		x.Asked, x.Shown = "no line", fmt.Sprintf("a line about %.2f mm wide", wide)
		x.ShownMM = unit.MM(wide)
		x.Words = fmt.Sprintf("A line that was not asked for, %.1f mm long.", length)
		d.splits(&x, from, to, cell)
	default:
		x.Asked, x.Shown = "one colour", colour.Name(now)+" "+now.Hex()
		x.Words = fmt.Sprintf("Something that was not asked for, %.1f mm long, in %s.", length, x.Shown)
	}
	d.add(x)
}

// reachMM is how far beyond its ends an added line may stop and still part its
// area: the search keeps off the borders.
const reachMM unit.MM = 0.45

// splits makes an added line one that parts its area, where both of its ends come
// up to a border.
func (d *differ) splits(x *Deviation, from, to Point, cell *cellShown) {
	a := d.h.a
	t := dist(from, to)
	if t == 0 {
		return
	}
	dx, dy := (to.X-from.X)/t, (to.Y-from.Y)/t
	far := a.px(reachMM) + 2.5/d.h.ppx
	ends := 0
	for k := 0.0; k <= far; k++ {
		if a.classAt(to.X+float64(dx*k), to.Y+float64(dy*k)) != cell.class {
			ends |= 1
		}
		if a.classAt(from.X-float64(dx*k), from.Y-float64(dy*k)) != cell.class {
			ends |= 2
		}
	}
	if ends == 3 {
		x.Kind = AreaSplit
		x.Asked, x.Shown = "one area", "two areas, a line between"
		x.Words = fmt.Sprintf("A line that was not asked for parts this area, %.1f mm long.", x.Length)
	}
}

// leader says whether a patch is the end of a leader that comes in from outside
// the pin.
func (d *differ) leader(from, to Point) bool {
	t := dist(from, to)
	if t == 0 {
		return false
	}
	dx, dy := (to.X-from.X)/t, (to.Y-from.Y)/t
	return d.goesOut(to, Point{dx, dy}) || d.goesOut(from, Point{-dx, -dy})
}

// outMM is how far beyond the outline a leader is looked for.
const outMM unit.MM = 1.2

// goesOut follows a direction out of the pin and says whether ink goes on there.
func (d *differ) goesOut(p, dir Point) bool {
	a := d.h.a
	far := 0.0
	for far < a.px(2.5) && a.classAt(p.X+float64(dir.X*far), p.Y+float64(dir.Y*far)) != outside {
		far++
	}
	if far >= a.px(2.5) {
		return false
	}
	ink, all := 0, 0
	for t := far + a.px(0.3); t < far+a.px(outMM); t += max(1, 0.5/d.h.ppx) {
		all++
		darkest := 0.0
		for k := -2.0; k <= 2; k++ {
			c := d.h.see(p.X+float64(dir.X*t)-float64(dir.Y*k/d.h.ppx), p.Y+float64(dir.Y*t)+float64(dir.X*k/d.h.ppx))
			darkest = math.Max(darkest, c.far2(&d.h.bare))
		}
		if darkest > patchStep*patchStep {
			ink++
		}
	}
	return all > 0 && 10*ink >= 8*all
}
